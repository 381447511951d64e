#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/base/unit_words.h>

// How the trade and careless hands write units: read, or answered with the right spelling, or with
// the reason why there is none. What each is meant to be is common practice, no source; that the
// two are the same quantity is checked against the factors where both have one.

namespace loopwright {
namespace {

using D = Dimension;

struct Written {
    std::string_view text = {};
    Dimension dimension = D::ratio;
    std::string_view meant = {};  ///< as text, in the table's spelling
};

void expect_answered(const std::vector<Written>& all) {
    for (const Written& one : all) {
        const ParsedQuantity parsed = parse_quantity(one.text, one.dimension);
        EXPECT_FALSE(parsed.ok()) << one.text;
        EXPECT_EQ(parsed.suggestion, one.meant) << one.text << ": " << parsed.message;
        EXPECT_TRUE(parse_quantity(one.meant, one.dimension).ok()) << one.meant;
    }
}

TEST(UnitGuess, ReadAsTheTradeWritesThem) {
    for (const Written& one : std::vector<Written>{
             {"300 Nm", D::torque, "300 N.m"},
             {"40 l/min", D::flow, "40 L/min"},
             {"71 cc/rev", D::displacement, "71 cm3/rev"},
             {"71 mL/rev", D::displacement, "71 cm3/rev"},
             {"60 \u00B0C", D::temperature, "60 degC"},
             {"10 \u00B5m", D::length, "10 um"},
             {"250 cc", D::volume, "250 cm3"},
             {"250 cc/min", D::flow, "250 cm3/min"},
             {"46 cSt", D::kinematic_viscosity, "46 mm2/s"},
             {"40 cP", D::dynamic_viscosity, "40 mPa.s"},
             {"0.02 L/min/bar", D::leakage, "0.02 L/(min.bar)"},
             {"3000 1/min", D::speed, "3000 rpm"},
         }) {
        EXPECT_TRUE(parse_quantity(one.text, one.dimension).ok()) << one.text;
        EXPECT_EQ(parse_quantity(one.text, one.dimension).si,
                  parse_quantity(one.meant, one.dimension).si)
            << one.text;
    }
}

TEST(UnitGuess, Pressures) {
    expect_answered({
        {"24 Bar", D::pressure, "24 bar"},
        {"24 bars", D::pressure, "24 bar"},
        {"24 BARG", D::pressure, "24 bar"},
        {"24 bar gauge", D::pressure, "24 bar"},
        {"24 bar (g)", D::pressure, "24 bar"},
        {"42 Mpa", D::pressure, "42 MPa"},
        {"42 MPA", D::pressure, "42 MPa"},
        {"300 KPa", D::pressure, "300 kPa"},
        {"300 kPag", D::pressure, "300 kPa"},
        {"300 kPa(a)", D::pressure, "300 kPa abs"},
        {"6000 PSI", D::pressure, "6000 psi"},
        {"6000 psig", D::pressure, "6000 psi"},
        {"6000 PSIG", D::pressure, "6000 psi"},
        {"12 psia", D::pressure, "12 psi abs"},
        {"12 PSIA", D::absolute_pressure, "12 psi abs"},
        {"12 psi absolute", D::absolute_pressure, "12 psi abs"},
        {"0.8 bar a", D::absolute_pressure, "0.8 bar abs"},
        {"0.8 bar(abs)", D::absolute_pressure, "0.8 bar abs"},
        {"800 mbara", D::absolute_pressure, "800 mbar abs"},
        {"800 mbar(a)", D::absolute_pressure, "800 mbar abs"},
        {"800 hPa abs", D::absolute_pressure, "800 mbar abs"},
        {"24 in.Hg abs", D::absolute_pressure, "24 inHg abs"},
        {"600 mmHga", D::absolute_pressure, "600 mmHg abs"},
        {"35 N/mm\u00B2", D::pressure, "35 MPa"},
        {"500 lb/in2", D::pressure, "500 psi"},
        {"500 lbf/in\u00B2", D::pressure, "500 psi"},
        {"1.05 kg/cm\u00B2", D::pressure, "1.05 kgf/cm2"},
        {"1.05 kp/cm2", D::pressure, "1.05 kgf/cm2"},
        {"1.05 kg/cm2 abs", D::absolute_pressure, "1.05 kgf/cm2 abs"},
        {"3 at", D::pressure, "3 kgf/cm2"},
        {"-5 in Hg", D::pressure, "-5 inHg"},
        {"-5 in. Hg", D::pressure, "-5 inHg"},
        {"-5\"Hg", D::pressure, "-5 inHg"},
        {"-100 mm Hg", D::pressure, "-100 mmHg"},
        {"-100 MMHG", D::pressure, "-100 mmHg"},
        {"-20 in wc", D::pressure, "-20 inH2O"},
        {"-20 in. H2O", D::pressure, "-20 inH2O"},
        {"250000 PSI", D::bulk_modulus, "250000 psi"},
        {"1600 N/mm2", D::bulk_modulus, "1600 MPa"},
        {"1.6 Gpa", D::bulk_modulus, "1.6 GPa"},
    });
}

TEST(UnitGuess, DisplacementsFlowsVolumes) {
    expect_answered({
        {"4.33 cu in/rev", D::displacement, "4.33 in3/rev"},
        {"4.33 cu.in./rev", D::displacement, "4.33 in3/rev"},
        {"4.33 ci/rev", D::displacement, "4.33 in3/rev"},
        {"4.33 CIR", D::displacement, "4.33 in3/rev"},
        {"4.33 in^3/rev", D::displacement, "4.33 in3/rev"},
        {"4.33 in\u00B3/rev", D::displacement, "4.33 in3/rev"},
        {"71 cm\u00B3/rev", D::displacement, "71 cm3/rev"},
        {"71 cm\u00B3/U", D::displacement, "71 cm3/rev"},
        {"71 cc per rev", D::displacement, "71 cm3/rev"},
        {"71 ccm/U", D::displacement, "71 cm3/rev"},
        {"71 cc/turn", D::displacement, "71 cm3/rev"},
        {"71 CM3/REV", D::displacement, "71 cm3/rev"},
        {"71 mL/r", D::displacement, "71 mL/rev"},
        {"11.3 CC/rad", D::displacement, "11.3 cm3/rad"},
        {"2.4 m\u00B3/h", D::flow, "2.4 m3/h"},
        {"2.4 m3/hr", D::flow, "2.4 m3/h"},
        {"2.4 m^3/h", D::flow, "2.4 m3/h"},
        {"40 liters/minute", D::flow, "40 L/min"},
        {"40 litres per min", D::flow, "40 L/min"},
        {"40 L.min-1", D::flow, "40 L/min"},
        {"120 ml/min", D::flow, "120 mL/min"},
        {"120 cc per minute", D::flow, "120 cm3/min"},
        {"18 US gpm", D::flow, "18 gpm"},
        {"18 US gal/min", D::flow, "18 gal/min"},
        {"18 gallons/min", D::flow, "18 gal/min"},
        {"900 gph", D::flow, "900 gal/h"},
        {"900 lph", D::flow, "900 L/h"},
        {"5 cfm", D::flow, "5 ft3/min"},
        {"5 cu ft/min", D::flow, "5 ft3/min"},
        {"20 cu.in/min", D::flow, "20 in3/min"},
        {"15 us gal", D::volume, "15 gal"},
        {"15 gallons", D::volume, "15 gal"},
        {"8 quarts", D::volume, "8 qt"},
        {"231 cubic inches", D::volume, "231 in3"},
        {"60 ltr", D::volume, "60 L"},
        {"0.02 L/min per bar", D::leakage, "0.02 L/(min.bar)"},
    });
}

TEST(UnitGuess, MechanicsAndHeat) {
    expect_answered({
        {"220 ft.lb", D::torque, "220 lbf.ft"},
        {"220 lb-ft", D::torque, "220 lbf.ft"},
        {"220 ft-lbs", D::torque, "220 lbf.ft"},
        {"220 foot-pounds", D::torque, "220 lbf.ft"},
        {"900 in.lb", D::torque, "900 lbf.in"},
        {"900 lbf in", D::torque, "900 lbf.in"},
        {"300 N\u00B7m", D::torque, "300 N.m"},
        {"300 N m", D::torque, "300 N.m"},
        {"300 newton meters", D::torque, "300 N.m"},
        {"30 kgf m", D::torque, "30 kgf.m"},
        {"30 kg.m", D::torque, "30 kgf.m"},
        {"30 kpm", D::torque, "30 kgf.m"},
        {"30 daNm", D::torque, "30 daN.m"},
        {"55 KW", D::power, "55 kW"},
        {"75 BHP", D::power, "75 hp"},
        {"75 Hp", D::power, "75 hp"},
        {"75 cv", D::power, "75 PS"},
        {"75 CV", D::power, "75 PS"},
        {"40000 BTU/hr", D::power, "40000 Btu/h"},
        {"2400 RPM", D::speed, "2400 rpm"},
        {"2400 r.p.m.", D::speed, "2400 rpm"},
        {"2400 min\u207B\u00B9", D::speed, "2400 1/min"},
        {"40 rps", D::speed, "40 rev/s"},
        {"18 degrees", D::angle, "18 deg"},
        {"18\u00B0", D::angle, "18 deg"},
        {"12 percent", D::ratio, "12 %"},
        {"12 pct", D::ratio, "12 %"},
        {"12 percent", D::grade, "12 %"},
        {"7\u00B0", D::grade, "7 deg"},
        {"60 C", D::temperature, "60 degC"},
        {"60 c", D::temperature, "60 degC"},
        {"60 \u00BAC", D::temperature, "60 \u00B0C"},
        {"140 deg F", D::temperature, "140 degF"},
        {"30 deg C", D::temperature_difference, "30 K"},
        {"54 \u00B0F", D::temperature_difference, "54 degR"},
        {"10 microns", D::length, "10 um"},
        {"20 sq cm", D::area, "20 cm2"},
        {"3 sq.in", D::area, "3 in2"},
        {"3 in\u00B2", D::area, "3 in2"},
        {"500 lb", D::force, "500 lbf"},
        {"500 lbs", D::force, "500 lbf"},
        {"500 kp", D::force, "500 kgf"},
        {"0.4 kgm\u00B2", D::inertia, "0.4 kg.m2"},
        {"12 lb-ft2", D::inertia, "12 lb.ft2"},
        {"2500 lb/in", D::stiffness, "2500 lbf/in"},
        {"900 Nm/rad", D::torsional_stiffness, "900 N.m/rad"},
        {"900 ft.lb/deg", D::torsional_stiffness, "900 lbf.ft/deg"},
        {"2 sec", D::time, "2 s"},
        {"8 hrs", D::time, "8 h"},
        {"7.42 lb/US gal", D::density, "7.42 lb/gal"},
        {"55 lb/cu ft", D::density, "55 lb/ft3"},
        {"0.87 g/cc", D::density, "0.87 g/cm3"},
        {"0.87 kg/dm3", D::density, "0.87 kg/L"},
        {"46 centistokes", D::kinematic_viscosity, "46 cSt"},
        {"40 mPas", D::dynamic_viscosity, "40 mPa.s"},
        {"40 cps", D::dynamic_viscosity, "40 cP"},
        {"1.9 kJ/kgK", D::specific_heat, "1.9 kJ/(kg.K)"},
        {"1.9 kJ/kg\u00B7K", D::specific_heat, "1.9 kJ/(kg.K)"},
        {"1.9 kJ/kg/K", D::specific_heat, "1.9 kJ/(kg.K)"},
        {"1.9 kJ/(kg.degC)", D::specific_heat, "1.9 kJ/(kg.K)"},
        {"1900 J.kg-1.K-1", D::specific_heat, "1900 J/(kg.K)"},
        {"0.42 Btu/lb\u00B0F", D::specific_heat, "0.42 Btu/(lb.degF)"},
        {"0.42 BTU/lb-F", D::specific_heat, "0.42 Btu/(lb.degF)"},
        {"12 W/m\u00B2K", D::heat_transfer, "12 W/(m2.K)"},
        {"12 W/m2\u00B7\u00B0C", D::heat_transfer, "12 W/(m2.K)"},
        {"2.5 Btu/h\u00B7ft\u00B2\u00B7\u00B0F", D::heat_transfer, "2.5 Btu/(h.ft2.degF)"},
        {"0.13 W/mK", D::thermal_conductivity, "0.13 W/(m.K)"},
        {"400 W/\u00B0C", D::thermal_conductance, "400 W/K"},
        {"0.0007 /K", D::thermal_expansion, "0.0007 1/K"},
        {"0.0007 1/\u00B0C", D::thermal_expansion, "0.0007 1/K"},
        {"0.0004 per \u00B0F", D::thermal_expansion, "0.0004 1/degF"},
        {"3 kWh", D::energy, "3 kW.h"},
        {"3 BTU", D::energy, "3 Btu"},
        {"600 ma", D::current, "600 mA"},
        {"24 volts", D::voltage, "24 V"},
        {"24 VOLT", D::voltage, "24 V"},
        {"24 mps", D::velocity, "24 m/s"},
        {"120 in/sec", D::velocity, "120 in/s"},
        {"120 ipm", D::velocity, "120 in/min"},
        {"0.5 m/s\u00B2", D::acceleration, "0.5 m/s2"},
        {"0.5 m/sec2", D::acceleration, "0.5 m/s2"},
    });
}

TEST(UnitGuess, WhatHasNoFactorIsExplained) {
    const std::vector<std::array<std::string_view, 2>> viscosities = {
        {"230 SUS",
         "'SUS' is a reading of the Saybolt viscometer and has no factor: convert it "
         "(ASTM D2161)"},
        {"230 ssu",
         "'ssu' is a reading of the Saybolt viscometer and has no factor: convert it "
         "(ASTM D2161)"},
        {"6 \u00B0E",
         "'\u00B0E' is a reading of the Engler viscometer and has no factor: "
         "convert it"},
    };
    for (const auto& [text, words] : viscosities) {
        EXPECT_EQ(parse_quantity(text, D::kinematic_viscosity).message, words);
        EXPECT_EQ(parse_quantity(text, D::kinematic_viscosity).suggestion, "");
    }
    for (const auto& [text, dimension] :
         std::vector<std::pair<std::string_view, Dimension>>{{"10 imp gal", D::volume},
                                                             {"10 imp. gallons", D::volume},
                                                             {"10 imperial gallons", D::volume},
                                                             {"10 UK gal", D::volume},
                                                             {"10 UK gal/min", D::flow},
                                                             {"10 igpm", D::flow}}) {
        const ParsedQuantity parsed = parse_quantity(text, dimension);
        EXPECT_NE(parsed.message.find("is the imperial gallon, which is not read"),
                  std::string::npos)
            << text << ": " << parsed.message;
        EXPECT_EQ(parsed.suggestion, "") << text;
    }
    for (const auto& [text, dimension, words] :
         std::vector<std::tuple<std::string_view, Dimension, std::string_view>>{
             {"0.87 SG", D::density, "density of water"},
             {"31 \u00B0API", D::density, "no factor"},
             {"2 tons", D::mass, "short ton"},
             {"100 mesh", D::length, "wires of an inch"},
             {"40 1/s", D::speed, "turns or radians"},
             {"40 s-1", D::speed, "turns or radians"},
             {"5 inHg vac", D::pressure, "minus sign"},
             {"5 in. Hg vacuum", D::pressure, "minus sign"},
             {"5 atm", D::pressure, "over the atmosphere or absolute"}}) {
        const ParsedQuantity parsed = parse_quantity(text, dimension);
        EXPECT_NE(parsed.message.find(words), std::string::npos) << text << ": " << parsed.message;
        EXPECT_EQ(parsed.suggestion, "") << text;
    }
}

// Where two readings would differ in size, none is offered.
TEST(UnitGuess, NoGuessBetweenSizes) {
    for (const auto& [text, dimension] :
         std::vector<std::pair<std::string_view, Dimension>>{{"24 Mbar", D::pressure},
                                                             {"42 mPa", D::pressure},
                                                             {"3 kbar", D::pressure},
                                                             {"3 kMPa", D::pressure},
                                                             {"3 MkPa", D::pressure},
                                                             {"3 psf", D::pressure},
                                                             {"3 ksi", D::bulk_modulus},
                                                             {"3 mHg", D::pressure},
                                                             {"25 Mm", D::length},
                                                             {"25 nm", D::length},
                                                             {"12 ML/min", D::flow},
                                                             {"12 kL/min", D::flow},
                                                             {"12 mm3/rev", D::displacement},
                                                             {"40 MPa.s", D::dynamic_viscosity},
                                                             {"40 MPas", D::dynamic_viscosity},
                                                             {"12 N/km", D::stiffness},
                                                             {"12 W/cm2K", D::heat_transfer},
                                                             {"600 MA", D::current},
                                                             {"600 uA", D::current},
                                                             {"300 N.mm", D::torque},
                                                             {"300 Nmm", D::torque},
                                                             {"300 mNm", D::torque},
                                                             {"5 oz.in", D::torque},
                                                             {"5 Ms", D::time},
                                                             {"30 deg", D::temperature},
                                                             {"30 degrees", D::temperature},
                                                             {"30 degr", D::temperature_difference},
                                                             {"30 deg", D::temperature_difference},
                                                             {"12 hp", D::energy},
                                                             {"0.12", D::grade},
                                                             {"12", D::grade}}) {
        const ParsedQuantity parsed = parse_quantity(text, dimension);
        EXPECT_FALSE(parsed.ok()) << text;
        EXPECT_EQ(parsed.suggestion, "") << text;
    }
}

TEST(UnitGuess, EveryOtherNameIsAnsweredWhereItsUnitStands) {
    for (const Alias& alias : unit_aliases) {
        int dimensions = 0;
        for (const Unit& unit : units()) {
            if (unit.spelling != alias.meant) continue;
            ++dimensions;
            const ParsedQuantity parsed =
                parse_quantity("3 " + std::string(alias.written), unit.dimension);
            EXPECT_EQ(parsed.suggestion, "3 " + std::string(alias.meant)) << alias.written;
        }
        EXPECT_GT(dimensions, 0) << alias.written << " -> " << alias.meant;
    }
}

// The texts of a hostile file are as long as it may be.
TEST(UnitGuess, LongTextsAreNoUnits) {
    std::string blanks = "3";
    while (blanks.size() < 200'000) blanks += " m";
    for (const std::string& text :
         {"3 x" + std::string(200'000, '1'), "3 " + std::string(200'000, '/'), blanks,
          "3 " + std::string(200'000, 'm')}) {
        for (const Dimension dimension : {D::length, D::pressure, D::specific_heat}) {
            const ParsedQuantity parsed = parse_quantity(text, dimension);
            EXPECT_FALSE(parsed.ok());
            EXPECT_EQ(parsed.suggestion, "");
        }
    }
}

// SI prefixes (SI brochure, table 7) put before, in place of and out of every metric symbol of
// every spelling: what is offered, if anything, is the same quantity.
TEST(UnitGuess, APrefixIsNeverChangedSilently) {
    const std::vector<std::pair<std::string, int>> prefixes = {
        {"", 0},   {"n", -9}, {"u", -6}, {"m", -3}, {"c", -2}, {"d", -1},
        {"da", 1}, {"h", 2},  {"k", 3},  {"M", 6},  {"G", 9},
    };
    const std::vector<std::string> metric = {"bar", "Pa", "m",  "L", "l",  "g",  "N",    "W",  "J",
                                             "V",   "A",  "Hz", "s", "Nm", "St", "mH2O", "mHg"};
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    int asked = 0;
    int offered = 0;
    for (const Unit& unit : units()) {
        const std::string spelling(unit.spelling);
        if (unit.offset != 0.0) continue;  // the same stand among the absolute pressures, without
        for (std::size_t at = 0; at < spelling.size(); ++at) {
            if (!letter(spelling[at]) || (at > 0 && letter(spelling[at - 1]))) continue;
            for (const auto& [old_prefix, old_scale] : prefixes) {
                for (const std::string& symbol : metric) {
                    const std::string old = old_prefix + symbol;
                    if (spelling.compare(at, old.size(), old) != 0) continue;
                    const std::size_t end = at + old.size();
                    if (end < spelling.size() && letter(spelling[end])) continue;
                    int power =
                        end < spelling.size() && spelling[end] >= '2' && spelling[end] <= '3'
                            ? spelling[end] - '0'
                            : 1;
                    if (spelling.find('/') < at) power = -power;
                    for (const auto& [prefix, scale] : prefixes) {
                        std::string written = "3 ";
                        written.append(spelling, 0, at).append(prefix).append(symbol);
                        written.append(spelling, end, std::string::npos);
                        const double meant =
                            3 * unit.factor * std::pow(10.0, power * (scale - old_scale));
                        const ParsedQuantity parsed = parse_quantity(written, unit.dimension);
                        ++asked;
                        if (!parsed.ok() && parsed.suggestion.empty()) continue;
                        if (!parsed.ok()) ++offered;
                        const double si =
                            parsed.ok() ? parsed.si
                                        : parse_quantity(parsed.suggestion, unit.dimension).si;
                        EXPECT_NEAR(si / meant, 1.0, 1e-9)
                            << written << " -> " << parsed.suggestion;
                    }
                }
            }
        }
    }
    EXPECT_GT(asked, 1500);
    EXPECT_GT(offered, 10);
}

}  // namespace
}  // namespace loopwright
