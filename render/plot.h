#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/sweep.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>

namespace loopwright {

/// Diagrams of a sweep of one or two axes on a sheet A3 with frame and title block:
/// - over the first axis, a curve for each step of the second (nine of them at most): speed,
///   torque, pressure and power of the first actuator, tractive effort of a load with wheels, power
///   put in and efficiency of the whole. What lies beyond a limit of the part (max-speed,
///   max-torque, max-pressure; the prime mover's power) is shaded;
/// - effort over speed, with the hyperbola of the prime mover's power, and the corner point: the
///   largest effort with the largest speed;
/// - of two axes a map of the efficiency, by contours.
/// Duty points are marked where they have the axes' data. Where there is no steady state curves
/// have gaps and a cross on the axis, and areas are hatched. `rows`: all of the sweep. `point`: the
/// duty point that was swept.
Drawing plot_of(const Circuit& circuit, const hydraulics::Sweep& sweep,
                const hydraulics::SweepRows& rows, std::string_view point);

}  // namespace loopwright
