#include <loopwright/rules/side_reliefs.h>

#include <algorithm>

namespace loopwright {

bool stands_on(const SideInfo& side, Index port) {
    return std::binary_search(side.ports.begin(), side.ports.end(), port);
}

std::vector<Index> reliefs_of(const Circuit& circuit, const SideInfo& side) {
    std::vector<Index> reliefs;
    for (const Index port : side.ports) {
        const Component& component = circuit.components[circuit.ports[port].component];
        for (Index p = component.passages.begin; p < component.passages.end; ++p) {
            const Passage& passage = circuit.passages[p];
            if (passage.passage == PassageClass::pressure_opened && !passage.bypass &&
                passage.from == port && !stands_on(side, passage.to))
                reliefs.push_back(p);
        }
    }
    return reliefs;
}

std::vector<const SideInfo*> main_sides(const LoopInfo& loop, State state) {
    std::vector<const SideInfo*> sides;
    for (const SideInfo& side : loop.sides)
        if (side.role == SideRole::main &&
            std::find(side.states.begin(), side.states.end(), state) != side.states.end())
            sides.push_back(&side);
    return sides;
}

}  // namespace loopwright
