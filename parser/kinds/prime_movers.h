#pragma once

#include <loopwright/parser/kinds/machines.h>

/// What engine and electric motor have in common.
namespace loopwright::kind_parts {

inline constexpr AttributeSpec prime_mover_figures[] = {
    positive("power", Dimension::power, "rated power"),
    positive("speed", Dimension::speed, "rated speed"),
    choice("rotation", rotations, {}, "sense of rotation, looking at its shaft end"),
    yes_no("variable-speed", "whether its speed is changed at work"),
    positive("max-speed", Dimension::speed, "highest speed, without load or driven by the load"),
    positive("max-torque", Dimension::torque, "highest torque"),
    quantity("braking-power", Dimension::power,
             "power that it takes up when the load drives it, at most at its highest speed"),
    quantity("inertia", Dimension::inertia, "moment of inertia of what turns in it"),
};

}  // namespace loopwright::kind_parts
