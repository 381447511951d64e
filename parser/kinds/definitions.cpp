#include <loopwright/parser/kinds/definitions.h>

#include <algorithm>

#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec text(std::string_view name, std::string_view doc) {
    return {.name = name, .doc = doc};
}
constexpr AttributeSpec needed(AttributeSpec spec) {
    spec.required = true;
    return spec;
}
constexpr AttributeSpec date(std::string_view name, std::string_view doc) {
    return {.name = name, .type = AttributeType::date, .doc = doc};
}
/// Either way.
constexpr AttributeSpec signed_quantity(std::string_view name, Dimension dimension,
                                        std::string_view doc) {
    return {.name = name,
            .type = AttributeType::quantity,
            .dimension = dimension,
            .least = -1e300,
            .doc = doc};
}
constexpr AttributeSpec count(std::string_view name, double least, double most,
                              std::string_view doc) {
    return {.name = name, .type = AttributeType::count, .least = least, .most = most, .doc = doc};
}

constexpr AttributeSpec title = text("title", "name for people");
constexpr AttributeSpec own_id = needed(text("id", "a letter, then letters, digits, '-' and '_'"));
constexpr std::string_view subject_doc =
    "what it is about: an id, a port such as P1.A, loop:P1, side:P1.A or circuit";

// ISO 3448:1992, table 1.
constexpr std::string_view grades[] = {"VG 2",   "VG 3",    "VG 5",    "VG 7",    "VG 10",
                                       "VG 15",  "VG 22",   "VG 32",   "VG 46",   "VG 68",
                                       "VG 100", "VG 150",  "VG 220",  "VG 320",  "VG 460",
                                       "VG 680", "VG 1000", "VG 1500", "VG 2200", "VG 3200"};
constexpr AttributeSpec fluid[] = {
    title,
    choice("grade", grades, {}, "viscosity grade (ISO 3448)"),
    count("viscosity-index", 0, 400, "viscosity index (ASTM D2270)"),
    positive("viscosity-40", Dimension::kinematic_viscosity, "kinematic viscosity at 40 degC"),
    positive("viscosity-100", Dimension::kinematic_viscosity, "kinematic viscosity at 100 degC"),
    positive("density", Dimension::density, "density at 15 degC"),
    positive("specific-heat", Dimension::specific_heat, "specific heat"),
    positive("bulk-modulus", Dimension::bulk_modulus, "isothermal secant bulk modulus"),
    signed_quantity("pour-point", Dimension::temperature, "lowest temperature at which it flows"),
    text("cleanliness", "cleanliness that the circuit needs (ISO 4406), such as 18/16/13"),
};

constexpr std::string_view givers[] = {"pedal", "lever", "knob", "signal"};
constexpr AttributeSpec command[] = {
    own_id,
    title,
    choice("given-by", givers, {}, "what the operator moves, or the signal of a controller"),
    flow_directions("2", "the general case; no source",
                    "2 where it commands both directions, 1 for forward only"),
    yes_no("returns", "whether a spring brings it back to neutral when it is let go", "yes"),
    share("dead-band", "travel from neutral before anything follows"),
};
constexpr std::string_view senses[] = {"both", "forward", "reverse"};
constexpr AttributeSpec stage[] = {
    needed(text("of", "the id of the pump, motor or prime mover that follows")),
    needed(share("from", "travel at which it begins")),
    needed(share("to", "travel at which it is complete")),
    share("begin", "what is set at its begin: share of the largest displacement or rated speed"),
    share("end", "what is set at its end: share of the largest displacement or rated speed"),
    choice("direction", senses, "both", "which direction of travel it follows"),
    yes_no("overlap", "whether it is meant to run beside another stage"),
};

constexpr AttributeSpec duty[] = {
    signed_quantity("altitude", Dimension::length, "height over sea level, for suction limits"),
    signed_quantity("ambient", Dimension::temperature, "temperature of the air"),
    signed_quantity("cold-start", Dimension::temperature, "lowest oil temperature at starting"),
};
constexpr std::string_view states[] = {"neutral",         "drive-forward",   "drive-reverse",
                                       "overrun-forward", "overrun-reverse", "hold",
                                       "lost-signal",     "stopped",         "towing"};
