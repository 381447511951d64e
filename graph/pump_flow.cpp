#include <loopwright/graph/pump_flow.h>

namespace loopwright {

PumpFlow flow_of(const Situation& s, Index edge, Direction direction) {
    const Edge& pump = s.region.edges[edge];
    if (pump.part != Part::pump || pump.from == pump.to) return {};
    const Drives& drives = s.graph.drives();
    if (!pump.both_ways)
        return s.turning.turns_ahead(drives, pump.component) ? PumpFlow{pump.from, pump.to}
                                                             : PumpFlow{};
    if (!s.asks(edge) || direction == Direction::none || !s.turning.turns(drives, pump.component))
        return {};
    return (displacement_ways(pump, direction) & open_forward) != 0 ? PumpFlow{pump.from, pump.to}
                                                                    : PumpFlow{pump.to, pump.from};
}

}  // namespace loopwright
