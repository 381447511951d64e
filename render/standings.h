#pragma once

#include <map>

#include <loopwright/render/loop_columns.h>

namespace loopwright {

/// Where the columns of a loop's block stand. Most stand at their rank. Of several prime movers the
/// first stands on the left, each other beside its own pump. Of several actuators in
/// assemblies with valves and the like, each stands by itself with all that turns with it, so that
/// its assembly's frame is whole; the others stand on one another.
class Standings {
  public:
    Standings(const Sketch& sketch, const Roles& roles, const Block& block);

    /// Of the column of that rank that the part is in.
    Standing of(int part, int rank) const;
    /// Parts that stand on a lower axis than the loop pump: two shafts in line would read as one.
    /// Part -> 1 for the next axis below, 2 ...
    const std::map<int, int>& lower_axes() const { return axis_; }

  private:
    struct Place {
        int rank = 0;
        int batch = 0;
    };
    std::map<int, Place> place_ = {};  // of parts that do not stand at their own rank
    std::map<int, int> axis_ = {};
};

}  // namespace loopwright
