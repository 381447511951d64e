// For each cylinder of unequal areas in a loop: has the difference in flow a way into each side
// that may be the low one, and a way out of it? And at each duty point, is the charge flow enough
// for it?
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/charged_loops.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Moves a rod.
bool has_rod(const Component& actuator) {
    const auto& attributes = actuator.kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == "rods"; });
}

bool equal_areas(const Circuit& circuit, const Component& cylinder) {
    return circuit.figure(cylinder, "rods") == 2.0 || circuit.figure(cylinder, "area-ratio") == 1.0;
}

/// What surplus oil may leave a side by: not a relief, which would have to be opened first.
bool leaves_by(const Edge& edge) {
    switch (edge.passage_class) {
        case PassageClass::switched:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::reduced:
        case PassageClass::element:
            return true;
        default:
            return false;
    }
}

/// Out of the side, not over the loop itself. `out`: the first node where the oil is out.
SearchPool::Lease out_of(const Situation& s, const JudgedSide& side, Index& out) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : side.nodes) search->begin_at(node);
    const auto on_own = [&](Index node) { return search->way[node] == Search::start; };
    out = none;
    s.graph.work += search->run(s.region, [&](Index node, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        if (out != none || s.loops.loop_of[arc.edge] == side.loop || !stands_open(s.standing, arc))
            return false;
        if (edge.passage_class == PassageClass::leakage ||
            edge.passage_class == PassageClass::displacement || (on_own(node) && !leaves_by(edge)))
            return false;
        const auto sides = s.loops.sides_at(arc.to);
        if (std::any_of(sides.begin(), sides.end(),
                        [&](Index at) { return s.loops.sides[at].loop == side.loop; }))
            return false;
        if (s.region.is_reservoir[arc.to] != 0 || s.feeds.line.reached(arc.to)) out = arc.to;
        return true;
    });
    return search;
}

bool is_low_side_of(const JudgedSide& side, Index loop) {
    return side.role == SideRole::main && side.loop == loop && side.may_be_low;
}

std::string_view path_of(const Situation& s, Index c) { return s.circuit().components[c].path; }

void pass(const Situation& s, Docket& docket, Index cylinder, Index loop) {
    Verdict* verdict =
        docket.record(s, ElementType::component, cylinder, s.loop_states[loop], Outcome::pass);
    docket.await_points(ElementType::component, cylinder);
    if (verdict == nullptr) return;
    verdict->message = docket.text("what ", path_of(s, cylinder),
                                   " takes more at one end than it gives at the other gets into "
                                   "the low side, and out of it");
    const auto side = std::find_if(s.sides.begin(), s.sides.end(), [&](const JudgedSide& one) {
        return is_low_side_of(one, loop);
    });
    if (side == s.sides.end()) return;
    Index out = none;
    const auto search = out_of(s, *side, out);
    std::vector<FlowArc>& way = s.searches.path();
    search->add_path_to(s.region, out, way);
    const Index start = way.empty() ? out : tail(s.region, way.front());
    std::vector<Step>& steps = s.searches.steps();
    add_walk(s.graph, s.region, way, {.from = port_on(s.graph, s.region, start, side->named_after)},
             steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
}

void fail(const Situation& s, Docket& docket, Index cylinder, Index loop, const JudgedSide& side,
          bool fed) {
    Verdict* verdict =
        docket.record(s, ElementType::component, cylinder, s.loop_states[loop], Outcome::fail);
    if (verdict == nullptr) return;
    const auto search = s.searches.take(s.region.node_count);
    std::vector<Step>& steps = s.searches.steps();
    if (fed) {
        Index out = none;
        const auto reached = out_of(s, side, out);
        add_frontier(s.graph, s.region, s.standing, *reached, true, steps);
    } else {
        for (const Index node : side.nodes) search->begin_at(node);
        search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& edge = s.region.edges[arc.edge];
            return (hands_on(edge) || edge.passage_class == PassageClass::switched) &&
                   stands_open_back(s.standing, arc) && s.region.is_reservoir[arc.to] == 0 &&
                   !on_a_side(s, arc.to);
        });
        add_frontier(s.graph, s.region, s.standing, *search, false, steps);
    }
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
    verdict->message = docket.text("what ", path_of(s, cylinder),
                                   " takes more at one end than it gives at the other ",
                                   fed ? "does not get out of" : "does not get into",
                                   " the low side at ", s.circuit().port_name(side.named_after));
}

/// A side that may be low and that the difference does not get into, or not out of.
struct Wrong {
    const JudgedSide* side = nullptr;  ///< null: there is none
    bool fed = false;
};

Wrong find_wrong(const Situation& s, Index loop) {
    for (const JudgedSide& side : s.sides) {
        if (!is_low_side_of(side, loop)) continue;
        if (first_reached(s.feeds.fed, side.nodes) == none) return {&side, false};
        Index out = none;
        out_of(s, side, out);
        if (out == none) return {&side, true};
    }
    return {};
}

