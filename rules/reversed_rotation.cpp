// For each one-way pump: is it turned in the sense that it is made for? Words of rotation are seen
// looking at each one's own shaft end, and the ends of prime mover and pump face each other.
#include <algorithm>

#include <boost/container/small_vector.hpp>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// How a shaft turns against the prime mover's.
struct Reached {
    Index shaft = none;
    bool turned_round = false;
    Index unknown = none;  ///< gearbox on the way whose sense is not given
};
using Shafts = boost::container::small_vector<Reached, 8>;

/// Over a gearbox or clutch to its other shaft.
Reached behind(const Circuit& circuit, Index c, const Reached& before) {
    const Component& link = circuit.components[c];
    Reached next = before;
    next.shaft = link.shaft == before.shaft ? link.far_shaft : link.shaft;
    if (link.kind->part != Part::gearbox) return next;
    const std::string_view sense = circuit.choice(link, "sense");
    if (sense == "opposite") next.turned_round = !next.turned_round;
    if (sense.empty() && next.unknown == none) next.unknown = c;
    return next;
}

/// All shafts that a prime mover turns, nearest first.
Shafts shafts_turned_by(const Circuit& circuit, Index mover) {
    Shafts shafts{{.shaft = circuit.components[mover].shaft}};
    for (std::size_t i = 0; i < shafts.size(); ++i) {
        const Reached here = shafts[i];
        for (const Index c : circuit.components_of(circuit.shafts[here.shaft])) {
            const Component& link = circuit.components[c];
            if (link.shaft == none || link.far_shaft == none || !passes_torque(circuit, link))
                continue;
            const Reached next = behind(circuit, c, here);
            if (std::none_of(shafts.begin(), shafts.end(),
                             [&](const Reached& one) { return one.shaft == next.shaft; }))
                shafts.push_back(next);
        }
    }
    return shafts;
}

bool asked(const FlowGraph& graph, Index c) {
    const Circuit& circuit = graph.circuit();
    const Component& pump = circuit.components[c];
    return graph.part(c) == Part::pump && circuit.figure(pump, "flow-directions") == 1.0;
}

/// `worst`: what became of each component; with several prime movers the worst of them is told.
void judge_pump(const Circuit& circuit, Index mover, const Reached& shaft, Index c,
                std::vector<Outcome>& worst, Docket& docket) {
    const Component& driving = circuit.components[mover];
    const Component& pump = circuit.components[c];
    const bool reverses = circuit.is_yes(driving, "reversing");
    if (!reverses &&
        (circuit.choice(driving, "rotation").empty() || circuit.choice(pump, "rotation").empty()))
        return;
    const bool same_word = circuit.choice(driving, "rotation") == circuit.choice(pump, "rotation");
    const Outcome outcome = reverses                          ? Outcome::fail
                            : shaft.unknown != none           ? Outcome::inconclusive
                            : same_word == shaft.turned_round ? Outcome::pass
                                                              : Outcome::fail;
    if (outcome <= worst[c]) return;
    worst[c] = outcome;
    Verdict& verdict = docket.conclude(ElementType::component, c, outcome);
    verdict.missing = {};
    std::vector<Step> steps;
    steps.push_back({.type = ElementType::component, .index = mover, .text = "turns"});
    if (shaft.unknown != none)
        steps.push_back(
            {.type = ElementType::component, .index = shaft.unknown, .text = "sense not given"});
    steps.push_back({.type = ElementType::component, .index = c, .text = "turned"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
    if (reverses) {
        verdict.message =
            docket.text(driving.path, " reverses, and turns ", pump.path, " backwards then");
    } else if (outcome == Outcome::inconclusive) {
        const std::string_view datum =
            docket.text(circuit.components[shaft.unknown].path, ".sense");
        verdict.missing = docket.missing({&datum, 1});
        verdict.message = docket.text("whether ", circuit.components[shaft.unknown].path,
                                      " turns the sense round is not given");
    } else {
        verdict.message =
            docket.text(driving.path, " turns ", circuit.choice(driving, "rotation"), " and ",
                        pump.path, " is made to turn ", circuit.choice(pump, "rotation"),
                        shaft.turned_round ? ", behind gears that turn the sense round: " : ": ",
                        outcome == Outcome::pass ? "as it is turned" : "it is turned backwards");
    }
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<Outcome> worst(circuit.components.size(), Outcome::not_applicable);
    for (const Index mover : graph.components_with(Part::prime_mover)) {
        if (circuit.components[mover].shaft == none) continue;
        for (const Reached& shaft : shafts_turned_by(circuit, mover))
            for (const Index c : circuit.components_of(circuit.shafts[shaft.shaft]))
                if (asked(graph, c)) judge_pump(circuit, mover, shaft, c, worst, docket);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K21)", .place = "5.4.1"}};

}  // namespace

extern constinit const Rule reversed_rotation{
    .info = {.id = "reversed-rotation",
             .family = "Drawing integrity",
             .question = "Is each one-way pump turned in the sense that it is made for?",
             .why = "A charge pump turned backwards delivers nothing and sucks air past its seal: "
                    "the loop runs empty, and the pump fails within minutes.",
             .decided = "Looking at each one's own shaft end, pump and prime mover face each "
                        "other, so their words of rotation differ; a gearbox of opposite sense "
                        "between them turns that round. No prime mover that reverses turns it.",
             .data = "rotation, reversing, sense of gearboxes, shafts",
             .subject = "each one-way pump with its rotation, where that of the prime mover is "
                        "given; each that a reversing one turns",
             .states = "none",
             .level = Level::error,
             .remedy = "Choose the pump for the other rotation, or put right the rotation given.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
