#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/panel.h>

/// What a sheet says of a computed duty point, in words.
namespace loopwright {

/// Three digits, in the unit that the program prints: two decimals below 10, one below 100, none
/// from there on. What rounds to nothing is "0" with its unit, whichever way it points.
std::string short_quantity(double si, Dimension dimension);
/// Whether there is anything to tell of a figure that is written so.
bool rounds_to_nothing(double si, Dimension dimension);

/// Figures beside the symbol of a machine, a prime mover, a load or a brake.
struct ComponentValue {
    Index component = none;
    std::vector<std::string> rows = {};
};
std::vector<ComponentValue> component_values(const Circuit& circuit,
                                             const hydraulics::OperatingPoint& point);

/// Figures beside a line.
struct LineValue {
    Index line = none;
    std::string pressure = {};  ///< at the line's first port
    std::string flow = {};      ///< without a sign; empty where nothing flows
    bool backwards = false;     ///< from the second port to the first
};
std::vector<LineValue> line_values(const hydraulics::OperatingPoint& point);

/// Says on the sheet which point it is and how its figures are to be read. `apart`: what found no
/// room at its place.
PanelList point_list(const Circuit& circuit, const hydraulics::OperatingPoint& point,
                     std::span<const std::string> apart);

}  // namespace loopwright
