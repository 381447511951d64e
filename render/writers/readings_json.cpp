#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>
#include <loopwright/graph/situation.h>
#include <loopwright/render/writers/csv.h>
#include <loopwright/render/writers/first_start.h>
#include <loopwright/render/writers/json_parts.h>
#include <loopwright/render/writers/readings_report.h>

namespace loopwright {

using namespace hydraulics;

namespace {

using json::Json;

Json json_of(const Reading& reading, Dimension dimension) {
    if (reading.si) {
        Json one{{"expected", json::quantity({*reading.si, dimension})}};
        if (reading.above_range) one["above_range"] = true;
        return one;
    }
    if (!reading.code.empty()) return {{"code", reading.code}};
    return {{"unknown", reading.unknown}};
}

Json json_of(const ReadingsAt& at) {
    Json one = Json::object();
    if (at.oil) one["oil"] = json::quantity({*at.oil, Dimension::temperature});
    if (!at.problem.empty()) one["problem"] = at.problem;
    return one;
}

}  // namespace

std::string readings_json(std::string_view file, const Circuit& circuit, const Readings& all) {
    Json places = Json::array();
    for (const MeasuringPlace& place : all.places) {
        const Component& component = circuit.components[place.component];
        Json one{{"id", component.path}, {"kind", component.kind->name}};
        if (!component.title.empty()) one["title"] = component.title;
        one["measures"] = name(place.measured);
        if (!place.where.empty()) one["at"] = place.where;
        if (place.range)
            one["range"] = json::quantity({*place.range, dimension_of(place.measured)});
        places.push_back(std::move(one));
    }
    Json states = Json::array();
    for (const StateReadings& state : all.states) {
        Json one;
        if (state.is_duty_point) one["point"] = state.id;
        one["state"] = name(state.state);
        one["cold"] = json_of(state.cold);
        one["hot"] = json_of(state.hot);
        Json rows = Json::array();
        for (std::size_t i = 0; i < all.places.size(); ++i) {
            const Dimension dimension = dimension_of(all.places[i].measured);
            rows.push_back({{"id", circuit.components[all.places[i].component].path},
                            {"cold", json_of(state.cold.readings[i], dimension)},
                            {"hot", json_of(state.hot.readings[i], dimension)},
                            {"measured", nullptr}});
        }
        one["readings"] = std::move(rows);
        states.push_back(std::move(one));
    }
    Json taken = Json::array();
    for (const Assumption& one : all.assumptions)
        taken.push_back({{"of", one.of}, {"taken", one.text}, {"source", one.source}});
    const Json whole{{"format", "loopwright-readings/1"},
                     {"tool", {{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}},
                     {"file", file},
                     {"title", circuit.title.title},
                     {"cautions", reading_cautions()},
                     {"first_start", first_start(circuit, structure_of(circuit))},
                     {"places", std::move(places)},
                     {"states", std::move(states)},
                     {"assumptions", std::move(taken)}};
    return json::dumped(whole) + "\n";
}

std::string readings_csv(const Circuit& circuit, const Readings& all) {
    std::string out =
        "point,state,id,title,at,measures,cold,hot,unit,cold as read,hot as read,measured\r\n";
    for (const StateReadings& state : all.states)
        for (std::size_t i = 0; i < all.places.size(); ++i) {
            const MeasuringPlace& place = all.places[i];
            const Component& component = circuit.components[place.component];
            const Dimension dimension = dimension_of(place.measured);
            const auto si = [](const Reading& reading) {
                return reading.si ? fmt::format("{}", *reading.si) : std::string();
            };
            const auto said = [&](const Reading& reading) {
                if (reading.si) return csv_field(format_quantity(*reading.si, dimension));
                if (!reading.code.empty()) return csv_field(reading.code);
                return csv_field(fmt::format("cannot tell: {}", reading.unknown));
            };
            const Reading& cold = state.cold.readings[i];
            const Reading& hot = state.hot.readings[i];
            out += fmt::format(
                "{},{},{},{},{},{},{},{},{},{},{},\r\n", csv_field(state.id), name(state.state),
                csv_field(component.path), csv_field(component.title), csv_field(place.where),
                name(place.measured), si(cold), si(hot),
                dimension == Dimension::ratio ? "" : si_unit(dimension), said(cold), said(hot));
        }
    return out;
}

std::string_view readings_schema() {
    return R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "title": "loopwright-readings/1",
  "type": "object",
  "required": ["format", "tool", "file", "title", "cautions", "first_start", "places", "states",
    "assumptions"],
  "additionalProperties": false,
  "properties": {
    "format": {"const": "loopwright-readings/1"},
    "tool": {"type": "object", "required": ["name", "version"],
      "properties": {"name": {"const": "loopwright"}, "version": {"type": "string"}}},
    "file": {"type": "string"},
    "title": {"type": "string"},
    "cautions": {"type": "array", "items": {"type": "string"}, "minItems": 1},
    "first_start": {"type": "array", "items": {"type": "string"}, "minItems": 1,
      "description": "what is done before the first reading, in this order"},
    "places": {"type": "array", "items": {
      "type": "object", "required": ["id", "kind", "measures"], "additionalProperties": false,
      "properties": {
        "id": {"type": "string"}, "kind": {"type": "string"}, "title": {"type": "string"},
        "measures": {"enum": ["pressure", "temperature", "flow", "speed", "level", "contamination"]},
        "at": {"type": "string", "description": "line or shaft; left out where it is joined to nothing"},
        "range": {"$ref": "#/$defs/quantity"}
      }}},
    "states": {"type": "array", "description": "neutral at rated speed, then the duty points",
      "items": {
      "type": "object", "required": ["state", "cold", "hot", "readings"],
      "additionalProperties": false,
      "properties": {
        "point": {"type": "string", "description": "left out of neutral at rated speed"},
        "state": {"enum": @state@},
        "cold": {"$ref": "#/$defs/oil", "description": "as at a cold start"},
        "hot": {"$ref": "#/$defs/oil", "description": "as at the point; in neutral as at the hottest"},
        "readings": {"type": "array", "items": {
          "type": "object", "required": ["id", "cold", "hot", "measured"],
          "additionalProperties": false,
          "properties": {
            "id": {"type": "string"},
            "cold": {"$ref": "#/$defs/reading"}, "hot": {"$ref": "#/$defs/reading"},
            "measured": {"description": "to be filled in",
              "oneOf": [{"type": "null"}, {"$ref": "#/$defs/quantity"}]}
          }}}
      }}},
    "assumptions": {"type": "array", "items": {"type": "object",
      "required": ["of", "taken", "source"],
      "properties": {"of": {"type": "string"}, "taken": {"type": "string"},
        "source": {"type": "string"}}}}
  },
  "$defs": {
    "quantity": {"type": "object", "required": ["value", "unit", "text"],
      "properties": {"value": {"type": "number", "description": "in the SI unit"},
        "unit": {"type": "string"}, "text": {"type": "string"}}},
    "oil": {"type": "object", "additionalProperties": false,
      "properties": {"oil": {"$ref": "#/$defs/quantity", "description": "in the reservoir"},
        "problem": {"type": "string", "description": "why none of its readings can be told"}}},
    "reading": {"oneOf": [
      {"type": "object", "required": ["expected"], "additionalProperties": false,
        "properties": {"expected": {"$ref": "#/$defs/quantity"},
          "above_range": {"const": true, "description": "of the instrument"}}},
      {"type": "object", "required": ["code"], "additionalProperties": false,
        "properties": {"code": {"type": "string", "description": "no dirtier than that"}}},
      {"type": "object", "required": ["unknown"], "additionalProperties": false,
        "properties": {"unknown": {"type": "string", "description": "why it cannot be told"}}}
    ]}
  }
}
)json";
}

}  // namespace loopwright
