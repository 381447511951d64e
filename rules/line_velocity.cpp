// For each line: at each duty point, is the oil in it no faster than its function allows?
#include <cmath>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

constexpr std::string_view in_suction = "suction";
constexpr std::string_view in_return = "return";
constexpr std::string_view under_pressure = "pressure";
/// Oil that creeps less than this stands.
constexpr double flows_from = 1e-9;  // m3/s

/// Where a line is joined to a reservoir, how the oil runs says its function.
std::string_view limit_by_joins(const AtWork& at, const Line& line, double flow) {
    const Circuit& circuit = at.circuit();
    const auto ports = circuit.ports_of(line);
    for (std::size_t i = 0; i < ports.size(); ++i) {
        const Port& port = circuit.ports[ports[i]];
        if (port.use == PortUse::suction && at.graph.part(port.component) == Part::pump)
            return in_suction;
        if (circuit.components[port.component].kind->part == Part::reservoir)
            return (i == 0) == (flow > 0.0) ? in_suction : in_return;
        if (port.use == PortUse::drain) return in_return;
    }
    return under_pressure;
}

std::string_view limit_of(const AtWork& at, const Line& line, double flow) {
    switch (line.function) {
        case LineFunction::suction:
            return in_suction;
        case LineFunction::return_:
        case LineFunction::drain:
            return in_return;
        case LineFunction::working:
        case LineFunction::charge:
        case LineFunction::pilot:
            return under_pressure;
        case LineFunction::not_declared:
            break;
    }
    return limit_by_joins(at, line, flow);
}

void lacks_datum(const AtWork& at, Docket& docket, Index l, std::string_view datum) {
    const std::string_view path = at.circuit().lines[l].path;
    const std::string_view missing[] = {docket.text(path, ".", datum)};
    Verdict* const verdict = lacks(at, docket, ElementType::line, l, missing);
    if (verdict == nullptr) return;
    verdict->message =
        datum == "bore" ? docket.text("the bore of ", path, " is not given")
                        : docket.text("how the oil parts over ", path,
                                      " and the lines beside it is not known without its ", datum);
}

void judge_line(const AtWork& at, Docket& docket, const hydraulics::LinePoint& point) {
    const Line& line = at.circuit().lines[point.line];
    if (at.circuit().ports_of(line).size() < 2) return;
    if (point.flow && std::abs(*point.flow) < flows_from && !line.bore) return;
    if (!line.bore) {
        lacks_datum(at, docket, point.line, "bore");
        return;
    }
    if (!point.velocity) {
        lacks_datum(at, docket, point.line, "length");
        return;
    }
    const std::string_view limit = limit_of(at, line, *point.flow);
    const double most = docket.threshold(limit);
    Verdict* const verdict =
        hold(at, docket, ElementType::line, point.line,
             {.measured = *point.velocity, .required = most, .dimension = Dimension::velocity},
             Level::warning);
    if (verdict == nullptr) return;
    verdict->message = docket.text("the oil in ", line.path, " runs at ",
                                   docket.told(*point.velocity, Dimension::velocity), "; ",
                                   docket.told(most, Dimension::velocity),
                                   limit == in_suction  ? " are usual at most in a suction line"
                                   : limit == in_return ? " are usual at most in a return line"
                                                        : " are usual at most under pressure");
    const auto ports = at.circuit().ports_of(line);
    const bool ahead = *point.flow >= 0.0;
    const Step steps[] = {{.type = ElementType::line,
                           .index = point.line,
                           .from = ports[ahead ? 0 : 1],
                           .to = ports[ahead ? 1 : 0]}};
    verdict->witness = docket.witness(WitnessShape::path, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    for (const hydraulics::LinePoint& point : at.point.lines) judge_line(at, docket, point);
}

bool concerns(const FlowGraph& graph, const Structure& /*structure*/) {
    return !graph.circuit().lines.empty();
}

constexpr Citation sources[] = {
    {.work = "A. Esposito, Fluid Power with Applications",
     .place = "examples 10-1 and 10-2 (20 ft/s in a pressure line)"},
    {.work = "common practice, no source", .place = "2 to 4 m/s in a return line"},
    {.work = "A. Esposito, Fluid Power with Applications",
     .place = "chapter 10 (4 ft/s in a suction line; from memory)"}};
/// Loop pressure that bursts into the charge line drives the oil through it.
constexpr std::string_view follows[] = {"charge-backflow"};
constexpr Threshold thresholds[] = {{.name = under_pressure,
                                     .dimension = Dimension::velocity,
                                     .value = 6.1,
                                     .doc = "highest velocity in working, charge and pilot lines",
                                     .source = sources[0]},
                                    {.name = in_return,
                                     .dimension = Dimension::velocity,
                                     .value = 4.0,
                                     .doc = "highest velocity in return and drain lines",
                                     .source = sources[1]},
                                    {.name = in_suction,
                                     .dimension = Dimension::velocity,
                                     .value = 1.2,
                                     .doc = "highest velocity in suction lines",
                                     .source = sources[2]}};

}  // namespace

extern constinit const Rule line_velocity{
    .info = {.id = "line-velocity",
             .family = "Suction and reservoir",
             .question = "Is the oil in each line no faster than is usual for its function?",
             .why = "Fast oil wastes power as heat and noise, starves a pump, and foams in the "
                    "reservoir.",
             .decided = "Flow at the solved duty point over the area of the bore, between the "
                        "line's first two ports. A line whose function is not declared counts as "
                        "suction at the inlet of a pump or where it leaves a reservoir, as return "
                        "where it ends in one or at a housing, else as under pressure.",
             .data = "duty, bore, function, displacements",
             .subject = "each line and hose that oil flows through",
             .states = "at each duty point",
             .level = Level::warning,
             .remedy = "Choose a larger bore.",
             .sources = sources,
             .thresholds = thresholds,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = concerns};

}  // namespace loopwright
