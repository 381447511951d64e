#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/parser/circuit.h>

/// What a circuit is asked to do at one duty point, read off its duty, commands and parts.
namespace loopwright::hydraulics {

class PointFigures {
  public:
    /// `point`: into Circuit::points; `none` for a circuit without a duty: rated speed, full
    /// travel.
    PointFigures(const Circuit& circuit, Index point);
    /// The prime movers at rated speed, nothing commanded, no load, the oil as cold as the duty
    /// says; nothing where it does not say.
    static std::optional<PointFigures> cold_start(const Circuit& circuit);

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
    bool moves() const;
    /// Whether its commands go different ways, so that no one state and sense is the point's.
    bool goes_both_ways() const;

    /// Set displacement over the largest of a machine, without a sign, 0 to 1; for a prime mover
    /// the share of the rated speed.
    double set_share(Index component, bool pump) const;
    /// Whether some stage sets it.
    bool is_commanded(Index component) const;

  private:
    std::optional<double> travel_of(Index command) const;
    State find_state() const;
    bool load_drives(Index load) const;

    const Circuit& circuit_;
    Index point_;
    std::optional<double> cold_oil_ = {};  // K; of the cold start
    State state_ = State::drive_forward;
    double sense_ = 1.0;
};

/// A loop as it is at a duty point.
struct PointLoop {
    Index first_pump = none;        ///< component that it is named after
    std::vector<Index> ports = {};  ///< on its sides
};

/// How a circuit stands at a duty point.
struct PointStanding {
    /// For each passage in which senses it stands open, bits as in `Standing`. Empty where valves
    /// are moved that no situation has so in the point's state: how they stand then is not known.
    std::vector<std::uint8_t> open = {};
    std::vector<PointLoop> loops = {};  ///< by region
};
std::vector<PointStanding> standings(const FlowGraph& graph, std::span<const PointFigures> points);

}  // namespace loopwright::hydraulics
