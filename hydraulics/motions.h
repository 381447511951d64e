#pragma once

#include <vector>

#include <loopwright/graph/flow_graph.h>

namespace loopwright::hydraulics {

/// What moves as one: a command and what it sets, pumps and actuators of one loop, what stands on
/// shafts that no prime mover turns. What one prime mover turns moves each for itself, unless its
/// sense of turning is the command.
class Motions {
  public:
    explicit Motions(const FlowGraph& graph);

    /// The same number for all parts of a motion.
    Index of(Index component) const { return of_component_[component]; }
    /// Of what a command sets; none where that is only the speed of what never reverses.
    Index of_command(Index command) const { return of_command_[command]; }

  private:
    std::vector<Index> of_component_;
    std::vector<Index> of_command_;
};

}  // namespace loopwright::hydraulics
