#include <loopwright/parser/kinds/catalogue.h>

#include <algorithm>
#include <array>

#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

extern const Kind accumulator;
extern const Kind brake;
extern const Kind breather;
extern const Kind bypass_valve;
extern const Kind check_valve;
extern const Kind clutch;
extern const Kind cooler;
extern const Kind counterbalance_valve;
extern const Kind cylinder;
extern const Kind device;
extern const Kind directional_valve;
extern const Kind electric_motor;
extern const Kind engine;
extern const Kind filter;
extern const Kind flow_control;
extern const Kind flow_divider;
extern const Kind flow_meter;
extern const Kind flushing_valve;
extern const Kind gauge;
extern const Kind gearbox;
extern const Kind hand_pump;
extern const Kind heater;
extern const Kind junction;
extern const Kind level_indicator;
extern const Kind load;
extern const Kind measuring_point;
extern const Kind motor;
extern const Kind orifice;
extern const Kind pilot_control_valve;
extern const Kind plug;
extern const Kind pressure_switch;
extern const Kind priority_valve;
extern const Kind pump;
extern const Kind pump_motor;
extern const Kind quick_coupling;
extern const Kind reducing_valve;
extern const Kind relief_valve;
extern const Kind reservoir;
extern const Kind rotary_joint;
extern const Kind semi_rotary_actuator;
extern const Kind sensor;
extern const Kind sequence_valve;
extern const Kind shut_off_valve;
extern const Kind shuttle_valve;
extern const Kind strainer;
extern const Kind tachometer;
extern const Kind thermometer;
extern const Kind thermostatic_bypass;
extern const Kind throttle;
extern const Kind throttle_check;
extern const Kind unloading_valve;

namespace {

using namespace kind_parts;

constexpr std::array all = {
    &accumulator,
    &brake,
    &breather,
    &bypass_valve,
    &check_valve,
    &clutch,
    &cooler,
    &counterbalance_valve,
    &cylinder,
    &device,
    &directional_valve,
    &electric_motor,
    &engine,
    &filter,
    &flow_control,
    &flow_divider,
    &flow_meter,
    &flushing_valve,
    &gauge,
    &gearbox,
    &hand_pump,
    &heater,
    &junction,
    &level_indicator,
    &load,
    &measuring_point,
    &motor,
    &orifice,
    &pilot_control_valve,
    &plug,
    &pressure_switch,
    &priority_valve,
    &pump,
    &pump_motor,
    &quick_coupling,
    &reducing_valve,
    &relief_valve,
    &reservoir,
    &rotary_joint,
    &semi_rotary_actuator,
    &sensor,
    &sequence_valve,
    &shut_off_valve,
    &shuttle_valve,
    &strainer,
    &tachometer,
    &thermometer,
    &thermostatic_bypass,
    &throttle,
    &throttle_check,
    &unloading_valve,
};

constexpr AttributeSpec title_attribute{.name = "title", .doc = "name for people"};

constexpr AttributeSpec common[] = {
    {.name = "id",
     .required = true,
     .doc = "unique in its file or assembly: a letter, then letters, digits, - and _"},
    title_attribute,
    {.name = "designation", .doc = "ISO 1219-2 code, printed in place of the id"},
};

}  // namespace

std::span<const Kind* const> kinds() { return all; }

const Kind* find_kind(std::string_view name) {
    const auto at = std::lower_bound(
        all.begin(), all.end(), name,
        [](const Kind* kind, std::string_view wanted) { return kind->name < wanted; });
    return at != all.end() && (*at)->name == name ? *at : nullptr;
}

std::span<const AttributeSpec> common_attributes() { return common; }

}  // namespace loopwright