/// Judges the unequal cylinders of one loop.
void judge_loop(const Situation& s, Docket& docket, Index loop) {
    std::optional<Wrong> wrong;
    for (const Index c : s.loops.actuators_of(s.loops.loops[loop])) {
        const Component& cylinder = s.circuit().components[c];
        if (!has_rod(cylinder)) continue;
        if (equal_areas(s.circuit(), cylinder)) {
            Verdict* verdict = docket.record(s, ElementType::component, c, s.loop_states[loop],
                                             Outcome::not_applicable);
            if (verdict != nullptr)
                verdict->message = docket.text("the areas of ", cylinder.path, " are equal");
            continue;
        }
        if (!wrong) wrong = find_wrong(s, loop);
        if (wrong->side == nullptr)
            pass(s, docket, c, loop);
        else
            fail(s, docket, c, loop, *wrong->side, wrong->fed);
    }
}

bool has_rods(const Situation& s, const Loop& loop) {
    const auto actuators = s.loops.actuators_of(loop);
    return std::any_of(actuators.begin(), actuators.end(),
                       [&](Index c) { return has_rod(s.circuit().components[c]); });
}

/// Which side is low matters, unless no loop has a cylinder.
bool judge_alike(const Situation& s, Docket& /*docket*/) {
    return std::none_of(s.loops.loops.begin(), s.loops.loops.end(),
                        [&](const Loop& loop) { return has_rods(s, loop); });
}

void judge(const Situation& s, Docket& docket) {
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop) && s.loop_states[loop] != 0 && has_rods(s, s.loops.loops[loop]))
            judge_loop(s, docket, loop);
}

/// What a cylinder takes more at one end than it gives at the other has to be charge oil.
void judge_at(const AtWork& at, Docket& docket, const ChargedLoop& charged, Index c) {
    const Component& cylinder = at.circuit().components[c];
    const hydraulics::MachinePoint* const moved = at.machine(c);
    if (moved == nullptr || !has_rod(cylinder) || equal_areas(at.circuit(), cylinder)) return;
    const double taken = -(moved->out_at_a + moved->out_at_b);
    if (taken <= 0.0) return;
    const double given = charge_given(*charged.balance);
    // A solved point's flows balance: where the charge oil does not suffice the cylinder takes all.
    const bool enough = taken < given * (1.0 - 1e-6);
    if (enough && at.is_torn()) return;
    Verdict* const verdict =
        docket.record_at(at.point.id, ElementType::component, c,
                         enough ? Outcome::pass : Outcome::fail, Level::error, taken - given);
    if (verdict == nullptr) return;
    verdict->figures = docket.figures({.measured = {given, Dimension::flow},
                                       .required = Measure{taken, Dimension::flow},
                                       .margin = Measure{given - taken, Dimension::flow}});
    verdict->message =
        docket.text(cylinder.path, " takes ", docket.told(taken, Dimension::flow),
                    " more at one end than it gives at the other; the charge pump gives ",
                    docket.told(given, Dimension::flow));
    verdict->witness = docket.witness(WitnessShape::set, steps_of(charged));
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const ChargedLoop& charged : known_charged_loops(at))
        for (const Index c : charged.loop->actuators) judge_at(at, docket, charged, c);
}

constexpr Citation sources[] = {
    {.work = "S. Ketelsen et al., Classification and review of pump-controlled differential "
             "cylinder drives, Energies 12 (2019) 1293",
     .place = "abstract"}};
constexpr std::string_view follows[] = {"charge-supply"};

}  // namespace

extern constinit const Rule unequal_cylinder{
    .info = {.id = "unequal-cylinder",
             .family = "Make-up",
             .question =
                 "A cylinder with unequal areas in a loop: has the difference in flow a way "
                 "in and a way out?",
             .why = "Going out it takes more oil than it gives back, going in less. Without a way "
                    "in the low side cavitates and the load drops; without a way out the pressure "
                    "rises on both sides until the cylinder creeps out or bursts.",
             .decided =
                 "Each main side that may be low is fed by a charge source, and from it, not "
                 "over the loop itself and by no relief or check first, oil gets to a "
                 "reservoir or into the charge line. At each solved duty point of motion the "
                 "charge pumps give more than the difference that the cylinder takes in.",
             .data = "rods, area-ratio, joins, valve positions; duty, bore, rod, displacements",
             .subject = "each cylinder in a loop",
             .states = "moving",
             .level = Level::error,
             .remedy = "Join the low side to the charge line by a flushing valve, or by a check "
                       "that the pressure of the other side opens.",
             .sources = sources,
             .follows = follows},
    .asked = moving_states,
    .judge = judge,
    .judge_alike = judge_alike,
    .judge_point = judge_point,
    .where_torn = true};

}  // namespace loopwright
