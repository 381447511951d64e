#pragma once

#include <string_view>

#include <loopwright/base/dimension.h>

/// Words for units that this table spells otherwise, or has not: common practice, no source.
namespace loopwright {

/// How the trade or a careless hand writes something (in small or capital letters), and how this
/// table does.
struct Alias {
    std::string_view written = {};
    std::string_view meant = {};
};

inline constexpr Alias unit_aliases[] = {
    {"lpm", "L/min"},
    {"lph", "L/h"},
    {"lps", "L/s"},
    {"usgpm", "gpm"},
    {"us gpm", "gpm"},
    {"gph", "gal/h"},
    {"cfm", "ft3/min"},
    {"cfs", "ft3/s"},
    {"cim", "in3/min"},
    {"U/min", "rpm"},
    {"r/min", "rpm"},
    {"r.p.m", "rpm"},
    {"r.p.m.", "rpm"},
    {"rps", "rev/s"},
    {"ci", "in3/rev"},
    {"ci/rev", "in3/rev"},
    {"cid", "in3/rev"},
    {"cir", "in3/rev"},
    {"cipr", "in3/rev"},
    {"ccm", "cm3/rev"},
    {"ftlb", "lbf.ft"},
    {"lbft", "lbf.ft"},
    {"ftlbs", "lbf.ft"},
    {"inlb", "lbf.in"},
    {"lbin", "lbf.in"},
    {"inlbs", "lbf.in"},
    {"kgm", "kgf.m"},
    {"kpm", "kgf.m"},
    {"mkp", "kgf.m"},
    {"mkg", "kgf.m"},
    {"N.m", "J"},
    {"Nm", "J"},
    {"J", "N.m"},
    {"Ws", "J"},
    {"N/mm2", "MPa"},
    {"MN/m2", "MPa"},
    {"kN/m2", "kPa"},
    {"N/m2", "Pa"},
    {"hPa", "mbar"},
    {"hPa abs", "mbar abs"},
    {"psid", "psi"},
    {"lb/in2", "psi"},
    {"lbf/in2", "psi"},
    {"lb/sq in", "psi"},
    {"lb/sq.in", "psi"},
    {"at", "kgf/cm2"},
    {"ata", "kgf/cm2 abs"},
    {"mmWC", "mmH2O"},
    {"mmWS", "mmH2O"},
    {"inWC", "inH2O"},
    {"in wc", "inH2O"},
    {"in w.c.", "inH2O"},
    {"kph", "km/h"},
    {"kmh", "km/h"},
    {"mi/h", "mph"},
    {"mps", "m/s"},
    {"fps", "ft/s"},
    {"fpm", "ft/min"},
    {"ips", "in/s"},
    {"ipm", "in/min"},
    {"bhp", "hp"},
    {"shp", "hp"},
    {"hp(I)", "hp"},
    {"cv", "PS"},
    {"ch", "PS"},
    {"hp(M)", "PS"},
    {"metric hp", "PS"},
    {"Btuh", "Btu/h"},
    {"C", "degC"},
    {"F", "degF"},
    {"celsius", "degC"},
    {"fahrenheit", "degF"},
    {"degC", "K"},
    {"celsius", "K"},
    {"degF", "degR"},
    {"fahrenheit", "degR"},
    {"\xC2\xB0"
     "F",
     "degR"},
    {"F", "degR"},
    {"cS", "cSt"},
    {"cps", "cP"},
    {"N.s/m2", "Pa.s"},
    {"kg/(m.s)", "Pa.s"},
    {"pcf", "lb/ft3"},
    {"ppg", "lb/gal"},
    {"GN/m2", "GPa"},
    {"kN/mm2", "GPa"},
    {"cps", "Hz"},
    {"1/s", "Hz"},
    {"m/s/s", "m/s2"},
    {"ft/s/s", "ft/s2"},
    {"per cent", "%"},
};

/// Words for one symbol of a unit; nothing is meant by some.
inline constexpr Alias symbol_aliases[] = {
    {"sec", "s"},         {"secs", "s"},         {"second", "s"},
    {"seconds", "s"},     {"mins", "min"},       {"minute", "min"},
    {"minutes", "min"},   {"hr", "h"},           {"hrs", "h"},
    {"hour", "h"},        {"hours", "h"},        {"1", ""},
    {"ltr", "L"},         {"liter", "L"},        {"litre", "L"},
    {"liters", "L"},      {"litres", "L"},       {"dm3", "L"},
    {"cc", "cm3"},        {"ccm", "cm3"},        {"us", ""},
    {"gals", "gal"},      {"gallon", "gal"},     {"gallons", "gal"},
    {"usg", "gal"},       {"usgal", "gal"},      {"quart", "qt"},
    {"quarts", "qt"},     {"inch", "in"},        {"inches", "in"},
    {"\"", "in"},         {"foot", "ft"},        {"feet", "ft"},
    {"'", "ft"},          {"meter", "m"},        {"metre", "m"},
    {"meters", "m"},      {"metres", "m"},       {"millimeter", "mm"},
    {"millimetre", "mm"}, {"micron", "um"},      {"microns", "um"},
    {"r", "rev"},         {"u", "rev"},          {"turn", "rev"},
    {"turns", "rev"},     {"revs", "rev"},       {"revolution", "rev"},
    {"degree", "deg"},    {"degrees", "deg"},    {"\xC2\xB0", "deg"},
    {"radian", "rad"},    {"radians", "rad"},    {"percent", "%"},
    {"pct", "%"},         {"lbs", "lb"},         {"lbm", "lb"},
    {"pound", "lb"},      {"pounds", "lb"},      {"kp", "kgf"},
    {"kilogram", "kg"},   {"kilograms", "kg"},   {"tonne", "t"},
    {"tonnes", "t"},      {"newton", "N"},       {"newtons", "N"},
    {"watt", "W"},        {"watts", "W"},        {"kilowatt", "kW"},
    {"horsepower", "hp"}, {"volt", "V"},         {"volts", "V"},
    {"amp", "A"},         {"amps", "A"},         {"ampere", "A"},
    {"hertz", "Hz"},      {"centistoke", "cSt"}, {"centistokes", "cSt"},
    {"centipoise", "cP"}, {"poise", "P"},        {"kelvin", "K"},
    {"degk", "K"},        {"hg", "Hg"},
};

/// Words behind a pressure, and the spelling's own. The longer first.
inline constexpr Alias pressure_words[] = {
    {"absolute", " abs"}, {"(abs)", " abs"}, {"abs.", " abs"}, {"abs", " abs"}, {"(a)", " abs"},
    {"gauge", ""},        {"gage", ""},      {"(g)", ""},      {"a", " abs"},   {"g", ""},
};

/// What a milli or a mega may stand before in a metric unit.
inline constexpr std::string_view prefixed[] = {"bar", "m", "L", "l", "Pa", "s",   "A",  "V",
                                                "W",   "N", "J", "g", "Hg", "H2O", "Hz", "K"};

/// What has no factor, or more than one, and what to say of it. Written in small letters, without
/// blanks, points, strokes of the pen and brackets; as the whole of a unit or its beginning.
struct Refusal {
    std::string_view written = {};
    bool beginning = false;
    Dimension dimension = Dimension::ratio;
    std::string_view words = {};
};

inline constexpr std::string_view saybolt =
    "is a reading of the Saybolt viscometer and has no factor: convert it (ASTM D2161)";
inline constexpr std::string_view engler =
    "is a reading of the Engler viscometer and has no factor: convert it";
inline constexpr std::string_view redwood =
    "is a reading of the Redwood viscometer and has no factor: convert it";
inline constexpr std::string_view imperial =
    "is the imperial gallon, which is not read: it has 4.54609 L";
inline constexpr std::string_view ton = "may be the short ton, the long ton or the tonne";
inline constexpr std::string_view turn_or_radian = "may count turns or radians";
inline constexpr std::string_view vacuum =
    "is a pressure below the atmosphere: give it with a minus sign, or absolute";

inline constexpr Refusal refusals[] = {
    {"sus", false, Dimension::kinematic_viscosity, saybolt},
    {"ssu", false, Dimension::kinematic_viscosity, saybolt},
    {"ssf", false, Dimension::kinematic_viscosity, saybolt},
    {"saybolt", true, Dimension::kinematic_viscosity, saybolt},
    {"dege", false, Dimension::kinematic_viscosity, engler},
    {"\xC2\xB0"
     "e",
     false, Dimension::kinematic_viscosity, engler},
    {"engler", true, Dimension::kinematic_viscosity, engler},
    {"redwood", true, Dimension::kinematic_viscosity, redwood},
    {"sg", false, Dimension::density, "is a ratio to the density of water: give the density"},
    {"api", false, Dimension::density, "has no factor: give the density"},
    {"degapi", false, Dimension::density, "has no factor: give the density"},
    {"\xC2\xB0"
     "api",
     false, Dimension::density, "has no factor: give the density"},
    {"impgal", true, Dimension::volume, imperial},
    {"imperial", true, Dimension::volume, imperial},
    {"ukgal", true, Dimension::volume, imperial},
    {"impgal", true, Dimension::flow, imperial},
    {"impgpm", false, Dimension::flow, imperial},
    {"igpm", false, Dimension::flow, imperial},
    {"imperial", true, Dimension::flow, imperial},
    {"ukgal", true, Dimension::flow, imperial},
    {"ton", false, Dimension::mass, ton},
    {"tons", false, Dimension::mass, ton},
    {"mesh", false, Dimension::length, "counts the wires of an inch: give the opening"},
    {"1/s", false, Dimension::speed, turn_or_radian},
    {"s1", false, Dimension::speed, turn_or_radian},
    {"inhgvac", true, Dimension::pressure, vacuum},
    {"mmhgvac", true, Dimension::pressure, vacuum},
    {"barvac", true, Dimension::pressure, vacuum},
    {"mbarvac", true, Dimension::pressure, vacuum},
    {"atm", false, Dimension::pressure, "may be over the atmosphere or absolute"},
};

}  // namespace loopwright
