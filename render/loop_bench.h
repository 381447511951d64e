#pragma once

#include <loopwright/render/loop_columns.h>
#include <loopwright/render/place.h>

/// What the stages that place a loop's block hand on to one another. Each stage is a file:
/// attitudes (turn_loop.cpp), levels and slots (stack_loop.cpp), columns beside one another
/// (place_loop.cpp), what hangs below and the level stretches (place_below.cpp).
namespace loopwright {

/// Room for each frame between neighbours and the port letters at it, M.
inline constexpr int frame_room = 2;

/// Heights are in the block's own coordinates, whole modules; the charge line is at 0.
struct LoopState {
    Sketch& sketch;
    const Roles& roles;
    Block& block;
    const Spacing& spacing;
    LoopColumns plan = {};
    int charge = 0;
    int axis = 0;  ///< of the machines that stand alone in their column
    int a = 0;     ///< working line A, above
    int b = 0;     ///< working line B, below
    int right = 0;
};

/// The state with the questions that all stages ask.
class LoopBench {
  public:
    explicit LoopBench(LoopState& state)
        : sketch_(state.sketch),
          roles_(state.roles),
          block_(state.block),
          spacing_(state.spacing),
          plan_(state.plan),
          charge_(state.charge),
          axis_(state.axis),
          a_(state.a),
          b_(state.b),
          right_(state.right) {}

  protected:
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }
    SketchPart& part(int p) { return sketch_.parts[static_cast<std::size_t>(p)]; }
    const RoleOfNet& net_role(int n) const { return roles_.net[static_cast<std::size_t>(n)]; }
    /// Whether the net has the role in this block's loop.
    bool on(int n, NetRole r) const {
        return n >= 0 && net_role(n).role == r &&
               (net_role(n).loop < 0 || net_role(n).loop == block_.loop);
    }
    bool is_machine(int p) { return !part(p).shape.shafts.empty(); }
    bool touches(int p, int net);
    /// Upper and lower edge of the part with all that hangs on it, relative to its origin.
    int top(int p);
    int bottom(int p);
    void move(int p, int x, int y) { sketch_.move_to(p, {x, y}); }

    Sketch& sketch_;
    const Roles& roles_;
    Block& block_;
    const Spacing& spacing_;
    LoopColumns& plan_;
    int& charge_;
    int& axis_;
    int& a_;
    int& b_;
    int& right_;
};

/// Gives every part of the plan its attitude, its reservoir marks and its planned label.
void turn_loop(LoopState& state);
/// Attitude of a drain's parts where it runs leftwards or rightwards.
void turn_drain(LoopState& state, const Slot& slot, bool leftwards);

/// Sets the heights of the level lines by what stands between them.
void set_levels(LoopState& state);
/// Stands the parts of a column's slots on one another, about x = 0.
void stack_column(LoopState& state, const Column& column);

/// The level stretches, drains, and marks that several ends share.
void place_below(LoopState& state);

}  // namespace loopwright
