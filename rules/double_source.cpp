// Pumps on different drives whose outlets hang together with no check between them.
#include <algorithm>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

struct Delivering {
    Index edge = none;
    Index outlet = none;  ///< node
    Index drive = none;
    StateSet states = 0;
};
using DeliveringPumps = boost::container::small_vector<Delivering, 8>;

bool counts(const Situation& s, Index node) {
    return s.region.is_reservoir[node] == 0 && !on_a_side(s, node);
}

/// Pumps outside every loop that turn, in file order.
DeliveringPumps delivering_pumps(const Situation& s) {
    DeliveringPumps pumps;
    for (const Index e : s.region.machines) {
        const Edge& edge = s.region.edges[e];
        if (edge.part != Part::pump || s.looped[e] != 0) continue;
        const PumpFlow flow = flow_of(s, e, s.direction());
        if (flow.outlet != none && counts(s, flow.outlet))
            pumps.push_back(
                {e, flow.outlet, s.graph.drives().of(edge.component), flow_states(edge, s.states)});
    }
    return pumps;
}

bool on_one_drive(const DeliveringPumps& pumps) {
    return std::all_of(pumps.begin(), pumps.end(),
                       [&](const Delivering& pump) { return pump.drive == pumps.front().drive; });
}

/// Open both ways, so that either pump can drive the other.
bool hangs_together(const Situation& s, const Standing& standing, Index e) {
    const Edge& edge = s.region.edges[e];
    return (open_way(edge) || edge.passage_class == PassageClass::metering ||
            edge.passage_class == PassageClass::divider) &&
           standing[e] == (open_forward | open_backward) && counts(s, edge.from) &&
           counts(s, edge.to);
}

/// For each pump an earlier one on another drive that its outlet hangs together with, or null.
std::vector<const Delivering*> partners_of(const Situation& s, const Standing& standing,
                                           const DeliveringPumps& pumps) {
    DisjointSets sets(s.region.node_count);
    for (Index e = 0; e < s.region.edges.size(); ++e)
        if (hangs_together(s, standing, e)) sets.join(s.region.edges[e].from, s.region.edges[e].to);
    s.graph.work += s.region.edges.size();
    // Of each set the first pump, and the first on another drive than that.
    std::vector<const Delivering*> first(s.region.node_count, nullptr);
    std::vector<const Delivering*> other(s.region.node_count, nullptr);
    std::vector<const Delivering*> partners;
    for (const Delivering& pump : pumps) {
        const Index set = sets.find(pump.outlet);
        if (first[set] == nullptr) first[set] = &pump;
        const bool same = first[set]->drive == pump.drive;
        partners.push_back(same ? other[set] : first[set]);
        if (!same && other[set] == nullptr) other[set] = &pump;
    }
    return partners;
}

std::string_view path_of(const Situation& s, const Delivering& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

/// From one pump to the other.
Witness between(const Situation& s, Docket& docket, const Delivering& one,
                const Delivering& other) {
    const auto search = s.searches.take(s.region.node_count);
    search->begin_at(one.outlet);
    search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return hangs_together(s, s.standing, arc.edge);
    });
    std::vector<FlowArc>& arcs = s.searches.path();
    search->add_path_to(s.region, other.outlet, arcs);
    const Index from = port_at(s, one.edge, one.outlet);
    const Index to = port_at(s, other.edge, other.outlet);
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back(
        {ElementType::component, s.region.edges[one.edge].component, none, from, "delivers"});
    add_walk(s.graph, s.region, arcs, {.from = from, .to = to}, steps);
    steps.push_back(
        {ElementType::component, s.region.edges[other.edge].component, to, none, "delivers too"});
    return docket.witness(WitnessShape::path, steps);
}

bool judge_alike(const Situation& s, Docket& /*docket*/) {
    const DeliveringPumps pumps = delivering_pumps(s);
    if (pumps.size() < 2 || on_one_drive(pumps)) return true;
    const auto partners = partners_of(s, *s.alike.wide, pumps);
    return std::all_of(partners.begin(), partners.end(),
                       [](const Delivering* partner) { return partner == nullptr; });
}

void judge(const Situation& s, Docket& docket) {
    const DeliveringPumps pumps = delivering_pumps(s);
    if (pumps.size() < 2 || on_one_drive(pumps)) return;
    const auto partners = partners_of(s, s.standing, pumps);
    for (std::size_t i = 0; i < pumps.size(); ++i) {
        if (partners[i] == nullptr) continue;
        const auto lines = s.graph.lines_of(port_at(s, pumps[i].edge, pumps[i].outlet));
        if (lines.empty()) continue;
        Verdict* verdict =
            docket.record(s, ElementType::line, lines.front(),
                          pumps[i].states & partners[i]->states, Outcome::fail, Level::warning);
        if (verdict == nullptr) continue;
        verdict->message = docket.text(path_of(s, *partners[i]), " and ", path_of(s, pumps[i]),
                                       ", turned by different drives, deliver into one line with "
                                       "no check between them");
        verdict->witness = between(s, docket, *partners[i], pumps[i]);
    }
}

/// That no two do it, where there are two.
void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    if (!docket.empty()) return;
    std::vector<std::uint8_t> looped(graph.circuit().components.size(), 0);
    for (const LoopInfo& loop : structure.loops)
        for (const Index pump : loop.pumps) looped[pump] = 1;
    Index outside = 0;
    for (Index c = 0; c < looped.size(); ++c)
        if (looped[c] == 0 && graph.part(c) == Part::pump && graph.turned(c)) ++outside;
    if (outside >= 2)
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "no two pumps on different drives deliver into one line without a check between them";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule double_source{
    .info = {.id = "double-source",
             .family = "Drawing integrity",
             .question = "Is there a check between pumps on different drives that deliver into one "
                         "line?",
             .why = "A pump whose drive stands is driven by the other one as a motor: it turns "
                    "backwards with whatever hangs on its shaft, and the line loses its oil.",
             .decided = "The outlets of pumps outside the loops that turn, on different drives, do "
                        "not hang together by ways that stand open both ways.",
             .data = "joins, shafts, valve positions",
             .subject = "each line at the outlet of the later of two such pumps; the circuit where "
                        "there is none",
             .states = "running",
             .level = Level::warning,
             .remedy = "Put a check valve at the outlet of each of the pumps.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike,
    .conclude = conclude};

}  // namespace loopwright
