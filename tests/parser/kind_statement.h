#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/report.h>
#include <loopwright/tests/support/circuit_text.h>

/// A kind in words, as the tests state it by hand.
///
///     A>B  one way     A<>B  both ways     {A B}  one node
namespace loopwright::testing {

inline std::string_view word(Shift shift) {
    switch (shift) {
        case Shift::never:
            return "";
        case Shift::position:
            return " by position";
        case Shift::hand:
            return " by hand";
        case Shift::pressure:
            return " by pressure";
        case Shift::pressure_centred:
            return " when centred";
        case Shift::higher_inlet:
            return " from the higher inlet";
        case Shift::pilot_opens:
            return " opened by pilot";
        case Shift::pilot_shuts:
            return " shut by pilot";
        case Shift::pilot_unloads:
            return " unloaded by pilot";
    }
    return " ?";
}

inline std::string_view word(PassageClass passage) {
    switch (passage) {
        case PassageClass::joined:
            return "joined";
        case PassageClass::one_way:
            return "check";
        case PassageClass::pressure_opened:
            return "opened";
        case PassageClass::reduced:
            return "reduced";
        case PassageClass::switched:
            return "switched";
        case PassageClass::metering:
            return "metering";
        case PassageClass::divider:
            return "leg";
        case PassageClass::displacement:
            return "displacement";
        case PassageClass::leakage:
            return "leakage";
        case PassageClass::element:
            return "element";
    }
    return "?";
}

/// Ports, then a line a node of several ports, then one a passage, sorted.
inline std::string statement(const std::string& element) {
    const Circuit circuit = circuit_with(element);
    if (circuit.components.size() != 1) return "not one component";
    const Component& part = circuit.components.front();
    std::string ports;
    std::map<Index, Index> node;
    for (Index port = part.ports.begin; port < part.ports.end; ++port) {
        ports += fmt::format("{}{}", ports.empty() ? "" : " ", circuit.ports[port].letter);
        node[port] = port;
    }
    std::vector<std::string> lines;
    for (const Passage& one : circuit.passages_of(part)) {
        if (one.passage == PassageClass::joined) {
            EXPECT_TRUE(one.both_ways);
            const Index from = node[one.from];
            const Index to = node[one.to];
            for (auto& [port, its] : node) its = its == from ? to : its;
            continue;
        }
        std::string line =
            fmt::format("{}{}{} {}{}", circuit.ports[one.from].letter, one.both_ways ? "<>" : ">",
                        circuit.ports[one.to].letter, word(one.passage), word(one.shift));
        if (one.position != none) line += fmt::format(" {}", circuit.positions[one.position].id);
        if (one.passage == PassageClass::one_way || one.passage == PassageClass::pressure_opened)
            line += std::isnan(one.opening) ? " at ?" : fmt::format(" at {} Pa", one.opening);
        lines.push_back(line);
    }
    std::sort(lines.begin(), lines.end());
    std::map<Index, std::string> nodes;
    for (const auto& [port, its] : node)
        nodes[its] +=
            fmt::format("{}{}", nodes[its].empty() ? "" : " ", circuit.ports[port].letter);
    std::string text = ports;
    for (const auto& [its, letters] : nodes)
        if (letters.find(' ') != std::string::npos) text += fmt::format("\n{{{}}}", letters);
    for (const std::string& line : lines) text += "\n" + line;
    return text;
}

inline std::string machine(std::string_view kind, std::string_view attributes) {
    return statement(fmt::format("<{} id=\"X1\" {}/>", kind, attributes));
}

/// "name type default" of an attribute.
inline std::string spelled(const AttributeSpec& spec) {
    std::string type;
    switch (spec.type) {
        case AttributeType::quantity:
            type = name(spec.dimension);
            break;
        case AttributeType::count:
            type = fmt::format("{:.0f}..{:.0f}", spec.least, spec.most);
            break;
        case AttributeType::yes_no:
            type = "yes|no";
            break;
        case AttributeType::choice:
            for (const std::string_view choice : spec.choices)
                type += fmt::format("{}{}", type.empty() ? "" : "|", choice);
            break;
        case AttributeType::date:
            type = "date";
            break;
        case AttributeType::text:
            type = "text";
            break;
    }
    return fmt::format("{}: {}{}", spec.name, type,
                       spec.default_text.empty() ? "" : fmt::format(" = {}", spec.default_text));
}

/// Part, whether it turns, shaft ends, children and attributes of a kind.
struct Statement {
    Part part = Part::plumbing;
    bool turns = false;
    Children children = Children::no;
    std::vector<std::string> attributes = {};
    std::vector<std::string_view> ends = {};
};

/// What kind_statements_machines_test.cpp states.
std::map<std::string_view, Statement> machine_statements();
/// What kind_statements_fittings_test.cpp states.
std::map<std::string_view, Statement> fitting_statements();
/// What kind_statements_valves_test.cpp states.
std::map<std::string_view, Statement> valve_statements();

inline bool takes(std::string_view kind, std::string_view attribute, std::string_view text) {
    const auto specs = find_kind(kind)->attributes;
    const auto spec = std::find_if(specs.begin(), specs.end(),
                                   [attribute](const auto& one) { return one.name == attribute; });
    AttributeValue value;
    Words words;
    return read_value(*spec, text, value, words);
}

}  // namespace loopwright::testing
