#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view senses[] = {"either", "forward", "reverse"};

constexpr AttributeSpec attributes[] = {
    {.name = "torque",
     .type = AttributeType::quantity,
     .dimension = Dimension::torque,
     .least = -1e300,
     .doc = "torque that the load takes; negative where it drives"},
    yes_no("overrunning", "whether the load can drive its motor (a grade, a hoist)"),
    {.name = "overrunning-sense",
     .type = AttributeType::choice,
     .choices = senses,
     .default_text = "either",
     .default_source = "the general case; no source",
     .doc = "motion that an overrunning load drives: forward or reverse for one that always pulls "
            "one way (a hoist)"},
    {.name = "force",
     .type = AttributeType::quantity,
     .dimension = Dimension::force,
     .least = -1e300,
     .doc = "force that a load on a cylinder's rod takes; negative where it drives"},
    quantity("inertia", Dimension::inertia, "moment of inertia, seen at its shaft"),
    quantity("breakaway-torque", Dimension::torque, "torque that it takes from standstill"),
    positive("max-speed", Dimension::speed, "highest speed of its shaft"),
    yes_no("vehicle", "whether it is what drives a vehicle: wheels, a track"),
    positive("mass", Dimension::mass, "mass that it moves: a vehicle's own with its cargo"),
    positive("wheel-radius", Dimension::length, "radius at which a wheel or drum pulls"),
    quantity("grade", Dimension::grade, "steepest grade that a vehicle meets"),
    quantity("rolling-resistance", Dimension::ratio, "drag of a vehicle over its weight"),
    quantity("adhesion", Dimension::ratio, "highest pull of driven wheels over the weight on them"),
    share("driven-weight", "share of a vehicle's weight on the wheels that this load stands for"),
};

}  // namespace

extern constinit const Kind load{.name = "load",
                                 .title = "load",
                                 .doc = "What an actuator moves: an axle, a drum, a mixer.",
                                 .part = Part::load,
                                 .turns = true,
                                 .attributes = attributes};

}  // namespace loopwright
