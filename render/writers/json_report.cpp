#include <loopwright/render/writers/json_report.h>

#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>

namespace loopwright {

namespace {

using Json = nlohmann::ordered_json;

Json json_of(const Place& place) {
    Json json{{"file", place.file},
              {"line", place.line},
              {"column", place.column},
              {"end_line", place.end_line},
              {"end_column", place.end_column}};
    if (!place.within.empty()) {
        Json within = Json::array();
        for (const Place& outer : place.within) within.push_back(json_of(outer));
        json["within"] = std::move(within);
    }
    return json;
}

Json json_of(const Measure& measure) {
    return {{"value", measure.si},
            {"unit", si_unit(measure.dimension)},
            {"text", format_quantity(measure.si, measure.dimension)}};
}

Json json_of(const Citation& source) {
    Json json{{"work", source.work}};
    if (!source.place.empty()) json["place"] = source.place;
    return json;
}

Json paths(const Circuit& circuit, const std::vector<Index>& components) {
    Json list = Json::array();
    for (const Index c : components) list.push_back(circuit.components[c].path);
    return list;
}

Json json_of(const Diagnostics& diagnostics, const SourceSet& sources) {
    Json list = Json::array();
    for (const Diagnostic& diagnostic : diagnostics) {
        Json json{{"level", name(diagnostic.level)}, {"message", diagnostic.message}};
        if (!diagnostic.expected.empty()) json["expected"] = diagnostic.expected;
        if (!diagnostic.suggestion.empty()) json["suggestion"] = diagnostic.suggestion;
        json["place"] = json_of(sources.place(diagnostic.place));
        list.push_back(std::move(json));
    }
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

Json json_of(const Circuit& circuit, const Witness& witness) {
    Json steps = Json::array();
    for (const Step& step : witness.steps) {
        Json json{{"type", name(step.type)},
                  {"id", step.type == ElementType::line ? circuit.lines[step.index].path
                                                        : circuit.components[step.index].path}};
        if (step.from != none) json["from"] = circuit.port_name(step.from);
        if (step.to != none) json["to"] = circuit.port_name(step.to);
        if (!step.text.empty()) json["text"] = step.text;
        json["place"] = json_of(circuit.sources->place(place_of(circuit, step)));
        steps.push_back(std::move(json));
    }
    return {{"shape", name(witness.shape)}, {"steps", std::move(steps)}};
}

Json json_of(const Circuit& circuit, const Verdict& verdict) {
    Json json{{"rule", verdict.rule->id}, {"outcome", name(verdict.outcome)}};
    if (verdict.outcome == Outcome::fail) json["level"] = name(verdict.level);
    json["subject"] = {{"type", name(verdict.subject.type)}, {"id", verdict.subject.id}};
    Json states = Json::array();
    for (const StateUse& use : verdict.states) states.push_back(json_of(circuit, use));
    if (!states.empty()) json["states"] = std::move(states);
    if (!verdict.point.empty()) json["point"] = verdict.point;
    json["message"] = verdict.message;
    if (!verdict.witness.steps.empty()) json["witness"] = json_of(circuit, verdict.witness);
    if (const Figures* figures = verdict.figures; figures != nullptr) {
        json["measured"] = json_of(figures->measured);
        if (figures->required) json["required"] = json_of(*figures->required);
        if (figures->margin) json["margin"] = json_of(*figures->margin);
    }
    if (verdict.outcome == Outcome::inconclusive) json["missing"] = verdict.missing;
    if (verdict.outcome == Outcome::fail) json["remedy"] = verdict.rule->remedy;
    Json sources = Json::array();
    for (const Citation& source : verdict.rule->sources) sources.push_back(json_of(source));
    json["sources"] = std::move(sources);
    if (const Waived* waived = verdict.waived; waived != nullptr) {
        json["waived"] = {{"reason", waived->reason}, {"by", waived->by}};
        if (!waived->until.empty()) json["waived"]["until"] = waived->until;
    }
    if (const Cause* cause = verdict.follows; cause != nullptr)
        json["follows"] = {
            {"rule", cause->rule->id},
            {"subject", {{"type", name(cause->subject.type)}, {"id", cause->subject.id}}}};
    json["place"] = json_of(circuit.sources->place(place_of(circuit, verdict.subject)));
    return json;
}

Json json_of(const Tally& sum) {
    return {{"pass", sum.pass},
            {"error", sum.error},
            {"warning", sum.warning},
            {"note", sum.note},
            {"inconclusive", sum.inconclusive},
            {"not_applicable", sum.not_applicable},
            {"waived", sum.waived}};
}

/// Bytes that are no UTF-8 become the replacement character, as JSON cannot hold them.
std::string dumped(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string CheckJson::head(std::span<const ThresholdInUse> thresholds) const {
    Json list = Json::array();
    for (const ThresholdInUse& one : thresholds) {
        Json item{{"rule", one.rule->id},
                  {"name", one.threshold->name},
                  {"value", json_of(Measure{one.si, one.threshold->dimension})},
                  {"given", one.given}};
        if (one.given)
            item["default"] = json_of(Measure{one.threshold->value, one.threshold->dimension});
        item["source"] = json_of(one.threshold->source);
        list.push_back(std::move(item));
    }
    return "{\n\"format\": \"loopwright-check/1\",\n\"tool\": " +
           dumped({{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}) +
           ",\n\"thresholds\": " + dumped(list) + ",\n\"circuits\": [\n";
}

void CheckJson::waivers_held_on(std::string_view day) { today_ = day; }

std::string CheckJson::part(std::string text) {
    return (files_++ == 0 ? "" : ",\n") + std::move(text);
}

std::string CheckJson::circuit(std::string_view file, const Circuit& circuit,
                               const Diagnostics& diagnostics, const Structure& structure,
                               std::span<const Verdict> verdicts) {
    Json json{{"file", file}};
    if (!circuit.title.title.empty()) json["title"] = circuit.title.title;
    if (!circuit.title.drawing.empty()) json["drawing"] = circuit.title.drawing;
    if (!circuit.title.revision.empty()) json["revision"] = circuit.title.revision;
    json["readable"] = true;
    json["diagnostics"] = json_of(diagnostics, *circuit.sources);
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
        one["place"] = json_of(circuit.sources->place(remark.place));
        remarks.push_back(std::move(one));
    }
    if (!remarks.empty()) json["remarks"] = std::move(remarks);
    Json list = Json::array();
    for (const Verdict& verdict : verdicts) list.push_back(json_of(circuit, verdict));
    json["verdicts"] = std::move(list);
    const Tally sum = tally(verdicts);
    json["summary"] = json_of(sum);
    sum_ += sum;
    return part(dumped(json));
}

std::string CheckJson::unreadable(std::string_view file, const Diagnostics& diagnostics,
                                  const SourceSet& sources) {
    ++unreadable_;
    return part(dumped(
        {{"file", file}, {"readable", false}, {"diagnostics", json_of(diagnostics, sources)}}));
}

std::string CheckJson::tail() const {
    Json sum{{"files", files_}, {"unreadable", unreadable_}};
    sum.update(json_of(sum_));
    return "\n],\n" + (today_.empty() ? "" : "\"today\": " + dumped(today_) + ",\n") +
           "\"summary\": " + dumped(sum) + "\n}\n";
}

}  // namespace loopwright
