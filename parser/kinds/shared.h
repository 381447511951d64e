#pragma once

#include <loopwright/parser/kinds/kind.h>

/// Attributes and words that several kinds share.
namespace loopwright::kind_parts {

inline constexpr std::string_view practice = "common practice, no source";
inline constexpr std::string_view not_shown = "what the file does not show is not there";

constexpr AttributeSpec pressure(std::string_view name, std::string_view doc) {
    return {.name = name,
            .type = AttributeType::quantity,
            .dimension = Dimension::pressure,
            .least = 0.0,
            .doc = doc};
}
/// Of a check beside another valve.
constexpr AttributeSpec check_spring() {
    return pressure("check-opening-pressure",
                    "pressure that the spring of its check holds; not given: none");
}
constexpr AttributeSpec positive(std::string_view name, Dimension dimension, std::string_view doc) {
    return {.name = name,
            .type = AttributeType::quantity,
            .dimension = dimension,
            .least = 0.0,
            .least_included = false,
            .doc = doc};
}
/// With an example of its own, where that of the dimension would look odd.
constexpr AttributeSpec like(std::string_view example, AttributeSpec spec) {
    spec.example = example;
    return spec;
}
constexpr AttributeSpec yes_no(std::string_view name, std::string_view doc,
                               std::string_view default_text = "no") {
    return {.name = name,
            .type = AttributeType::yes_no,
            .default_text = default_text,
            .default_source = not_shown,
            .doc = doc};
}
constexpr AttributeSpec choice(std::string_view name, std::span<const std::string_view> choices,
                               std::string_view default_text, std::string_view doc) {
    return {.name = name,
            .type = AttributeType::choice,
            .choices = choices,
            .default_text = default_text,
            .default_source = default_text.empty() ? std::string_view{} : not_shown,
            .doc = doc};
}

/// Of what oil flows through: what was measured at one point.
inline constexpr AttributeSpec rated_flow = positive("flow", Dimension::flow, "rated flow");
inline constexpr AttributeSpec clean_drop =
    positive("pressure-drop", Dimension::pressure, "pressure drop at the rated flow when clean");
inline constexpr AttributeSpec drop_viscosity = positive(
    "viscosity", Dimension::kinematic_viscosity, "viscosity of the oil at which that drop holds");
inline constexpr AttributeSpec bears = pressure("max-pressure", "highest pressure that it bears");

/// Of every valve with a setting.
inline constexpr AttributeSpec tolerance =
    pressure("tolerance", "how far the setting may be off, either way");
inline constexpr AttributeSpec adjustable =
    yes_no("adjustable", "whether the setting can be changed on the machine", "yes");
inline constexpr FailureMode setting_failures[] = {
    {.id = "stuck-open", .doc = "holds no pressure"},
    {.id = "stuck-closed", .doc = "does not open at its setting"},
    {.id = "set-high", .doc = "opens too late"},
    {.id = "set-low", .doc = "opens too early"},
};

/// Of valves opened and closed by hand.
inline constexpr std::string_view hand_positions[] = {"open", "closed"};
inline constexpr AttributeSpec locked = yes_no("locked", "whether it is secured in that position");
inline constexpr AttributeSpec position_switch =
    yes_no("switched", "whether a switch reports its position, so that an interlock can read it");

inline constexpr std::string_view rotations[] = {"clockwise", "counter-clockwise"};
inline constexpr std::string_view drains[] = {"internal", "external"};
inline constexpr std::string_view controls[] = {
    "none", "manual", "hydraulic", "electric", "pressure-compensated", "load-sensing"};
inline constexpr std::string_view designs[] = {"swashplate", "bent-axis", "gear", "vane",
                                               "radial-piston"};

inline constexpr std::string_view pilot_sources[] = {"internal", "external"};

inline constexpr When internal_pilot = {"pilot", "internal"};
inline constexpr When external_pilot = {"pilot", "external"};
inline constexpr When one_direction = {"flow-directions", "1"};
inline constexpr When two_directions = {"flow-directions", "2"};
inline constexpr When external_drain = {"drain", "external"};
inline constexpr When internal_drain = {"drain", "internal"};
inline constexpr When one_case_port = {"case-ports", "1"};
inline constexpr When several_case_ports = {"case-ports", "2|3"};
inline constexpr When three_case_ports = {"case-ports", "3"};

constexpr PortSpec case_port(std::string_view letter, When count) {
    return {.letter = letter,
            .use = PortUse::drain,
            .when = external_drain,
            .also = count,
            .doc = "housing drain; all case ports of a machine are one housing"};
}
constexpr PassageSpec housing(std::string_view from, std::string_view to, When count) {
    return {.from = from,
            .to = to,
            .passage = PassageClass::joined,
            .both_ways = true,
            .when = external_drain,
            .also = count};
}
constexpr PassageSpec leakage(std::string_view from, std::string_view to, When when, When also) {
    return {.from = from, .to = to, .passage = PassageClass::leakage, .when = when, .also = also};
}

/// Past the pistons from one working port to the other, whichever is the higher.
constexpr PassageSpec slip(When when, When also) {
    return {.from = "A",
            .to = "B",
            .passage = PassageClass::leakage,
            .both_ways = true,
            .when = when,
            .also = also};
}

}  // namespace loopwright::kind_parts
