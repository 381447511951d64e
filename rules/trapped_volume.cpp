// For each line: does oil that expands in it get away, past valves that leak by nature but past
// none that shuts tightly?
#include <algorithm>

#include <loopwright/graph/search.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Whether expanding oil gets over the arc, whatever the state. Spools and machines leak; seats of
/// checks and relief valves let oil pass in their own sense; a hand valve does where it is secured
/// open.
bool lets_out(const Circuit& circuit, const Edge& edge, bool backward) {
    if (edge.shift == Shift::position) return true;
    switch (edge.passage_class) {
        case PassageClass::displacement:
        case PassageClass::leakage:
        case PassageClass::reduced:
            return true;
        case PassageClass::switched:
            if (edge.shift == Shift::hand) return locked_open(circuit, edge);
            return edge.shift != Shift::pilot_opens;
        case PassageClass::element:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::one_way:
        case PassageClass::pressure_opened:
            return !backward || edge.both_ways;
        case PassageClass::joined:
            break;
    }
    return false;
}

bool gives_room(const Circuit& circuit, Index port) {
    const Part part = circuit.components[circuit.ports[port].component].kind->part;
    return part == Part::reservoir || part == Part::accumulator;
}

/// Judges each joint by the first line on it.
class Judge {
  public:
    Judge(const FlowGraph& graph, Docket& docket)
        : graph_(graph), docket_(docket), settled_(graph.joint_count(), 0) {}

    void judge_region(const Region& region) {
        room_.clear(region.node_count);
        for (const Index node : region.reservoirs) room_.begin_at(node);
        if (graph_.has_accumulators())
            for (Index node = 0; node < region.node_count; ++node)
                if (graph_.has_accumulator(region.joints[node])) room_.begin_at(node);
        // Against the oil, from where there is room for it.
        graph_.work += room_.run(region, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& edge = region.edges[arc.edge];
            return lets_out(graph_.circuit(), edge, arc.backward == 0);
        });
        for (const auto& [line, port, node] : region.lines)
            if (!room_.reached(node)) shut_in(line);
    }

    /// A line that joins nothing oil passes through: instruments, a brake.
    void judge_apart(Index line) {
        const auto ports = graph_.circuit().ports_of(graph_.circuit().lines[line]);
        const bool in_a_region = std::any_of(ports.begin(), ports.end(), [&](Index port) {
            return graph_.region_of(graph_.circuit().ports[port].component) != none;
        });
        if (in_a_region) return;
        const auto all = graph_.ports_of(graph_.joint_of(ports.front()));
        if (std::none_of(all.begin(), all.end(),
                         [&](Index port) { return gives_room(graph_.circuit(), port); }) &&
            std::none_of(all.begin(), all.end(), [&](Index port) {
                return graph_.region_of(graph_.circuit().ports[port].component) != none;
            }))
            shut_in(line);
    }

  private:
    void shut_in(Index l) {
        const Circuit& circuit = graph_.circuit();
        const Line& line = circuit.lines[l];
        const Index joint = graph_.joint_of(circuit.ports_of(line).front());
        if (line.joins.size() < 2 || settled_[joint] != 0) return;
        settled_[joint] = 1;
        Verdict& verdict = docket_.conclude(ElementType::line, l, Outcome::fail, Level::warning);
        verdict.message = docket_.text("oil in ", line.path,
                                       " can be shut in, and nothing relieves it when it warms up");
        steps_.assign(1, {ElementType::line, l, none, none, "can be shut in"});
        for (const Index port : graph_.ports_of(joint))
            if (steps_.back().index != circuit.ports[port].component || steps_.size() == 1)
                steps_.push_back({ElementType::component, circuit.ports[port].component, port, none,
                                  "does not let it out"});
        verdict.witness = docket_.witness(WitnessShape::set, steps_);
    }

    const FlowGraph& graph_;
    Docket& docket_;
    Search room_;
    std::vector<std::uint8_t> settled_;  // by joint
    std::vector<Step> steps_;
};

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    Judge judge(graph, docket);
    for (const Region& region : graph.regions()) judge.judge_region(region);
    for (Index line = 0; line < graph.circuit().lines.size(); ++line) judge.judge_apart(line);
    if (docket.empty() && !graph.circuit().lines.empty())
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "oil that warms up gets away from every line";
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K05)", .place = "5.2.2"},
    {.work = "common practice, no source", .place = "spools and machines leak, seats do not"}};
constexpr std::string_view follows[] = {"dangling-line", "isolated-part", "case-drain-path"};

}  // namespace

extern constinit const Rule trapped_volume{
    .info = {.id = "trapped-volume",
             .family = "High-pressure protection",
             .question = "Does oil that warms up get away from every line that can be shut in?",
             .why = "Oil shut in between tight valves gains some ten bar for each degree that it "
                    "warms up: a line bursts in the sun, long after the machine was parked, or "
                    "sprays whoever opens it.",
             .decided = "Every hand valve and coupling that is not locked open is shut. Oil then "
                        "gets out over checks and relief valves in their own sense, and over "
                        "spools and machines, which leak; each line has such a way to a reservoir "
                        "or an accumulator.",
             .data = "joins, locked, position",
             .subject = "each line that oil can be shut in; the circuit where there is none",
             .states = "none",
             .level = Level::warning,
             .remedy = "Lead a small relief valve from there to the reservoir, or lock one of the "
                       "valves open.",
             .sources = sources,
             .follows = follows},
    .conclude = conclude};

}  // namespace loopwright
