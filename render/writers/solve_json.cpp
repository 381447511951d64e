#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/writers/csv.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright {

using namespace hydraulics;

namespace {

using Json = nlohmann::ordered_json;

Json quantity(double si, Dimension dimension) {
    return {{"value", si}, {"unit", si_unit(dimension)}, {"text", format_quantity(si, dimension)}};
}

void put(Json& json, std::string_view key, const std::optional<double>& si, Dimension dimension) {
    if (si) json[std::string(key)] = quantity(*si, dimension);
}

Json json_of(const Circuit& circuit, const LinePoint& one) {
    Json json{{"id", circuit.lines[one.line].path}};
    const std::string_view function = name(circuit.lines[one.line].function);
    if (!function.empty()) json["function"] = function;
    put(json, "flow", one.flow, Dimension::flow);
    put(json, "velocity", one.velocity, Dimension::velocity);
    if (one.reynolds) json["reynolds"] = *one.reynolds;
    json["drop"] = quantity(one.drop, Dimension::pressure);
    return json;
}

Json json_of(const Circuit& circuit, const MachinePoint& one) {
    Json json{{"id", circuit.components[one.component].path}, {"mode", name(one.mode)}};
    json["speed"] = quantity(one.speed, one.straight ? Dimension::velocity : Dimension::speed);
    if (!one.straight) {
        json["stroke"] = one.stroke;
        if (one.hold != StrokeHold::none) {
            json["set_stroke"] = one.set_stroke;
            json["held"] = told(one.hold);
        }
        json["displacement"] = quantity(one.displacement, Dimension::displacement);
        json["torque"] = quantity(one.torque, Dimension::torque);
    } else {
        json["force"] = quantity(one.torque, Dimension::force);
    }
    json["pressure_a"] = quantity(one.pressure_a, Dimension::pressure);
    json["pressure_b"] = quantity(one.pressure_b, Dimension::pressure);
    json["flow"] = quantity(one.flow, Dimension::flow);
    json["shaft_power"] = quantity(one.shaft_power, Dimension::power);
    json["hydraulic_power"] = quantity(one.hydraulic_power, Dimension::power);
    if (one.volumetric_efficiency) json["volumetric_efficiency"] = *one.volumetric_efficiency;
    if (one.mechanical_efficiency) json["mechanical_efficiency"] = *one.mechanical_efficiency;
    put(json, "case_flow", one.case_flow, Dimension::flow);
    return json;
}

Json json_of(const ShaftPoint& one) {
    return {
        {"id", one.name},
        {"speed", quantity(one.speed, one.straight ? Dimension::velocity : Dimension::speed)},
        {"torque", quantity(one.torque, one.straight ? Dimension::force : Dimension::torque)},
        {"power", quantity(one.power, Dimension::power)},
        {"carried", quantity(one.carried, one.straight ? Dimension::force : Dimension::torque)}};
}

Json json_of(const Circuit& circuit, const OnShaftPoint& one) {
    Json json{{"id", circuit.components[one.component].path},
              {"speed", quantity(one.speed, one.straight ? Dimension::velocity : Dimension::speed)},
              {one.straight ? "force" : "torque",
               quantity(one.torque, one.straight ? Dimension::force : Dimension::torque)},
              {"power", quantity(one.power, Dimension::power)}};
    put(json, "holding", one.holding, Dimension::torque);
    return json;
}

Json json_of(const Circuit& circuit, const ChargeBalance& one) {
    Json uses = Json::array();
    for (const ChargeUse& use : one.uses)
        uses.push_back({{"what", use.what},
                        {"where", use.where},
                        {"flow", quantity(use.flow, Dimension::flow)}});
    return {{"source", circuit.components[one.source].path},
            {"given", quantity(one.given, Dimension::flow)},
            {"uses", std::move(uses)}};
}

Json json_of(const Circuit& circuit, const OperatingPoint& point) {
    Json json{{"id", point.id}, {"state", name(point.state)}, {"solved", point.solved}};
    for (const LoopState& loop : point.loop_states)
        json["loop_states"].push_back(
            {{"id", fmt::format("loop:{}", circuit.components[loop.first_pump].path)},
             {"state", name(loop.state)}});
    if (!point.solved) {
        json["problem"] = point.problem;
        if (!point.missing.empty()) json["missing"] = point.missing;
        return json;
    }
    if (!point.problem.empty()) json["problem"] = point.problem;
    put(json, "oil", point.oil, Dimension::temperature);
    Json nodes = Json::array();
    Json lines = Json::array();
    for (const LinePoint& one : point.lines) {
        nodes.push_back({{"line", circuit.lines[one.line].path},
                         {"pressure", quantity(one.pressure, Dimension::pressure)}});
        lines.push_back(json_of(circuit, one));
    }
    json["nodes"] = std::move(nodes);
    json["lines"] = std::move(lines);
    Json machines = Json::array();
    for (const MachinePoint& one : point.machines) machines.push_back(json_of(circuit, one));
    json["machines"] = std::move(machines);
    Json shafts = Json::array();
    for (const ShaftPoint& one : point.shafts) shafts.push_back(json_of(one));
    json["shafts"] = std::move(shafts);
    Json on_shafts = Json::array();
    for (const OnShaftPoint& one : point.on_shafts) on_shafts.push_back(json_of(circuit, one));
    json["on_shafts"] = std::move(on_shafts);
    Json charge = Json::array();
    for (const ChargeBalance& one : point.charge) charge.push_back(json_of(circuit, one));
    json["charge"] = std::move(charge);
    Json losses = Json::array();
    for (const Loss& one : point.losses)
        losses.push_back({{"id", one.of}, {"power", quantity(one.power, Dimension::power)}});
    json["heat"] = {{"losses", std::move(losses)}};
    if (point.heat) {
        json["heat"]["into_oil"] = quantity(point.heat->into_oil, Dimension::power);
        json["heat"]["cooler"] = quantity(point.heat->cooler, Dimension::power);
        json["heat"]["wall"] = quantity(point.heat->wall, Dimension::power);
        json["heat"]["balanced"] = point.balanced;
    }
    Json loops = Json::array();
    for (const LoopHeat& one : point.loops) {
        Json loop{{"id", fmt::format("loop:{}", circuit.components[one.first_pump].path)},
                  {"heat", quantity(one.heat, Dimension::power)},
                  {"exchange", quantity(one.exchange, Dimension::flow)}};
        put(loop, "temperature", one.temperature, Dimension::temperature);
        loops.push_back(std::move(loop));
    }
    json["heat"]["loops"] = std::move(loops);
    Json limits = Json::array();
    for (const LimitPoint& one : point.limits)
        limits.push_back({{"subject", one.subject},
                          {"quantity", one.quantity},
                          {"value", quantity(one.value, one.dimension)},
                          {"limit", quantity(one.limit, one.dimension)},
                          {"margin", quantity(one.margin, one.dimension)}});
    json["limits"] = std::move(limits);
    Json taken = Json::array();
    for (const Assumption& one : point.assumptions)
        taken.push_back({{"of", one.of}, {"taken", one.text}, {"source", one.source}});
    json["assumptions"] = std::move(taken);
    json["residual"] = {{"mass", point.mass_residual}, {"energy", point.energy_residual}};
    return json;
}

Json json_of(const DutyHeat& duty) {
    if (!duty.problem.empty()) return {{"problem", duty.problem}};
    return {{"oil", quantity(duty.oil, Dimension::temperature)},
            {"rest", duty.rest},
            {"power_in", quantity(duty.power_in, Dimension::power)},
            {"power_out", quantity(duty.power_out, Dimension::power)},
            {"lost", quantity(duty.lost, Dimension::power)},
            {"into_oil", quantity(duty.heat.into_oil, Dimension::power)},
            {"cooler", quantity(duty.heat.cooler, Dimension::power)},
            {"wall", quantity(duty.heat.wall, Dimension::power)}};
}

}  // namespace

