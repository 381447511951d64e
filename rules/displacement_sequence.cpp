// Along the travel of a command: the pump's stroke is complete before the motor's is taken back.
#include <algorithm>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr double same_travel = 1e-9;

bool has(const std::vector<Index>& components, Index c) {
    return std::find(components.begin(), components.end(), c) != components.end();
}

bool in_one_loop(const Structure& structure, Index pump, Index motor) {
    return std::any_of(structure.loops.begin(), structure.loops.end(), [&](const LoopInfo& loop) {
        return has(loop.pumps, pump) && has(loop.actuators, motor);
    });
}

std::string_view word(const Circuit& circuit, const Stage& stage, std::string_view name) {
    const AttributeValue* value = circuit.figure_of(stage, name);
    return value == nullptr ? std::string_view{} : value->text;
}

double figure(const Circuit& circuit, const Stage& stage, std::string_view name) {
    const AttributeValue* value = circuit.figure_of(stage, name);
    return value == nullptr ? 0.0 : value->si;
}

bool declared_overlap(const Circuit& circuit, const Stage& stage) {
    return figure(circuit, stage, "overlap") != 0.0;
}

/// Whether both follow the same direction of travel in some part of it.
bool same_direction(const Circuit& circuit, const Stage& a, const Stage& b) {
    const std::string_view of_a = word(circuit, a, "direction");
    const std::string_view of_b = word(circuit, b, "direction");
    return of_a == of_b || of_a == "both" || of_b == "both";
}

/// How bad a pair of stages is: the worst one of a motor is told.
int badness(const Circuit& circuit, const Stage& pump, const Stage& motor) {
    if (figure(circuit, motor, "from") >= figure(circuit, pump, "to") - same_travel) return 0;
    return declared_overlap(circuit, pump) || declared_overlap(circuit, motor) ? 1 : 2;
}

struct Pair {
    const Stage* pump = nullptr;
    const Stage* motor = nullptr;
};

void record(const Circuit& circuit, const Pair& pair, Docket& docket) {
    const int bad = badness(circuit, *pair.pump, *pair.motor);
    Verdict& verdict = docket.conclude(ElementType::component, pair.motor->part,
                                       bad == 0 ? Outcome::pass : Outcome::fail,
                                       bad == 1 ? Level::note : Level::warning);
    const std::string_view pump = circuit.components[pair.pump->part].path;
    const std::string_view motor = circuit.components[pair.motor->part].path;
    const double from = figure(circuit, *pair.motor, "from");
    const double to = figure(circuit, *pair.pump, "to");
    const auto share = [&](double travel) { return docket.told(travel, Dimension::ratio); };
    if (bad == 0)
        verdict.message =
            docket.text(pump, " is at full stroke at ", share(to), " of the travel, before ", motor,
                        " is reduced from ", share(from));
    else
        verdict.message = docket.text(motor, " is reduced from ", share(from), " of the travel, ",
                                      pump, " at full stroke only at ", share(to),
                                      bad == 1 ? ": an overlap, as declared" : "");
    verdict.figures = docket.figures({.measured = {from, Dimension::ratio},
                                      .required = Measure{to, Dimension::ratio},
                                      .margin = Measure{from - to, Dimension::ratio}});
    const Step steps[] = {
        {.type = ElementType::component, .index = pair.pump->part, .text = "first"},
        {.type = ElementType::component, .index = pair.motor->part, .text = "then"}};
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<Pair> worst;  // of each motor with a stage
    for (const Command& command : circuit.commands)
        for (Index m = command.stages.begin; m < command.stages.end; ++m)
            for (Index p = command.stages.begin; p < command.stages.end; ++p) {
                const Stage& motor = circuit.stages[m];
                const Stage& pump = circuit.stages[p];
                if (graph.part(pump.part) != Part::pump ||
                    graph.part(motor.part) != Part::actuator ||
                    !same_direction(circuit, pump, motor) ||
                    !in_one_loop(structure, pump.part, motor.part))
                    continue;
                const auto known = std::find_if(worst.begin(), worst.end(), [&](const Pair& pair) {
                    return pair.motor->part == motor.part;
                });
                if (known == worst.end())
                    worst.push_back({&pump, &motor});
                else if (badness(circuit, pump, motor) >
                         badness(circuit, *known->pump, *known->motor))
                    *known = {&pump, &motor};
            }
    for (const Pair& pair : worst) record(circuit, pair, docket);
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule displacement_sequence{
    .info = {.id = "displacement-sequence",
             .family = "Control and stopping",
             .question = "Along the travel, is the pump at full stroke before the motor is "
                         "reduced?",
             .why = "A motor that is reduced too early gives less torque and more speed than the "
                    "operator expects, and stalls the prime mover on a grade.",
             .decided = "Of a command's stages in the same direction: the stage of a motor begins "
                        "no earlier than that of a pump of its loop ends.",
             .data = "command stages, direction, overlap",
             .subject = "each motor with a stage beside that of a pump of its loop",
             .states = "none",
             .level = Level::warning,
             .remedy = "Let the motor's stage begin where the pump's ends, or declare the overlap "
                       "that is meant.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
