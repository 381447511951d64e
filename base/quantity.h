#pragma once

#include <compare>

#include <loopwright/base/dimension.h>

namespace loopwright {

/// A value whose dimension is its type, in the SI unit that `Dimension` names.
/// Adding a pressure to a flow does not compile; neither does a bare number.
template <Dimension D>
class Quantity {
  public:
    static constexpr Dimension dimension = D;

    constexpr Quantity() = default;
    constexpr explicit Quantity(double si) : si_(si) {}

    constexpr double si() const { return si_; }

    // clang-tidy 14 takes the zero that a comparison's result is held against for a pointer.
    constexpr auto operator<=>(const Quantity&) const = default;  // NOLINT(modernize-use-nullptr)

    constexpr Quantity& operator+=(Quantity other) {
        si_ += other.si_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        si_ -= other.si_;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
    friend constexpr Quantity operator*(Quantity a, double factor) {
        return Quantity(a.si_ * factor);
    }
    friend constexpr Quantity operator*(double factor, Quantity a) { return a * factor; }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }

  private:
    double si_ = 0.0;
};

using Ratio = Quantity<Dimension::ratio>;
using Pressure = Quantity<Dimension::pressure>;
using AbsolutePressure = Quantity<Dimension::absolute_pressure>;
using Displacement = Quantity<Dimension::displacement>;
using Flow = Quantity<Dimension::flow>;
using Volume = Quantity<Dimension::volume>;
using Length = Quantity<Dimension::length>;
using Speed = Quantity<Dimension::speed>;
using Velocity = Quantity<Dimension::velocity>;
using Torque = Quantity<Dimension::torque>;
using Power = Quantity<Dimension::power>;
using Angle = Quantity<Dimension::angle>;
using Temperature = Quantity<Dimension::temperature>;
using TemperatureDifference = Quantity<Dimension::temperature_difference>;
using KinematicViscosity = Quantity<Dimension::kinematic_viscosity>;
using Density = Quantity<Dimension::density>;
using Mass = Quantity<Dimension::mass>;
using Area = Quantity<Dimension::area>;
using Force = Quantity<Dimension::force>;
using Inertia = Quantity<Dimension::inertia>;
using Time = Quantity<Dimension::time>;
using Grade = Quantity<Dimension::grade>;
using SpecificHeat = Quantity<Dimension::specific_heat>;
using DynamicViscosity = Quantity<Dimension::dynamic_viscosity>;
using BulkModulus = Quantity<Dimension::bulk_modulus>;
using Stiffness = Quantity<Dimension::stiffness>;
using TorsionalStiffness = Quantity<Dimension::torsional_stiffness>;
using ThermalConductance = Quantity<Dimension::thermal_conductance>;
using HeatTransfer = Quantity<Dimension::heat_transfer>;
using ThermalConductivity = Quantity<Dimension::thermal_conductivity>;
using ThermalExpansion = Quantity<Dimension::thermal_expansion>;
using Leakage = Quantity<Dimension::leakage>;
using Energy = Quantity<Dimension::energy>;
using Current = Quantity<Dimension::current>;
using Voltage = Quantity<Dimension::voltage>;
using Frequency = Quantity<Dimension::frequency>;
using Acceleration = Quantity<Dimension::acceleration>;

}  // namespace loopwright
