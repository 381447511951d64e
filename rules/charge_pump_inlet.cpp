// For each pump that should feed a loop: a way from a reservoir to its inlet, and one on which
// nothing can be shut or clog unseen. Two searches from the reservoirs serve all pumps.
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What a pump can draw through.
bool draws(const Edge& edge) {
    return hands_on(edge) || edge.passage_class == PassageClass::switched || edge.bypass;
}

/// What is the matter with drawing through it; empty where nothing is.
std::string_view weakness(const Circuit& circuit, const Edge& edge) {
    const Component& part = circuit.components[edge.component];
    if (edge.shift == Shift::hand)
        return edge.locked || circuit.is_yes(part, "switched") ? "" : "can be closed unseen";
    if (!is_mesh(circuit, edge) || has_bypass(circuit, edge)) return "";
    const std::string_view indicator = circuit.choice(part, "clogging-indicator");
    return indicator.empty() || indicator == "none" ? "can clog unseen" : "";
}

/// What the reservoirs hand on.
SearchPool::Lease drawn(const Situation& s, const Standing& standing, bool watched_only) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    for (const Index node : s.region.reservoirs) search->begin_at(node);
    s.graph.work += search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = s.region.edges[arc.edge];
        return draws(edge) && stands_open(standing, arc) &&
               (!watched_only || weakness(s.circuit(), edge).empty());
    });
    return search;
}

/// The states of the loops judged that the pump would feed.
StateSet states_of(const Situation& s, const ChargePump& pump,
                   std::span<const StateSet> loop_states) {
    StateSet states = 0;
    for (const Index loop : s.feeds.would_feed(pump))
        if (judged(s, loop)) states |= loop_states[loop];
    return states;
}

std::string_view path_of(const Situation& s, const ChargePump& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

/// The way from a reservoir; leaves its arcs in the pool's path.
std::vector<Step>& way_to(const Situation& s, const Search& search, const ChargePump& pump) {
    std::vector<FlowArc>& arcs = s.searches.path();
    search.add_path_to(s.region, pump.inlet, arcs);
    const Index inlet = port_at(s, pump.edge, pump.inlet);
    std::vector<Step>& steps = s.searches.steps();
    if (arcs.empty()) {
        add_walk(s.graph, s.region, arcs, {.from = inlet}, steps);
        std::reverse(steps.begin(), steps.end());
        for (Step& step : steps) std::swap(step.from, step.to);
    } else {
        add_walk(s.graph, s.region, arcs, {.to = inlet}, steps);
    }
    steps.push_back(
        {ElementType::component, s.region.edges[pump.edge].component, inlet, none, "draws"});
    for (const FlowArc& arc : arcs) {
        const std::string_view weak = weakness(s.circuit(), s.region.edges[arc.edge]);
        if (!weak.empty()) remark(s, arc, weak, steps);
    }
    return steps;
}

void pass(const Situation& s, Docket& docket, const ChargePump& pump, StateSet states,
          const Search& watched) {
    Verdict* verdict = docket.record(s, ElementType::component, s.region.edges[pump.edge].component,
                                     states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text(path_of(s, pump),
                                   " draws from a reservoir through nothing that can be shut or "
                                   "clog unseen");
    verdict->witness = docket.witness(WitnessShape::path, way_to(s, watched, pump));
}

void fail_weak(const Situation& s, Docket& docket, const ChargePump& pump, const Search& all,
               Verdict& verdict) {
    std::vector<Step>& steps = way_to(s, all, pump);
    verdict.witness = docket.witness(WitnessShape::path, steps);
    const auto weak = std::find_if(steps.begin(), steps.end(), [](const Step& step) {
        return step.text.find("unseen") != std::string_view::npos;
    });
    verdict.message =
        weak == steps.end()
            ? docket.text("what ", path_of(s, pump), " draws can be shut off, or clog, unseen")
            : docket.text(path_of(s, pump), " draws through ",
                          s.circuit().components[weak->index].path, ", which ", weak->text);
}

/// Where the way back from the inlet ends.
void fail_dry(const Situation& s, Docket& docket, const ChargePump& pump, Verdict& verdict) {
    const auto search = s.searches.take(s.region.node_count);
    search->begin_at(pump.inlet);
    search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
        return draws(s.region.edges[arc.edge]) && stands_open_back(s.standing, arc);
    });
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, s.region.edges[pump.edge].component, none,
                     port_at(s, pump.edge, pump.inlet), "draws"});
    add_frontier(s.graph, s.region, s.standing, *search, false, steps);
    verdict.witness = docket.witness(WitnessShape::frontier, steps);
    verdict.message =
        docket.text("no way leads from a reservoir to the inlet of ", path_of(s, pump));
}

/// However what pressure shifts stands.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!same_charge_pumps(s)) return false;
    if (s.feeds.pumps.empty()) return true;
    const auto watched = drawn(s, *s.alike.shut, true);
    if (!std::all_of(s.feeds.pumps.begin(), s.feeds.pumps.end(),
                     [&](const ChargePump& pump) { return watched->reached(pump.inlet); }))
        return false;
    for (const ChargePump& pump : s.feeds.pumps)
        pass(s, docket, pump, states_of(s, pump, s.alike.loop_states), *watched);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    if (s.feeds.pumps.empty()) return;
    const auto watched = drawn(s, s.standing, true);
    const auto all = drawn(s, s.standing, false);
    for (const ChargePump& pump : s.feeds.pumps) {
        const StateSet states = states_of(s, pump, s.loop_states);
        if (watched->reached(pump.inlet)) {
            pass(s, docket, pump, states, *watched);
            continue;
        }
        const bool weak = all->reached(pump.inlet);
        Verdict* verdict =
            docket.record(s, ElementType::component, s.region.edges[pump.edge].component, states,
                          Outcome::fail, weak ? Level::warning : Level::error);
        if (verdict == nullptr) continue;
        if (weak)
            fail_weak(s, docket, pump, *all, *verdict);
        else
            fail_dry(s, docket, pump, *verdict);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K29, K31, K34)",
     .place = "5.4.5.2, 5.4.5.3"}};

}  // namespace

extern constinit const Rule charge_pump_inlet{
    .info = {.id = "charge-pump-inlet",
             .family = "Charge supply",
             .question =
                 "Does the charge pump draw from a reservoir through nothing that can close "
                 "unseen or starve it?",
             .why = "A charge pump that draws nothing breaks up within minutes, and the loop runs "
                    "empty: the drive loses its braking torque, and the machine runs away.",
             .decided = "Against the oil from the inlet of each pump that should feed a loop, over "
                        "all that stands open, a reservoir is reached; also without hand valves "
                        "that are neither locked nor read by a switch, and without elements that "
                        "have neither a bypass nor a clogging indicator.",
             .data = "joins, valve positions, locked, switched, bypass, clogging-indicator",
             .subject = "each pump that should feed a loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Lead a suction line from the reservoir to the pump; lock its valve open or "
                       "give it a switch, give its filter an indicator or a bypass.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
