// Over the whole duty: do coolers and reservoir walls carry off the heat that goes into the oil,
// before it is warmer than it may be?
#include <algorithm>
#include <string>
#include <vector>

#include <loopwright/hydraulics/duty_heat.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/warm_oil.h>

namespace loopwright {

namespace {

using Parts = std::vector<Index>;

Parts parts(const Circuit& circuit, Part part) {
    Parts found;
    for (Index c = 0; c < circuit.components.size(); ++c)
        if (circuit.components[c].kind->part == part) found.push_back(c);
    return found;
}

/// Data without which it is not known what coolers and walls carry off: more than is counted.
std::vector<std::string_view> unknown_cooling(const Circuit& circuit, Docket& docket) {
    std::vector<std::string_view> missing;
    const auto ask = [&](Part part, std::string_view datum) {
        for (const Index c : parts(circuit, part))
            if (!circuit.figure(circuit.components[c], datum))
                missing.push_back(docket.text(circuit.components[c].path, ".", datum));
    };
    ask(Part::cooler, "capacity");
    ask(Part::cooler, "temperature-difference");
    ask(Part::reservoir, "cooling-area");
    return missing;
}

/// Data of the duty without which it has no mean.
std::vector<std::string_view> unknown_duty(const Circuit& circuit, Docket& docket) {
    std::vector<std::string_view> missing;
    std::vector<std::string_view> shares;
    bool warm = true;
    for (Index i = 0; i < circuit.points.size(); ++i) {
        const hydraulics::PointFigures point(circuit, i);
        shares.push_back(docket.text(point.id(), ".share"));
        if (point.figure("share").value_or(0.0) > 0.0) shares.clear();
        warm = warm && hydraulics::ambient_of(point);
        if (shares.empty()) break;
    }
    if (!warm) missing.emplace_back("duty.ambient");
    missing.insert(missing.end(), shares.begin(), shares.end());
    return missing;
}

void leave_open(Docket& docket, std::string_view message,
                std::span<const std::string_view> missing) {
    Verdict& verdict = docket.conclude(ElementType::circuit, none, Outcome::inconclusive);
    verdict.message = message;
    verdict.missing = docket.missing(missing);
}

void tell(const Circuit& circuit, Docket& docket, const hydraulics::DutyHeat& duty) {
    const Held held{.measured = duty.heat.into_oil,
                    .required = duty.heat.cooler + duty.heat.wall,
                    .dimension = Dimension::power};
    const auto power = [&](double si) { return docket.told(si, Dimension::power); };
    Verdict& verdict = docket.conclude(ElementType::circuit, none,
                                       held.holds() ? Outcome::pass : Outcome::fail, Level::error);
    verdict.figures = docket.figures(figures_of(held));
    verdict.message =
        docket.text("over the whole duty ", power(duty.heat.into_oil),
                    " go into the oil; at the highest temperature that it may have, ",
                    docket.told(duty.oil, Dimension::temperature), ", coolers carry off ",
                    power(duty.heat.cooler), " and reservoir walls ", power(duty.heat.wall));
    std::vector<Step> steps;
    for (const Part part : {Part::cooler, Part::reservoir})
        for (const Index c : parts(circuit, part))
            steps.push_back({ElementType::component, c, none, none, "carries heat off"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    const Parts reservoirs = parts(circuit, Part::reservoir);
    if (!has_machines(graph, structure) || reservoirs.empty()) return;
    static constexpr std::string_view no_duty[] = {"duty"};
    if (circuit.points.empty()) return leave_open(docket, without_a_duty, no_duty);
    constexpr std::string_view unknown_heat_message =
        "how much heat has to be carried off over "
        "the whole duty is not known";
    if (const auto missing = unknown_duty(circuit, docket); !missing.empty())
        return leave_open(docket, unknown_heat_message, missing);
    const auto cooling = unknown_cooling(circuit, docket);
    const LeastLimit limit = least_max_temperature(circuit, docket, reservoirs);
    if (!limit.least)
        return leave_open(docket, "how warm the oil may be is not given", limit.missing);
    const auto duty = hydraulics::duty_heat_at(circuit, *limit.least);
    if (!duty) return leave_open(docket, "what cools the oil is not given", cooling);
    if (!duty->problem.empty()) {
        std::vector<std::string_view> missing;
        for (const std::string& datum : duty->missing)
            missing.push_back(docket.text(std::string_view(datum)));
        return leave_open(docket, docket.text(std::string_view(duty->problem)), missing);
    }
    // Of what is not known, the limit can only be lower and the heat greater, the cooling better.
    if (duty->heat.left() > 0.0) {
        if (!cooling.empty())
            return leave_open(docket, "what else cools the oil is not known", cooling);
    } else {
        Parts machines;
        for (const Part part : {Part::pump, Part::actuator, Part::pump_motor})
            for (const Index c : parts(circuit, part)) machines.push_back(c);
        std::sort(machines.begin(), machines.end());
        auto missing = limit.missing;
        for (const std::string_view datum :
             unknown_heat(circuit, duty->assumptions, docket, machines))
            missing.push_back(datum);
        if (!missing.empty()) return leave_open(docket, unknown_heat_message, missing);
    }
    tell(circuit, docket, *duty);
}

constexpr Citation sources[] = {
    {.work = "J. Sullivan, Fluid Power: Theory and Applications, 4th ed.",
     .place = "ch. 14 (heat through the walls of a reservoir)"},
    {.work = "A. Esposito, Fluid Power with Applications", .place = "ch. 11 (heat exchangers)"}};

}  // namespace

extern constinit const Rule cooling_capacity{
    .info = {.id = "cooling-capacity",
             .family = "Flushing and cooling",
             .question = "Do coolers and reservoir walls carry off the heat of the whole duty?",
             .why = "All that machines, lines and valves lose goes into the oil. What is not "
                    "carried off heats it hour by hour, until it is too thin to carry the "
                    "bearings, and the machine has to be stopped or fails.",
             .decided = "The duty's points are solved with the oil at the highest temperature "
                        "that a reservoir allows. The mean over their shares of the heat that "
                        "goes into the oil, against what coolers and walls carry off there: in "
                        "proportion to that temperature over the ambient, a cooler no more than "
                        "its stream brings. What the shares leave is neutral.",
             .data = "duty, share, ambient, max-temperature, cooling-area, capacity and "
                     "temperature-difference of coolers, losses of machines",
             .subject = "the circuit",
             .states = "over the whole duty",
             .level = Level::error,
             .remedy = "Fit a larger cooler, or lead more hot oil through it; use machines that "
                       "lose less; keep reliefs from opening in normal work.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
