// For each reservoir: does the oil that can get from it to another one come back? Reservoirs that
// oil gets to and back from are one strong component of the graph of all ways.
#include <algorithm>
#include <utility>
#include <vector>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/parts.h>
#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// A way for oil between two joints, over a passage.
struct Hop {
    Index from = none;
    Index to = none;
    Index passage = none;
    bool backward = false;
};

/// Whether oil can take a passage in its own sense, and against it.
std::pair<bool, bool> senses_of(const FlowGraph& graph, const Passage& passage) {
    // What stands before a pump's inlet is drawn in and leaks nowhere.
    if (passage.passage == PassageClass::leakage &&
        graph.circuit().ports[passage.from].use == PortUse::suction)
        return {false, false};
    if (passage.passage != PassageClass::displacement) return {true, passage.both_ways};
    const Part part = graph.part(passage.component);
    if (part == Part::actuator) return {true, true};
    if (passage.both_ways) return {true, true};
    return {part == Part::device || graph.turned(passage.component), false};
}

/// All ways for oil, in any state. Reservoirs are passed.
class Ways {
  public:
    explicit Ways(const FlowGraph& graph)
        : graph_(graph),
          reservoir_(graph.joint_count(), 0),
          leaves_(graph.joint_count(), 0),
          onward_(graph.joint_count(), 0) {
        find_hops();
        find_parts();
        find_losses();
    }

    /// Whether oil gets from here to a reservoir from which it does not come back.
    bool loses(Index joint) const { return leaves_[part_[joint]] != 0; }

    /// The way there.
    std::vector<Hop> way_out_of(Index joint) const {
        std::vector<Index> by(graph_.joint_count(), none);  // hop that a joint was reached over
        std::vector<Index> queue{joint};
        Index found = none;
        for (std::size_t i = 0; i < queue.size() && found == none; ++i)
            for (Index h = first_[queue[i]]; h < first_[queue[i] + 1]; ++h) {
                const Index to = hops_[h].to;
                if (to == joint || by[to] != none) continue;
                by[to] = h;
                queue.push_back(to);
                if (found == none && reservoir_[to] != 0 && part_[to] != part_[joint]) found = to;
            }
        graph_.work += queue.size();
        std::vector<Hop> way;
        for (Index at = found; at != none && at != joint; at = hops_[by[at]].from)
            way.push_back(hops_[by[at]]);
        std::reverse(way.begin(), way.end());
        return way;
    }

  private:
    void find_hops() {
        const Circuit& circuit = graph_.circuit();
        for (const Component& component : circuit.components)
            if (component.kind->part == Part::reservoir && component.ports.size() > 0)
                reservoir_[graph_.joint_of(component.ports.begin)] = 1;
        for (Index p = 0; p < circuit.passages.size(); ++p) {
            const Passage& passage = circuit.passages[p];
            const Index from = graph_.joint_of(passage.from);
            const Index to = graph_.joint_of(passage.to);
            if (from == to) continue;
            const auto [ahead, back] = senses_of(graph_, passage);
            if (ahead) hops_.push_back({from, to, p, false});
            if (back) hops_.push_back({to, from, p, true});
        }
        std::stable_sort(hops_.begin(), hops_.end(),
                         [](const Hop& a, const Hop& b) { return a.from < b.from; });
        first_.assign(graph_.joint_count() + 1, 0);
        for (const Hop& hop : hops_) ++first_[hop.from + 1];
        for (Index joint = 0; joint < graph_.joint_count(); ++joint)
            first_[joint + 1] += first_[joint];
        graph_.work += graph_.joint_count() + hops_.size();
    }

    void find_parts() {
        std::vector<std::pair<Index, Index>> arcs;
        arcs.reserve(hops_.size());
        for (const Hop& hop : hops_) arcs.emplace_back(hop.from, hop.to);
        PartFinder finder;
        part_ = finder.strong(graph_.joint_count(), arcs);
    }

    /// The parts that oil leaves towards a reservoir: by a hop to another part, from where a
    /// reservoir is reached.
    void find_losses() {
        std::vector<Index> into;  // hops, by where they lead
        std::vector<Index> first(graph_.joint_count() + 1, 0);
        for (const Hop& hop : hops_) ++first[hop.to + 1];
        for (Index joint = 0; joint < graph_.joint_count(); ++joint)
            first[joint + 1] += first[joint];
        into.resize(hops_.size());
        std::vector<Index> cursor(first.begin(), first.end() - 1);
        for (Index h = 0; h < hops_.size(); ++h) into[cursor[hops_[h].to]++] = h;

        std::vector<Index> queue;
        for (Index joint = 0; joint < graph_.joint_count(); ++joint)
            if (reservoir_[joint] != 0) {
                onward_[joint] = 1;
                queue.push_back(joint);
            }
        for (std::size_t i = 0; i < queue.size(); ++i)
            for (Index k = first[queue[i]]; k < first[queue[i] + 1]; ++k) {
                const Hop& hop = hops_[into[k]];
                if (part_[hop.from] != part_[hop.to]) leaves_[part_[hop.from]] = 1;
                if (onward_[hop.from] != 0) continue;
                onward_[hop.from] = 1;
                queue.push_back(hop.from);
            }
        graph_.work += queue.size() + hops_.size();
    }

