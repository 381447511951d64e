#include <loopwright/graph/known_loop.h>

#include <algorithm>

namespace loopwright {

StateSet KnownLoop::states() const {
    StateSet states = reversible ? all_states : without(all_states, reverse_states);
    if (pull == High::a)
        states = without(states, bit(State::drive_reverse) | bit(State::overrun_forward));
    if (pull == High::b)
        states = without(states, bit(State::drive_forward) | bit(State::overrun_reverse));
    return states;
}

void find_pull(const FlowGraph& graph, const Region& region, KnownLoop& loop) {
    const auto component = [&](Index e) { return region.edges[e].component; };
    const bool two_way = std::any_of(loop.pump_edges.begin(), loop.pump_edges.end(),
                                     [&](Index e) { return region.edges[e].both_ways; });
    const auto all_pull = [&](bool Drive::*which) {
        bool any = false;
        for (const Index e : loop.actuator_edges) {
            const Drive& drive = graph.drives().at(component(e));
            if (drive.loaded && !(drive.*which)) return false;
            any = any || drive.loaded;
        }
        return any;
    };
    loop.pull = !two_way                          ? High::neither
                : all_pull(&Drive::pulls_back)    ? High::a
                : all_pull(&Drive::pulls_forward) ? High::b
                                                  : High::neither;
}

void StillDrives::find(const FlowGraph& graph, const Region& region,
                       std::span<const KnownLoop> known, std::span<const std::uint8_t> looped) {
    const Drives& drives = graph.drives();
    still.clear();
    pumps_turn_alike = true;
    two_way_outside = false;
    for (const KnownLoop& loop : known)
        for (const Index e : loop.pump_edges) {
            const Index drive = drives.of(region.edges[e].component);
            if (drive == none || !drives[drive].variable_speed) continue;
            if (still.empty()) still.assign(graph.circuit().shafts.size(), 0);
            still[drive] = 1;
        }
    for (const Index e : region.machines) {
        const Edge& edge = region.edges[e];
        if (edge.part != Part::pump) continue;
        if (edge.both_ways) {
            if (looped[e] != 0) continue;
            two_way_outside = true;
        }
        const Drive& drive = drives.at(edge.component);
        if (drive.reversing || (drive.variable_speed && !still.empty())) pumps_turn_alike = false;
    }
}

}  // namespace loopwright
