#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace loopwright::hydraulics {

/// A value with its exact partial derivatives over N variables (a dual number): a law written once
/// gives both, by the chain rule. A plain number is a constant.
template <std::size_t N>
struct Dual {
    double value = 0.0;
    std::array<double, N> slope{};

    constexpr Dual() = default;
    // Not explicit: a constant is a number like any other.
    constexpr Dual(double constant) : value(constant) {}

    /// The variable with that index, at that value.
    static constexpr Dual variable(std::size_t index, double at) {
        Dual x(at);
        x.slope[index] = 1.0;
        return x;
    }

    constexpr Dual& operator+=(const Dual& other) {
        value += other.value;
        for (std::size_t i = 0; i < N; ++i) slope[i] += other.slope[i];
        return *this;
    }
    constexpr Dual& operator-=(const Dual& other) {
        value -= other.value;
        for (std::size_t i = 0; i < N; ++i) slope[i] -= other.slope[i];
        return *this;
    }
    constexpr Dual& operator*=(double factor) {
        value *= factor;
        for (double& s : slope) s *= factor;
        return *this;
    }

    friend constexpr Dual operator+(Dual a, const Dual& b) { return a += b; }
    friend constexpr Dual operator-(Dual a, const Dual& b) { return a -= b; }
    friend constexpr Dual operator-(Dual a) { return a *= -1.0; }
    friend constexpr Dual operator*(Dual a, double factor) { return a *= factor; }
    friend constexpr Dual operator*(double factor, Dual a) { return a *= factor; }
    friend constexpr Dual operator*(const Dual& a, const Dual& b) {
        Dual product(a.value * b.value);
        for (std::size_t i = 0; i < N; ++i)
            product.slope[i] = a.slope[i] * b.value + a.value * b.slope[i];
        return product;
    }
    friend constexpr Dual operator/(const Dual& a, double divisor) { return a * (1.0 / divisor); }
    friend constexpr Dual operator/(const Dual& a, const Dual& b) {
        Dual quotient(a.value / b.value);
        for (std::size_t i = 0; i < N; ++i)
            quotient.slope[i] = (a.slope[i] - quotient.value * b.slope[i]) / b.value;
        return quotient;
    }
};

/// A function of one variable, at the inner value, put over what that value hangs on.
template <std::size_t N>
constexpr Dual<N> chain(const Dual<1>& outer, const Dual<N>& inner) {
    Dual<N> result(outer.value);
    for (std::size_t i = 0; i < N; ++i) result.slope[i] = outer.slope[0] * inner.slope[i];
    return result;
}
template <std::size_t N>
constexpr Dual<N> chain(double value, double slope, const Dual<N>& inner) {
    Dual<1> outer(value);
    outer.slope[0] = slope;
    return chain(outer, inner);
}

/// x > 0.
template <std::size_t N>
Dual<N> sqrt(const Dual<N>& x) {
    const double root = std::sqrt(x.value);
    return chain(root, 0.5 / root, x);
}
template <std::size_t N>
Dual<N> exp(const Dual<N>& x) {
    const double power = std::exp(x.value);
    return chain(power, power, x);
}
/// Its slope at 0 is taken for that above it.
template <std::size_t N>
Dual<N> abs(const Dual<N>& x) {
    return x.value < 0.0 ? -x : x;
}
/// Of equals the first.
template <std::size_t N>
Dual<N> max(const Dual<N>& a, const Dual<N>& b) {
    return a.value < b.value ? b : a;
}

}  // namespace loopwright::hydraulics
