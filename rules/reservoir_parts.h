#pragma once

#include <vector>

#include <loopwright/graph/flow_graph.h>

namespace loopwright {

/// Components of one sort that stand on the pipes of reservoirs.
class ReservoirParts {
  public:
    /// `is_one(component)` says whether a component is of the sort.
    template <typename IsOne>
    ReservoirParts(const FlowGraph& graph, IsOne is_one)
        : pipes_(graph.pipes()), on_pipe_(pipes_.count(), none) {
        const Circuit& circuit = graph.circuit();
        for (Index c = 0; c < circuit.components.size(); ++c) {
            const Component& component = circuit.components[c];
            if (!is_one(component)) continue;
            for (Index port = component.ports.begin; port < component.ports.end; ++port)
                if (on_pipe_[pipes_.of(port)] == none) on_pipe_[pipes_.of(port)] = c;
        }
    }

    /// The first of them on the pipe of one of the reservoir's ports; `none` if there is none.
    Index of(const Component& reservoir) const {
        for (Index port = reservoir.ports.begin; port < reservoir.ports.end; ++port)
            if (on_pipe_[pipes_.of(port)] != none) return on_pipe_[pipes_.of(port)];
        return none;
    }

  private:
    const Pipes& pipes_;
    std::vector<Index> on_pipe_;  // by pipe
};

}  // namespace loopwright
