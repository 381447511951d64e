#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/motions.h>
#include <loopwright/parser/circuit.h>

/// What a circuit is asked to do at one duty point, read off its duty, commands and parts.
namespace loopwright::hydraulics {

class PointFigures {
  public:
    /// `point`: into Circuit::points; `none` for a circuit without a duty: rated speed, full
    /// travel.
    PointFigures(const Circuit& circuit, Index point);
    /// The prime movers at rated speed, nothing commanded, no load, at a temperature of the oil, K.
    static PointFigures neutral(const Circuit& circuit, double oil);
    /// The same, the oil as cold as the duty says; nothing where it does not say.
    static std::optional<PointFigures> cold_start(const Circuit& circuit);
    /// Another temperature of the oil than the point's own, K.
    void set_oil(double oil) { oil_ = oil; }

    const Circuit& circuit() const { return circuit_; }
    Index point() const { return point_; }
    std::string_view id() const;

    /// A figure of a part at the point: as set for it there, or as the point says of the only one.
    std::optional<double> set_figure(Index component, std::string_view name) const;
    /// The same, or as the part itself has it.
    std::optional<double> figure(Index component, std::string_view name) const;
    /// A figure of the point alone.
    std::optional<double> figure(std::string_view name) const;
    /// Where the point wants an operated valve; none: it does not say.
    Index position_of(Index valve) const;

    /// The state that the point is in: as it says, or as travel and loads say.
    State state() const { return state_; }
    /// 1 forward, -1 in reverse.
    double sense() const { return sense_; }
    bool moves() const { return is_moving(state_); }

    /// Whether its commands go different ways, so that no one state and sense is the point's. Then
    /// `part` gives each motion its own, and those below are no longer the point's.
    bool goes_both_ways() const;
    void part(const Motions& motions);
    bool is_parted() const { return !motions_.empty(); }
    /// Whether commands of one motion go different ways, or were not parted.
    bool is_torn() const { return is_torn_ || (goes_both_ways() && !is_parted()); }
    State state(Index component) const { return is_parted() ? motions_[component].state : state_; }
    double sense(Index component) const { return is_parted() ? motions_[component].sense : sense_; }
    bool moves(Index component) const { return is_moving(state(component)); }
    /// The point's states, each once.
    std::vector<State> states() const;
    /// Points of one circuit with the same have their valves in the same positions, but for those
    /// that they set.
    std::vector<State> alike() const;

    /// Set displacement over the largest of a machine, without a sign, 0 to 1; for a prime mover
    /// the share of the rated speed.
    double set_share(Index component, bool pump) const;
    /// Whether some stage sets it.
    bool is_commanded(Index component) const;

  private:
    struct Motion {
        State state = State::drive_forward;
        double sense = 1.0;
        friend bool operator==(const Motion&, const Motion&) = default;
    };

    static bool is_moving(State state);
    std::optional<double> travel_of(Index command) const;
    State find_state() const;
    /// Of a motion, or of all where there are no `motions`.
    State moving_state(double sense, const Motions* motions, Index motion) const;
    bool load_drives(Index load) const;

    const Circuit& circuit_;
    Index point_;
    std::string_view neutral_id_ = {};  // empty: a point as the duty has it
    std::optional<double> oil_ = {};    // K; in place of the point's
    State state_ = State::drive_forward;
    double sense_ = 1.0;
    std::vector<Motion> motions_ = {};  // by component; empty: not parted
    bool is_torn_ = false;
};

}  // namespace loopwright::hydraulics
