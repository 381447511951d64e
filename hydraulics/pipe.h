#pragma once

#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/through_flow.h>

namespace loopwright::hydraulics {

/// A line or a hose of round bore.
struct Pipe {
    Length bore;                ///< above 0
    Length length;              ///< 0 or more
    Length roughness;           ///< of its wall; 0 to 5 % of the bore
    double minor_losses = 0.0;  ///< sum of the loss coefficients K of its fittings, on its velocity
};

/// Mean velocity over the bore, with the sign of the flow.
Velocity velocity(const Pipe& pipe, Flow flow);

/// Velocity times bore over viscosity, without a sign.
double reynolds_number(const Pipe& pipe, Flow flow, KinematicViscosity viscosity);

/// Pressure lost along the way, in Pa with the sign of the flow: Darcy and Weisbach's
/// rho v|v|/2 (f L/D + K), with `friction_factor`. Odd and rising in the flow.
ThroughFlow::Figure drop(const Pipe& pipe, double flow, const Oil& oil);

}  // namespace loopwright::hydraulics
