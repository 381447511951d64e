#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view applied[] = {"spring", "pressure"};
constexpr std::string_view uses[] = {"parking", "service", "both"};

constexpr PortSpec ports[] = {
    {.letter = "Z",
     .use = PortUse::pilot,
     .doc = "pressure that releases a spring-applied brake, or applies a pressure-applied one"},
};

constexpr AttributeSpec attributes[] = {
    {.name = "applied",
     .type = AttributeType::choice,
     .choices = applied,
     .default_text = "spring",
     .default_source = practice,
     .doc = "spring: holds without pressure; pressure: holds while there is pressure"},
    choice("use", uses, {}, "parking: holds what stands; service: stops what moves"),
    positive("torque", Dimension::torque, "torque that it holds, or gives at full pressure"),
    positive("slipping-torque", Dimension::torque, "torque that it gives while it slips"),
    pressure("release-pressure", "pressure at which a spring-applied brake begins to give way"),
    pressure("full-release-pressure", "pressure at which it drags no more"),
    pressure("apply-pressure", "pressure that gives a pressure-applied brake its torque"),
    pressure("max-pressure", "highest pressure at its port"),
    positive("volume", Dimension::volume, "oil that its piston takes up"),
    positive("max-speed", Dimension::speed, "highest speed of the shaft"),
    yes_no("released-by-hand", "whether screws or a lever can release it, as for towing"),
};

constexpr FailureMode failures[] = {
    {.id = "dragging", .doc = "does not come off wholly and runs hot"},
    {.id = "slipping", .doc = "holds less than its torque (oil or wear on the linings)"},
    {.id = "stuck-released", .doc = "does not come on"},
    {.id = "stuck-applied", .doc = "does not come off"},
    {.id = "piston-leaks", .doc = "its piston lets oil out, and the pressure does not build up"},
};

}  // namespace

extern constinit const Kind brake{
    .name = "brake",
    .title = "brake",
    .doc =
        "Holds or stops the shaft that it stands on; applied by a spring and released by "
        "pressure, or applied by pressure.",
    .part = Part::brake,
    .turns = true,
    .ports = ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