    const FlowGraph& graph_;
    std::vector<Hop> hops_;  // by where they begin
    std::vector<Index> first_;
    std::vector<std::uint8_t> reservoir_;  // by joint
    std::vector<Index> part_;              // by joint: its strong part
    std::vector<std::uint8_t> leaves_;     // by part
    std::vector<std::uint8_t> onward_;     // by joint: a reservoir is reached from it
};

bool has_line(const FlowGraph& graph, const Component& reservoir) {
    for (Index port = reservoir.ports.begin; port < reservoir.ports.end; ++port)
        if (!graph.lines_of(port).empty()) return true;
    return false;
}

/// Whether anything that oil can pass hangs two reservoirs together that no line joins.
bool reservoirs_hang_together(const FlowGraph& graph) {
    DisjointSets sets(graph.joint_count());
    for (const Passage& passage : graph.circuit().passages)
        sets.join(graph.joint_of(passage.from), graph.joint_of(passage.to));
    std::vector<Index> reservoir(graph.joint_count(), none);  // by set: the joint of the first
    for (const Component& component : graph.circuit().components) {
        if (component.kind->part != Part::reservoir || component.ports.size() == 0) continue;
        const Index own = graph.joint_of(component.ports.begin);
        Index& first = reservoir[sets.find(own)];
        if (first != none && first != own) return true;
        first = own;
    }
    return false;
}

/// From a reservoir to another one, along a way that is not empty.
Witness walk(const FlowGraph& graph, Docket& docket, const std::vector<Hop>& way) {
    const Circuit& circuit = graph.circuit();
    const Region& any = graph.regions().front();  // which a walk along lines alone does not look at
    std::vector<Step> steps;
    const auto entry = [&](const Hop& hop) {
        const Passage& passage = circuit.passages[hop.passage];
        return hop.backward ? passage.to : passage.from;
    };
    const auto exit = [&](const Hop& hop) {
        const Passage& passage = circuit.passages[hop.passage];
        return hop.backward ? passage.from : passage.to;
    };
    add_walk(graph, any, {}, {.from = entry(way.front())}, steps);
    std::reverse(steps.begin(), steps.end());
    for (Step& step : steps) std::swap(step.from, step.to);
    Index at = none;
    for (const Hop& hop : way) {
        if (at != none) add_walk(graph, any, {}, {.from = at, .to = entry(hop)}, steps);
        const Passage& passage = circuit.passages[hop.passage];
        Edge edge;  // for its words
        edge.passage_class = passage.passage;
        edge.shift = passage.shift;
        edge.part = graph.part(passage.component);
        steps.push_back({ElementType::component, passage.component, entry(hop), exit(hop),
                         passing_text(edge, hop.backward)});
        at = exit(hop);
    }
    add_walk(graph, any, {}, {.from = at}, steps);
    return docket.witness(WitnessShape::path, steps);
}

void pass(const FlowGraph& graph, Docket& docket, Index c) {
    Verdict& verdict = docket.conclude(ElementType::component, c, Outcome::pass);
    verdict.message =
        docket.text("the oil drawn from ", graph.circuit().components[c].path, " comes back to it");
    const Step step{ElementType::component, c, none, none, "reservoir"};
    verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
}

void judge(const FlowGraph& graph, Docket& docket, const Ways& ways, Index c) {
    const Circuit& circuit = graph.circuit();
    const Component& reservoir = circuit.components[c];
    const Index joint = graph.joint_of(reservoir.ports.begin);
    if (!ways.loses(joint)) {
        pass(graph, docket, c);
        return;
    }
    Verdict& verdict = docket.conclude(ElementType::component, c, Outcome::fail);
    verdict.witness = walk(graph, docket, ways.way_out_of(joint));
    const Component& other = circuit.components[verdict.witness.steps.back().index];
    verdict.message = docket.text("oil gets from ", reservoir.path, " to ", other.path,
                                  " and does not come back");
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<Index> asked;
    for (const Index c : graph.components_with(Part::reservoir))
        if (has_line(graph, circuit.components[c])) asked.push_back(c);
    if (asked.empty()) return;
    if (!reservoirs_hang_together(graph)) {
        for (const Index c : asked) pass(graph, docket, c);
        return;
    }
    const Ways ways(graph);
    for (const Index c : asked) judge(graph, docket, ways, c);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule reservoir_balance{
    .info = {.id = "reservoir-balance",
             .family = "Suction and reservoir",
             .question = "Does the oil drawn from each reservoir come back to it?",
             .why = "A reservoir that loses its oil to another runs empty while the other one "
                    "overflows: the pumps that draw from it run dry, and the drive no longer "
                    "brakes.",
             .decided = "Over all ways that oil can take in some state, reservoirs passed as well: "
                        "from every other reservoir that oil gets to, it gets back.",
             .data = "joins, sense of checks, shafts",
             .subject = "each reservoir with a line",
             .states = "none",
             .level = Level::error,
             .remedy = "Join the reservoirs below the oil level, or lead the return to the "
                       "reservoir that is drawn from.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
