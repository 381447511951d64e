// For each brake that holds what stands: do the brakes of its drive hold the largest load at rest?
// It hangs on no state and needs no solution.
#include <algorithm>
#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/load_at_rest.h>
#include <loopwright/rules/holding_brakes.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// How fast shafts turn over one shaft of their drive: over engaged clutches as fast, over a
/// gearbox as its ratio says.
class Ratios {
  public:
    Ratios(const Circuit& circuit, Index start) {
        ratios_.emplace(start, 1.0);
        std::vector<Index> queue{start};
        for (std::size_t i = 0; i < queue.size(); ++i)
            for (const Index c : circuit.components_of(circuit.shafts[queue[i]]))
                turn_on(circuit, queue[i], circuit.components[c], queue);
    }

    /// Nothing where a ratio on the way is not given.
    std::optional<double> of(Index shaft) const {
        const auto found = ratios_.find(shaft);
        return found == ratios_.end() ? std::nullopt : std::optional(found->second);
    }
    /// Gearboxes without a ratio.
    const std::vector<std::string_view>& unknown() const { return unknown_; }

  private:
    void turn_on(const Circuit& circuit, Index shaft, const Component& between,
                 std::vector<Index>& queue) {
        if (between.shaft == none || between.far_shaft == none) return;
        if (!passes_torque(circuit, between)) return;
        const bool ahead = between.shaft == shaft;
        const Index next = ahead ? between.far_shaft : between.shaft;
        if (ratios_.contains(next)) return;
        double ratio = 1.0;
        if (between.kind->part == Part::gearbox) {
            const auto given = circuit.figure(between, "ratio");
            if (!given) {
                unknown_.push_back(between.path);
                return;
            }
            ratio = ahead ? 1.0 / *given : *given;
        }
        ratios_.emplace(next, ratios_.at(shaft) * ratio);
        queue.push_back(next);
    }

    std::map<Index, double> ratios_;  // by shaft
    std::vector<std::string_view> unknown_;
};

/// The sum of what is seen at the brake's shaft.
struct AtShaft {
    double torque = 0.0;
    std::vector<Index> components = {};
};

class Judge {
  public:
    Judge(const FlowGraph& graph, std::span<const hydraulics::PointFigures> points, Docket& docket,
          Index brake)
        : circuit_(graph.circuit()),
          points_(points),
          docket_(docket),
          brake_(brake),
          members_(graph.drives().members(graph.drives().of(brake))),
          ratios_(circuit_, circuit_.components[brake].shaft) {}

    void run() {
        for (const Index c : members_) {
            const Component& component = circuit_.components[c];
            if (component.kind->part == Part::load && hydraulics::can_drive(circuit_, component))
                loads_.components.push_back(c);
            if (component.kind->part == Part::brake && meant_to_hold(circuit_, component))
                add_brake(c);
        }
        if (loads_.components.empty()) return;
        find_load();
        for (const std::string_view gearbox : ratios_.unknown())
            missing_.push_back(docket_.text(gearbox, ".ratio"));
        if (missing_.empty())
            decide();
        else
            leave_open();
    }

  private:
    void miss(Index c, std::string_view datum) {
        const std::string_view name = docket_.text(circuit_.components[c].path, ".", datum);
        if (std::find(missing_.begin(), missing_.end(), name) == missing_.end())
            missing_.push_back(name);
    }

    /// What turns faster holds more.
    void add_brake(Index c) {
        const Component& brake = circuit_.components[c];
        brakes_.components.push_back(c);
        const auto ratio = ratios_.of(brake.shaft);
        const auto torque = circuit_.figure(brake, "torque");
        if (!torque) miss(c, "torque");
        if (ratio && torque) brakes_.torque += *ratio * *torque;
    }

    double load_at(const hydraulics::PointFigures& point, std::vector<Index>& unknown) {
        double sum = 0.0;
        for (const Index c : loads_.components) {
            const hydraulics::LoadAtRest rest = hydraulics::load_at_rest(point, c);
            const auto ratio = ratios_.of(circuit_.components[c].shaft);
            if (!rest.torque) unknown.push_back(c);
            if (rest.torque && ratio) sum += *rest.torque * *ratio;
        }
        return sum;
    }

