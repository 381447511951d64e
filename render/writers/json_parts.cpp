#include <loopwright/render/writers/json_parts.h>

#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>

namespace loopwright::json {

namespace {

Json paths(const Circuit& circuit, const std::vector<Index>& components) {
    Json list = Json::array();
    for (const Index c : components) list.push_back(circuit.components[c].path);
    return list;
}

Json json_of(const Circuit& circuit, const LoopInfo& loop) {
    Json sides = Json::array();
    for (const SideInfo& side : loop.sides) {
        Json states = Json::array();
        for (const State state : side.states) states.push_back(name(state));
        Json ports = Json::array();
        for (const Index port : side.ports) ports.push_back(circuit.port_name(port));
        Json lines = Json::array();
        for (const Index line : side.lines) lines.push_back(circuit.lines[line].path);
        sides.push_back({{"id", side.id},
                         {"role", name(side.role)},
                         {"states", std::move(states)},
                         {"ports", std::move(ports)},
                         {"lines", std::move(lines)}});
    }
    return {{"id", loop.id},
            {"pumps", paths(circuit, loop.pumps)},
            {"actuators", paths(circuit, loop.actuators)},
            {"sides", std::move(sides)}};
}

Json json_of(const Circuit& circuit, const StateUse& use) {
    Json json{{"name", name(use.state)}};
    if (use.positions.empty()) return json;
    Json positions = Json::object();
    for (const auto& [valve, position] : use.positions)
        positions[std::string(circuit.components[valve].path)] = position;
    json["positions"] = std::move(positions);
    return json;
}

}  // namespace

Json place(const Place& place) {
    Json json{{"file", place.file},
              {"line", place.line},
              {"column", place.column},
              {"end_line", place.end_line},
              {"end_column", place.end_column}};
    if (!place.within.empty()) {
        Json within = Json::array();
        for (const Place& outer : place.within) within.push_back(json::place(outer));
        json["within"] = std::move(within);
    }
    return json;
}

Json quantity(const Measure& measure) {
    return {{"value", measure.si},
            {"unit", si_unit(measure.dimension)},
            {"text", format_quantity(measure.si, measure.dimension)}};
}

Json citation(const Citation& source) {
    Json json{{"work", source.work}};
    if (!source.place.empty()) json["place"] = source.place;
    return json;
}

Json thresholds(std::span<const ThresholdInUse> thresholds) {
    Json list = Json::array();
    for (const ThresholdInUse& one : thresholds) {
        Json item{{"rule", one.rule->id},
                  {"name", one.threshold->name},
                  {"value", quantity(Measure{one.si, one.threshold->dimension})},
                  {"given", one.given}};
        if (one.given)
            item["default"] = quantity(Measure{one.threshold->value, one.threshold->dimension});
        item["source"] = citation(one.threshold->source);
        list.push_back(std::move(item));
    }
    return list;
}

void put_title(const Circuit& circuit, Json& json) {
    if (!circuit.title.title.empty()) json["title"] = circuit.title.title;
    if (!circuit.title.drawing.empty()) json["drawing"] = circuit.title.drawing;
    if (!circuit.title.revision.empty()) json["revision"] = circuit.title.revision;
}

void put_structure(const Circuit& circuit, const Structure& structure, Json& json) {
    Json loops = Json::array();
    for (const LoopInfo& loop : structure.loops) loops.push_back(json_of(circuit, loop));
    json["loops"] = std::move(loops);
    Json parts = Json::array();
    for (const OpenPart& open : structure.open_parts)
        parts.push_back({{"id", open.id},
                         {"pumps", paths(circuit, open.pumps)},
                         {"actuators", paths(circuit, open.actuators)}});
    json["open_parts"] = std::move(parts);
    Json remarks = Json::array();
    for (const Remark& remark : circuit.remarks) {
        Json one{{"subject", remark.subject.id}, {"text", remark.text}};
        if (!remark.by.empty()) one["by"] = remark.by;
        if (!remark.date.empty()) one["date"] = remark.date;
        one["place"] = place(circuit.sources->place(remark.place));
        remarks.push_back(std::move(one));
    }
    if (!remarks.empty()) json["remarks"] = std::move(remarks);
}

Json subject(const Subject& subject) { return {{"type", name(subject.type)}, {"id", subject.id}}; }

void put_states(const Circuit& circuit, const Verdict& verdict, Json& json) {
    Json states = Json::array();
    for (const StateUse& use : verdict.states) states.push_back(json_of(circuit, use));
    if (!states.empty()) json["states"] = std::move(states);
    if (!verdict.point.empty()) json["point"] = verdict.point;
}

void put_figures(const Verdict& verdict, Json& json) {
    if (const Figures* figures = verdict.figures; figures != nullptr) {
        json["measured"] = quantity(figures->measured);
        if (figures->required) json["required"] = quantity(*figures->required);
        if (figures->margin) json["margin"] = quantity(*figures->margin);
    }
    if (verdict.outcome == Outcome::inconclusive) json["missing"] = verdict.missing;
}

void put_standing(const Verdict& verdict, Json& json) {
    if (const Waived* waived = verdict.waived; waived != nullptr) {
        json["waived"] = {{"reason", waived->reason}, {"by", waived->by}};
        if (!waived->until.empty()) json["waived"]["until"] = waived->until;
    }
    if (const Cause* cause = verdict.follows; cause != nullptr)
        json["follows"] = {{"rule", cause->rule->id}, {"subject", subject(cause->subject)}};
}

void put_passage(const Circuit& circuit, const Step& step, Json& json) {
    if (step.from != none) json["from"] = circuit.port_name(step.from);
    if (step.to != none) json["to"] = circuit.port_name(step.to);
    if (!step.text.empty()) json["text"] = step.text;
}

std::string_view id_of(const Circuit& circuit, const Step& step) {
    return step.type == ElementType::line ? circuit.lines[step.index].path
                                          : circuit.components[step.index].path;
}

Json summary(const Tally& sum) {
    return {{"pass", sum.pass},
            {"error", sum.error},
            {"warning", sum.warning},
            {"note", sum.note},
            {"inconclusive", sum.inconclusive},
            {"not_applicable", sum.not_applicable},
            {"waived", sum.waived}};
}

std::string dumped(const Json& json, int indent) {
    return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

}  // namespace loopwright::json
