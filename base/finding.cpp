#include <loopwright/base/finding.h>

#include <array>
#include <stdexcept>

namespace loopwright {
namespace {

template <std::size_t N, class Enumerator>
std::string_view word(const std::array<std::string_view, N>& words, Enumerator value) {
    const auto index = static_cast<std::size_t>(value);
    if (index >= N) {
        throw std::logic_error("an enumerator without a name");
    }
    return words[index];
}

// Each in the order of its enumeration.
constexpr std::array<std::string_view, 3> levels{"note", "warning", "error"};
constexpr std::array<std::string_view, 4> outcomes{"not-applicable", "pass", "inconclusive",
                                                   "fail"};
constexpr std::array<std::string_view, state_count> states{
    "neutral", "drive-forward", "drive-reverse", "overrun-forward", "overrun-reverse",
    "hold",    "lost-signal",   "stopped",       "towing"};
constexpr std::array<std::string_view, 8> element_types{"circuit", "loop",  "side", "component",
                                                        "line",    "shaft", "port", "waiver"};
constexpr std::array<std::string_view, 4> shapes{"path", "frontier", "cut", "set"};

}  // namespace

std::string_view name(Level level) { return word(levels, level); }
std::string_view name(Outcome outcome) { return word(outcomes, outcome); }
std::string_view name(State state) { return word(states, state); }
std::string_view name(ElementType type) { return word(element_types, type); }
std::string_view name(WitnessShape shape) { return word(shapes, shape); }

std::optional<State> state_named(std::string_view text) {
    for (std::size_t i = 0; i < states.size(); ++i) {
        if (states[i] == text) {
            return static_cast<State>(i);
        }
    }
    return std::nullopt;
}

}  // namespace loopwright
