#include <loopwright/render/writers/catalogue.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>

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
    Json thresholds = Json::array();
    for (const Threshold& threshold : rule.thresholds)
        thresholds.push_back({{"name", threshold.name},
                              {"doc", threshold.doc},
                              {"value", format_quantity(threshold.value, threshold.dimension)},
                              {"source", source_text(threshold.source)}});
    if (!thresholds.empty()) json["thresholds"] = std::move(thresholds);
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
    if (attribute.type != AttributeType::count && attribute.type != AttributeType::quantity)
        return text;
    if (const std::string range = range_of(attribute); !range.empty())
        text += fmt::format(", {}", range);
    if (attribute.type == AttributeType::quantity)
        text += fmt::format(", such as {}", example_of(attribute));
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

Json json_of(std::span<const AttributeSpec> specs) {
    Json attributes = Json::array();
    for (const AttributeSpec& attribute : specs) {
        Json one{{"name", attribute.name}, {"type", type_word(attribute)}};
        if (!attribute.choices.empty()) {
            Json choices = Json::array();
            for (const std::string_view choice : attribute.choices) choices.push_back(choice);
            one["choices"] = std::move(choices);
        }
        const bool number =
            attribute.type == AttributeType::quantity || attribute.type == AttributeType::count;
        if (const std::string range = range_of(attribute); number && !range.empty())
            one["range"] = range;
        if (!attribute.default_text.empty()) {
            one["default"] = attribute.default_text;
            one["default_source"] = attribute.default_source;
        }
        one["required"] = attribute.required;
        one["doc"] = attribute.doc;
        attributes.push_back(std::move(one));
    }
    return attributes;
}

Json json_of(const ElementSpec& element) {
    return {{"name", element.name},
            {"in", element.in.empty() ? "file" : element.in},
            {"doc", element.doc},
            {"attributes", json_of(element.attributes)}};
}

/// Writes a page as text or markdown.
class PageWriter {
  public:
    explicit PageWriter(CatalogueFormat format) : markdown_(format == CatalogueFormat::markdown) {}

    bool markdown() const { return markdown_; }
    void add(std::string_view words) { text_ += words; }
    void heading(std::string_view words) {
        text_ += markdown_ ? fmt::format("\n**{}**\n\n", words) : fmt::format("\n{}\n", words);
    }
    void item(std::string_view words) {
        text_ += fmt::format("{}{}\n", markdown_ ? "- " : "  ", words);
    }
    void attributes(std::span<const AttributeSpec> specs) {
        if (!specs.empty()) heading("Attributes");
        for (const AttributeSpec& attribute : specs)
            item(fmt::format("{}: {}; {}; {}", attribute.name, attribute.doc, value_text(attribute),
                             default_text(attribute)));
    }
    std::string take() { return std::move(text_); }

  private:
    bool markdown_ = false;
    std::string text_;
};

std::string place_of(const ElementSpec& element) {
    return element.in.empty()          ? "the outermost element of a file"
           : element.in == "circuit"   ? "in a circuit"
           : element.in == "component" ? "in a component"
                                       : fmt::format("in {}", element.in);
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
    json["attributes"] = json_of(kind.attributes);
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
    for (const Threshold& threshold : rule.thresholds) {
        const std::string words = fmt::format("{}: {}; {} ({})", threshold.name, threshold.doc,
                                              format_quantity(threshold.value, threshold.dimension),
                                              source_text(threshold.source));
        text += markdown ? fmt::format("\n**Threshold.** {}\n", words)
                         : fmt::format("\nThreshold\n  {}\n", words);
    }
    for (const Citation& source : rule.sources)
        text += markdown ? fmt::format("\n**Source.** {}\n", source_text(source))
                         : fmt::format("\nSource\n  {}\n", source_text(source));
    return text;
}

std::string kinds_list(std::span<const Kind* const> kinds, std::span<const ElementSpec> elements,
                       CatalogueFormat format) {
    if (format == CatalogueFormat::json) {
        Json list = Json::array();
        for (const Kind* kind : kinds) list.push_back(json_of(*kind));
        Json others = Json::array();
        for (const ElementSpec& element : elements) others.push_back(json_of(element));
        return Json{{"format", "loopwright-kinds/1"},
                    {"kinds", std::move(list)},
                    {"elements", std::move(others)}}
                   .dump(2) +
               '\n';
    }
    if (format == CatalogueFormat::markdown) {
        std::string text = "# Kinds of component\n";
        for (const Kind* kind : kinds) text += '\n' + kind_page(*kind, format);
        text += "\n# Other elements\n";
        for (const ElementSpec& element : elements)
            text += '\n' + element_page({&element, 1}, format);
        return text;
    }
    std::string text;
    std::size_t longest = 0;
    for (const Kind* kind : kinds) longest = std::max(longest, kind->name.size());
    for (const Kind* kind : kinds)
        text += fmt::format("{:<{}} {}\n", kind->name, longest + 1, kind->doc);
    text += "\nOther elements\n";
    for (const ElementSpec& element : elements)
        text += fmt::format("{:<{}} {} ({})\n", element.name, longest + 1, element.doc,
                            place_of(element));
    return text;
}

std::string kind_page(const Kind& kind, CatalogueFormat format) {
    if (format == CatalogueFormat::json) return json_of(kind).dump(2) + '\n';
    PageWriter page(format);
    page.add(page.markdown() ? fmt::format("## {}\n\n{}\n", kind.name, kind.doc)
                             : fmt::format("{}: {}\n{}\n", kind.name, kind.title, kind.doc));
    page.heading("Ports");
    if (kind.children != Children::no) page.item("as the file declares them");
    if (kind.turns && kind.ends.empty()) page.item("a shaft end");
    for (const std::string_view end : kind.ends)
        page.item(fmt::format("{}: a shaft end, joined as ID.{}", end, end));
    for (const PortSpec& port : kind.ports)
        page.item(fmt::format("{}: {}{}{}", port.letter, port.doc, when_text(port.when),
                              when_text(port.also)));
    page.attributes(kind.attributes);
    if (!kind.passages.empty()) page.heading("Passages");
    for (const PassageSpec& passage : kind.passages) page.item(passage_text(passage));
    if (!kind.failures.empty()) page.heading("Failure modes");
    for (const FailureMode& failure : kind.failures)
        page.item(fmt::format("{}: {}", failure.id, failure.doc));
    return page.take();
}

std::string element_page(std::span<const ElementSpec> elements, CatalogueFormat format) {
    if (format == CatalogueFormat::json) {
        Json list = Json::array();
        for (const ElementSpec& element : elements) list.push_back(json_of(element));
        return list.dump(2) + '\n';
    }
    PageWriter page(format);
    bool first = true;
    for (const ElementSpec& element : elements) {
        if (!first) page.add("\n");
        first = false;
        page.add(
            page.markdown()
                ? fmt::format("## {} ({})\n\n{}\n", element.name, place_of(element), element.doc)
                : fmt::format("{}: {}\n{}\n", element.name, place_of(element), element.doc));
        page.attributes(element.attributes);
    }
    return page.take();
}

}  // namespace loopwright
