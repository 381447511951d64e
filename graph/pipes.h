#pragma once

#include <span>
#include <vector>

#include <loopwright/parser/circuit.h>

namespace loopwright {

/// Ports that lines, hoses, junctions and whatever else is joined for good make one. Unlike a
/// joint of the flow graph, a pipe ends at a reservoir: what is led to two of its ports stays two.
class Pipes {
  public:
    explicit Pipes(const Circuit& circuit);

    Index count() const { return static_cast<Index>(offsets_.size() - 1); }
    Index of(Index port) const { return pipe_of_[port]; }
    /// The ports of a pipe in file order.
    std::span<const Index> ports_of(Index pipe) const {
        return {ports_.data() + offsets_[pipe], offsets_[pipe + 1] - offsets_[pipe]};
    }

  private:
    std::vector<Index> pipe_of_;
    std::vector<Index> offsets_;
    std::vector<Index> ports_;
};

}  // namespace loopwright
