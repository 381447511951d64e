#include <loopwright/base/unit_table.h>

#include <iterator>

namespace loopwright {
namespace {

// Exact by definition (NIST SP 811, 2008, appendix B), or by those above them.
constexpr double pi = 3.14159265358979323846;
constexpr double revolution = 2.0 * pi;
constexpr double degree = pi / 180.0;
constexpr double minute = 60.0;
constexpr double hour = 3600.0;
constexpr double inch = 0.0254;
constexpr double square_inch = inch * inch;
constexpr double cubic_inch = inch * inch * inch;
constexpr double foot = 0.3048;
constexpr double square_foot = foot * foot;
constexpr double cubic_foot = foot * foot * foot;
constexpr double gallon = 231.0 * cubic_inch;
constexpr double gravity = 9.80665;
constexpr double pound = 0.45359237;
constexpr double pound_force = pound * gravity;
constexpr double slug = pound_force / foot;  // a pound-force gives it 1 ft/s2
constexpr double psi = pound_force / square_inch;
constexpr double technical_atmosphere = gravity * 1e4;  // kgf/cm2
constexpr double mercury = 13'595.1 * gravity;          // Pa/m, the conventional column
constexpr double water = 1000.0 * gravity;              // Pa/m, the conventional column
constexpr double fahrenheit = 1.0 / 1.8;                // one degree of the scale, K
constexpr double calorie = 4.1868;                      // of the International Table
constexpr double btu = calorie * 1000.0 * pound * fahrenheit;

using D = Dimension;

// Sorted by dimension. The first of each is what the program prints; common ones stand near it.
constexpr Unit table[] = {
    {"", D::ratio, 1.0},
    {"%", D::ratio, 0.01},
    {"kg/t", D::ratio, 1e-3},
    {"lb/ton", D::ratio, 1.0 / 2000.0},  // of the short ton
    {"bar", D::pressure, 1e5},
    {"mbar", D::pressure, 100.0},
    {"Pa", D::pressure, 1.0},
    {"kPa", D::pressure, 1e3},
    {"MPa", D::pressure, 1e6},
    {"psi", D::pressure, psi},
    {"kgf/cm2", D::pressure, technical_atmosphere},
    {"inHg", D::pressure, mercury* inch},
    {"mmHg", D::pressure, mercury * 1e-3},
    {"inH2O", D::pressure, water* inch},
    {"mmH2O", D::pressure, water * 1e-3},
    {"bar abs", D::pressure, 1e5, -standard_atmosphere},
    {"mbar abs", D::pressure, 100.0, -standard_atmosphere},
    {"kPa abs", D::pressure, 1e3, -standard_atmosphere},
    {"MPa abs", D::pressure, 1e6, -standard_atmosphere},
    {"psi abs", D::pressure, psi, -standard_atmosphere},
    {"kgf/cm2 abs", D::pressure, technical_atmosphere, -standard_atmosphere},
    {"inHg abs", D::pressure, mercury* inch, -standard_atmosphere},
    {"mmHg abs", D::pressure, mercury * 1e-3, -standard_atmosphere},
    {"bar abs", D::absolute_pressure, 1e5},
    {"mbar abs", D::absolute_pressure, 100.0},
    {"kPa abs", D::absolute_pressure, 1e3},
    {"MPa abs", D::absolute_pressure, 1e6},
    {"psi abs", D::absolute_pressure, psi},
    {"kgf/cm2 abs", D::absolute_pressure, technical_atmosphere},
    {"inHg abs", D::absolute_pressure, mercury* inch},
    {"mmHg abs", D::absolute_pressure, mercury * 1e-3},
    {"cm3/rev", D::displacement, 1e-6 / revolution},
    {"cc/rev", D::displacement, 1e-6 / revolution},
    {"mL/rev", D::displacement, 1e-6 / revolution},
    {"L/rev", D::displacement, 1e-3 / revolution},
    {"in3/rev", D::displacement, cubic_inch / revolution},
    {"m3/rad", D::displacement, 1.0},
    {"cm3/rad", D::displacement, 1e-6},
    {"in3/rad", D::displacement, cubic_inch},
    {"m3/rev", D::displacement, 1.0 / revolution},
    {"gal/rev", D::displacement, gallon / revolution},
    {"L/min", D::flow, 1e-3 / minute},
    {"l/min", D::flow, 1e-3 / minute},
    {"m3/s", D::flow, 1.0},
    {"m3/h", D::flow, 1.0 / hour},
    {"L/s", D::flow, 1e-3},
    {"gpm", D::flow, gallon / minute},
    {"gal/min", D::flow, gallon / minute},
    {"in3/min", D::flow, cubic_inch / minute},
    {"mL/min", D::flow, 1e-6 / minute},
    {"cm3/min", D::flow, 1e-6 / minute},
    {"cc/min", D::flow, 1e-6 / minute},
    {"cm3/s", D::flow, 1e-6},
    {"L/h", D::flow, 1e-3 / hour},
    {"m3/min", D::flow, 1.0 / minute},
    {"gal/h", D::flow, gallon / hour},
    {"in3/s", D::flow, cubic_inch},
    {"ft3/min", D::flow, cubic_foot / minute},
    {"ft3/s", D::flow, cubic_foot},
    {"L", D::volume, 1e-3},
    {"l", D::volume, 1e-3},
    {"mL", D::volume, 1e-6},
    {"cm3", D::volume, 1e-6},
    {"cc", D::volume, 1e-6},
    {"m3", D::volume, 1.0},
    {"in3", D::volume, cubic_inch},
    {"gal", D::volume, gallon},
    {"qt", D::volume, gallon / 4.0},
    {"ft3", D::volume, cubic_foot},
    {"mm", D::length, 1e-3},
    {"cm", D::length, 1e-2},
    {"m", D::length, 1.0},
    {"um", D::length, 1e-6},
    {"\xC2\xB5m", D::length, 1e-6},  // micro sign
    {"\xCE\xBCm", D::length, 1e-6},  // Greek mu
    {"in", D::length, inch},
    {"ft", D::length, foot},
    {"rpm", D::speed, revolution / minute},
    {"1/min", D::speed, revolution / minute},
    {"rev/min", D::speed, revolution / minute},
    {"rad/s", D::speed, 1.0},
    {"rev/s", D::speed, revolution},
    {"deg/s", D::speed, degree},
    {"m/s", D::velocity, 1.0},
    {"km/h", D::velocity, 1.0 / 3.6},
    {"ft/s", D::velocity, foot},
    {"mph", D::velocity, 5280.0 * foot / hour},
    {"mm/s", D::velocity, 1e-3},
    {"cm/s", D::velocity, 1e-2},
    {"m/min", D::velocity, 1.0 / minute},
    {"in/s", D::velocity, inch},
    {"in/min", D::velocity, inch / minute},
    {"ft/min", D::velocity, foot / minute},
    {"N.m", D::torque, 1.0},
    {"Nm", D::torque, 1.0},
    {"kN.m", D::torque, 1e3},
    {"lbf.ft", D::torque, pound_force* foot},
    {"lbf.in", D::torque, pound_force* inch},
    {"daN.m", D::torque, 10.0},
    {"kgf.m", D::torque, gravity},
    {"kW", D::power, 1e3},
    {"W", D::power, 1.0},
    {"hp", D::power, 550.0 * foot* pound_force},
    {"PS", D::power, 75.0 * gravity},
    {"Btu/h", D::power, btu / hour},
    {"Btu/min", D::power, btu / minute},
    {"kcal/h", D::power, calorie * 1000.0 / hour},
    {"deg", D::angle, degree},
    {"rad", D::angle, 1.0},
    {"degC", D::temperature, 1.0, 273.15},
    {"\xC2\xB0"
     "C",
     D::temperature, 1.0, 273.15},
    {"degF", D::temperature, fahrenheit, 459.67 / 1.8},
    {"\xC2\xB0"
     "F",
     D::temperature, fahrenheit, 459.67 / 1.8},
    {"K", D::temperature_difference, 1.0},
    {"degR", D::temperature_difference, fahrenheit},
    {"mm2/s", D::kinematic_viscosity, 1e-6},
    {"cSt", D::kinematic_viscosity, 1e-6},
    {"m2/s", D::kinematic_viscosity, 1.0},
    {"St", D::kinematic_viscosity, 1e-4},
    {"ft2/s", D::kinematic_viscosity, square_foot},
    {"kg/m3", D::density, 1.0},
    {"g/cm3", D::density, 1e3},
    {"kg/L", D::density, 1e3},
    {"g/mL", D::density, 1e3},
    {"t/m3", D::density, 1e3},
    {"lb/ft3", D::density, pound / cubic_foot},
    {"lb/gal", D::density, pound / gallon},
    {"slug/ft3", D::density, slug / cubic_foot},
    {"kg", D::mass, 1.0},
    {"t", D::mass, 1e3},
    {"g", D::mass, 1e-3},
    {"lb", D::mass, pound},
    {"slug", D::mass, slug},
    {"cm2", D::area, 1e-4},
    {"mm2", D::area, 1e-6},
    {"m2", D::area, 1.0},
    {"in2", D::area, square_inch},
    {"ft2", D::area, square_foot},
    {"kN", D::force, 1e3},
    {"N", D::force, 1.0},
    {"lbf", D::force, pound_force},
    {"daN", D::force, 10.0},
    {"kgf", D::force, gravity},
    {"kg.m2", D::inertia, 1.0},
    {"kg.cm2", D::inertia, 1e-4},
    {"lb.ft2", D::inertia, pound* square_foot},
    {"lb.in2", D::inertia, pound* square_inch},
    {"slug.ft2", D::inertia, slug* square_foot},
    {"lbf.ft.s2", D::inertia, pound_force* foot},
    {"lbf.in.s2", D::inertia, pound_force* inch},
    {"s", D::time, 1.0},
    {"ms", D::time, 1e-3},
    {"min", D::time, minute},
    {"h", D::time, hour},
    {"%", D::grade, 0.01},
    {"deg", D::grade, degree, 0.0, true},
    {"kJ/(kg.K)", D::specific_heat, 1e3},
    {"J/(kg.K)", D::specific_heat, 1.0},
    {"Btu/(lb.degF)", D::specific_heat, btu / (pound * fahrenheit)},
    {"kcal/(kg.K)", D::specific_heat, calorie * 1000.0},
    {"mPa.s", D::dynamic_viscosity, 1e-3},
    {"cP", D::dynamic_viscosity, 1e-3},
    {"Pa.s", D::dynamic_viscosity, 1.0},
    {"P", D::dynamic_viscosity, 0.1},
    {"lb/(ft.s)", D::dynamic_viscosity, pound / foot},
    {"lbf.s/in2", D::dynamic_viscosity, psi},
    {"MPa", D::bulk_modulus, 1e6},
    {"GPa", D::bulk_modulus, 1e9},
    {"bar", D::bulk_modulus, 1e5},
    {"psi", D::bulk_modulus, psi},
    {"kPa", D::bulk_modulus, 1e3},
    {"Pa", D::bulk_modulus, 1.0},
    {"N/mm", D::stiffness, 1e3},
    {"N/m", D::stiffness, 1.0},
    {"N/cm", D::stiffness, 100.0},
    {"kN/m", D::stiffness, 1e3},
    {"kN/mm", D::stiffness, 1e6},
    {"lbf/in", D::stiffness, pound_force / inch},
    {"lbf/ft", D::stiffness, pound_force / foot},
    {"N.m/rad", D::torsional_stiffness, 1.0},
    {"kN.m/rad", D::torsional_stiffness, 1e3},
    {"N.m/deg", D::torsional_stiffness, 1.0 / degree},
    {"lbf.ft/rad", D::torsional_stiffness, pound_force* foot},
    {"lbf.in/rad", D::torsional_stiffness, pound_force* inch},
    {"lbf.ft/deg", D::torsional_stiffness, pound_force* foot / degree},
    {"lbf.in/deg", D::torsional_stiffness, pound_force* inch / degree},
    {"W/K", D::thermal_conductance, 1.0},
    {"kW/K", D::thermal_conductance, 1e3},
    {"Btu/(h.degF)", D::thermal_conductance, btu / (hour * fahrenheit)},
    {"W/(m2.K)", D::heat_transfer, 1.0},
    {"kW/(m2.K)", D::heat_transfer, 1e3},
    {"Btu/(h.ft2.degF)", D::heat_transfer, btu / (hour * square_foot * fahrenheit)},
    {"W/(m.K)", D::thermal_conductivity, 1.0},
    {"Btu/(h.ft.degF)", D::thermal_conductivity, btu / (hour * foot * fahrenheit)},
    {"1/K", D::thermal_expansion, 1.0},
    {"1/degF", D::thermal_expansion, 1.8},
    {"L/(min.bar)", D::leakage, 1e-3 / minute / 1e5},
    {"L/min/bar", D::leakage, 1e-3 / minute / 1e5},
    {"cm3/(min.bar)", D::leakage, 1e-6 / minute / 1e5},
    {"cm3/min/bar", D::leakage, 1e-6 / minute / 1e5},
    {"L/(min.MPa)", D::leakage, 1e-3 / minute / 1e6},
    {"gpm/psi", D::leakage, gallon / minute / psi},
    {"in3/(min.psi)", D::leakage, cubic_inch / minute / psi},
    {"m3/(s.Pa)", D::leakage, 1.0},
    {"kJ", D::energy, 1e3},
    {"J", D::energy, 1.0},
    {"MJ", D::energy, 1e6},
    {"kW.h", D::energy, 1e3 * hour},
    {"Btu", D::energy, btu},
    {"ft.lbf", D::energy, foot* pound_force},
    {"mA", D::current, 1e-3},
    {"A", D::current, 1.0},
    {"V", D::voltage, 1.0},
    {"mV", D::voltage, 1e-3},
    {"Hz", D::frequency, 1.0},
    {"kHz", D::frequency, 1e3},
    {"m/s2", D::acceleration, 1.0},
    {"ft/s2", D::acceleration, foot},
};

using Runs = std::array<std::span<const Unit>, dimension_count>;

constexpr Runs find_runs() {
    Runs runs{};
    std::size_t begin = 0;
    for (std::size_t i = 1; i <= std::size(table); ++i) {
        if (i < std::size(table) && table[i].dimension == table[begin].dimension) continue;
        runs[static_cast<std::size_t>(table[begin].dimension)] = {&table[begin], i - begin};
        begin = i;
    }
    return runs;
}

constexpr bool in_order() {
    const Unit* next = std::begin(table);
    for (const std::span<const Unit>& run : find_runs()) {
        if (run.empty() || run.data() != next) return false;
        next += run.size();
    }
    return next == std::end(table);
}
static_assert(in_order(), "every dimension has its run, in the dimensions' order");

}  // namespace

std::span<const Unit> units() { return table; }

extern constinit const Runs units_by_dimension = find_runs();

}  // namespace loopwright
