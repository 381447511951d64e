#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view ends[] = {"in", "out"};
constexpr std::string_view actuations[] = {"manual", "hydraulic", "electric"};
constexpr std::string_view applied[] = {"spring", "pressure"};
constexpr When hydraulic = {"actuation", "hydraulic"};

constexpr PortSpec ports[] = {
    {.letter = "Z",
     .use = PortUse::pilot,
     .when = hydraulic,
     .doc = "pressure that engages it, or that parts a spring-applied one"},
};

constexpr AttributeSpec attributes[] = {
    {.name = "engaged",
     .type = AttributeType::yes_no,
     .default_text = "yes",
     .default_source = practice,
     .doc = "whether it is drawn, and taken, as joining its two shafts"},
    choice("actuation", actuations, "manual", "what works it"),
    choice("applied", applied, {}, "what engages it: a spring, or pressure"),
    positive("torque", Dimension::torque, "highest torque that it passes on"),
    pressure("full-pressure", "pressure that works it wholly"),
    pressure("max-pressure", "highest pressure at its port"),
    positive("max-speed", Dimension::speed, "highest speed of its shafts"),
    quantity("inertia", Dimension::inertia, "moment of inertia of what turns in it"),
};

constexpr FailureMode failures[] = {
    {.id = "slipping", .doc = "passes on less than its torque"},
    {.id = "stuck-engaged", .doc = "does not part"},
    {.id = "stuck-parted", .doc = "does not engage"},
};

}  // namespace

extern constinit const Kind clutch{.name = "clutch",
                                   .title = "clutch",
                                   .doc = "Joins two shafts, or parts them.",
                                   .part = Part::clutch,
                                   .turns = true,
                                   .ends = ends,
                                   .ports = ports,
                                   .attributes = attributes,
                                   .failures = failures};

}  // namespace loopwright
