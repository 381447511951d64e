// The JSON schemas of the machine output (JSON Schema 2020-12). A key dropped or changed raises the
// number in `format`; keys may be added under the same number.
#include <loopwright/render/writers/catalogue.h>
#include <loopwright/render/writers/readings_report.h>
#include <loopwright/render/writers/schema_words.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright {

namespace {

constexpr std::string_view check_schema = R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:loopwright:check:1",
  "title": "What `loopwright check --format json` prints",
  "type": "object",
  "required": ["format", "tool", "circuits", "summary"],
  "additionalProperties": false,
  "properties": {
    "format": {"const": "loopwright-check/1"},
    "tool": {
      "type": "object",
      "required": ["name", "version"],
      "properties": {"name": {"const": "loopwright"}, "version": {"type": "string"}}
    },
    "today": {"$ref": "#/$defs/date"},
    "thresholds": {"type": "array", "items": {
      "type": "object",
      "required": ["rule", "name", "value", "given", "source"],
      "additionalProperties": false,
      "properties": {
        "rule": {"type": "string"}, "name": {"type": "string"},
        "value": {"$ref": "#/$defs/quantity"},
        "given": {"type": "boolean", "description": "whether the user has set it"},
        "default": {"$ref": "#/$defs/quantity"},
        "source": {"$ref": "#/$defs/source"}
      }
    }},
    "circuits": {
      "type": "array",
      "items": {"oneOf": [{"$ref": "#/$defs/circuit"}, {"$ref": "#/$defs/unreadable"}]}
    },
    "summary": {
      "allOf": [{"$ref": "#/$defs/tally"}],
      "required": ["files", "unreadable"],
      "properties": {"files": {"$ref": "#/$defs/count"}, "unreadable": {"$ref": "#/$defs/count"}}
    }
  },
  "$defs": {
    "date": {"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"},
    "count": {"type": "integer", "minimum": 0},
    "level": {"enum": @level@},
    "state": {"enum": @state@},
    "ids": {"type": "array", "items": {"type": "string"}},
    "tally": {
      "type": "object",
      "required": ["pass", "error", "warning", "note", "inconclusive", "not_applicable", "waived"],
      "properties": {
        "pass": {"$ref": "#/$defs/count"}, "error": {"$ref": "#/$defs/count"},
        "warning": {"$ref": "#/$defs/count"}, "note": {"$ref": "#/$defs/count"},
        "inconclusive": {"$ref": "#/$defs/count"}, "not_applicable": {"$ref": "#/$defs/count"},
        "waived": {"$ref": "#/$defs/count"}
      }
    },
    "place": {
      "type": "object",
      "required": ["file", "line", "column", "end_line", "end_column"],
      "additionalProperties": false,
      "properties": {
        "file": {"type": "string"},
        "line": {"type": "integer", "minimum": 1}, "column": {"type": "integer", "minimum": 1},
        "end_line": {"type": "integer", "minimum": 1}, "end_column": {"type": "integer", "minimum": 1},
        "within": {"type": "array", "items": {"$ref": "#/$defs/place"}}
      }
    },
    "source": {
      "type": "object", "required": ["work"], "additionalProperties": false,
      "properties": {"work": {"type": "string", "minLength": 1}, "place": {"type": "string"}}
    },
    "quantity": {
      "type": "object",
      "required": ["value", "unit", "text"],
      "additionalProperties": false,
      "properties": {"value": {"type": "number"}, "unit": {"type": "string"}, "text": {"type": "string"}}
    },
    "diagnostic": {
      "type": "object",
      "required": ["level", "message", "place"],
      "additionalProperties": false,
      "properties": {
        "level": {"$ref": "#/$defs/level"}, "message": {"type": "string"},
        "expected": {"type": "string"}, "suggestion": {"type": "string"},
        "place": {"$ref": "#/$defs/place"}
      }
    },
    "unreadable": {
      "type": "object",
      "required": ["file", "readable", "diagnostics"],
      "additionalProperties": false,
      "properties": {
        "file": {"type": "string"}, "readable": {"const": false},
        "diagnostics": {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/diagnostic"}}
      }
    },
    "circuit": {
      "type": "object",
      "required": ["file", "readable", "diagnostics", "loops", "open_parts", "verdicts", "summary"],
      "additionalProperties": false,
      "properties": {
        "file": {"type": "string"}, "title": {"type": "string"}, "drawing": {"type": "string"},
        "revision": {"type": "string"}, "readable": {"const": true},
        "diagnostics": {"type": "array", "items": {"$ref": "#/$defs/diagnostic"}},
        "loops": {"type": "array", "items": {"$ref": "#/$defs/loop"}},
        "open_parts": {"type": "array", "items": {
          "type": "object", "required": ["id", "pumps", "actuators"],
          "properties": {"id": {"type": "string"}, "pumps": {"$ref": "#/$defs/ids"},
            "actuators": {"$ref": "#/$defs/ids"}}}},
        "remarks": {"type": "array", "minItems": 1, "items": {
          "type": "object", "required": ["subject", "text", "place"], "additionalProperties": false,
          "properties": {"subject": {"type": "string"}, "text": {"type": "string"},
            "by": {"type": "string"}, "date": {"$ref": "#/$defs/date"},
            "place": {"$ref": "#/$defs/place"}}}},
        "verdicts": {"type": "array", "items": {"$ref": "#/$defs/verdict"}},
        "summary": {"$ref": "#/$defs/tally"}
      }
    },
    "loop": {
      "type": "object",
      "required": ["id", "pumps", "actuators", "sides"],
      "properties": {
        "id": {"type": "string"}, "pumps": {"$ref": "#/$defs/ids"},
        "actuators": {"$ref": "#/$defs/ids"},
        "sides": {"type": "array", "items": {
          "type": "object", "required": ["id", "role", "states", "ports", "lines"],
          "properties": {
            "id": {"type": "string"},
            "role": {"enum": @role@},
            "states": {"type": "array", "items": {"$ref": "#/$defs/state"}},
            "ports": {"$ref": "#/$defs/ids"}, "lines": {"$ref": "#/$defs/ids"}
          }}}
      }
    },
    "subject": {
      "type": "object", "required": ["type", "id"], "additionalProperties": false,
      "properties": {"type": {"enum": @subject@}, "id": {"type": "string"}}},
    "verdict": {
      "type": "object",
      "required": ["rule", "outcome", "subject", "message", "sources", "place"],
      "additionalProperties": false,
      "properties": {
        "rule": {"type": "string"},
        "outcome": {"enum": @outcome@},
        "level": {"$ref": "#/$defs/level"},
        "subject": {"$ref": "#/$defs/subject"},
        "states": {"type": "array", "minItems": 1, "items": {
          "type": "object", "required": ["name"], "additionalProperties": false,
          "properties": {"name": {"$ref": "#/$defs/state"},
            "positions": {"type": "object", "additionalProperties": {"type": "string"}}}}},
        "point": {"type": "string"},
        "message": {"type": "string"},
        "witness": {
          "type": "object", "required": ["shape", "steps"], "additionalProperties": false,
          "properties": {
            "shape": {"enum": @shape@},
            "steps": {"type": "array", "minItems": 1, "items": {
              "type": "object", "required": ["type", "id", "place"], "additionalProperties": false,
              "properties": {
                "type": {"enum": ["component", "line", "port", "shaft"]},
                "id": {"type": "string"}, "from": {"type": "string"}, "to": {"type": "string"},
                "text": {"type": "string"}, "place": {"$ref": "#/$defs/place"}}}}}},
        "measured": {"$ref": "#/$defs/quantity"}, "required": {"$ref": "#/$defs/quantity"},
        "margin": {"$ref": "#/$defs/quantity"},
        "missing": {"$ref": "#/$defs/ids"},
        "remedy": {"type": "string"},
        "sources": {"type": "array", "items": {
          "type": "object", "required": ["work"], "additionalProperties": false,
          "properties": {"work": {"type": "string"}, "place": {"type": "string"}}}},
        "waived": {
          "type": "object", "required": ["reason", "by"], "additionalProperties": false,
          "properties": {"reason": {"type": "string"}, "by": {"type": "string"},
            "until": {"$ref": "#/$defs/date"}}},
        "follows": {
          "type": "object", "required": ["rule", "subject"], "additionalProperties": false,
          "properties": {"rule": {"type": "string"}, "subject": {"$ref": "#/$defs/subject"}}},
        "place": {"$ref": "#/$defs/place"}
      },
      "allOf": [
        {"if": {"properties": {"outcome": {"const": "fail"}}},
         "then": {"required": ["level", "remedy"]}, "else": {"not": {"required": ["level"]}}},
        {"if": {"properties": {"outcome": {"const": "inconclusive"}}},
         "then": {"required": ["missing"]}}
      ]
    }
  }
}
)json";

