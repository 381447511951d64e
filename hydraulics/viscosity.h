#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>

namespace loopwright::hydraulics {

/// Kinematic viscosity over temperature by the relation of ASTM D341,
///     lg lg (v + 0.7) = A - B lg T,    v in mm2/s, T in K,
/// which is used for 2 to 2e7 mm2/s and -70 to 370 degC (limits of ASTM D341, from memory). Real
/// oils are thicker near their pour point than the relation says.
class ViscosityCurve {
  public:
    struct Point {
        Temperature temperature;
        KinematicViscosity viscosity;
    };

    /// Through two points. No curve: a point out of the relation's range, equal temperatures, or
    /// an oil that does not thin with heat.
    static Answer<ViscosityCurve> through(const Point& one, const Point& other);

    /// No viscosity: the temperature or the viscosity there is out of the relation's range.
    Answer<KinematicViscosity> at(Temperature temperature) const;

    /// m2/s and, per kelvin, its slope. The caller stays within the range of `at`.
    double slope_at(Temperature temperature) const;

    double a() const { return a_; }
    double b() const { return b_; }

  private:
    ViscosityCurve(double a, double b) : a_(a), b_(b) {}
    double a_;
    double b_;
};

}  // namespace loopwright::hydraulics
