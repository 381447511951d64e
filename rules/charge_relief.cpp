// For each loop: is every line that a charge source delivers into limited by a relief valve that
// cannot be shut off, with a free outlet? Two searches against the oil, from the reservoirs to the
// reliefs and from those to the sources, serve all sources.
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Nothing on it can close or clog.
bool free_way(const Situation& s, const Edge& edge) {
    return sure(edge) && (!is_mesh(s.circuit(), edge) || has_bypass(s.circuit(), edge));
}

/// What a relief's oil goes on by.
bool lets_out(const Edge& edge) {
    switch (edge.passage_class) {
        case PassageClass::one_way:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::pressure_opened:
            return true;
        default:
            return sure(edge);
    }
}

/// Against the oil: from where a relief's outlet is free, and which nodes such a relief limits.
class Limits {
  public:
    Limits(const Situation& s, const Standing& standing)
        : s_(s),
          standing_(standing),
          outlet_(s.searches.take(s.region.node_count)),
          limited_(s.searches.take(s.region.node_count)) {
        for (const Index node : s.region.reservoirs) outlet_->begin_at(node);
        s.graph.work += outlet_->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
            return lets_out(s.region.edges[arc.edge]) && stands_open_back(standing, arc) &&
                   !on_a_side(s, arc.to);
        });
        for (const Edge& edge : s.region.edges)
            if (limits(edge)) limited_->begin_at(edge.from);
        s.graph.work += s.region.edges.size();
        s.graph.work += limited_->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
            return free_way(s, s.region.edges[arc.edge]) && stands_open_back(standing, arc) &&
                   counts(arc.to);
        });
    }

    bool limited(Index outlet) const { return limited_->reached(outlet); }

    /// From a limited outlet over the relief to a reservoir; gives the relief's edge.
    Index add_way(Index outlet, std::vector<FlowArc>& way) const {
        limited_->add_way_from(s_.region, outlet, way);
        const Index inlet = way.empty() ? outlet : way.back().to;
        const auto arcs = s_.region.arcs_of(inlet);
        const auto relief = std::find_if(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
            return arc.backward == 0 && limits(s_.region.edges[arc.edge]);
        });
        way.push_back(*relief);
        outlet_->add_way_from(s_.region, relief->to, way);
        return relief->edge;
    }

  private:
    bool counts(Index node) const {
        return s_.region.is_reservoir[node] == 0 && !on_a_side(s_, node);
    }

    /// A relief with a free outlet, on a node that counts.
    bool limits(const Edge& edge) const {
        if (!is_relief(edge) || edge.from == edge.to) return false;
        const auto e = static_cast<std::size_t>(&edge - s_.region.edges.data());
        return (standing_[e] & open_forward) != 0 && counts(edge.from) && outlet_->reached(edge.to);
    }

    const Situation& s_;
    const Standing& standing_;
    SearchPool::Lease outlet_;
    SearchPool::Lease limited_;
};

bool feeds(const Situation& s, const ChargePump& pump, Index loop) {
    const auto loops = s.feeds.feeds(pump);
    return std::find(loops.begin(), loops.end(), loop) != loops.end();
}

/// The first source that feeds the loop, of those that are not limited if there are such.
const ChargePump* deciding(const Situation& s, Index loop, const Limits& limits) {
    const ChargePump* first = nullptr;
    for (const ChargePump& pump : s.feeds.pumps) {
        if (!feeds(s, pump, loop)) continue;
        if (!limits.limited(pump.outlet)) return &pump;
        if (first == nullptr) first = &pump;
    }
    return first;
}

std::string_view path_of(const Situation& s, const ChargePump& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

/// A list of steps that begins with the pump.
std::vector<Step>& steps_from(const Situation& s, const ChargePump& pump) {
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, s.region.edges[pump.edge].component, none,
                     port_at(s, pump.edge, pump.outlet), "charge source"});
    return steps;
}

void pass(const Situation& s, Docket& docket, Index loop, StateSet states, const ChargePump& pump,
          const Limits& limits) {
    Verdict* verdict =
        docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    std::vector<FlowArc>& way = s.searches.path();
    const Index relief = limits.add_way(pump.outlet, way);
    std::vector<Step>& steps = steps_from(s, pump);
    add_walk(s.graph, s.region, way, {.from = port_at(s, pump.edge, pump.outlet)}, steps);
    verdict->witness = docket.witness(WitnessShape::path, steps);
    verdict->message = docket.text(s.circuit().components[s.region.edges[relief].component].path,
                                   " limits the line that ", path_of(s, pump), " delivers into");
}

