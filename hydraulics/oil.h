#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>

namespace loopwright::hydraulics {

/// The oil at one place: what the laws of flow ask for.
struct Oil {
    Density density;
    KinematicViscosity viscosity;

    DynamicViscosity dynamic_viscosity() const {
        return DynamicViscosity(density.si() * viscosity.si());
    }
};

/// Density at a temperature of an oil whose density is known at another, near 15 degC or 60 degF:
///     exp(-a t (1 + 0.8 a t)),    t the difference, a = 0.627 804 K kg/m3 over that density
/// (API MPMS 11.1, ASTM D1250, lubricating oils). For -50 to 150 degC and 750 to 1164 kg/m3
/// (limits from memory); none outside.
Answer<Density> density_at(Temperature temperature, Density known, Temperature known_at);

/// (0.388 + 0.00045 t) / sqrt(d) Btu/(lb.degF), t in degF, d the density at 15 degC over that of
/// water (C. S. Cragoe, NBS Miscellaneous Publication 97, 1929; within 4 %, its limits 0 to 200
/// degC and 0.75 to 0.96 from memory); none outside.
Answer<SpecificHeat> specific_heat_at(Temperature temperature, Density at_15);

/// Density under pressure, with the secant modulus counted from the atmosphere: volume falls by
/// p/K. `pressure` below `modulus`.
Density compressed(Density at_atmosphere, Pressure pressure, BulkModulus modulus);

/// Pressure of a column of oil of that height; negative for a negative height.
Pressure head(Density density, Length height);

}  // namespace loopwright::hydraulics