std::string solve_json(std::string_view file, const Circuit& circuit,
                       std::span<const OperatingPoint> points,
                       const std::optional<DutyHeat>& duty) {
    Json list = Json::array();
    for (const OperatingPoint& point : points) list.push_back(json_of(circuit, point));
    Json json{{"format", "loopwright-solve/1"},
              {"tool", {{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}},
              {"file", file},
              {"points", std::move(list)}};
    if (duty) json["duty"] = json_of(*duty);
    return json.dump(2) + "\n";
}

std::string solve_csv(const Circuit& circuit, std::span<const OperatingPoint> points) {
    std::string out = "point,what,id,quantity,value,unit\r\n";
    for (const OperatingPoint& point : points) {
        const auto row = [&](std::string_view what, std::string_view id, std::string_view of,
                             double si, Dimension dimension) {
            out += fmt::format("{},{},{},{},{},{}\r\n", csv_field(point.id), what, csv_field(id),
                               of, si, si_unit(dimension));
        };
        for (const LinePoint& one : point.lines) {
            const std::string_view id = circuit.lines[one.line].path;
            row("line", id, "pressure", one.pressure, Dimension::pressure);
            if (one.flow) row("line", id, "flow", *one.flow, Dimension::flow);
            if (one.velocity) row("line", id, "velocity", *one.velocity, Dimension::velocity);
            row("line", id, "drop", one.drop, Dimension::pressure);
        }
        for (const MachinePoint& one : point.machines) {
            const std::string_view id = circuit.components[one.component].path;
            row("machine", id, one.straight ? "velocity" : "speed", one.speed,
                one.straight ? Dimension::velocity : Dimension::speed);
            row("machine", id, one.straight ? "force" : "torque", one.torque,
                one.straight ? Dimension::force : Dimension::torque);
            row("machine", id, "flow", one.flow, Dimension::flow);
            row("machine", id, "shaft power", one.shaft_power, Dimension::power);
            row("machine", id, "hydraulic power", one.hydraulic_power, Dimension::power);
            if (one.case_flow) row("machine", id, "case flow", *one.case_flow, Dimension::flow);
        }
        for (const ShaftPoint& one : point.shafts) {
            row("shaft", one.name, one.straight ? "velocity" : "speed", one.speed,
                one.straight ? Dimension::velocity : Dimension::speed);
            row("shaft", one.name, one.straight ? "force" : "torque", one.torque,
                one.straight ? Dimension::force : Dimension::torque);
            row("shaft", one.name, "power", one.power, Dimension::power);
            row("shaft", one.name, one.straight ? "carried force" : "carried torque", one.carried,
                one.straight ? Dimension::force : Dimension::torque);
        }
        for (const Loss& one : point.losses)
            row("loss", one.of, "power", one.power, Dimension::power);
    }
    return out;
}

}  // namespace loopwright