/// What the oil meets before any relief that counts.
void fail(const Situation& s, Docket& docket, Index loop, const ChargePump& pump) {
    Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                     s.loop_states[loop], Outcome::fail);
    if (verdict == nullptr) return;
    const auto search = s.searches.take(s.region.node_count);
    search->begin_at(pump.outlet);
    const bool on_side = on_a_side(s, pump.outlet);
    if (!on_side)
        search->run(s.region, [&](Index /*node*/, const FlowArc& arc) {
            return free_way(s, s.region.edges[arc.edge]) && stands_open(s.standing, arc) &&
                   s.region.is_reservoir[arc.to] == 0 && !on_a_side(s, arc.to);
        });
    std::vector<Step>& steps = steps_from(s, pump);
    add_frontier(s.graph, s.region, s.standing, *search, true, steps);
    for (const Index node : search->order)
        for (const FlowArc& arc : s.region.arcs_of(node)) {
            const Edge& edge = s.region.edges[arc.edge];
            if (is_relief(edge) && arc.backward == 0)
                remark(s, arc, "a relief valve without a free outlet", steps);
            else if (is_mesh(s.circuit(), edge) && !has_bypass(s.circuit(), edge) &&
                     stands_open(s.standing, arc))
                remark(s, arc, "clogs, and has no bypass", steps);
        }
    verdict->witness = docket.witness(WitnessShape::frontier, steps);
    verdict->message = on_side
                           ? docket.text(path_of(s, pump),
                                         " delivers straight into a side of a loop, so "
                                         "there is no charge line to limit")
                           : docket.text(
                                 "no relief valve that is always open to it, with a free outlet, "
                                 "limits the line that ",
                                 path_of(s, pump), " delivers into");
}

/// What limits the lines while all that pressure shifts is shut does so always.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    if (s.loops.loops.empty()) return true;
    const Limits limits(s, *s.alike.shut);
    const auto sound = [&](Index loop) {
        const ChargePump* const pump = deciding(s, loop, limits);
        return pump != nullptr && limits.limited(pump->outlet);
    };
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop) && !sound(loop)) return false;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop))
            pass(s, docket, loop, s.alike.loop_states[loop], *deciding(s, loop, limits), limits);
    return true;
}

void judge(const Situation& s, Docket& docket) {
    if (s.loops.loops.empty()) return;
    const Limits limits(s, s.standing);
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!judged(s, loop)) continue;
        const ChargePump* const pump = deciding(s, loop, limits);
        if (pump == nullptr) {
            Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                             s.loop_states[loop], Outcome::not_applicable);
            if (verdict != nullptr) verdict->message = "nothing feeds the loop";
        } else if (limits.limited(pump->outlet)) {
            pass(s, docket, loop, s.loop_states[loop], *pump, limits);
        } else {
            fail(s, docket, loop, *pump);
        }
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01, K02)", .place = "5.2.2"},
    {.work = "Machinery Lubrication, March-April 2016, article on hydrostatic drives",
     .place = "p. 22 (charge pump and its relief)"}};
constexpr std::string_view follows[] = {"charge-vented"};

}  // namespace

extern constinit const Rule charge_relief{
    .info = {.id = "charge-relief",
             .family = "Charge supply",
             .question = "Is the charge line limited, in neutral too, by a relief that cannot be "
                         "isolated, with a free outlet, and no filter without bypass before it?",
             .why =
                 "A charge pump delivers whether the loop takes its oil or not. Without a relief "
                 "that is always there the filter, a hose or the pump itself bursts and sprays "
                 "hot oil.",
             .decided = "From the outlet of each pump that feeds the loop, past nothing that can "
                        "close and no filter without a bypass, the inlet of a relief valve is "
                        "reached, from whose outlet oil gets to a reservoir past no side of a "
                        "loop and nothing that can close.",
             .data = "joins, valve positions, locked, bypass",
             .subject = "each loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Put a relief valve at the charge pump's outlet, before the filter and any "
                       "valve, and lead its outlet to the reservoir or a drained housing.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
