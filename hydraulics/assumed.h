#pragma once

#include <string_view>

#include <loopwright/base/quantity.h>

/// Figures that a circuit may leave out, each with where it comes from. What prints a result prints
/// these with it. Those of an attribute's own default stand with its kind.
namespace loopwright::hydraulics::assumed {

template <class Figure>
struct Assumed {
    Figure figure;
    std::string_view source;
};

inline constexpr Assumed<Density> density{Density(870.0),
                                          "common practice for mineral oil at 15 degC, no source"};
inline constexpr Assumed<BulkModulus> bulk_modulus{
    BulkModulus(1379e6), "half a per cent for 1000 psi, a rule of trade formula sheets"};
inline constexpr Assumed<Length> tube_roughness{Length(1.5e-6),
                                                "drawn tubing, handbooks of civil engineering"};
inline constexpr Assumed<Length> hose_roughness{
    Length(0.0), "a hose's lining is smooth; common practice, no source"};
inline constexpr Assumed<Ratio> discharge_coefficient{
    Ratio(0.61), "contraction of a sharp-edged slit by potential flow, pi/(pi + 2)"};
/// Sharp entrance 0.5 and exit 1.0 of a throttle's way.
inline constexpr Assumed<Ratio> throttle_minor_losses{
    Ratio(1.5), "sharp entrance 0.5 and exit 1.0, table B-6 of a pumping-station design textbook"};
/// Between the pressure up to which a relieving reducing valve hands oil on and the one from which
/// it lets oil out: its edges overlap, or oil would run through it at its setting.
inline constexpr Assumed<Pressure> relieving_overlap{Pressure(1e5), "common practice, no source"};
inline constexpr Assumed<HeatTransfer> wall_heat_transfer{
    HeatTransfer(12.0), "B. Casey, \"A great lie about hydraulic tanks\": normal ventilation"};
inline constexpr Assumed<Acceleration> gravity{Acceleration(9.80665),
                                               "standard acceleration (ISO 80000-3)"};

}  // namespace loopwright::hydraulics::assumed