constexpr AttributeSpec travel{.name = "travel",
                               .type = AttributeType::quantity,
                               .least = -1.0,
                               .most = 1.0,
                               .doc = "travel of the command; negative in reverse"};
constexpr AttributeSpec torque =
    signed_quantity("torque", Dimension::torque, "torque of the load; negative where it drives");
constexpr AttributeSpec force =
    signed_quantity("force", Dimension::force, "force of the load; negative where it drives");
constexpr AttributeSpec speed = quantity("speed", Dimension::speed, "speed of the prime mover");
constexpr AttributeSpec grade = signed_quantity(
    "grade", Dimension::grade, "grade that a vehicle meets; negative where it goes downhill");
constexpr AttributeSpec mass =
    positive("mass", Dimension::mass, "mass that the load moves, where it is not its own");
constexpr AttributeSpec velocity = signed_quantity(
    "velocity", Dimension::velocity,
    "velocity that the load is to have at its wheel-radius, negative in reverse: what 'loopwright "
    "size' sizes a drive for");
constexpr AttributeSpec point[] = {
    own_id,
    title,
    choice("state", states, {}, "the state it is; not given: as travel and load say"),
    speed,
    travel,
    torque,
    force,
    grade,
    mass,
    velocity,
    signed_quantity("oil", Dimension::temperature,
                    "temperature of the reservoir's oil; not given: as the heat balances"),
    signed_quantity("ambient", Dimension::temperature, "temperature of the air, where another"),
    share("share", "share of the working time"),
};
constexpr AttributeSpec point_set[] = {
    needed(text("of", "the id of a command, prime mover, load, accumulator or valve")),
    signed_quantity("speed", Dimension::speed,
                    "speed of the prime mover; of a load the one that it is to have, as velocity"),
    travel,
    torque,
    force,
    grade,
    mass,
    velocity,
    text("position", "where a directional valve stands"),
    pressure("pressure", "pressure of an accumulator that feeds"),
};

constexpr AttributeSpec interlock[] = {
    needed(text("when",
                "a condition: 'S1 closed', 'S1 open', 'PS1 below 12 bar', 'PS1 above 12 bar', "
                "'V3.a', 'E1 turns', 'E1 stands', 'Z1 off-neutral', 'Z1 neutral' or 'F1 clogged'")),
    needed(text("prevents", "what it prevents: 'start E1', 'V3.a' or 'move Z1'")),
    title,
};

constexpr AttributeSpec remark[] = {
    needed(text("subject", subject_doc)),
    needed(text("text", "the remark")),
    text("by", "who made it"),
    date("date", "when"),
};

constexpr AttributeSpec waiver[] = {
    needed(text("rule", "the id of a rule, listed by 'loopwright rules'")),
    needed(text("subject", subject_doc)),
    needed(text("reason", "why the finding is accepted")),
    needed(text("by", "who accepted it")),
    date("until", "the last day on which it holds"),
};

constexpr std::string_view sizes[] = {"A4", "A3", "A2", "A1", "A0"};
constexpr AttributeSpec sheet[] = {
    choice("size", sizes, {}, "size of the sheet (ISO 5457); not given: what the circuit needs"),
};
constexpr double sheet_modules = 1000;  // more than A0 has
constexpr std::string_view turns[] = {"0", "90", "180", "270"};
constexpr AttributeSpec place[] = {
    needed(text("of", "the id of a component")),
    count("x", 0, sheet_modules, "modules from the left of the drawing area to its symbol"),
    count("y", 0, sheet_modules, "modules from the top of the drawing area to its symbol"),
    choice("turn", turns, {}, "degrees, clockwise, that its symbol is turned"),
    yes_no("mirrored", "whether its symbol is mirrored, left for right, before it is turned"),
};

// Of measured data. Axes first; how they go together: build_tables.cpp.
constexpr AttributeSpec row[] = {
    signed_quantity("pressure", Dimension::pressure, "difference over a machine's ports"),
    quantity("speed", Dimension::speed, "speed of the shaft"),
    share("stroke", "set displacement over the largest"),
    positive("viscosity", Dimension::kinematic_viscosity, "viscosity of the oil"),
    quantity("flow", Dimension::flow, "flow through it; of a machine: what was measured"),
    share("volumetric-efficiency", "volumetric efficiency measured"),
    quantity("torque", Dimension::torque, "torque measured"),
    share("mechanical-efficiency", "hydro-mechanical efficiency measured"),
    quantity("drop", Dimension::pressure, "pressure drop measured"),
};

