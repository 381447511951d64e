#pragma once

#include <span>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include <loopwright/base/diagnostic.h>
#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/writers/tally.h>

/// What the machine formats of `check` have in common; for the writers alone, not installed.
namespace loopwright::json {

using Json = nlohmann::ordered_json;

/// {"file", "line", "column", "end_line", "end_column", "within"}
Json place(const Place& place);
/// {"value", "unit", "text"}
Json quantity(const Measure& measure);
/// {"work", "place"}
Json citation(const Citation& source);
/// The figures that rules hold things against, with their sources.
Json thresholds(std::span<const ThresholdInUse> thresholds);

/// "title", "drawing", "revision"
void put_title(const Circuit& circuit, Json& json);
/// "loops", "open_parts", "remarks"
void put_structure(const Circuit& circuit, const Structure& structure, Json& json);

/// {"type", "id"}
Json subject(const Subject& subject);
/// "states", in which the verdict holds, and "point", which decides
void put_states(const Circuit& circuit, const Verdict& verdict, Json& json);
/// "measured", "required", "margin", "missing"
void put_figures(const Verdict& verdict, Json& json);
/// "waived", "follows"
void put_standing(const Verdict& verdict, Json& json);
/// "from", "to", "text": how the way of a witness passes an element
void put_passage(const Circuit& circuit, const Step& step, Json& json);
/// The id of a step's element.
std::string_view id_of(const Circuit& circuit, const Step& step);

/// How many needs came out how.
Json summary(const Tally& sum);

/// The text; bytes that are no UTF-8 become the replacement character, as JSON cannot hold them.
/// `indent` as nlohmann's `dump`: -1 for a single line.
std::string dumped(const Json& json, int indent = 2);

}  // namespace loopwright::json
