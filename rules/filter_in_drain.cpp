// For each filter that a housing drains through: does its bypass open before the housing bears no
// more? The lowest limit of the housings before a filter counts; searches from the housings in the
// order of their limits, each going on where the last one ended, find it for all filters at once.
#include <algorithm>
#include <cmath>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/drain_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

struct Housing {
    Index component = none;
    Index port = none;
    std::optional<double> limit = {};  ///< Pa
};

/// The housings of a region: those whose limit is given first, the lowest before all.
std::vector<Housing> housings_of(const FlowGraph& graph, const Region& region) {
    std::vector<Housing> all;
    for (const Index c : region.components) {
        const Index port = case_port_of(graph, c);
        if (port == none) continue;
        const Circuit& circuit = graph.circuit();
        all.push_back({c, port, circuit.figure(circuit.components[c], "case-pressure")});
    }
    std::stable_sort(all.begin(), all.end(), [](const Housing& a, const Housing& b) {
        return a.limit.has_value() && (!b.limit.has_value() || *a.limit < *b.limit);
    });
    return all;
}

/// What the drains of one region reach.
class Drained {
  public:
    Drained(const FlowGraph& graph, const Region& region)
        : graph_(graph),
          region_(region),
          housings_(housings_of(graph, region)),
          housing_at_(region.node_count, none) {
        first_.clear(region.node_count);
        unknown_.clear(region.node_count);
        for (Index h = 0; h < housings_.size(); ++h) {
            const Index node = graph.node_of(housings_[h].port);
            if (region.is_reservoir[node] != 0) continue;
            const std::size_t before = first_.order.size();
            first_.begin_at(node);
            run(first_);
            for (std::size_t i = before; i < first_.order.size(); ++i)
                housing_at_[first_.order[i]] = h;
            if (!housings_[h].limit) unknown_.begin_at(node);
        }
        run(unknown_);
    }

    /// The housing with the lowest limit given that reaches a node, or one without a limit where
    /// none has one; null where none reaches it.
    const Housing* first_at(Index node) const {
        return housing_at_[node] == none ? nullptr : &housings_[housing_at_[node]];
    }
    const Search& search() const { return first_; }

    /// The housings without a limit that reach a node, in file order.
    std::vector<Index> unknown_at(Index node) const {
        std::vector<Index> found;
        if (!unknown_.reached(node)) return found;
        Search back;
        back.clear(region_.node_count);
        back.begin_at(node);
        graph_.work += back.run(region_, [&](Index /*node*/, const FlowArc& arc) {
            return region_.is_reservoir[arc.to] == 0 &&
                   drains_over(region_, turned_round(region_, arc));
        });
        for (const Housing& housing : housings_)
            if (!housing.limit && back.reached(graph_.node_of(housing.port)))
                found.push_back(housing.component);
        return found;
    }

  private:
    void run(Search& search) {
        graph_.work += search.run(region_, [&](Index /*node*/, const FlowArc& arc) {
            return region_.is_reservoir[arc.to] == 0 && drains_over(region_, arc);
        });
    }

    const FlowGraph& graph_;
    const Region& region_;
    std::vector<Housing> housings_;
    std::vector<Index> housing_at_;  // by node, into housings_
    Search first_;
    Search unknown_;
};

/// From the housing into the filter.
Witness way_into(const FlowGraph& graph, const Region& region, Docket& docket,
                 const Drained& drained, const Housing& housing, const Edge& element, Index end) {
    std::vector<FlowArc> arcs;
    drained.search().add_path_to(region, end, arcs);
    const Passage& passage = graph.circuit().passages[element.passage];
    const bool turned = end != element.from;
    const Index in = turned ? passage.to : passage.from;
    const Index out = turned ? passage.from : passage.to;
    std::vector<Step> steps;
    steps.push_back({ElementType::component, housing.component, none, housing.port, "housing"});
    add_walk(graph, region, arcs, {.from = housing.port, .to = in}, steps);
    steps.push_back({ElementType::component, element.component, in, out, "through the element"});
    return docket.witness(WitnessShape::path, steps);
}

