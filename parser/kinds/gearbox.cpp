#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view ends[] = {"in", "out"};
constexpr std::string_view senses[] = {"same", "opposite"};

constexpr AttributeSpec attributes[] = {
    like("25",
         positive("ratio", Dimension::ratio, "speed of the end in over speed of the end out")),
    choice("sense", senses, {},
           "sense in which out turns, against in, both seen from the same side"),
    share("efficiency", "at rated torque"),
    positive("max-torque", Dimension::torque, "highest torque at the end out"),
    positive("max-speed", Dimension::speed, "highest speed at the end in"),
    quantity("inertia", Dimension::inertia, "moment of inertia, seen at the end in"),
};

constexpr FailureMode failures[] = {
    {.id = "broken", .doc = "passes no torque on: what hangs on the other shaft runs free"},
    {.id = "seized", .doc = "does not turn"},
};

}  // namespace

extern constinit const Kind gearbox{
    .name = "gearbox",
    .title = "gearbox",
    .doc = "Stands between two shafts and changes speed and torque from one to the other.",
    .part = Part::gearbox,
    .turns = true,
    .ends = ends,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
