#pragma once

#include <cmath>
#include <numbers>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/sizing.h>

/// The steps of `size_drive`, each a size and how it was come by; for its own sources alone.
namespace loopwright::hydraulics::sizing {

using std::numbers::pi;

inline constexpr std::string_view practice = "common practice, no source";
inline constexpr std::string_view definition = "ISO 4391, terms and definitions (from memory)";
inline constexpr double cm3_per_rev = 1e-6 / (2.0 * pi);

/// Up to the next step; what rounding left above one does not count.
inline double ceiled(double value, double step) { return std::ceil(value / step - 1e-9) * step; }
inline std::string said(double si, Dimension dimension) { return format_quantity(si, dimension); }
template <Dimension D>
std::string said(Quantity<D> quantity) {
    return format_quantity(quantity.si(), D);
}

/// At the motor's shaft.
struct MotorPoint {
    const SizingPoint* point = nullptr;
    double torque = 0.0;  ///< N.m without a sign
    bool drives = false;  ///< the load
    double speed = 0.0;   ///< rad/s without a sign
};

/// Keeps references to all that it is given.
class Sizer {
  public:
    Sizer(const SizingDuty& duty, const Fluid& fluid, const SizingReserve& reserve);

    Sizing size();

  private:
    void tell(std::string what, std::string result, std::string equation, std::string figures,
              std::string_view source);
    void refuse(std::string why);

    MotorPoint at_motor(const SizingPoint& one) const;

    /// m3/rad that the torque of a point takes at the working pressure.
    double least_displacement(const MotorPoint& at) const;
    /// m3/rad of the pump that gives a point its speed, the motor set to a displacement.
    static double pump_for(const MotorPoint& at, double motor);

    /// ", x 1.03 as solving showed", or nothing.
    static std::string reserved(double reserve);
    /// m of bore, to the next whole millimetre.
    Length bore_for(std::string what, double flow, double velocity, std::string_view source);

    // In this order.
    void size_motor();
    void size_pump();
    void check_speeds();
    void size_pressures();
    void size_charge();
    void size_prime_mover();
    void size_torques();
    void size_oil();
    void size_bores();

    const SizingDuty& duty_;
    const Fluid& fluid_;
    const SizingReserve& reserve_;
    std::vector<MotorPoint> points_ = {};
    double fastest_mover_ = 0.0;
    double slowest_mover_ = 1e9;
    double most_power_ = 0.0;
    Sizing out_ = {};
};

}  // namespace loopwright::hydraulics::sizing
