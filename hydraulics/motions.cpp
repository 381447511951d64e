#include <loopwright/hydraulics/motions.h>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/situation.h>

namespace loopwright::hydraulics {

Motions::Motions(const FlowGraph& graph) {
    const Circuit& circuit = graph.circuit();
    DisjointSets sets(circuit.components.size());
    for_each_situation(graph, [&](const Situation& s) {
        if ((s.states & moving_states) == 0 || s.judged_pump != none) return;
        for (const Loop& loop : s.loops.loops) {
            for (const Index pump : s.loops.pumps_of(loop)) sets.join(loop.first_pump, pump);
            for (const Index actuator : s.loops.actuators_of(loop))
                sets.join(loop.first_pump, actuator);
        }
    });
    const Drives& drives = graph.drives();
    for (Index c = 0; c < circuit.components.size(); ++c) {
        if (drives.of(c) == none) continue;
        const Drive& drive = drives.at(c);
        if (!drive.turned || drive.reversing) sets.join(drives.members(drives.of(c)).front(), c);
    }
    of_command_.assign(circuit.commands.size(), none);
    for (Index command = 0; command < circuit.commands.size(); ++command) {
        const Range& stages = circuit.commands[command].stages;
        for (Index i = stages.begin; i < stages.end; ++i) {
            const Index part = circuit.stages[i].part;
            if (part == none) continue;
            const bool only_turns = circuit.components[part].kind->part == Part::prime_mover &&
                                    !drives.at(part).reversing;
            if (only_turns) continue;
            if (of_command_[command] != none) sets.join(of_command_[command], part);
            of_command_[command] = part;
        }
    }
    for (Index& one : of_command_)
        if (one != none) one = sets.find(one);
    for (Index c = 0; c < circuit.components.size(); ++c) of_component_.push_back(sets.find(c));
}

}  // namespace loopwright::hydraulics
