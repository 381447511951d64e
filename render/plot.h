#pragma once

#include <string_view>

#include <loopwright/hydraulics/sweep.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/drawing.h>

namespace loopwright {

/// Curves of a sweep over its first axis on a sheet A4, one for each step of the second; of the
/// first actuator speed, torque, power and the pressure at its higher port, of the whole the power
/// put in and the efficiency. A row without a steady state leaves a gap, with a cross on the axis.
/// `point`: of the duty, for the heading. Sweeps of one or two axes.
Drawing plot_of(const Circuit& circuit, const hydraulics::Sweep& sweep, std::string_view point);

}  // namespace loopwright
