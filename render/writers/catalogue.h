#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/parser/kinds/elements.h>
#include <loopwright/parser/kinds/kind.h>

/// The catalogues of rules and kinds as text, markdown and JSON; no circuit is needed.
namespace loopwright {

enum class CatalogueFormat : std::uint8_t { text, markdown, json };

std::string rules_list(std::span<const RuleInfo* const> rules, CatalogueFormat format);
std::string rule_page(const RuleInfo& rule, CatalogueFormat format);

/// All kinds of component, and the elements beside them.
std::string kinds_list(std::span<const Kind* const> kinds, std::span<const ElementSpec> elements,
                       CatalogueFormat format);
std::string kind_page(const Kind& kind, CatalogueFormat format);
/// Elements of one name, one for each place where it stands.
std::string element_page(std::span<const ElementSpec> elements, CatalogueFormat format);

/// The names of the JSON schemas: "check", "layout", "rules", "kinds".
std::vector<std::string_view> json_schema_names();
/// The JSON schema of that name, its lists of words out of the tables; or empty.
std::string json_schema(std::string_view name);

}  // namespace loopwright
