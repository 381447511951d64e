#pragma once

#include <optional>
#include <string_view>

#include <loopwright/hydraulics/grid.h>
#include <loopwright/hydraulics/machine.h>

namespace loopwright::hydraulics {

/// A column of a measured table. Its three axes are pressure difference in Pa, shaft speed in rad/s
/// and set displacement over the largest.
struct MeasuredColumn {
    Grid grid;
    bool efficiency = false;  ///< in place of flow or torque itself; then above 0, as its pressures
};

inline constexpr std::string_view machine_axes[] = {"pressure", "speed", "stroke"};

/// A machine with measured tables in place of coefficients. Measured in one sense of rotation on
/// one side of centre; the others mirror it.
struct MeasuredMachine {
    Work work;                                  ///< as which it was measured: what its figures mean
    Machine machine;                            ///< its coefficients count where there is no column
    std::optional<MeasuredColumn> flow = {};    ///< m3/s out of a pump, into a motor; or volumetric
    std::optional<MeasuredColumn> torque = {};  ///< N.m into a pump, out of a motor; or
                                                ///< hydro-mechanical
};

/// As `machine_law`, the columns in place of its flows or its torque. The pressure difference is
/// counted against the geometric flow in a pump, with it in a motor, so that one that overruns asks
/// for negative pressures. The leakage that they tell leaves the side from which the difference is
/// counted; the viscosity does not change them.
MachineLaw machine_law(const MeasuredMachine& measured, const MachineState& state);

/// Where the state is outside what was measured; nothing inside.
std::optional<Grid::Outside> outside(const MeasuredMachine& measured, const MachineState& state);

}  // namespace loopwright::hydraulics
