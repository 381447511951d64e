#pragma once

#include <numbers>
#include <string_view>
#include <vector>

#include <loopwright/base/dimension.h>

// Every spelling of the unit table with its definition, worked out here in long double from the
// base definitions. Short of the table: a grade's "deg", which is no factor.

namespace loopwright::definitions_of_units {

using D = Dimension;
using Real = long double;

// Base definitions. Inch, foot, pound: the yard and pound agreement of 1959 (NIST SP 811, 2008,
// appendix B.6 and B.8): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg. g_n: 3rd CGPM (1901). Standard
// atmosphere: 10th CGPM (1954), resolution 4. Litre = dm3: 12th CGPM (1964). Minute, hour, tonne,
// degree of angle: SI brochure (9th edition), table 8.
inline constexpr Real yard = 0.9144L;
inline constexpr Real foot = yard / 3;
inline constexpr Real inch = yard / 36;
inline constexpr Real mile = 1760 * yard;
inline constexpr Real pound = 0.45359237L;
inline constexpr Real gravity = 9.80665L;
inline constexpr Real pound_force = pound * gravity;
inline constexpr Real minute = 60;
inline constexpr Real hour = 60 * minute;
inline constexpr Real decimetre = 0.1L;
inline constexpr Real litre = decimetre * decimetre * decimetre;
inline constexpr Real centimetre = 0.01L;
inline constexpr Real cubic_centimetre = centimetre * centimetre * centimetre;
inline constexpr Real cubic_inch = inch * inch * inch;
inline constexpr Real gallon = 231 * cubic_inch;  // the wine gallon: US liquid (NIST SP 811, B.6)
inline constexpr Real turn = 2 * std::numbers::pi_v<Real>;
inline constexpr Real psi = pound_force / (inch * inch);
inline constexpr Real atmosphere = 101325;
inline constexpr Real millimetre = 0.001L;
inline constexpr Real square_foot = foot * foot;
inline constexpr Real cubic_foot = square_foot * foot;
inline constexpr Real degree = turn / 360;
// The mass to which a pound-force gives 1 ft/s2 (NIST SP 811, B.8).
inline constexpr Real slug = pound_force / foot;
// Conventional columns: mercury of 13 595.1 kg/m3, water of 1000 kg/m3 at g_n (NIST SP 811, B.8,
// notes on "conventional").
inline constexpr Real mercury = 13595.1L * gravity;
inline constexpr Real water = 1000 * gravity;
// kgf/cm2, the technical atmosphere (NIST SP 811, B.8).
inline constexpr Real technical = gravity / (centimetre * centimetre);
// Fifth International Conference on the Properties of Steam (1956): 1 cal_IT = 4.1868 J, and the
// Btu_IT follows from 1 Btu/(lb.degF) = 1 cal/(g.K) (NIST SP 811, B.8, note 9).
inline constexpr Real kilocalorie = 4186.8L;
inline constexpr Real fahrenheit = Real{5} / 9;  // a difference of one degree, K
inline constexpr Real btu = kilocalorie * pound * fahrenheit;
inline constexpr Real ice_point = 273.15L;  // 0 degC in K: 13th CGPM (1967), SI brochure 2.3.1

struct Definition {
    std::string_view spelling = {};
    Dimension dimension = D::ratio;
    Real one = 1;   // SI value of the number 1
    Real zero = 0;  // SI value of the number 0
};

inline const std::vector<Definition>& definitions() {
    static const std::vector<Definition> all = {
        {"", D::ratio, 1},
        {"%", D::ratio, Real{1} / 100},
        {"kg/t", D::ratio, Real{1} / 1000},
        {"lb/ton", D::ratio, Real{1} / 2000},  // short ton: NIST SP 811, B.8
        // Over the atmosphere.
        {"Pa", D::pressure, 1},
        {"kPa", D::pressure, 1000},
        {"MPa", D::pressure, 1000000},
        {"bar", D::pressure, 100000},  // SI brochure, 8th edition, table 8
        {"mbar", D::pressure, 100},
        {"psi", D::pressure, psi},
        {"kgf/cm2", D::pressure, technical},
        {"inHg", D::pressure, mercury * inch},
        {"mmHg", D::pressure, mercury * millimetre},
        {"inH2O", D::pressure, water * inch},
        {"mmH2O", D::pressure, water * millimetre},
        // The same written absolute: less one standard atmosphere.
        {"bar abs", D::pressure, 100000 - atmosphere, -atmosphere},
        {"kPa abs", D::pressure, 1000 - atmosphere, -atmosphere},
        {"MPa abs", D::pressure, 1000000 - atmosphere, -atmosphere},
        {"psi abs", D::pressure, psi - atmosphere, -atmosphere},
        {"mbar abs", D::pressure, 100 - atmosphere, -atmosphere},
        {"kgf/cm2 abs", D::pressure, technical - atmosphere, -atmosphere},
        {"inHg abs", D::pressure, mercury * inch - atmosphere, -atmosphere},
        {"mmHg abs", D::pressure, mercury * millimetre - atmosphere, -atmosphere},
        {"bar abs", D::absolute_pressure, 100000},
        {"mbar abs", D::absolute_pressure, 100},
        {"kPa abs", D::absolute_pressure, 1000},
        {"MPa abs", D::absolute_pressure, 1000000},
        {"psi abs", D::absolute_pressure, psi},
        {"kgf/cm2 abs", D::absolute_pressure, technical},
        {"inHg abs", D::absolute_pressure, mercury * inch},
        {"mmHg abs", D::absolute_pressure, mercury * millimetre},
        // Geometric displacement, ISO 4391: volume a revolution; kept a radian.
        {"cm3/rev", D::displacement, cubic_centimetre / turn},
        {"cc/rev", D::displacement, cubic_centimetre / turn},
        {"mL/rev", D::displacement, litre / 1000 / turn},
        {"L/rev", D::displacement, litre / turn},
        {"in3/rev", D::displacement, cubic_inch / turn},
        {"m3/rad", D::displacement, 1},
        {"m3/rev", D::displacement, 1 / turn},
        {"cm3/rad", D::displacement, cubic_centimetre},
        {"in3/rad", D::displacement, cubic_inch},
        {"gal/rev", D::displacement, gallon / turn},
        {"L/min", D::flow, litre / minute},
        {"l/min", D::flow, litre / minute},
        {"L/s", D::flow, litre},
        {"m3/s", D::flow, 1},
        {"m3/h", D::flow, 1 / hour},
        {"gpm", D::flow, gallon / minute},
        {"gal/min", D::flow, gallon / minute},
        {"in3/min", D::flow, cubic_inch / minute},
        {"mL/min", D::flow, litre / 1000 / minute},
        {"cm3/min", D::flow, cubic_centimetre / minute},
        {"cc/min", D::flow, cubic_centimetre / minute},
        {"cm3/s", D::flow, cubic_centimetre},
        {"L/h", D::flow, litre / hour},
        {"m3/min", D::flow, 1 / minute},
        {"gal/h", D::flow, gallon / hour},
        {"in3/s", D::flow, cubic_inch},
        {"ft3/min", D::flow, cubic_foot / minute},
        {"ft3/s", D::flow, cubic_foot},
        {"L", D::volume, litre},
        {"l", D::volume, litre},
        {"mL", D::volume, litre / 1000},
        {"cm3", D::volume, cubic_centimetre},
        {"m3", D::volume, 1},
        {"in3", D::volume, cubic_inch},
        {"gal", D::volume, gallon},
        {"cc", D::volume, cubic_centimetre},
        {"qt", D::volume, gallon / 4},  // US liquid quart
        {"ft3", D::volume, cubic_foot},
        {"m", D::length, 1},
        {"cm", D::length, centimetre},
        {"mm", D::length, millimetre},
        {"um", D::length, millimetre / 1000},
        {"\u00B5m", D::length, millimetre / 1000},
        {"\u03BCm", D::length, millimetre / 1000},
        {"in", D::length, inch},
        {"ft", D::length, foot},
        // A speed of rotation counts turns (ISO 80000-3, rotational frequency); kept in rad/s.
        {"rpm", D::speed, turn / minute},
        {"1/min", D::speed, turn / minute},
        {"rev/min", D::speed, turn / minute},
        {"rad/s", D::speed, 1},
        {"rev/s", D::speed, turn},
        {"deg/s", D::speed, degree},
        {"m/s", D::velocity, 1},
        {"km/h", D::velocity, 1000 / hour},
        {"ft/s", D::velocity, foot},
        {"mph", D::velocity, mile / hour},
        {"mm/s", D::velocity, millimetre},
        {"cm/s", D::velocity, centimetre},
        {"m/min", D::velocity, 1 / minute},
        {"in/s", D::velocity, inch},
        {"in/min", D::velocity, inch / minute},
        {"ft/min", D::velocity, foot / minute},
        {"N.m", D::torque, 1},
        {"Nm", D::torque, 1},
        {"kN.m", D::torque, 1000},
        {"lbf.ft", D::torque, pound_force * foot},
        {"lbf.in", D::torque, pound_force * inch},
        {"daN.m", D::torque, 10},
        {"kgf.m", D::torque, gravity},
        {"W", D::power, 1},
        {"kW", D::power, 1000},
        {"hp", D::power, 550 * foot * pound_force},  // a second: NIST SP 811, B.8
        {"PS", D::power, 75 * gravity},              // 75 kgf.m/s: NIST SP 811, B.8, metric
        {"Btu/h", D::power, btu / hour},
        {"Btu/min", D::power, btu / minute},
        {"kcal/h", D::power, kilocalorie / hour},
        {"rad", D::angle, 1},
        {"deg", D::angle, degree},
        {"degC", D::temperature, 1 + ice_point, ice_point},
        {"\u00B0C", D::temperature, 1 + ice_point, ice_point},
        // T/K = (t/degF + 459.67)/1.8: NIST SP 811, B.8.
        {"degF", D::temperature, 460.67L / 1.8L, 459.67L / 1.8L},
        {"\u00B0F", D::temperature, 460.67L / 1.8L, 459.67L / 1.8L},
        {"K", D::temperature_difference, 1},
        {"degR", D::temperature_difference, fahrenheit},  // degree Rankine: NIST SP 811, B.8
        // Stokes = cm2/s: NIST SP 811, B.8.
        {"cSt", D::kinematic_viscosity, centimetre * centimetre / 100},
        {"mm2/s", D::kinematic_viscosity, millimetre * millimetre},
        {"m2/s", D::kinematic_viscosity, 1},
        {"St", D::kinematic_viscosity, centimetre * centimetre},
        {"ft2/s", D::kinematic_viscosity, square_foot},
        {"kg/m3", D::density, 1},
        {"g/cm3", D::density, Real{1} / 1000 / cubic_centimetre},
        {"kg/L", D::density, 1 / litre},
        {"g/mL", D::density, 1 / litre},
        {"t/m3", D::density, 1000},
        {"lb/ft3", D::density, pound / cubic_foot},
        {"lb/gal", D::density, pound / gallon},
        {"slug/ft3", D::density, slug / cubic_foot},
        {"kg", D::mass, 1},
        {"g", D::mass, Real{1} / 1000},
        {"t", D::mass, 1000},
        {"lb", D::mass, pound},
        {"slug", D::mass, slug},
        {"m2", D::area, 1},
        {"cm2", D::area, centimetre * centimetre},
        {"mm2", D::area, millimetre * millimetre},
        {"in2", D::area, inch * inch},
        {"ft2", D::area, square_foot},
        {"N", D::force, 1},
        {"daN", D::force, 10},
        {"kN", D::force, 1000},
        {"lbf", D::force, pound_force},
        {"kgf", D::force, gravity},
        {"kg.m2", D::inertia, 1},
        {"kg.cm2", D::inertia, centimetre * centimetre},
        {"lb.ft2", D::inertia, pound * square_foot},
        {"lb.in2", D::inertia, pound * inch * inch},
        {"slug.ft2", D::inertia, slug * square_foot},
        {"lbf.ft.s2", D::inertia, pound_force * foot},
        {"lbf.in.s2", D::inertia, pound_force * inch},
        {"s", D::time, 1},
        {"ms", D::time, Real{1} / 1000},
        {"min", D::time, minute},
        {"h", D::time, hour},
        {"%", D::grade, Real{1} / 100},
        {"J/(kg.K)", D::specific_heat, 1},
        {"kJ/(kg.K)", D::specific_heat, 1000},
        {"Btu/(lb.degF)", D::specific_heat, btu / (pound * fahrenheit)},
        {"kcal/(kg.K)", D::specific_heat, kilocalorie},
        {"Pa.s", D::dynamic_viscosity, 1},
        {"mPa.s", D::dynamic_viscosity, Real{1} / 1000},
        {"P", D::dynamic_viscosity, Real{1} / 10},  // dyn.s/cm2: NIST SP 811, B.8
        {"cP", D::dynamic_viscosity, Real{1} / 1000},
        {"lb/(ft.s)", D::dynamic_viscosity, pound / foot},
        {"lbf.s/in2", D::dynamic_viscosity, psi},
        {"Pa", D::bulk_modulus, 1},
        {"kPa", D::bulk_modulus, 1000},
        {"MPa", D::bulk_modulus, 1000000},
        {"GPa", D::bulk_modulus, 1000000000},
        {"bar", D::bulk_modulus, 100000},
        {"psi", D::bulk_modulus, psi},
        {"N/m", D::stiffness, 1},
        {"N/cm", D::stiffness, 1 / centimetre},
        {"N/mm", D::stiffness, 1 / millimetre},
        {"kN/m", D::stiffness, 1000},
        {"kN/mm", D::stiffness, 1000 / millimetre},
        {"lbf/in", D::stiffness, pound_force / inch},
        {"lbf/ft", D::stiffness, pound_force / foot},
        {"N.m/rad", D::torsional_stiffness, 1},
        {"kN.m/rad", D::torsional_stiffness, 1000},
        {"N.m/deg", D::torsional_stiffness, 1 / degree},
        {"lbf.ft/rad", D::torsional_stiffness, pound_force * foot},
        {"lbf.in/rad", D::torsional_stiffness, pound_force * inch},
        {"lbf.ft/deg", D::torsional_stiffness, pound_force * foot / degree},
        {"lbf.in/deg", D::torsional_stiffness, pound_force * inch / degree},
        {"W/K", D::thermal_conductance, 1},
        {"kW/K", D::thermal_conductance, 1000},
        {"Btu/(h.degF)", D::thermal_conductance, btu / (hour * fahrenheit)},
        {"W/(m2.K)", D::heat_transfer, 1},
        {"kW/(m2.K)", D::heat_transfer, 1000},
        {"Btu/(h.ft2.degF)", D::heat_transfer, btu / (hour * square_foot * fahrenheit)},
        {"W/(m.K)", D::thermal_conductivity, 1},
        {"Btu/(h.ft.degF)", D::thermal_conductivity, btu / (hour * foot * fahrenheit)},
        {"1/K", D::thermal_expansion, 1},
        {"1/degF", D::thermal_expansion, 1 / fahrenheit},
        {"L/(min.bar)", D::leakage, litre / (minute * 100000)},
        {"L/min/bar", D::leakage, litre / (minute * 100000)},
        {"cm3/(min.bar)", D::leakage, cubic_centimetre / (minute * 100000)},
        {"cm3/min/bar", D::leakage, cubic_centimetre / (minute * 100000)},
        {"L/(min.MPa)", D::leakage, litre / (minute * 1000000)},
        {"gpm/psi", D::leakage, gallon / minute / psi},
        {"in3/(min.psi)", D::leakage, cubic_inch / minute / psi},
        {"m3/(s.Pa)", D::leakage, 1},
        {"J", D::energy, 1},
        {"kJ", D::energy, 1000},
        {"MJ", D::energy, 1000000},
        {"kW.h", D::energy, 1000 * hour},
        {"Btu", D::energy, btu},
        {"ft.lbf", D::energy, foot * pound_force},
        {"A", D::current, 1},
        {"mA", D::current, Real{1} / 1000},
        {"V", D::voltage, 1},
        {"mV", D::voltage, Real{1} / 1000},
        {"Hz", D::frequency, 1},
        {"kHz", D::frequency, 1000},
        {"m/s2", D::acceleration, 1},
        {"ft/s2", D::acceleration, foot},
    };
    return all;
}

}  // namespace loopwright::definitions_of_units
