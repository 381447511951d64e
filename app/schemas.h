#pragma once

#include <string>
#include <string_view>
#include <vector>

/// The schemas of all file formats, made out of the program's tables.
namespace loopwright::app {

/// Their names, as `loopwright schema` takes them.
std::vector<std::string_view> schema_names();

/// The schema of that name, or an empty text.
std::string schema_text(std::string_view name);

/// How the file of a schema ends: "xsd", or "schema.json" for what describes JSON.
std::string_view schema_ending(std::string_view name);

}  // namespace loopwright::app
