// Along the travel of a command: the pump's stroke is complete before the motor's is taken back. As
// its stages have it, and at duty points as the strokes then stand.
#include <algorithm>
#include <cmath>

#include <loopwright/rules/at_work.h>
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

/// Of each motor with a stage, the worst pair.
std::vector<Pair> pairs_of(const FlowGraph& graph, const Structure& structure) {
    const Circuit& circuit = graph.circuit();
    std::vector<Pair> worst;
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
    return worst;
}

/// The largest share of its displacement that a machine's stages ever set: where they do not say,
/// a pump's end at all of it and a motor's begin there.
double largest_set(const Circuit& circuit, Index machine, std::string_view at_all_of_it) {
    double largest = 0.0;
    for (const Stage& stage : circuit.stages) {
        if (stage.part != machine) continue;
        for (const std::string_view name : {"begin", "end"}) {
            const AttributeValue* const set = circuit.figure_of(stage, name);
            const double unsaid = name == at_all_of_it ? 1.0 : 0.0;
            largest = std::max(largest, set == nullptr ? unsaid : set->si);
        }
    }
    return largest;
}

/// Where a pump is not at full stroke while a motor of its loop is reduced: what the stages have so
/// is told by them.
void judge_pair(const AtWork& at, const Pair& pair, Docket& docket) {
    const Circuit& circuit = at.circuit();
    const hydraulics::MachinePoint* const pump = at.machine(pair.pump->part);
    const hydraulics::MachinePoint* const motor = at.machine(pair.motor->part);
    const int bad = badness(circuit, *pair.pump, *pair.motor);
    if (pump == nullptr || motor == nullptr || bad == 2) return;
    constexpr double rounding = 1e-6;
    const double full = largest_set(circuit, pair.pump->part, "end");
    const double whole = largest_set(circuit, pair.motor->part, "begin");
    const bool reduced = std::abs(motor->stroke) < whole - rounding;
    const double stroke = std::abs(pump->stroke);
    if (!reduced || stroke >= full - rounding) return;
    // In a declared overlap the command itself may have it so.
    if (bad == 1 && stroke >= std::abs(pump->set_stroke) - rounding) return;
    Verdict* const verdict = docket.record_at(at.point.id, ElementType::component, pair.motor->part,
                                              Outcome::fail, Level::warning, full - stroke);
    if (verdict == nullptr) return;
    const auto share = [&](double part) { return docket.told(part, Dimension::ratio); };
    verdict->message = docket.text(
        circuit.components[pair.motor->part].path, " is reduced to ",
        share(std::abs(motor->stroke)), " of its displacement while ",
        circuit.components[pair.pump->part].path, " stands at ", share(stroke), " of its own ",
        pump->hold == hydraulics::StrokeHold::none ? "as commanded" : told(pump->hold),
        ": with a larger motor the same flow would ask for less pressure");
    verdict->figures = docket.figures({.measured = {stroke, Dimension::ratio},
                                       .required = Measure{full, Dimension::ratio},
                                       .margin = Measure{stroke - full, Dimension::ratio}});
    const Step steps[] = {
        {.type = ElementType::component, .index = pair.pump->part, .text = "held back"},
        {.type = ElementType::component, .index = pair.motor->part, .text = "reduced"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const Pair& pair : pairs_of(at.graph, at.structure)) judge_pair(at, pair, docket);
}

/// After the points: what failed at one is not asked of the stages.
void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    for (const Pair& pair : pairs_of(graph, structure))
        if (!docket.has(ElementType::component, pair.motor->part))
            record(graph.circuit(), pair, docket);
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
                        "no earlier than that of a pump of its loop ends. At the solved duty "
                        "points: no motor is reduced while a limiter or control holds the pump of "
                        "its loop below the stroke that its stages end at.",
             .data = "command stages, direction, overlap, duty, limiters and controls of pumps",
             .subject = "each motor with a stage beside that of a pump of its loop",
             .states = "none, and at each duty point in motion",
             .level = Level::warning,
             .remedy = "Let the motor's stage begin where the pump's ends, or declare the overlap "
                       "that is meant.",
             .sources = sources},
    .conclude = conclude,
    .judge_point = judge_point};

}  // namespace loopwright
