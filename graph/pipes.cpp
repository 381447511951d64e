#include <loopwright/graph/pipes.h>

#include <loopwright/graph/disjoint_sets.h>

namespace loopwright {

Pipes::Pipes(const Circuit& circuit) : pipe_of_(circuit.ports.size()), offsets_(1, 0) {
    DisjointSets sets(circuit.ports.size());
    for (const Line& line : circuit.lines)
        for (const Index port : circuit.ports_of(line))
            sets.join(circuit.ports_of(line).front(), port);
    for (const Passage& passage : circuit.passages)
        if (passage.passage == PassageClass::joined &&
            circuit.components[passage.component].kind->part != Part::reservoir)
            sets.join(passage.from, passage.to);

    const auto port_count = static_cast<Index>(circuit.ports.size());
    for (Index port = 0; port < port_count; ++port) {
        const Index leader = sets.find(port);  // never behind the port itself
        if (leader == port) {
            pipe_of_[port] = count();
            offsets_.push_back(0);
        } else {
            pipe_of_[port] = pipe_of_[leader];
        }
        ++offsets_[pipe_of_[port] + 1];
    }
    for (Index pipe = 0; pipe < count(); ++pipe) offsets_[pipe + 1] += offsets_[pipe];
    ports_.resize(port_count);
    std::vector<Index> cursor(offsets_.begin(), offsets_.end() - 1);
    for (Index port = 0; port < port_count; ++port) ports_[cursor[pipe_of_[port]]++] = port;
}

}  // namespace loopwright