constexpr std::string_view rules_schema = R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:loopwright:rules:1",
  "title": "What `loopwright rules --format json` prints",
  "type": "object",
  "required": ["format", "rules"],
  "additionalProperties": false,
  "properties": {
    "format": {"const": "loopwright-rules/1"},
    "rules": {"type": "array", "items": {
      "type": "object",
      "required": ["id", "family", "question", "why", "decided", "data", "subject", "states",
        "level", "remedy", "sources"],
      "properties": {
        "id": {"type": "string", "pattern": "^[a-z]+(-[a-z]+)*$"},
        "level": {"enum": @level@},
        "thresholds": {"type": "array", "minItems": 1, "items": {
          "type": "object", "required": ["name", "doc", "value", "source"],
          "additionalProperties": false,
          "properties": {"name": {"type": "string"}, "doc": {"type": "string"},
            "value": {"type": "string"}, "source": {"type": "string", "minLength": 1}}}},
        "sources": {"type": "array", "minItems": 1, "items": {
          "type": "object", "required": ["work"],
          "properties": {"work": {"type": "string"}, "place": {"type": "string"}}}}
      },
      "additionalProperties": {"type": "string", "minLength": 1}
    }}
  }
}
)json";

constexpr std::string_view kinds_schema = R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:loopwright:kinds:1",
  "title": "What `loopwright kinds --format json` prints",
  "type": "object",
  "required": ["format", "kinds", "elements"],
  "additionalProperties": false,
  "properties": {
    "format": {"const": "loopwright-kinds/1"},
    "kinds": {"type": "array", "items": {
      "type": "object",
      "required": ["name", "title", "doc", "ports", "attributes", "passages", "failures"],
      "additionalProperties": false,
      "properties": {
        "name": {"type": "string"}, "title": {"type": "string"}, "doc": {"type": "string", "minLength": 1},
        "ports": {"type": "array", "items": {
          "type": "object", "required": ["letter", "doc"],
          "properties": {"letter": {"type": "string"}, "doc": {"type": "string", "minLength": 1}}}},
        "shaft_ends": {"type": "array", "items": {"type": "string"}},
        "attributes": {"$ref": "#/$defs/attributes"},
        "passages": {"type": "array", "items": {
          "type": "object", "required": ["from", "to", "class", "both_ways"],
          "properties": {
            "from": {"type": "string"}, "to": {"type": "string"},
            "class": {"enum": @passage@},
            "both_ways": {"type": "boolean"}}}},
        "failures": {"type": "array", "items": {
          "type": "object", "required": ["id", "doc"],
          "properties": {"id": {"type": "string"}, "doc": {"type": "string"}}}}
      }
    }},
    "elements": {"type": "array", "description": "what a circuit has beside components", "items": {
      "type": "object",
      "required": ["name", "in", "doc", "attributes"],
      "additionalProperties": false,
      "properties": {
        "name": {"type": "string"},
        "in": {"type": "string", "description": "the element that it stands in; component: any; file: it is a file's outermost"},
        "doc": {"type": "string", "minLength": 1},
        "attributes": {"$ref": "#/$defs/attributes"}
      }
    }}
  },
  "$defs": {
    "attributes": {"type": "array", "items": {
      "type": "object", "required": ["name", "type", "required", "doc"],
      "additionalProperties": false,
      "properties": {
        "name": {"type": "string"}, "type": {"type": "string"},
        "choices": {"type": "array", "items": {"type": "string"}},
        "range": {"type": "string", "minLength": 1},
        "default": {"type": "string"}, "default_source": {"type": "string", "minLength": 1},
        "required": {"type": "boolean"}, "doc": {"type": "string", "minLength": 1}}}}
  }
}
)json";

