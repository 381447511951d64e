// For each loop: does any pump that should feed it deliver into a line that is not open to a
// reservoir? What a charge line consists of holds no pressure, so its outlet tells.
#include <algorithm>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool meant_for(const Situation& s, const ChargePump& pump, Index loop) {
    const auto loops = s.feeds.would_feed(pump);
    return s.graph.turned(s.region.edges[pump.edge].component) &&
           std::find(loops.begin(), loops.end(), loop) != loops.end();
}

/// The first pump meant for the loop whose line is (not) vented; null if there is none.
const ChargePump* find_pump(const Situation& s, Index loop, bool vented) {
    const auto found =
        std::find_if(s.feeds.pumps.begin(), s.feeds.pumps.end(), [&](const ChargePump& pump) {
            return meant_for(s, pump, loop) && (s.feeds.vented[pump.outlet] != 0) == vented;
        });
    return found == s.feeds.pumps.end() ? nullptr : &*found;
}

std::string_view path_of(const Situation& s, const ChargePump& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

/// The pump, alone or with the way by which its oil gets to a reservoir.
Witness out_of(const Situation& s, Docket& docket, const ChargePump& pump, bool to_tank) {
    const Edge& edge = s.region.edges[pump.edge];
    const Passage& passage = s.circuit().passages[edge.passage];
    const Index port = pump.outlet == edge.to ? passage.to : passage.from;
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, edge.component, none, port, "delivers"});
    if (to_tank) {
        std::vector<FlowArc>& arcs = s.searches.path();
        s.feeds.to_tank.add_way_from(s.region, pump.outlet, arcs);
        add_walk(s.graph, s.region, arcs, {.from = port}, steps);
    }
    return docket.witness(WitnessShape::path, steps);
}

void pass(const Situation& s, Docket& docket, Index loop, StateSet states, const ChargePump& pump) {
    Verdict* verdict =
        docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message =
        docket.text("the line that ", path_of(s, pump), " delivers into holds its pressure");
    verdict->witness = out_of(s, docket, pump, false);
}

bool asked(const Situation& s, Index loop) {
    return s.judges(s.loops.loops[loop].first_pump) && !s.loops.loops[loop].shorted;
}

/// A pump that feeds the loop does so wherever the feeds are the same.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!s.alike.same_feeds) return false;
    const auto feeding = [&](Index loop) {
        return std::find_if(s.feeds.pumps.begin(), s.feeds.pumps.end(),
                            [&](const ChargePump& pump) {
                                const auto fed = s.feeds.feeds(pump);
                                return std::find(fed.begin(), fed.end(), loop) != fed.end();
                            });
    };
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (asked(s, loop) && feeding(loop) == s.feeds.pumps.end()) return false;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (asked(s, loop)) pass(s, docket, loop, s.alike.loop_states[loop], *feeding(loop));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!asked(s, loop)) continue;
        if (const ChargePump* sound = find_pump(s, loop, false); sound != nullptr) {
            pass(s, docket, loop, s.loop_states[loop], *sound);
            continue;
        }
        const ChargePump* vented = find_pump(s, loop, true);
        Verdict* verdict =
            docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, s.loop_states[loop],
                          vented != nullptr ? Outcome::fail : Outcome::not_applicable);
        if (verdict == nullptr) continue;
        if (vented != nullptr) {
            verdict->message = docket.text("the line that ", path_of(s, *vented),
                                           " delivers into is open to a reservoir");
            verdict->witness = out_of(s, docket, *vented, true);
        } else {
            verdict->message = "no pump that turns delivers towards the loop";
        }
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule charge_vented{
    .info = {.id = "charge-vented",
             .family = "Charge supply",
             .question = "Does the charge line hold its pressure, open to no reservoir?",
             .why = "A charge line that is open to the reservoir feeds nothing: the low side runs "
                    "empty, pump and motor cavitate, and brakes and controls lose their supply.",
             .decided = "Pumps outside the loops whose oil would get into the loop if nothing "
                        "were open to a reservoir. From the outlet of at least one of them no way "
                        "leads to a reservoir through nothing that holds pressure.",
             .data = "joins, shafts, valve positions, opening-pressure of checks",
             .subject = "each loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Shut the way to the reservoir, or put a relief valve in it.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
