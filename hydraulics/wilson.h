#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>

/// Losses of a displacement machine after W. E. Wilson (papers of the ASME, 1946 and 1948; the form
/// from memory): leakage, viscous drag and friction in proportion to its largest displacement, with
/// coefficients that have no dimension. S = viscosity x speed / pressure (Sommerfeld's group).
///     pump   eta_v = 1 - Cs/S         1/eta_hm = 1 + Cf + Cv S
///     motor  1/eta_v = 1 + Cs/S       eta_hm = 1 - Cf - Cv S
namespace loopwright::hydraulics {

enum class Work { pump, motor };

struct WilsonCoefficients {
    double slip = 0.0;      ///< Cs
    double drag = 0.0;      ///< Cv
    double friction = 0.0;  ///< Cf
};

/// Where efficiencies are stated: at the largest displacement, the other sides without pressure.
struct RatedPoint {
    Pressure pressure;           ///< difference over the working ports; above 0
    Speed speed;                 ///< above 0
    DynamicViscosity viscosity;  ///< above 0

    /// S; above 0.
    double sommerfeld() const { return viscosity.si() * speed.si() / pressure.si(); }
};

/// The slip coefficient of a machine with this volumetric efficiency there; none unless that is
/// above 0 and at most 1 and the point's figures are above 0.
Answer<double> slip_from(Work work, double volumetric_efficiency, const RatedPoint& point);

/// Share of the leakage that goes to the housing, from what leaves it there, for a machine of that
/// largest displacement and slip coefficient; none below 0 or where more leaves it than leaks.
Answer<double> case_share_from(Flow case_flow, double slip, Displacement displacement,
                               const RatedPoint& point);

struct TorqueCoefficients {
    double drag;
    double friction;
};

/// Drag and friction of a machine with this hydro-mechanical efficiency there, of which one point
/// tells the sum only: `drag_share` of it, 0 to 1, is taken for viscous drag. None as above, and
/// where the share is out of range.
Answer<TorqueCoefficients> torque_losses_from(Work work, double hydro_mechanical_efficiency,
                                              double drag_share, const RatedPoint& point);

/// The same from two points; none where they have the same S, or a coefficient would be negative.
Answer<TorqueCoefficients> torque_losses_from(Work work, double one_efficiency,
                                              const RatedPoint& one, double other_efficiency,
                                              const RatedPoint& other);

}  // namespace loopwright::hydraulics
