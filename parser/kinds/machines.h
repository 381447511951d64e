#pragma once

#include <array>
#include <cstddef>

#include <loopwright/parser/kinds/shared.h>

/// What pumps, motors, pump/motor units and other actuators have in common. A machine's attributes
/// are lists put behind one another with `joined`.
namespace loopwright::kind_parts {

template <std::size_t... Sizes>
constexpr auto joined(const AttributeSpec (&... lists)[Sizes]) {
    std::array<AttributeSpec, (Sizes + ...)> all{};
    std::size_t at = 0;
    const auto add = [&](const auto& list) {
        for (const AttributeSpec& spec : list) all[at++] = spec;
    };
    (add(lists), ...);
    return all;
}

constexpr AttributeSpec quantity(std::string_view name, Dimension dimension, std::string_view doc) {
    return {.name = name,
            .type = AttributeType::quantity,
            .dimension = dimension,
            .least = 0.0,
            .doc = doc};
}
/// A part of one: 0 to 100 %.
constexpr AttributeSpec share(std::string_view name, std::string_view doc,
                              std::string_view default_text = {},
                              std::string_view default_source = {}) {
    return {.name = name,
            .type = AttributeType::quantity,
            .least = 0.0,
            .most = 1.0,
            .default_text = default_text,
            .default_source = default_source,
            .doc = doc};
}
constexpr AttributeSpec flow_directions(std::string_view default_text,
                                        std::string_view default_source, std::string_view doc) {
    return {.name = "flow-directions",
            .type = AttributeType::count,
            .least = 1,
            .most = 2,
            .default_text = default_text,
            .default_source = default_source,
            .doc = doc};
}

inline constexpr std::string_view rest_displacements[] = {"zero", "least", "largest"};

inline constexpr When variable = {"variable", "yes"};

/// The pilot ports of a displacement control.
constexpr PortSpec control_port(std::string_view letter, std::string_view count,
                                std::string_view doc) {
    return {.letter = letter,
            .use = PortUse::pilot,
            .when = variable,
            .also = {"pilot-ports", count},
            .doc = doc};
}
inline constexpr PortSpec control_x =
    control_port("X", "1", "pressure that sets the displacement, or that the control senses");
inline constexpr PortSpec control_x1 = control_port(
    "X1", "2", "pressure that sets the displacement one way; above X2: out at A, or larger");
inline constexpr PortSpec control_x2 =
    control_port("X2", "2", "pressure that sets the displacement the other way");

inline constexpr AttributeSpec machine_size[] = {
    positive("displacement", Dimension::displacement, "largest displacement"),
    {.name = "min-displacement",
     .type = AttributeType::quantity,
     .dimension = Dimension::displacement,
     .doc = "smallest displacement of a variable machine that does not reach zero"},
    yes_no("variable", "whether the displacement can be changed"),
};

inline constexpr AttributeSpec machine_build[] = {
    choice("design", designs, {}, "construction of the displacement machine"),
    choice(
        "control", controls, "none",
        "how the displacement is set: by hand, by a hydraulic pilot, in proportion to a current, "
        "by the pressure at the outlet, or by the pressure of the load"),
    choice("rotation", rotations, {}, "sense of rotation, looking at the machine's own shaft end"),
    choice("drain", drains, "internal",
           "external: leakage leaves by the case ports; internal: to the inlet or lower port"),
    {.name = "case-ports",
     .type = AttributeType::count,
     .least = 1,
     .most = 3,
     .default_text = "1",
     .default_source = not_shown,
     .doc = "number of case ports: one is L, several are L1, L2, L3"},
    pressure("case-pressure", "highest pressure that the housing bears all the time"),
    pressure("max-pressure", "highest pressure at a working port"),
    positive("max-speed", Dimension::speed, "highest speed of the shaft"),
};

/// Pressures beside `max-pressure`.
inline constexpr AttributeSpec machine_pressures[] = {
    pressure("rated-pressure", "pressure for continuous work; its efficiencies are stated there"),
    pressure("peak-pressure", "highest pressure in short peaks"),
    pressure("burst-pressure", "pressure at which it bursts"),
    pressure("peak-case-pressure", "highest pressure that the housing bears for a short time"),
    pressure("seal-pressure",
             "highest pressure that the shaft seal bears in a machine drained inside"),
    pressure("low-side-pressure", "least pressure that the low side needs at the highest speed"),
};

/// Of machines that pump in a loop.
inline constexpr AttributeSpec working_pressure =
    pressure("working-pressure", "highest pressure between the working ports in normal work");

inline constexpr AttributeSpec torque_limiter =
    positive("torque-limiter", Dimension::torque,
             "torque of its shaft at which its torque limiter (constant power at one speed) takes "
             "the displacement back; not given: it has none");
inline constexpr AttributeSpec anti_stall =
    yes_no("anti-stall",
           "whether a control takes the displacement back so that the prime mover gives no more "
           "than its rated torque and power");

inline constexpr AttributeSpec machine_shaft[] = {
    positive("rated-speed", Dimension::speed, "speed at which its efficiencies are stated"),
    quantity("min-speed", Dimension::speed, "least speed at which it works steadily"),
    positive("max-speed-at-min-displacement", Dimension::speed,
             "highest speed at the smallest displacement"),
    positive("max-torque", Dimension::torque, "highest torque of its shaft end"),
    quantity("inertia", Dimension::inertia, "moment of inertia of what turns in it"),
};

inline constexpr AttributeSpec machine_losses[] = {
    share("volumetric-efficiency", "at rated pressure, speed and viscosity, largest displacement"),
    share("torque-efficiency",
          "hydro-mechanical efficiency, at rated pressure, speed and viscosity"),
    positive("rated-viscosity", Dimension::kinematic_viscosity,
             "viscosity at which its efficiencies are stated"),
    quantity("slip-coefficient", Dimension::ratio, "Wilson's coefficient of slip"),
    quantity("drag-coefficient", Dimension::ratio, "Wilson's coefficient of viscous drag"),
    quantity("friction-coefficient", Dimension::ratio, "Wilson's coefficient of friction"),
    quantity("leakage-coefficient", Dimension::leakage,
             "what leaks from a side over its pressure, where no efficiency is known"),
    share("drag-share",
          "share of viscous drag in the loss of torque at the rated point, where only the "
          "torque efficiency is known",
          "50 %", practice),
    share("case-leakage-share", "share of the leakage that goes to the housing", "100 %",
          "the safe side for the charge balance of a piston machine; no source"),
    quantity("case-flow", Dimension::flow, "what leaves the housing at the rated point"),
};

inline constexpr AttributeSpec machine_oil[] = {
    positive("min-viscosity", Dimension::kinematic_viscosity, "least viscosity that it bears"),
    positive("max-viscosity", Dimension::kinematic_viscosity,
             "highest viscosity that it bears all the time"),
    positive("start-viscosity", Dimension::kinematic_viscosity,
             "highest viscosity at a cold start, without load"),
    positive("optimum-min-viscosity", Dimension::kinematic_viscosity,
             "lower end of the best range of viscosity"),
    positive("optimum-max-viscosity", Dimension::kinematic_viscosity,
             "upper end of the best range of viscosity"),
    {.name = "max-temperature",
     .type = AttributeType::quantity,
     .dimension = Dimension::temperature,
     .doc = "highest temperature of the oil that it bears all the time"},
    {.name = "cleanliness",
     .doc = "code of ISO 4406 for the dirtiest oil that it bears, such as 20/18/15"},
};

inline constexpr AttributeSpec machine_control[] = {
    {.name = "pilot-ports",
     .type = AttributeType::count,
     .least = 0,
     .most = 2,
     .default_text = "0",
     .default_source = not_shown,
     .doc = "pilot ports of the control that lead outside: one is X, two are X1 and X2"},
    pressure("control-pressure", "least pressure of the supply that its control needs"),
    pressure("control-start",
             "pressure, or pilot pressure, at which the displacement begins to "
             "change"),
    pressure("control-end", "pressure at which the displacement has changed all the way"),
    choice("rest-displacement", rest_displacements, {},
           "displacement that it takes without a signal"),
};

}  // namespace loopwright::kind_parts
