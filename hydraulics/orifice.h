#pragma once

#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/through_flow.h>

namespace loopwright::hydraulics {

/// A sharp-edged hole.
struct Orifice {
    Area area;                     ///< above 0
    double discharge_coefficient;  ///< of turbulent flow; above 0

    /// A round hole.
    static Orifice of(Length bore, double discharge_coefficient);

    /// One that passes that flow at that drop, both above 0, its laminar limit aside; with the
    /// assumed discharge coefficient.
    static Orifice rated(Flow flow, Pressure drop, Density density);
};

/// Reynolds number, on the bore of a round hole of the same area, at which the laminar law and the
/// turbulent one meet: (0.61/0.2)^2, with 0.2 for the laminar growth of a round sharp edge's
/// coefficient (Merritt, Hydraulic Control Systems, from memory).
inline constexpr double orifice_laminar_until = 9.3;

/// Pressure lost, in Pa with the sign of the flow: k q sqrt(q^2 + q_l^2), k = rho/(2 (Cd A)^2),
/// with q_l the flow at the laminar limit. Far above it k q|q|, far below it in proportion to flow
/// and viscosity; smooth, odd and rising.
ThroughFlow::Figure drop(const Orifice& orifice, double flow, const Oil& oil);

/// The same turned round: flow in m3/s at a drop in Pa.
ThroughFlow::Figure flow(const Orifice& orifice, double drop, const Oil& oil);

}  // namespace loopwright::hydraulics
