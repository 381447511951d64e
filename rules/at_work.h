#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include <loopwright/base/keep.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/graph/flow_graph.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/rules/docket.h>

namespace loopwright {

struct Rule;

/// A circuit at a duty point that is solved: what rules about figures at work are shown.
struct AtWork {
    const FlowGraph& graph;
    const Structure& structure;
    const hydraulics::OperatingPoint& point;
    /// All points of the duty, solved or not.
    std::span<const hydraulics::OperatingPoint> duty = {};
    bool cold_start = false;

    const Circuit& circuit() const { return graph.circuit(); }
    /// At a port, Pa over the atmosphere.
    double pressure(Index port) const { return point.pressures[port]; }
    /// Null where the component is none of the point's machines.
    const hydraulics::MachinePoint* machine(Index component) const;
    /// Whether the point is one of motion.
    bool moves() const;
    /// Whether no machine works so: oil would stand below vacuum somewhere, or a prime mover is
    /// asked for more than it can.
    bool is_torn() const { return !point.problem.empty(); }
    /// Whether it would there.
    bool is_torn_at(Index port) const { return pressure(port) < hydraulics::vacuum; }
};

/// What a machine without any figure for it is taken to have none of.
enum class Loss : std::uint8_t { leakage, torque };

/// Of the machines those whose loss is not known, as "P1.volumetric-efficiency": what is computed
/// without it may look better than it is.
std::vector<std::string_view> unknown_losses(const AtWork& at, Docket& docket,
                                             std::span<const Index> machines, Loss loss);
/// The same of what was taken for granted in any computation.
std::vector<std::string_view> unknown_losses(const Circuit& circuit,
                                             std::span<const hydraulics::Assumption> assumptions,
                                             Docket& docket, std::span<const Index> machines,
                                             Loss loss);

/// Of a circuit that has none.
inline constexpr std::string_view without_a_duty =
    "there is no duty, so that no figures at work can be computed";

/// Judges a circuit by the rules that have a `judge_point`, at each of its duty points; works these
/// out only where there is such a rule and a duty. What a missing duty leaves open, or a point that
/// has no solution or one below vacuum, is inconclusive. `dockets` go with `rules`.
void judge_at_work(const FlowGraph& graph, const Structure& structure,
                   std::span<const Rule* const> rules, std::span<Docket> dockets, Keep& keep);

/// A figure held against what it must not pass.
struct Held {
    enum class Against : std::uint8_t { most, least };

    Against against = Against::most;
    double measured = 0.0;  ///< SI
    double required = 0.0;  ///< SI
    Dimension dimension = Dimension::ratio;

    double margin() const {
        return against == Against::most ? required - measured : measured - required;
    }
    /// But for rounding.
    bool holds() const;
};

Figures figures_of(const Held& held);

/// Records it at the point: a fail of that level where it does not hold. The point with the least
/// margin decides; where it is this one, its verdict is returned with the figures filled in.
Verdict* hold(const AtWork& at, Docket& docket, ElementType type, Index index, const Held& held,
              Level level = Level::error);

/// Records that data are missing, and returns the verdict if it is the first such one.
Verdict* lacks(const AtWork& at, Docket& docket, ElementType type, Index index,
               std::span<const std::string_view> missing);
/// The same of one datum of a component.
Verdict* lacks(const AtWork& at, Docket& docket, Index component, std::string_view datum);

/// For `Rule::concerns`.
bool has_loops(const FlowGraph& graph, const Structure& structure);
/// Pumps, motors, cylinders.
bool has_machines(const FlowGraph& graph, const Structure& structure);
bool has_part(const FlowGraph& graph, Part part);

}  // namespace loopwright
