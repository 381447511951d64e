// For each loop: does any pump or store that should feed it give into a line that is not open to a
// vented reservoir? What a charge line consists of holds no pressure, so its outlet tells.
#include <algorithm>
#include <vector>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What may charge a loop: a pump or a store, at its outlet.
struct Giver {
    Index component = none;
    Index port = none;
    Index node = none;
    bool is_pump = false;
};

bool meant_for(std::span<const Index> loops, Index loop) {
    return std::find(loops.begin(), loops.end(), loop) != loops.end();
}

Giver giver(const Situation& s, const ChargePump& pump) {
    const Edge& edge = s.region.edges[pump.edge];
    const Passage& passage = s.circuit().passages[edge.passage];
    return {.component = edge.component,
            .port = pump.outlet == edge.to ? passage.to : passage.from,
            .node = pump.outlet,
            .is_pump = true};
}

void add_stores(const Situation& s, Index loop, bool finite, std::vector<Giver>& givers) {
    for (const ChargeStore& store : s.feeds.stores) {
        if (store.finite != finite || !meant_for(s.feeds.would_feed(store), loop)) continue;
        const auto ports = s.graph.ports_of(s.region.joints[store.node]);
        const Index port = *std::find_if(ports.begin(), ports.end(), [&](Index one) {
            return s.circuit().ports[one].component == store.component;
        });
        givers.push_back({.component = store.component, .port = port, .node = store.node});
    }
}

/// Pumps that turn and reservoirs under pressure; accumulators where there is nothing else.
std::vector<Giver> givers_for(const Situation& s, Index loop) {
    std::vector<Giver> givers;
    for (const ChargePump& pump : s.feeds.pumps)
        if (s.graph.turned(s.region.edges[pump.edge].component) &&
            meant_for(s.feeds.would_feed(pump), loop))
            givers.push_back(giver(s, pump));
    add_stores(s, loop, false, givers);
    if (givers.empty()) add_stores(s, loop, true, givers);
    return givers;
}

/// The line of it, in words.
std::string_view line_of(const Situation& s, Docket& docket, const Giver& giver) {
    const std::string_view path = s.circuit().components[giver.component].path;
    return giver.is_pump ? docket.text("the line that ", path, " delivers into")
                         : docket.text("the line at ", path);
}

/// The giver, alone or with the way by which its oil gets to a reservoir.
Witness out_of(const Situation& s, Docket& docket, const Giver& giver, bool to_tank) {
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back({ElementType::component, giver.component, none, giver.port,
                     giver.is_pump ? "delivers" : "charge source"});
    if (to_tank) {
        std::vector<FlowArc>& arcs = s.searches.path();
        s.feeds.to_tank.add_way_from(s.region, giver.node, arcs);
        add_walk(s.graph, s.region, arcs, {.from = giver.port}, steps);
    }
    return docket.witness(WitnessShape::path, steps);
}

void pass(const Situation& s, Docket& docket, Index loop, StateSet states, const Giver& giver) {
    Verdict* verdict =
        docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text(line_of(s, docket, giver), " holds its pressure");
    verdict->witness = out_of(s, docket, giver, false);
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
        if (asked(s, loop))
            pass(s, docket, loop, s.alike.loop_states[loop], giver(s, *feeding(loop)));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!asked(s, loop)) continue;
        const std::vector<Giver> givers = givers_for(s, loop);
        const auto sound = std::find_if(givers.begin(), givers.end(), [&](const Giver& one) {
            return s.feeds.pressureless()[one.node] == 0;
        });
        if (sound != givers.end()) {
            pass(s, docket, loop, s.loop_states[loop], *sound);
            continue;
        }
        Verdict* verdict =
            docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, s.loop_states[loop],
                          givers.empty() ? Outcome::not_applicable : Outcome::fail);
        if (verdict == nullptr) continue;
        if (givers.empty()) {
            verdict->message = "no pump that turns delivers towards the loop";
            continue;
        }
        verdict->message =
            docket.text(line_of(s, docket, givers.front()), " is open to a reservoir");
        verdict->witness = out_of(s, docket, givers.front(), true);
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
             .decided = "Pumps outside the loops and reservoirs under pressure (else accumulators) "
                        "whose oil would get into the loop if nothing were open to a reservoir. "
                        "From the outlet of at least one of them no way leads to a vented "
                        "reservoir through nothing that holds pressure.",
             .data = "joins, shafts, valve positions, opening-pressure of checks, pressure of a "
                     "sealed reservoir",
             .subject = "each loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Shut the way to the reservoir, or put a relief valve in it.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
