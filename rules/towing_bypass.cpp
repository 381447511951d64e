// For each loop that drives a vehicle: somebody can let its motors turn with the prime mover
// stopped, and release what brakes them.
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/pressure_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

bool drives_vehicle(const Situation& s, const Loop& loop) {
    const auto actuators = s.loops.actuators_of(loop);
    return std::any_of(actuators.begin(), actuators.end(),
                       [&](Index c) { return s.graph.drives().at(c).vehicle; });
}

/// The nodes of the loop's main side of that letter.
std::span<const Index> main_side(const Situation& s, const Loop& loop, High letter) {
    for (const LoopSide& side : s.loops.sides_of(loop))
        if (side.role == SideRole::main && side.letter == letter) return s.loops.nodes_of(side);
    return {};
}

bool gets_across(const Situation& s, std::span<const Index> from, std::span<const Index> to) {
    const auto search = s.searches.take(s.region.node_count);
    for (const Index node : from) search->begin_at(node);
    spread(s, s.standing, *search);
    return first_reached(*search, to) != none;
}

/// Whether oil gets from each main side to the other past the pump.
bool sides_joined(const Situation& s, const Loop& loop) {
    if (loop.shorted) return true;
    const auto a = main_side(s, loop, High::a);
    const auto b = main_side(s, loop, High::b);
    return gets_across(s, a, b) && gets_across(s, b, a);
}

bool on_shaft_with_clutch(const Circuit& circuit, Index shaft) {
    if (shaft == none) return false;
    const auto members = circuit.components_of(circuit.shafts[shaft]);
    return std::any_of(members.begin(), members.end(),
                       [&](Index c) { return circuit.components[c].kind->part == Part::clutch; });
}

/// Whether every motor of the loop can be parted from what it drives.
bool behind_clutches(const Situation& s, const Loop& loop) {
    const auto actuators = s.loops.actuators_of(loop);
    return std::all_of(actuators.begin(), actuators.end(), [&](Index c) {
        return on_shaft_with_clutch(s.circuit(), s.circuit().components[c].shaft);
    });
}

bool stands_in(const Region& region, Index port) {
    return std::find(region.guests.begin(), region.guests.end(), port) != region.guests.end();
}

/// In a region apart from the loop's no position is set: all ways that operated valves have are
/// taken for open.
bool pumped_apart(const Situation& s, const Region& region, Index port) {
    const auto search = s.searches.take(region.node_count);
    for (const Edge& edge : region.edges)
        if (edge.part == Part::hand_pump && edge.passage_class == PassageClass::displacement)
            search->begin_at(edge.to);
    s.graph.work += search->run(region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& edge = region.edges[arc.edge];
        return lets_oil_on(edge) && (arc.backward == 0 || edge.both_ways) &&
               region.is_reservoir[arc.to] == 0;
    });
    return search->reached(s.graph.node_of(port));
}

/// Whether a hand pump's oil gets to the brake.
bool hand_pump_reaches(const Situation& s, const Search& pumped, Index port) {
    if (stands_in(s.region, port)) return pumped.reached(s.graph.node_of(port));
    const auto& regions = s.graph.regions();
    return std::any_of(regions.begin(), regions.end(), [&](const Region& region) {
        return stands_in(region, port) && pumped_apart(s, region, port);
    });
}

/// The first brake at the loop's motors that a spring applies and nobody can release; else none.
Index stuck_brake(const Situation& s, const Loop& loop, const Search& pumped) {
    for (const Index actuator : s.loops.actuators_of(loop)) {
        const Index drive = s.graph.drives().of(actuator);
        if (drive == none) continue;
        for (const Index c : s.graph.drives().members(drive)) {
            const Component& brake = s.circuit().components[c];
            if (brake.kind->part == Part::brake &&
                s.circuit().choice(brake, "applied") == "spring" &&
                !s.circuit().is_yes(brake, "released-by-hand") &&
                !hand_pump_reaches(s, pumped, brake.ports.begin))
                return c;
        }
    }
    return none;
}

/// What is to be worked for towing: ways opened by hand and clutches; where there is nothing, the
/// loop's machines.
Witness what_there_is(const Situation& s, Docket& docket, const Loop& loop, Index brake) {
    std::vector<Step>& steps = s.searches.steps();
    for (const Index e : s.loops.edges_of(loop)) {
        const Edge& edge = s.region.edges[e];
        if (edge.for_towing)
            steps.push_back({ElementType::component, edge.component, none, none, "opened"});
    }
    for (const Index c : s.loops.actuators_of(loop))
        steps.push_back({ElementType::component, c, none, none, "turned by the wheels"});
    if (brake != none)
        steps.push_back({ElementType::component, brake, none, none, "stays applied"});
    return docket.witness(WitnessShape::set, steps);
}

SearchPool::Lease pumped_by_hand(const Situation& s) {
    SearchPool::Lease search = s.searches.take(s.region.node_count);
    begin_at_hand_pumps(s, *search);
    spread(s, s.standing, *search);
    return search;
}

void judge(const Situation& s, Docket& docket) {
    std::optional<SearchPool::Lease> pumped;
    for (Index i = 0; i < s.loops.loops.size(); ++i) {
        const Loop& loop = s.loops.loops[i];
        if (!s.judges(loop.first_pump) || !drives_vehicle(s, loop)) continue;
        const bool way = sides_joined(s, loop) || behind_clutches(s, loop);
        if (!pumped) pumped.emplace(pumped_by_hand(s));
        const Index brake = stuck_brake(s, loop, **pumped);
        const bool sound = way && brake == none;
        Verdict* verdict = docket.record(s, ElementType::loop, loop.first_pump, s.loop_states[i],
                                         sound ? Outcome::pass : Outcome::fail, Level::warning);
        if (verdict == nullptr) continue;
        if (sound)
            verdict->message =
                "the machine can be towed: its motors turn freely, and its brakes "
                "can be released";
        else if (!way)
            verdict->message =
                "the machine cannot be towed: no way from side to side past the "
                "pump, and no clutch at every motor";
        else
            verdict->message =
                docket.text("the machine cannot be towed: nothing releases ",
                            s.circuit().components[brake].path, " with the prime mover stopped");
        verdict->witness = what_there_is(s, docket, loop, brake);
    }
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule towing_bypass{
    .info = {.id = "towing-bypass",
             .family = "Control and stopping",
             .question = "Can a vehicle be moved with its prime mover stopped?",
             .why = "A vehicle that stands with locked wheels where it broke down blocks road or "
                    "crossing; dragged, it destroys pump and motors.",
             .decided = "With what is meant for towing opened, oil gets from each main side to the "
                        "other past the pump, or a clutch stands at every motor. Each brake there "
                        "that a spring applies can be released by hand or by a hand pump.",
             .data = "vehicle, released-by-hand, joins, shafts, bypass valves, hand pumps",
             .subject = "each loop that drives a vehicle",
             .states = "towing",
             .level = Level::warning,
             .remedy = "Fit a bypass valve between the sides; choose a brake that screws release, "
                       "or lead a hand pump to it.",
             .sources = sources},
    .asked = bit(State::towing),
    .judge = judge};

}  // namespace loopwright
