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

using Pressure = Quantity<Dimension::pressure>;
using Displacement = Quantity<Dimension::displacement>;
using Flow = Quantity<Dimension::flow>;
using Length = Quantity<Dimension::length>;
using Speed = Quantity<Dimension::speed>;
using Torque = Quantity<Dimension::torque>;
using Power = Quantity<Dimension::power>;

}  // namespace loopwright
