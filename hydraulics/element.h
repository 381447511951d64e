#pragma once

#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/through_flow.h>

namespace loopwright::hydraulics {

/// The element of a filter or strainer, the tubes of a cooler: its clean drop at one point. All
/// three above 0. Its bypass is a `relief_valve` beside it.
struct Element {
    Flow flow;
    Pressure drop;
    KinematicViscosity viscosity;
};

/// Pressure lost in Pa, with the sign of the flow: in proportion to flow and viscosity (Darcy's law
/// of porous media; laminar flow in a cooler's tubes).
ThroughFlow::Figure drop(const Element& element, double flow, const Oil& oil);

}  // namespace loopwright::hydraulics
