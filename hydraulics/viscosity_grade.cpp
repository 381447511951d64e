#include <loopwright/hydraulics/viscosity_grade.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include <fmt/core.h>

namespace loopwright::hydraulics {

namespace {

constexpr double mm2_per_s = 1e-6;

struct Grade {
    std::string_view name;
    double midpoint;  // mm2/s
};
// ISO 3448:1992, table 1; VG 2200 and VG 3200 as their names say (from memory).
constexpr Grade grades[] = {
    {"VG 2", 2.2},   {"VG 3", 3.2},     {"VG 5", 4.6},     {"VG 7", 6.8},     {"VG 10", 10},
    {"VG 15", 15},   {"VG 22", 22},     {"VG 32", 32},     {"VG 46", 46},     {"VG 68", 68},
    {"VG 100", 100}, {"VG 150", 150},   {"VG 220", 220},   {"VG 320", 320},   {"VG 460", 460},
    {"VG 680", 680}, {"VG 1000", 1000}, {"VG 1500", 1500}, {"VG 2200", 2200}, {"VG 3200", 3200},
};

// ASTM D2270: viscosities at 40 degC of the reference oils of index 0 (L) and 100 (H) that have the
// oil's viscosity Y at 100 degC, as polynomials in Y. Coefficients from memory, held against the
// standard's own examples (tests).
struct Reference {
    double up_to;  // mm2/s
    std::array<double, 3> l;
    std::array<double, 3> h;
};
constexpr Reference references[] = {
    {3.8, {1.14673, 1.7576, -0.109}, {0.84155, 1.5521, -0.077}},
    {4.4, {3.38095, -15.4952, 33.196}, {0.78571, 1.7929, -0.183}},
    {5.0, {2.5000, -7.2143, 13.812}, {0.82143, 1.5679, 0.119}},
    {6.4, {0.1010, 16.6350, -45.469}, {0.04985, 9.1613, -18.557}},
    {7.0, {3.35714, -23.5643, 78.466}, {0.22619, 7.7369, -16.656}},
    {7.7, {0.01191, 21.4750, -72.870}, {0.79762, -0.7321, 14.610}},
    {9.0, {0.41858, 16.1558, -56.040}, {0.05794, 10.5156, -28.240}},
    {12.0, {0.88779, 7.5527, -16.600}, {0.26665, 6.7015, -10.810}},
    {15.0, {0.76720, 10.7972, -38.180}, {0.20073, 8.4658, -22.490}},
};
constexpr double least_at_100 = 2.0;
constexpr double most_at_100 = 15.0;

double polynomial(const std::array<double, 3>& c, double y) { return (c[0] * y + c[1]) * y + c[2]; }

// In mm2/s, within the range.
double index_of(double at_40, double at_100) {
    const Reference& oil = *std::find_if(std::begin(references), std::end(references) - 1,
                                         [&](const Reference& r) { return at_100 <= r.up_to; });
    const double l = polynomial(oil.l, at_100);
    const double h = polynomial(oil.h, at_100);
    if (at_40 >= h) return 100.0 * (l - at_40) / (l - h);  // procedure A
    const double n = (std::log10(h) - std::log10(at_40)) / std::log10(at_100);
    return (std::pow(10.0, n) - 1.0) / 0.00715 + 100.0;  // procedure B
}

}  // namespace

std::optional<KinematicViscosity> grade_viscosity(std::string_view grade) {
    const auto* const found = std::find_if(std::begin(grades), std::end(grades),
                                           [&](const Grade& g) { return g.name == grade; });
    if (found == std::end(grades)) return std::nullopt;
    return KinematicViscosity(found->midpoint * mm2_per_s);
}

Answer<double> viscosity_index(KinematicViscosity at_40, KinematicViscosity at_100) {
    const double cold = at_40.si() / mm2_per_s;
    const double hot = at_100.si() / mm2_per_s;
    if (!(hot >= least_at_100 && hot <= most_at_100))
        return Answer<double>::none(fmt::format(
            "{:.4g} mm2/s at 100 degC is outside 2 to 15 mm2/s, where the viscosity index (ASTM "
            "D2270) is known here",
            hot));
    if (!(cold > hot))
        return Answer<double>::none("the oil must be thinner at 100 degC than at 40 degC");
    return index_of(cold, hot);
}

Answer<KinematicViscosity> viscosity_at_100(KinematicViscosity at_40, double index) {
    const double cold = at_40.si() / mm2_per_s;
    double low = least_at_100;
    double high = std::min(most_at_100, cold);
    if (!(low < high && index_of(cold, low) <= index && index <= index_of(cold, high)))
        return Answer<KinematicViscosity>::none(fmt::format(
            "an oil of {:.4g} mm2/s at 40 degC and viscosity index {:.4g} lies outside 2 to 15 "
            "mm2/s at 100 degC, where the index (ASTM D2270) is known here; give the viscosity at "
            "100 degC",
            cold, index));
    // The index rises with the viscosity at 100 degC, so halving cannot miss it.
    while (true) {
        const double middle = 0.5 * (low + high);
        if (!(low < middle && middle < high)) return KinematicViscosity(middle * mm2_per_s);
        (index_of(cold, middle) < index ? low : high) = middle;
    }
}

}  // namespace loopwright::hydraulics
