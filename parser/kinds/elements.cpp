#include <loopwright/parser/kinds/elements.h>

#include <algorithm>

#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec text(std::string_view name, std::string_view doc) {
    return {.name = name, .doc = doc};
}
constexpr AttributeSpec needed(std::string_view name, std::string_view doc) {
    return {.name = name, .required = true, .doc = doc};
}

constexpr std::string_view functions[] = {"working", "charge", "suction",
                                          "return",  "drain",  "pilot"};
constexpr std::string_view levels[] = {"above", "below"};

constexpr AttributeSpec id = needed("id", "a letter, then letters, digits, '-' and '_'");
constexpr AttributeSpec format = needed("format", "format=\"1\"");
constexpr AttributeSpec title = text("title", "name for people");
constexpr AttributeSpec port_list = needed("joins", "ports as component.port, separated by blanks");

constexpr AttributeSpec circuit[] = {
    format,
    title,
    text("drawing", "drawing number"),
    text("revision", "revision of the drawing"),
    text("date", "date of issue"),
    text("owner", "legal owner, for the title block"),
    text("creator", "who drew it"),
    text("approver", "who approved it"),
};

constexpr AttributeSpec bore = positive("bore", Dimension::length, "inner diameter");
constexpr AttributeSpec length =
    like("2.4 m", positive("length", Dimension::length, "length between its first two ports"));
constexpr AttributeSpec rating =
    like("420 bar", positive("rating", Dimension::pressure, "highest pressure that it bears"));
constexpr AttributeSpec function = choice("function", functions, {}, "declared function");
constexpr AttributeSpec line[] = {id, port_list, title, bore, length, rating, function};
constexpr AttributeSpec hose[] = {
    id,
    port_list,
    title,
    bore,
    length,
    rating,
    function,
    like("1680 bar",
         positive("burst-pressure", Dimension::pressure, "pressure at which a new one bursts")),
    like("300 mm",
         positive("min-bend-radius", Dimension::length, "least radius that it may be bent to")),
};
constexpr AttributeSpec shaft[] = {
    id,
    needed("joins", "ids of what turns as one, separated by blanks"),
    title,
};
constexpr AttributeSpec assembly[] = {id, title};
constexpr AttributeSpec assembly_file[] = {format, title};
constexpr AttributeSpec use[] = {
    id,
    text("file", "a relative path, such as parts/block.xml"),
    text("name", "in place of a file: a ready assembly, such as pump-unit"),
    title,
};
constexpr AttributeSpec set[] = {
    needed("of", "the id of a part of the assembly"),
    needed("attribute", "the name of one of that part's attributes"),
    needed("value", "what that attribute takes"),
};
constexpr AttributeSpec port[] = {id};
constexpr AttributeSpec declared_port[] = {id, needed("of", "a port inside, such as P1.A")};
constexpr AttributeSpec reservoir_port[] = {
    id,
    choice("level", levels, {}, "whether it ends above or below the oil level"),
};
constexpr AttributeSpec position[] = {
    needed("id", "a letter or digit, then letters, digits, '-' and '_'"),
    yes_no("rest", "whether the valve stands so when nothing operates it"),
    text("in", "states in which it stands so, such as drive-forward"),
};
constexpr AttributeSpec path[] = {
    needed("from", "a port of the valve"),
    needed("to", "a port of the valve"),
    yes_no("throttled", "whether the path restricts the flow"),
};

constexpr ElementSpec all[] = {
    {.name = "circuit", .doc = "The whole description.", .attributes = circuit},
    {.name = "line",
     .in = "circuit",
     .doc = "Joins two or more ports; a line or a hose is the only way to connect. Length and "
            "pressure drop lie between its first two ports, all others are at the first.",
     .attributes = line},
    {.name = "hose", .in = "circuit", .doc = "A line that bends.", .attributes = hose},
    {.name = "shaft",
     .in = "circuit",
     .doc = "Joins what turns as one: prime movers, machines, brakes, loads, ends of gearboxes.",
     .attributes = shaft},
    {.name = "assembly",
     .in = "circuit",
     .doc = "Groups what sits in one housing or block. From outside, lines join its declared ports "
            "alone. It may nest.",
     .attributes = assembly},
    {.name = "use",
     .in = "circuit",
     .doc = "An assembly kept in a file of its own, or a ready one by its name; set overrides "
            "attributes of its parts.",
     .attributes = use},
    {.name = "set",
     .in = "use",
     .doc = "Another value for an attribute of a part of the assembly.",
     .attributes = set},
    {.name = "assembly", .doc = "An assembly in a file of its own.", .attributes = assembly_file},
    {.name = "port",
     .in = "assembly",
     .doc = "A port of an assembly, and the inner port that it is.",
     .attributes = declared_port},
    {.name = "port",
     .in = "reservoir",
     .doc = "A port of a reservoir.",
     .attributes = reservoir_port},
    {.name = "port",
     .in = "component",
     .doc = "A port that the file declares.",
     .attributes = port},
    {.name = "position",
     .in = "directional-valve",
     .doc = "A position of a directional valve; its ports are blocked but for its paths.",
     .attributes = position},
    {.name = "path",
     .in = "position",
     .doc = "A way for oil between two ports of the valve in that position.",
     .attributes = path},
};

}  // namespace

std::span<const ElementSpec> elements() { return all; }

const ElementSpec* find_element(std::string_view name, std::string_view in) {
    const auto* const found =
        std::find_if(std::begin(all), std::end(all),
                     [&](const ElementSpec& spec) { return spec.name == name && spec.in == in; });
    return found == std::end(all) ? nullptr : found;
}

}  // namespace loopwright
