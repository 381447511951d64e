// Errors planted in what a state is: a rule that is asked in it judges one that is not it.
#include <algorithm>

#include <loopwright/tests/oracle/planted_errors.h>
#include <loopwright/tests/oracle/tampered.h>

namespace loopwright {
namespace {

/// Where a valve is thought to be moved to: its first position that is not the one it stands in.
Index moved_from(const Situation& s, Index valve) {
    const Range all = s.circuit().components[valve].positions;
    const auto at = std::find(s.valves.begin(), s.valves.end(), valve);
    if (at == s.valves.end()) return none;
    const Index here = s.positions[static_cast<std::size_t>(at - s.valves.begin())];
    return here == all.begin ? all.begin + 1 : all.begin;
}

/// In hold the operated valves are taken for moved, as in motion.
void hold(const Situation& s, Docket& docket) {
    constexpr StateSet held = bit(State::hold);
    if ((s.states & held) != 0)
        Tampered(s, [&](Edge& edge, std::uint8_t& open) {
            if (edge.shift != Shift::position) return;
            const Index position = s.circuit().passages[edge.passage].position;
            open = position == moved_from(s, edge.component) ? ways_of(edge) : std::uint8_t{0};
        }).judge(s, "make-up-check", docket, [](StateSet states) {
            return static_cast<StateSet>(states & held);
        });
    if (without(s.states, held) != 0)
        Tampered(s, [](Edge& /*edge*/, std::uint8_t& /*open*/) {
        }).judge(s, "make-up-check", docket, [](StateSet states) { return without(states, held); });
}

/// Towing is taken for stopped: what is meant for towing is left shut.
void towing(const Situation& s, Docket& docket) {
    constexpr StateSet stopped = bit(State::stopped);
    if ((s.states & stopped) != 0)
        Tampered(s, [](Edge& /*edge*/, std::uint8_t& /*open*/) {
        }).judge(s, "towing-bypass", docket, [](StateSet states) {
            return (states & stopped) != 0 ? bit(State::towing) : StateSet{0};
        });
}

constexpr PlantedState planted[] = {
    {"hold", {"make-up-check", hold}},
    {"towing", {"towing-bypass", towing}, bit(State::stopped) | bit(State::towing)},
};

}  // namespace

std::span<const PlantedState> planted_in_states() { return planted; }

}  // namespace loopwright
