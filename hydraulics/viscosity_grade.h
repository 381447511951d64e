#pragma once

#include <optional>
#include <string_view>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>

namespace loopwright::hydraulics {

/// Midpoint at 40 degC of a grade of ISO 3448 such as "VG 46"; nothing for any other word. An oil
/// may lie 10 % to either side of it.
std::optional<KinematicViscosity> grade_viscosity(std::string_view grade);

/// Viscosity index (ASTM D2270, ISO 2909) of an oil with these viscosities at 40 and 100 degC.
/// No index: the viscosity at 100 degC is outside 2 to 15 mm2/s (the standard goes further; its
/// coefficients there were not at hand), or not below that at 40 degC.
Answer<double> viscosity_index(KinematicViscosity at_40, KinematicViscosity at_100);

/// The viscosity at 100 degC of an oil with this viscosity at 40 degC and this index: the above,
/// solved. No viscosity: it would be outside 2 to 15 mm2/s. Where the standard's polynomials meet
/// with a step, an index inside that step belongs to no oil; the step itself is answered then.
Answer<KinematicViscosity> viscosity_at_100(KinematicViscosity at_40, double index);

}  // namespace loopwright::hydraulics
