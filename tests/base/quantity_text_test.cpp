#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>

// What is read as a quantity, and what is said of the rest. The design's rules: number and unit, a
// bare number for ratios only, decimal point, no grouping, no hexadecimal, finite; a unit of the
// wrong dimension is an error that says what was expected.

namespace loopwright {
namespace {

using D = Dimension;

double si(std::string_view text, Dimension dimension) {
    const ParsedQuantity parsed = parse_quantity(text, dimension);
    EXPECT_TRUE(parsed.ok()) << "'" << text << "': " << parsed.message;
    return parsed.si;
}

/// Message and suggestion; the expectation is the same for all of a dimension but unknown units.
std::string said(std::string_view text, Dimension dimension) {
    const ParsedQuantity parsed = parse_quantity(text, dimension);
    if (parsed.ok()) return "read";
    EXPECT_TRUE(parsed.expected.starts_with(std::string(phrase(dimension)) + " such as "))
        << parsed.expected;
    return parsed.suggestion.empty() ? parsed.message : parsed.message + " -> " + parsed.suggestion;
}

TEST(QuantityText, AcceptedForms) {
    for (const std::string_view text :
         {"12 bar", "12bar", " 12 bar", "12 bar ", "12  bar", "\t12\tbar\n", "+12 bar", "12. bar",
          "12.0 bar", "1.2e1 bar", "1.2E+1 bar", "120e-1 bar", "012 bar"}) {
        EXPECT_EQ(si(text, D::pressure), 12e5) << text;
    }
    EXPECT_EQ(si(".5 bar", D::pressure), 0.5e5);
    EXPECT_EQ(si("-.5 bar", D::pressure), -0.5e5);
    EXPECT_EQ(si("-12 bar", D::pressure), -12e5);
    EXPECT_EQ(si("0.8  bar   abs", D::absolute_pressure), 0.8e5);
    EXPECT_EQ(si("0.8bar abs", D::absolute_pressure), 0.8e5);
    EXPECT_EQ(si("2400 1/min", D::speed), si("2400 rpm", D::speed));
    EXPECT_EQ(si("-10 degC", D::temperature), 263.15);
    EXPECT_EQ(si("-10 \u00B0C", D::temperature), 263.15);
    EXPECT_EQ(si("300 Nm", D::torque), 300.0);
    EXPECT_EQ(si("40 l/min", D::flow), si("40 L/min", D::flow));
    EXPECT_EQ(si("71 cc/rev", D::displacement), si("71 cm3/rev", D::displacement));
}

TEST(QuantityText, RatiosNeedNoUnit) {
    EXPECT_EQ(si("0.2", D::ratio), 0.2);
    EXPECT_EQ(si("20 %", D::ratio), 20 * 0.01);
    EXPECT_EQ(si("20%", D::ratio), 20 * 0.01);
    EXPECT_EQ(said("20 bar", D::ratio), "'bar' is the unit of a pressure");
    EXPECT_EQ(parse_quantity("20 percent", D::ratio).message, "unknown unit 'percent'");
}

TEST(QuantityText, ZeroHasNoSign) {
    for (const std::string_view text : {"0 bar", "-0 bar", "-0.0e5 bar"}) {
        EXPECT_FALSE(std::signbit(si(text, D::pressure))) << text;
        EXPECT_EQ(si(text, D::pressure), 0.0) << text;
    }
}

TEST(QuantityText, NoNumber) {
    EXPECT_EQ(said("", D::pressure), "the quantity is empty");
    EXPECT_EQ(said(" \t ", D::pressure), "the quantity is empty");
    for (const std::string text :
         {"bar",        "nan",          "nan bar", "inf",     "inf bar", "-inf bar",
          "-nan bar",   "infinity bar", "+",       "-",       ".",       "-. bar",
          "+-5 bar",    "--5 bar",      "++5 bar", "-+5 bar", "e5 bar",  ",5 bar",
          "twelve bar", "~12 bar",      "<12 bar", "$12",     "(12 bar)"}) {
        EXPECT_EQ(said(text, D::pressure), "'" + text + "' does not begin with a decimal number");
    }
    EXPECT_EQ(said("bar", D::pressure), "'bar' does not begin with a decimal number");
}

TEST(QuantityText, NumbersOutOfRange) {
    EXPECT_EQ(said("1e999 bar", D::pressure), "'1e999 bar' is a number out of range");
    EXPECT_EQ(said("-1e999 bar", D::pressure), "'-1e999 bar' is a number out of range");
    EXPECT_EQ(said("1e-999 bar", D::pressure), "'1e-999 bar' is a number out of range");
    // Finite as written, not in SI.
    EXPECT_EQ(said("1e308 bar", D::pressure), "'1e308 bar' is a number out of range");
    EXPECT_EQ(si("1e300 bar", D::pressure), 1e300 * 1e5);
}

TEST(QuantityText, NumbersInOtherNotations) {
    for (const std::string_view text : {"0x10 bar", "0X10 bar", "-0x10 bar", "+0x1p3 bar"}) {
        EXPECT_EQ(said(text, D::pressure), "hexadecimal numbers are not read") << text;
    }
    EXPECT_EQ(said("1,5 bar", D::pressure), "a comma in a number -> 1.5 bar");
    EXPECT_EQ(said("-0,25bar", D::pressure), "a comma in a number -> -0.25bar");
    EXPECT_EQ(said("1,5 Bar", D::pressure), "a comma in a number -> 1.5 bar");
    EXPECT_EQ(said("1,5", D::pressure), "a comma in a number -> 1.5 bar");
    // 1000 psi in the United States, 1 psi elsewhere: no guess.
    EXPECT_EQ(said("1,000 psi", D::pressure),
              "a comma in a number, which may part thousands or decimals");
    EXPECT_EQ(said("1,234,567 Pa", D::pressure),
              "a comma in a number, which may part thousands or decimals");
    EXPECT_EQ(said("1,5,5 bar", D::pressure), "a comma in a number");
    EXPECT_EQ(said("1, bar", D::pressure), "a comma in a number -> 1. bar");
    EXPECT_EQ(said("1 000 psi", D::pressure), "a blank in a number -> 1000 psi");
    EXPECT_EQ(said("1 100 bar", D::pressure), "a blank in a number -> 1100 bar");
    EXPECT_EQ(said("12 000 000 Pa", D::pressure), "a blank in a number -> 12000000 Pa");
    EXPECT_EQ(said("1 5 bar", D::pressure), "a blank in a number");
    EXPECT_EQ(said("1/2 in", D::length), "a fraction in place of a decimal number");
    EXPECT_EQ(said("2 1/2 in", D::length), "a fraction in place of a decimal number");
    EXPECT_EQ(said("1 1/4in", D::length), "a fraction in place of a decimal number");
    EXPECT_EQ(said("1.2.3 bar", D::pressure), "unknown unit '.3 bar'");
    EXPECT_EQ(said("1e bar", D::pressure), "unknown unit 'e bar'");
    EXPECT_EQ(said("24..26 bar", D::pressure), "unknown unit '.26 bar'");
}

TEST(QuantityText, NoUnit) {
    EXPECT_EQ(said("24", D::pressure), "'24' has no unit -> 24 bar");
    EXPECT_EQ(said("+24 ", D::pressure), "'+24' has no unit -> 24 bar");
    EXPECT_EQ(said("71", D::displacement), "'71' has no unit -> 71 cm3/rev");
    EXPECT_EQ(said("0", D::length), "'0' has no unit -> 0 mm");
}

TEST(QuantityText, UnitOfAnotherDimension) {
    const ParsedQuantity parsed = parse_quantity("24 bar", D::flow);
    EXPECT_EQ(parsed.message, "'bar' is the unit of a pressure");
    EXPECT_EQ(parsed.expected, "a flow such as 40 L/min");
    EXPECT_EQ(parsed.suggestion, "");
    EXPECT_EQ(said("71 cm3", D::displacement), "'cm3' is the unit of a volume -> 71 cm3/rev");
    EXPECT_EQ(said("4 in3", D::displacement), "'in3' is the unit of a volume -> 4 in3/rev");
    EXPECT_EQ(said("0.8 bar", D::absolute_pressure), "'bar' is the unit of a pressure");
    EXPECT_EQ(said("30 degC", D::temperature_difference),
              "'degC' is the unit of a temperature -> 30 K");
    EXPECT_EQ(said("30 \u00B0C", D::temperature_difference),
              "'\u00B0C' is the unit of a temperature -> 30 K");
    // A difference of 54 degF is 30 K: the same number of kelvins would be wrong.
    EXPECT_EQ(said("54 degF", D::temperature_difference),
              "'degF' is the unit of a temperature -> 54 degR");
    EXPECT_EQ(said("300 K", D::temperature), "'K' is the unit of a difference of temperatures");
    EXPECT_EQ(said("24 %", D::pressure), "'%' is the unit of a ratio");
    EXPECT_EQ(said("2 m/s", D::speed), "'m/s' is the unit of a velocity");
    EXPECT_EQ(said("0.8 bar   abs", D::flow), "'bar abs' is the unit of a pressure");
}

TEST(QuantityText, AnUnknownUnitListsTheKnown) {
    const ParsedQuantity parsed = parse_quantity("55 zz", D::area);
    EXPECT_EQ(parsed.message, "unknown unit 'zz'");
    EXPECT_EQ(parsed.expected, "an area such as 20 cm2 (units: cm2, mm2, m2, in2, ft2)");
    EXPECT_EQ(parsed.suggestion, "");
    EXPECT_EQ(parse_quantity("55 zz", D::ratio).expected,
              "a ratio such as 0.2 or 20 % (units: %, kg/t, lb/ton)");
    // But not where one of them is named.
    for (const std::string_view text : {"20 sqcm", "20 CM2", "20 cm\u00B2", "20 sq cm\u00A0"}) {
        EXPECT_EQ(parse_quantity(text, D::area).expected,
                  text == "20 sqcm" ? "an area such as 20 cm2 (units: cm2, mm2, m2, in2, ft2)"
                                    : "an area such as 20 cm2")
            << text;
    }
}

struct NearMiss {
    std::string_view text = {};
    Dimension dimension = D::ratio;
    std::string_view meant = {};
};

/// Each is no quantity, and the right spelling is offered, which is one.
void expect_answered(const std::vector<NearMiss>& all) {
    for (const NearMiss& one : all) {
        const ParsedQuantity parsed = parse_quantity(one.text, one.dimension);
        EXPECT_FALSE(parsed.ok()) << one.text;
        EXPECT_EQ(parsed.suggestion, one.meant) << one.text;
        EXPECT_TRUE(parse_quantity(one.meant, one.dimension).ok()) << one.meant;
    }
}

TEST(QuantityText, CaseIsAnswered) {
    expect_answered({{"24 Bar", D::pressure, "24 bar"},
                     {"24 BAR", D::pressure, "24 bar"},
                     {"42 Mpa", D::pressure, "42 MPa"},
                     {"42 mpa", D::pressure, "42 MPa"},
                     {"42 KPA", D::pressure, "42 kPa"},
                     {"6000 PSI", D::pressure, "6000 psi"},
                     {"55 KW", D::power, "55 kW"},
                     {"55 kw", D::power, "55 kW"},
                     {"75 HP", D::power, "75 hp"},
                     {"75 ps", D::power, "75 PS"},
                     {"2400 RPM", D::speed, "2400 rpm"},
                     {"18 GPM", D::flow, "18 gpm"},
                     {"40 L/MIN", D::flow, "40 L/min"},
                     {"300 NM", D::torque, "300 Nm"},
                     {"25 MM", D::length, "25 mm"},
                     {"46 CST", D::kinematic_viscosity, "46 cSt"},
                     {"46 cst", D::kinematic_viscosity, "46 cSt"},
                     {"60 degc", D::temperature, "60 degC"},
                     {"71 CC/REV", D::displacement, "71 cc/rev"},
                     {"870 KG/M3", D::density, "870 kg/m3"},
                     {"0.8 BAR ABS", D::absolute_pressure, "0.8 bar abs"}});
}

// What else the trade writes; the meaning of each is common practice, no source.
TEST(QuantityText, OtherNamesAreAnswered) {
    expect_answered({{"40 lpm", D::flow, "40 L/min"},
                     {"40 LPM", D::flow, "40 L/min"},
                     {"40 ltr/min", D::flow, "40 L/min"},
                     {"40 dm3/min", D::flow, "40 L/min"},
                     {"10 USgpm", D::flow, "10 gpm"},
                     {"60 dm3", D::volume, "60 L"},
                     {"60 litres", D::volume, "60 L"},
                     {"2400 U/min", D::speed, "2400 rpm"},
                     {"2400 r/min", D::speed, "2400 rpm"},
                     {"2400 min-1", D::speed, "2400 1/min"},
                     {"71 ccm", D::displacement, "71 cm3/rev"},
                     {"71 cc", D::displacement, "71 cm3/rev"},
                     {"71 cm3/r", D::displacement, "71 cm3/rev"},
                     {"4.33 cu.in", D::displacement, "4.33 in3/rev"},
                     {"4.33 in3/r", D::displacement, "4.33 in3/rev"},
                     {"220 lb-ft", D::torque, "220 lbf.ft"},
                     {"220 ft.lbf", D::torque, "220 lbf.ft"},
                     {"220 in-lb", D::torque, "220 lbf.in"},
                     {"3 kNm", D::torque, "3 kN.m"},
                     {"300 N m", D::torque, "300 N.m"},
                     {"350 barg", D::pressure, "350 bar"},
                     {"350 psig", D::pressure, "350 psi"},
                     {"0.8 bara", D::absolute_pressure, "0.8 bar abs"},
                     {"0.8 bar(a)", D::pressure, "0.8 bar abs"},
                     {"12 psia", D::absolute_pressure, "12 psi abs"},
                     {"35 N/mm2", D::pressure, "35 MPa"},
                     {"10 micron", D::length, "10 um"},
                     {"1 inch", D::length, "1 in"},
                     {"1.5\"", D::length, "1.5 in"},
                     {"60 C", D::temperature, "60 degC"},
                     {"140 F", D::temperature, "140 degF"},
                     {"60 deg C", D::temperature, "60 degC"},
                     {"60 \u00B0 C", D::temperature, "60 degC"},
                     {"30 C", D::temperature_difference, "30 K"},
                     {"18\u00B0", D::angle, "18 deg"},
                     {"2600 lbs", D::mass, "2600 lb"},
                     {"24 kph", D::velocity, "24 km/h"}});
}

TEST(QuantityText, CharactersOfPrintAreAnswered) {
    expect_answered({{"71 cm\u00B3/rev", D::displacement, "71 cm3/rev"},
                     {"71 cm^3/rev", D::displacement, "71 cm3/rev"},
                     {"46 mm\u00B2/s", D::kinematic_viscosity, "46 mm2/s"},
                     {"300 N\u00B7m", D::torque, "300 N.m"},
                     {"300 N\u22C5m", D::torque, "300 N.m"},
                     {"300 N*m", D::torque, "300 N.m"},
                     {"220 ft\u00B7lbf", D::torque, "220 lbf.ft"},
                     {"60 \u00BAC", D::temperature, "60 \u00B0C"},
                     {"\u221210 degC", D::temperature, "-10 degC"},
                     {"\u201310 degC", D::temperature, "-10 degC"},
                     {"12\u00A0bar", D::pressure, "12 bar"},
                     {"12\u202Fbar", D::pressure, "12 bar"},
                     {"12\u2009bar", D::pressure, "12 bar"},
                     {"\u00A012 bar", D::pressure, "12 bar"},
                     {"12 bar\u00A0", D::pressure, "12 bar"},
                     {"1\u00A0000 psi", D::pressure, "1000 psi"},
                     {"0.8 bar\u00A0abs", D::absolute_pressure, "0.8 bar abs"},
                     {"71 CM\u00B3", D::displacement, "71 cm3/rev"},
                     {"1.5\u2033", D::length, "1.5 in"}});
}

TEST(QuantityText, SlipsAreAnsweredButNotPrefixes) {
    expect_answered({{"24 baar", D::pressure, "24 bar"},
                     {"2400 rpmm", D::speed, "2400 rpm"},
                     {"71 cm3/rve", D::displacement, "71 cm3/rev"},
                     {"60 degrC", D::temperature, "60 degC"}});
    // One letter from a known unit, and a thousand or sixteen times another quantity.
    for (const auto& [text, dimension] : std::vector<std::pair<std::string_view, Dimension>>{
             {"3 hbar", D::pressure}, {"500 mm3/min", D::flow}, {"9 mm3/rev", D::displacement}}) {
        EXPECT_EQ(parse_quantity(text, dimension).suggestion, "") << text;
        EXPECT_FALSE(parse_quantity(text, dimension).ok()) << text;
    }
}

TEST(QuantityText, ExamplesAreWhatTheySay) {
    for (std::size_t i = 0; i < dimension_count; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        std::string text(example(dimension));
        if (dimension == D::ratio) {
            EXPECT_EQ(text, "0.2 or 20 %");
            text = "20 %";
        }
        EXPECT_TRUE(parse_quantity(text, dimension).ok()) << text;
        EXPECT_EQ(parse_quantity("", dimension).expected,
                  std::string(phrase(dimension)) + " such as " + std::string(example(dimension)));
    }
}

// A suggestion that is refused in its turn would send the reader in circles.
TEST(QuantityText, WhatIsSuggestedCanBeRead) {
    for (const Unit& unit : units()) {
        for (std::size_t i = 0; i < dimension_count; ++i) {
            const auto dimension = static_cast<Dimension>(i);
            std::string lower(unit.spelling);
            std::string longer = lower + "x";
            for (char& c : lower) {
                if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
            }
            for (const std::string& written : {std::string(unit.spelling), lower, longer}) {
                for (const std::string number : {"12 ", "1,5 ", "1 000 ", "\u22125 "}) {
                    const ParsedQuantity parsed = parse_quantity(number + written, dimension);
                    EXPECT_TRUE(parsed.suggestion.empty() ||
                                parse_quantity(parsed.suggestion, dimension).ok())
                        << number << written << " -> " << parsed.suggestion;
                }
            }
        }
    }
}

}  // namespace
}  // namespace loopwright
