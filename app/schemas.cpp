#include <loopwright/app/schemas.h>

#include <loopwright/parser/reader.h>
#include <loopwright/render/writers/catalogue.h>
#include <loopwright/rules/thresholds.h>

namespace loopwright::app {

namespace {

/// Those of the XML files; the names of all others are the writers'.
struct XmlSchema {
    std::string_view name = {};
    std::string (*text)() = nullptr;
};
constexpr XmlSchema of_xml[] = {{"circuit", [] { return std::string(circuit_schema()); }},
                                {"thresholds", [] { return std::string(thresholds_schema()); }}};

}  // namespace

std::vector<std::string_view> schema_names() {
    std::vector<std::string_view> names;
    for (const XmlSchema& one : of_xml) names.push_back(one.name);
    const std::vector<std::string_view> others = json_schema_names();
    names.insert(names.end(), others.begin(), others.end());
    return names;
}

std::string schema_text(std::string_view name) {
    for (const XmlSchema& one : of_xml)
        if (one.name == name) return one.text();
    return json_schema(name);
}

std::string_view schema_ending(std::string_view name) {
    for (const XmlSchema& one : of_xml)
        if (one.name == name) return "xsd";
    return "schema.json";
}

}  // namespace loopwright::app