    /// The largest of all duty points and of what the loads give themselves.
    void find_load() {
        for (const hydraulics::PointFigures& point : points_) {
            std::vector<Index> unknown;
            const double load = load_at(point, unknown);
            // What a load does not give itself each point may give.
            if (point.point() == none && points_.size() > 1 && !unknown.empty()) continue;
            if (load > loads_.torque) {
                loads_.torque = load;
                at_ = point.point() == none ? std::string_view() : point.id();
            }
            for (const Index c : unknown)
                for (const std::string_view datum : hydraulics::load_at_rest(point, c).missing)
                    miss(c, datum);
        }
    }

    std::vector<Step> steps() const {
        std::vector<Step> steps;
        for (const Index c : brakes_.components)
            steps.push_back({ElementType::component, c, none, none, "holds"});
        for (const Index c : loads_.components)
            steps.push_back({ElementType::component, c, none, none, "pulls"});
        return steps;
    }

    void decide() {
        const double margin = brakes_.torque - loads_.torque;
        const bool held = margin >= -1e-9 * loads_.torque;
        Verdict& verdict =
            docket_.conclude(ElementType::component, brake_, held ? Outcome::pass : Outcome::fail);
        verdict.figures = docket_.figures({.measured = {brakes_.torque, Dimension::torque},
                                           .required = Measure{loads_.torque, Dimension::torque},
                                           .margin = Measure{margin, Dimension::torque}});
        verdict.point = at_;
        verdict.message = docket_.text(
            circuit_.components[brake_].path,
            brakes_.components.size() > 1 ? " and the brakes beside it hold " : " holds ",
            docket_.told(brakes_.torque, Dimension::torque), "; the load asks for ",
            docket_.told(loads_.torque, Dimension::torque), " at its shaft");
        verdict.witness = docket_.witness(WitnessShape::set, steps());
    }

    void leave_open() {
        Verdict& verdict = docket_.conclude(ElementType::component, brake_, Outcome::inconclusive);
        verdict.missing = docket_.missing(missing_);
        verdict.message = docket_.text("whether ", circuit_.components[brake_].path,
                                       " holds the largest load at rest cannot be told");
        verdict.witness = docket_.witness(WitnessShape::set, steps());
    }

    const Circuit& circuit_;
    std::span<const hydraulics::PointFigures> points_;
    Docket& docket_;
    Index brake_;
    std::span<const Index> members_;
    Ratios ratios_;
    AtShaft brakes_;
    AtShaft loads_;
    std::string_view at_ = {};
    std::vector<std::string_view> missing_;
};

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<hydraulics::PointFigures> points;  // made where there is a brake
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& brake = circuit.components[c];
        if (brake.kind->part != Part::brake || graph.drives().of(c) == none ||
            !meant_to_hold(circuit, brake))
            continue;
        if (points.empty()) {
            points.emplace_back(circuit, none);
            for (Index i = 0; i < circuit.points.size(); ++i) points.emplace_back(circuit, i);
        }
        Judge(graph, points, docket, c).run();
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};
constexpr std::string_view follows[] = {"load-holding"};

}  // namespace

extern constinit const Rule brake_torque{
    .info = {.id = "brake-torque",
             .family = "Control and stopping",
             .question = "Do the brakes of each drive hold the largest load at rest?",
             .why = "A brake that is too weak lets a vehicle roll off on a grade and a load sink "
                    "as soon as the drive is switched off, with people below.",
             .decided = "Torque of all brakes of the drive that are meant to hold, against the "
                        "largest torque of loads that can drive, both at the brake's shaft: a "
                        "vehicle's weight on its grade, a torque, or the weight on a drum, as the "
                        "load or a duty point gives it. Losses of gearboxes are not counted.",
             .data = "torque of brake and load, mass, grade, wheel-radius, ratio, duty",
             .subject = "each brake meant to hold, on a drive whose load can drive it",
             .states = "at rest",
             .level = Level::error,
             .remedy = "Fit a stronger brake, or put it on a faster shaft.",
             .sources = sources,
             .follows = follows},
    .conclude = conclude};

}  // namespace loopwright