constexpr std::string_view layout_schema = R"json({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:loopwright:layout:1",
  "title": "What `loopwright draw --write-layout` writes and `--read-layout` takes",
  "description": "Where everything stands, in quarter modules (0.625 mm), x to the right, y down.",
  "type": "object",
  "required": ["format", "sheet", "symbols", "wires", "joints", "shafts", "labels", "frames"],
  "properties": {
    "format": {"const": "loopwright-layout/1"},
    "sheet": {"enum": @sheet@},
    "symbols": {"type": "array", "items": {
      "type": "object",
      "required": ["component", "at", "turns", "mirrored"],
      "properties": {
        "component": {"type": "string"},
        "port": {"type": "string", "description": "of the reservoir whose mark this is"},
        "at": {"$ref": "#/$defs/point"},
        "turns": {"enum": [0, 1, 2, 3], "description": "quarter turns clockwise, then mirrored left to right"},
        "mirrored": {"type": "boolean"}
      }
    }},
    "wires": {"type": "array", "items": {
      "type": "object",
      "required": ["line", "run"],
      "properties": {
        "line": {"type": "string"}, "run": {"$ref": "#/$defs/four"},
        "sag": {"enum": [1, -1], "description": "of a hose, drawn as an arc: down or right, up or left"}
      }
    }},
    "joints": {"type": "array", "items": {
      "type": "object",
      "required": ["line", "at"],
      "properties": {"line": {"type": "string"}, "at": {"$ref": "#/$defs/point"}}
    }},
    "shafts": {"type": "array", "items": {
      "type": "object",
      "required": ["shaft", "run"],
      "properties": {"shaft": {"type": "string"}, "run": {"$ref": "#/$defs/four"}}
    }},
    "labels": {"type": "array", "items": {
      "type": "object",
      "required": ["box", "right_aligned", "leader"],
      "properties": {
        "component": {"type": "string"}, "line": {"type": "string"},
        "assembly": {"type": "string"},
        "port": {"type": "string", "description": "of the assembly's frame: the inner port it stands for"},
        "box": {"$ref": "#/$defs/four"},
        "right_aligned": {"type": "boolean"},
        "leader": {"type": "array", "items": {"$ref": "#/$defs/point"}}
      },
      "oneOf": [{"required": ["component"]}, {"required": ["line"]}, {"required": ["assembly"]}]
    }},
    "frames": {"type": "array", "items": {
      "type": "object",
      "required": ["assembly", "box"],
      "properties": {"assembly": {"type": "string"}, "box": {"$ref": "#/$defs/four"}}
    }}
  },
  "$defs": {
    "number": {"type": "integer", "minimum": -1000000, "maximum": 1000000},
    "point": {"type": "array", "items": {"$ref": "#/$defs/number"}, "minItems": 2, "maxItems": 2},
    "four": {"type": "array", "items": {"$ref": "#/$defs/number"}, "minItems": 4, "maxItems": 4,
      "description": "x, y from where and x, y to where"}
  }
}
)json";

struct NamedSchema {
    std::string_view name = {};
    std::string_view text = {};
};

const NamedSchema schemas[] = {
    {"check", check_schema}, {"layout", layout_schema}, {"rules", rules_schema},
    {"kinds", kinds_schema}, {"solve", solve_schema()}, {"readings", readings_schema()},
};

}  // namespace

std::vector<std::string_view> json_schema_names() {
    std::vector<std::string_view> names;
    for (const NamedSchema& schema : schemas) names.push_back(schema.name);
    return names;
}

std::string json_schema(std::string_view name) {
    for (const NamedSchema& schema : schemas)
        if (schema.name == name) return with_words(schema.text);
    return {};
}

}  // namespace loopwright
