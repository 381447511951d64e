#include <loopwright/render/writers/solve_report.h>

namespace loopwright {

std::string_view solve_schema() {
    return R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:loopwright:solve:1",
  "title": "What `loopwright solve --format json` writes",
  "type": "object",
  "required": ["format", "tool", "file"],
  "oneOf": [{"required": ["points"]}, {"required": ["sweep"]}],
  "properties": {
    "format": {"const": "loopwright-solve/1"},
    "tool": {"type": "object", "required": ["name", "version"],
      "properties": {"name": {"type": "string"}, "version": {"type": "string"}}},
    "file": {"type": "string"},
    "points": {"type": "array", "items": {"oneOf": [
      {"$ref": "#/$defs/solved"}, {"$ref": "#/$defs/unsolved"}]}},
    "duty": {"oneOf": [{"$ref": "#/$defs/problem"}, {"$ref": "#/$defs/duty_heat"}]},
    "sweep": {
      "type": "object", "required": ["axes", "columns", "rows"],
      "properties": {
        "axes": {"type": "array", "items": {"type": "object", "required": ["datum", "unit"],
          "properties": {"datum": {"type": "string"}, "unit": {"type": "string"}}}},
        "columns": {"type": "array", "items": {"type": "object", "required": ["quantity", "unit"],
          "properties": {"id": {"type": "string"}, "quantity": {"type": "string"},
            "unit": {"type": "string"}}}},
        "rows": {"type": "array", "description": "axes, then columns; null where there is no figure",
          "items": {"type": "array", "items": {"type": ["number", "null"]}}}
      }
    }
  },
  "$defs": {
    "state": {"enum": @state@},
    "quantity": {
      "type": "object", "required": ["value", "unit", "text"], "additionalProperties": false,
      "properties": {
        "value": {"type": "number", "description": "in the SI unit beside it"},
        "unit": {"type": "string"}, "text": {"type": "string"}
      }
    },
    "loop_states": {"type": "array", "description": "where commands go opposite ways",
      "items": {"type": "object", "required": ["id", "state"],
        "properties": {"id": {"type": "string"}, "state": {"$ref": "#/$defs/state"}}}},
    "problem": {
      "type": "object", "required": ["problem"], "additionalProperties": false,
      "properties": {"problem": {"type": "string"}}
    },
    "duty_heat": {
      "type": "object", "description": "means over the shares of the duty, at one oil temperature",
      "required": ["oil", "rest", "power_in", "power_out", "lost", "into_oil", "cooler", "wall"],
      "properties": {
        "oil": {"$ref": "#/$defs/quantity"},
        "rest": {"type": "number", "minimum": 0, "maximum": 1,
          "description": "share of the time in neutral, which the points leave"},
        "power_in": {"$ref": "#/$defs/quantity"}, "power_out": {"$ref": "#/$defs/quantity"},
        "lost": {"$ref": "#/$defs/quantity"}, "into_oil": {"$ref": "#/$defs/quantity"},
        "cooler": {"$ref": "#/$defs/quantity"}, "wall": {"$ref": "#/$defs/quantity"}
      }
    },
    "unsolved": {
      "type": "object", "required": ["id", "state", "solved", "problem"],
      "properties": {
        "id": {"type": "string"}, "state": {"$ref": "#/$defs/state"},
        "loop_states": {"$ref": "#/$defs/loop_states"},
        "solved": {"const": false},
        "problem": {"type": "string", "description": "what is not given, or which balance does not close"},
        "missing": {"type": "array", "items": {"type": "string"}}
      }
    },
    "solved": {
      "type": "object",
      "required": ["id", "state", "solved", "nodes", "lines", "machines", "shafts", "charge", "heat",
        "limits", "assumptions", "residual"],
      "properties": {
        "id": {"type": "string"}, "state": {"$ref": "#/$defs/state"},
        "loop_states": {"$ref": "#/$defs/loop_states"},
        "solved": {"const": true},
        "problem": {"type": "string", "description": "why no machine works so: oil below vacuum"},
        "oil": {"$ref": "#/$defs/quantity"},
        "nodes": {"type": "array", "items": {"type": "object", "required": ["line", "pressure"],
          "properties": {"line": {"type": "string"}, "pressure": {"$ref": "#/$defs/quantity"}}}},
        "lines": {"type": "array", "items": {"type": "object", "required": ["id", "drop"],
          "properties": {
            "id": {"type": "string"}, "function": {"type": "string"},
            "flow": {"$ref": "#/$defs/quantity",
              "description": "from the first port to the second; not there where it cannot be told"},
            "velocity": {"$ref": "#/$defs/quantity"},
            "reynolds": {"type": "number", "minimum": 0},
            "drop": {"$ref": "#/$defs/quantity"}
          }}},
        "machines": {"type": "array", "items": {"type": "object",
          "required": ["id", "mode", "speed", "flow", "shaft_power", "hydraulic_power"],
          "properties": {
            "id": {"type": "string"}, "mode": {"enum": ["pump", "motor", "idle"]},
            "speed": {"$ref": "#/$defs/quantity"},
            "stroke": {"type": "number", "minimum": 0, "maximum": 1},
            "set_stroke": {"type": "number", "minimum": 0, "maximum": 1,
              "description": "as its command has it; there where a control holds it elsewhere"},
            "held": {"type": "string", "description": "which control does"},
            "displacement": {"$ref": "#/$defs/quantity"},
            "torque": {"$ref": "#/$defs/quantity"}, "force": {"$ref": "#/$defs/quantity"},
            "pressure_a": {"$ref": "#/$defs/quantity"}, "pressure_b": {"$ref": "#/$defs/quantity"},
            "flow": {"$ref": "#/$defs/quantity",
              "description": "out of a pump, into a motor, at the side with the higher pressure"},
            "shaft_power": {"$ref": "#/$defs/quantity"},
            "hydraulic_power": {"$ref": "#/$defs/quantity"},
            "volumetric_efficiency": {"type": "number"},
            "mechanical_efficiency": {"type": "number"},
            "case_flow": {"$ref": "#/$defs/quantity"}
          }}},
        "shafts": {"type": "array", "items": {"type": "object",
          "required": ["id", "speed", "torque", "power", "carried"],
          "properties": {"id": {"type": "string"}, "speed": {"$ref": "#/$defs/quantity"},
            "torque": {"$ref": "#/$defs/quantity",
              "description": "that its prime mover gives, or its loads take"},
            "power": {"$ref": "#/$defs/quantity", "description": "of that torque"},
            "carried": {"$ref": "#/$defs/quantity",
              "description": "torque that it carries, what it passes on to gearboxes with it"}}}},
        "on_shafts": {"type": "array",
          "description": "prime movers with what they give their shaft, loads and brakes with what they take",
          "items": {"type": "object", "required": ["id", "speed", "power"],
          "properties": {"id": {"type": "string"}, "speed": {"$ref": "#/$defs/quantity"},
            "torque": {"$ref": "#/$defs/quantity"}, "force": {"$ref": "#/$defs/quantity"},
            "power": {"$ref": "#/$defs/quantity"},
            "holding": {"$ref": "#/$defs/quantity",
              "description": "of a brake: the most that it holds as it stands"}}}},
        "charge": {"type": "array", "items": {"type": "object",
          "required": ["source", "given", "uses"],
          "properties": {"source": {"type": "string"}, "given": {"$ref": "#/$defs/quantity"},
            "uses": {"type": "array", "items": {"type": "object",
              "required": ["what", "where", "flow"],
              "properties": {"what": {"type": "string"}, "where": {"type": "string"},
                "flow": {"$ref": "#/$defs/quantity"}}}}}}},
        "heat": {"type": "object", "required": ["losses"],
          "properties": {
            "into_oil": {"$ref": "#/$defs/quantity"}, "cooler": {"$ref": "#/$defs/quantity"},
            "wall": {"$ref": "#/$defs/quantity"},
            "balanced": {"type": "boolean",
              "description": "the oil's temperature is that at which what it takes up goes out again"},
            "loops": {"type": "array", "items": {"type": "object",
              "required": ["id", "heat", "exchange"],
              "properties": {"id": {"type": "string"}, "heat": {"$ref": "#/$defs/quantity"},
                "exchange": {"$ref": "#/$defs/quantity"},
                "temperature": {"$ref": "#/$defs/quantity",
                  "description": "of the loop's own oil; left out where it exchanges none"}}}},
            "losses": {"type": "array", "items": {"type": "object",
            "required": ["id", "power"],
            "properties": {"id": {"type": "string"}, "power": {"$ref": "#/$defs/quantity"}}}}}},
        "limits": {"type": "array", "items": {"type": "object",
          "required": ["subject", "quantity", "value", "limit", "margin"],
          "properties": {"subject": {"type": "string"}, "quantity": {"type": "string"},
            "value": {"$ref": "#/$defs/quantity"}, "limit": {"$ref": "#/$defs/quantity"},
            "margin": {"$ref": "#/$defs/quantity"}}}},
        "assumptions": {"type": "array", "items": {"type": "object",
          "required": ["of", "taken", "source"],
          "properties": {"of": {"type": "string"}, "taken": {"type": "string"},
            "source": {"type": "string"}}}},
        "residual": {"type": "object", "required": ["mass", "energy"],
          "properties": {"mass": {"type": "number", "minimum": 0},
            "energy": {"type": "number", "minimum": 0}}}
      }
    }
  }
}
)json";
}

}  // namespace loopwright
