#include <loopwright/render/writers/catalogue.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>

namespace loopwright {

namespace {

using Json = nlohmann::ordered_json;

std::string source_text(const Citation& source) {
    return source.place.empty() ? std::string(source.work)
                                : fmt::format("{}, {}", source.work, source.place);
}

struct Field {
    std::string_view key = {};
    std::string_view heading = {};
    std::string text = {};
};

std::vector<Field> fields_of(const RuleInfo& rule) {
    std::vector<Field> fields{
        {"question", "Question", std::string(rule.question)},
        {"why", "Why it matters", std::string(rule.why)},
        {"decided", "How it is decided", std::string(rule.decided)},
        {"data", "Data read", std::string(rule.data)},
        {"subject", "Asked of", std::string(rule.subject)},
        {"states", "Asked in", std::string(rule.states)},
        {"level", "Highest level", std::string(name(rule.level))},
        {"remedy", "Remedy", std::string(rule.remedy)},
    };
    return fields;
}

Json json_of(const RuleInfo& rule) {
    Json json{{"id", rule.id}, {"family", rule.family}};
    for (const Field& field : fields_of(rule)) json[std::string(field.key)] = field.text;
    Json sources = Json::array();
    for (const Citation& source : rule.sources) {
        Json one{{"work", source.work}};
        if (!source.place.empty()) one["place"] = source.place;
        sources.push_back(std::move(one));
    }
    json["sources"] = std::move(sources);
    return json;
}

std::string_view type_word(const AttributeSpec& attribute) {
    switch (attribute.type) {
        case AttributeType::quantity:
            return name(attribute.dimension);
        case AttributeType::count:
            return "whole number";
        case AttributeType::yes_no:
            return "yes or no";
        case AttributeType::choice:
            return "one of";
        case AttributeType::date:
            return "date, such as 2026-11-25";
        case AttributeType::text:
            return "text";
    }
    return {};
}

std::string value_text(const AttributeSpec& attribute) {
    std::string text(type_word(attribute));
    for (std::size_t i = 0; i < attribute.choices.size(); ++i)
        text += fmt::format("{} {}", i == 0 ? "" : ",", attribute.choices[i]);
    if (attribute.type == AttributeType::count)
        text += fmt::format(" from {} to {}", attribute.least, attribute.most);
    if (attribute.type == AttributeType::quantity)
        text += fmt::format(", such as {}", example(attribute.dimension));
    return text;
}

std::string default_text(const AttributeSpec& attribute) {
    if (attribute.required) return "required";
    if (attribute.default_text.empty()) return "unknown if not given";
    return fmt::format("default {} ({})", attribute.default_text, attribute.default_source);
}

std::string when_text(const When& when) {
    return when.attribute.empty() ? std::string{}
                                  : fmt::format(" where {}={}", when.attribute, when.is);
}

std::string passage_text(const PassageSpec& passage) {
    return fmt::format("{} {} {}: {}{}{}", passage.from, passage.both_ways ? "<->" : "->",
                       passage.to, name(passage.passage), when_text(passage.when),
                       when_text(passage.also));
}

Json json_of(const Kind& kind) {
    Json json{{"name", kind.name}, {"title", kind.title}, {"doc", kind.doc}};
    Json ports = Json::array();
    for (const PortSpec& port : kind.ports)
        ports.push_back({{"letter", port.letter}, {"doc", port.doc}});
    json["ports"] = std::move(ports);
    Json ends = Json::array();
    for (const std::string_view end : kind.ends) ends.push_back(end);
    json["shaft_ends"] = std::move(ends);
    Json attributes = Json::array();
    for (const AttributeSpec& attribute : kind.attributes) {
        Json one{{"name", attribute.name}, {"type", type_word(attribute)}};
        if (!attribute.choices.empty()) {
            Json choices = Json::array();
            for (const std::string_view choice : attribute.choices) choices.push_back(choice);
            one["choices"] = std::move(choices);
        }
        if (!attribute.default_text.empty()) {
            one["default"] = attribute.default_text;
            one["default_source"] = attribute.default_source;
        }
        one["required"] = attribute.required;
        one["doc"] = attribute.doc;
        attributes.push_back(std::move(one));
    }
    json["attributes"] = std::move(attributes);
    Json passages = Json::array();
    for (const PassageSpec& passage : kind.passages)
        passages.push_back({{"from", passage.from},
                            {"to", passage.to},
                            {"class", name(passage.passage)},
                            {"both_ways", passage.both_ways}});
    json["passages"] = std::move(passages);
    Json failures = Json::array();
    for (const FailureMode& failure : kind.failures)
        failures.push_back({{"id", failure.id}, {"doc", failure.doc}});
    json["failures"] = std::move(failures);
    return json;
}

}  // namespace

std::string rules_list(std::span<const RuleInfo* const> rules, CatalogueFormat format) {
    if (format == CatalogueFormat::json) {
        Json list = Json::array();
        for (const RuleInfo* rule : rules) list.push_back(json_of(*rule));
        return Json{{"format", "loopwright-rules/1"}, {"rules", std::move(list)}}.dump(2) + '\n';
    }
    std::string text;
    if (format == CatalogueFormat::markdown) {
        text = "# Rules\n";
        for (const RuleInfo* rule : rules) text += '\n' + rule_page(*rule, format);
        return text;
    }
    std::string_view family;
    for (const RuleInfo* rule : rules) {
        if (rule->family != family)
            text += fmt::format("{}{}\n", text.empty() ? "" : "\n", rule->family);
        family = rule->family;
        text += fmt::format("  {:<18} {}\n", rule->id, rule->question);
    }
    return text;
}

std::string rule_page(const RuleInfo& rule, CatalogueFormat format) {
    if (format == CatalogueFormat::json) return json_of(rule).dump(2) + '\n';
    const bool markdown = format == CatalogueFormat::markdown;
    std::string text = markdown ? fmt::format("## {}\n", rule.id) : fmt::format("{}\n", rule.id);
    for (const Field& field : fields_of(rule))
        text += markdown ? fmt::format("\n**{}.** {}\n", field.heading, field.text)
                         : fmt::format("\n{}\n  {}\n", field.heading, field.text);
    for (const Citation& source : rule.sources)
        text += markdown ? fmt::format("\n**Source.** {}\n", source_text(source))
                         : fmt::format("\nSource\n  {}\n", source_text(source));
    return text;
}

std::string kinds_list(std::span<const Kind* const> kinds, CatalogueFormat format) {
    if (format == CatalogueFormat::json) {
        Json list = Json::array();
        for (const Kind* kind : kinds) list.push_back(json_of(*kind));
        return Json{{"format", "loopwright-kinds/1"}, {"kinds", std::move(list)}}.dump(2) + '\n';
    }
    std::string text;
    if (format == CatalogueFormat::markdown) {
        text = "# Kinds of component\n";
        for (const Kind* kind : kinds) text += '\n' + kind_page(*kind, format);
        return text;
    }
    std::size_t longest = 0;
    for (const Kind* kind : kinds) longest = std::max(longest, kind->name.size());
    for (const Kind* kind : kinds)
        text += fmt::format("{:<{}} {}\n", kind->name, longest + 1, kind->doc);
    return text;
}

std::string kind_page(const Kind& kind, CatalogueFormat format) {
    if (format == CatalogueFormat::json) return json_of(kind).dump(2) + '\n';
    const bool markdown = format == CatalogueFormat::markdown;
    const std::string_view item = markdown ? "- " : "  ";
    const auto heading = [&](std::string_view words) {
        return markdown ? fmt::format("\n**{}**\n\n", words) : fmt::format("\n{}\n", words);
    };
    std::string text = markdown ? fmt::format("## {}\n\n{}\n", kind.name, kind.doc)
                                : fmt::format("{}: {}\n{}\n", kind.name, kind.title, kind.doc);
    text += heading("Ports");
    if (kind.children != Children::no) text += fmt::format("{}as the file declares them\n", item);
    if (kind.turns && kind.ends.empty()) text += fmt::format("{}a shaft end\n", item);
    for (const std::string_view end : kind.ends)
        text += fmt::format("{}{}: a shaft end, joined as ID.{}\n", item, end, end);
    for (const PortSpec& port : kind.ports)
        text += fmt::format("{}{}: {}{}{}\n", item, port.letter, port.doc, when_text(port.when),
                            when_text(port.also));
    if (!kind.attributes.empty()) text += heading("Attributes");
    for (const AttributeSpec& attribute : kind.attributes)
        text += fmt::format("{}{}: {}; {}; {}\n", item, attribute.name, attribute.doc,
                            value_text(attribute), default_text(attribute));
    if (!kind.passages.empty()) text += heading("Passages");
    for (const PassageSpec& passage : kind.passages)
        text += fmt::format("{}{}\n", item, passage_text(passage));
    if (!kind.failures.empty()) text += heading("Failure modes");
    for (const FailureMode& failure : kind.failures)
        text += fmt::format("{}{}: {}\n", item, failure.id, failure.doc);
    return text;
}

}  // namespace loopwright
