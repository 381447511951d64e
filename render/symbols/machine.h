#pragma once

#include <loopwright/render/symbols/strokes.h>

/// What the symbols of pumps and motors share: circle, ports, shaft ends, case ports, the arrow of
/// a variable machine and the frame of its control.
namespace loopwright {

/// `through`: a pump/motor unit with one flow direction pumps out below and drives from above.
enum class MachineWork : std::uint8_t { pump, motor, through };

/// How far from the middle of a circle the apex of a triangle of that side lies that points
/// inwards, the corners of its base on the circle.
double inward_apex(double radius, double side);

/// Draws the machine. `upper` and `lower` are the letters of the ports above and below; a triangle
/// stands at the upper one, and at the lower one too where oil can flow both ways. A pump's points
/// out of the circle, a motor's into it.
void draw_machine(Strokes& strokes, MachineWork work, std::string_view upper,
                  std::string_view lower, bool both_ways);

}  // namespace loopwright