constexpr AttributeSpec tolerance_of[] = {
    needed(text("of", "the name of one of the part's attributes")),
    needed(text("value", "how far it may be off, either way: in the attribute's unit, or in %")),
};

constexpr std::string_view classes[] = {"joined",  "one-way",  "pressure-opened",
                                        "reduced", "metering", "element"};
constexpr AttributeSpec passage[] = {
    needed(text("from", "a port of the device")),
    needed(text("to", "a port of the device")),
    needed(choice("class", classes, {}, "how oil can pass")),
    yes_no("both-ways", "whether it passes back as well"),
    pressure("opening", "pressure that it takes to open"),
};

constexpr ElementSpec all[] = {
    {.name = "fluid",
     .in = "circuit",
     .doc = "The oil: grade and index, or viscosities at 40 and 100 degC; density and more.",
     .attributes = fluid,
     .once = true},
    {.name = "command",
     .in = "circuit",
     .doc = "How displacement or shaft speed follows the operator, in stages.",
     .attributes = command},
    {.name = "stage",
     .in = "command",
     .doc = "A part that follows the travel from one share of it to another. A pump goes from no "
            "displacement to its largest, a motor from its largest to its least, a prime mover "
            "from idle to rated speed, unless begin and end say otherwise.",
     .attributes = stage},
    {.name = "duty",
     .in = "circuit",
     .doc = "The operating points. What their shares leave to 100 % is neutral, the prime mover "
            "turning.",
     .attributes = duty,
     .once = true},
    {.name = "point",
     .in = "duty",
     .doc = "One operating point. Its figures belong to the only command, load and prime mover; "
            "where there are several, set elements name each.",
     .attributes = point},
    {.name = "set",
     .in = "point",
     .doc = "Figures of one command, prime mover, load, accumulator or valve at the point.",
     .attributes = point_set},
    {.name = "interlock",
     .in = "circuit",
     .doc = "What the controls prevent, and when.",
     .attributes = interlock},
    {.name = "remark",
     .in = "circuit",
     .doc = "A reviewer's remark: kept, drawn and reported; it changes no verdict.",
     .attributes = remark},
    {.name = "waiver",
     .in = "circuit",
     .doc = "An accepted finding of one rule on one subject. It holds to the end of the day named.",
     .attributes = waiver},
    {.name = "sheet",
     .in = "circuit",
     .doc = "Wishes for the drawing. All that it does not name is placed automatically.",
     .attributes = sheet,
     .once = true},
    {.name = "place",
     .in = "sheet",
     .doc = "Where a component's symbol stands and how it is turned.",
     .attributes = place},
    {.name = "table",
     .in = "component",
     .doc = "Measured data in place of coefficients, interpolated between its rows, never "
            "outside. Machines: flow or volumetric efficiency, torque or mechanical efficiency, "
            "over pressure, speed, stroke; prime movers: torque over speed; others: drop over "
            "flow, viscosity.",
     .attributes = {}},
    {.name = "row",
     .in = "table",
     .doc = "One measurement. Every row has the same columns, and each combination of the axes "
            "that the rows name is there once.",
     .attributes = row},
    {.name = "tolerance",
     .in = "component",
     .doc = "How far an attribute of the part may be off. Rules are decided at the worst corner of "
            "all tolerances, and say which that is.",
     .attributes = tolerance_of},
    {.name = "passage",
     .in = "device",
     .doc = "A way for oil between two ports of a device.",
     .attributes = passage},
};

}  // namespace

std::span<const ElementSpec> definitions() { return all; }

const ElementSpec* find_definition(std::string_view name, std::string_view in) {
    const auto* const found =
        std::find_if(std::begin(all), std::end(all),
                     [&](const ElementSpec& spec) { return spec.name == name && spec.in == in; });
    return found == std::end(all) ? nullptr : found;
}

}  // namespace loopwright