/// The node by which a drain's oil gets into a filter: its inlet, or where the element lets oil
/// back, the other end; none where no drain leads to it.
Index drained_end(const Drained& drained, const Edge& element) {
    if (drained.first_at(element.from) != nullptr) return element.from;
    return element.both_ways && drained.first_at(element.to) != nullptr ? element.to : none;
}

void judge_filter(const FlowGraph& graph, const Region& region, Docket& docket,
                  const Drained& drained, const Edge& element) {
    const Index end = drained_end(drained, element);
    if (end == none) return;
    const Housing* const housing = drained.first_at(end);
    const Circuit& circuit = graph.circuit();
    const Component& filter = circuit.components[element.component];
    const std::optional<double> bypass = circuit.figure(filter, "bypass");
    const bool too_late = !bypass || (housing->limit && *bypass > *housing->limit);
    const std::vector<Index> unknown = too_late ? std::vector<Index>{} : drained.unknown_at(end);
    const Outcome outcome = too_late          ? Outcome::fail
                            : unknown.empty() ? Outcome::pass
                                              : Outcome::inconclusive;
    Verdict& verdict =
        docket.conclude(ElementType::component, element.component, outcome, Level::warning);
    verdict.witness = way_into(graph, region, docket, drained, *housing, element, end);
    if (!bypass) {
        verdict.message = docket.text("the filter ", filter.path, " in the drain of ",
                                      circuit.components[housing->component].path,
                                      " has no bypass: clogged, it shuts the drain");
        return;
    }
    const std::string_view opens = docket.told(*bypass, Dimension::pressure);
    if (housing->limit) {
        verdict.figures =
            docket.figures({.measured = {*bypass, Dimension::pressure},
                            .required = Measure{*housing->limit, Dimension::pressure},
                            .margin = Measure{*housing->limit - *bypass, Dimension::pressure}});
    }
    if (outcome == Outcome::inconclusive) {
        std::vector<std::string_view> missing;
        missing.reserve(unknown.size());
        for (const Index c : unknown)
            missing.push_back(docket.text(circuit.components[c].path, ".case-pressure"));
        verdict.missing = docket.missing(missing);
        verdict.message = docket.text("the bypass of the filter ", filter.path, " opens at ", opens,
                                      "; what a housing before it bears is not given");
        return;
    }
    verdict.message =
        docket.text("the bypass of the filter ", filter.path, " opens at ", opens,
                    too_late ? ", more than the " : ", no more than the ",
                    docket.told(*housing->limit, Dimension::pressure), " that the housing of ",
                    circuit.components[housing->component].path, " bears");
}

void judge_region(const FlowGraph& graph, const Region& region, Docket& docket) {
    const auto is_element = [](const Edge& edge) {
        return edge.part == Part::filter && edge.passage_class == PassageClass::element;
    };
    if (std::none_of(region.edges.begin(), region.edges.end(), is_element)) return;
    const Drained drained(graph, region);
    for (const Edge& edge : region.edges)
        if (is_element(edge)) judge_filter(graph, region, docket, drained, edge);
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    for (const Region& region : graph.regions()) judge_region(graph, region, docket);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule filter_in_drain{
    .info = {.id = "filter-in-drain",
             .family = "Filtration",
             .question = "Has every filter in a drain a bypass that opens below what the housings "
                         "before it bear?",
             .why = "A filter clogs. In a drain it then holds the housing's leakage back: the "
                    "shaft seal blows out and hot oil sprays, or the housing bursts.",
             .decided = "From all housings drained outside by every way that can stand open, but "
                        "leakage and machines: a filter that is reached gives an opening pressure "
                        "of its bypass not above the lowest case pressure of the housings that "
                        "reach it.",
             .data = "drain, joins, bypass, case-pressure",
             .subject = "each filter that a housing drains through",
             .states = "none",
             .level = Level::warning,
             .remedy = "Take the filter out of the drain, or give it a bypass that opens below the "
                       "pressure that the housings bear.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
