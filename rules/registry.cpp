#include <loopwright/rules/registry.h>

#include <loopwright/rules/rule.h>

namespace loopwright {

extern const Rule lost_loop;
extern const Rule charge_supply;
extern const Rule charge_vented;
extern const Rule charge_pump_inlet;
extern const Rule charge_pump_drive;
extern const Rule charge_relief;
extern const Rule charge_flow;
extern const Rule charge_displacement;
extern const Rule charge_pressure;
extern const Rule charge_backflow;
extern const Rule make_up_check;
extern const Rule make_up_path;
extern const Rule low_side_pressure;
extern const Rule intermediate_side;
extern const Rule unequal_cylinder;
extern const Rule crossport_relief;
extern const Rule relief_setting;
extern const Rule relief_capacity;
extern const Rule pressure_limiter;
extern const Rule pressure_rating;
extern const Rule pressure_intensification;
extern const Rule hose_safety;
extern const Rule trapped_volume;
extern const Rule blocked_pump;
extern const Rule filtration;
extern const Rule filter_bypass;
extern const Rule filter_flow;
extern const Rule filter_fineness;
extern const Rule filter_reversal;
extern const Rule filter_in_drain;
extern const Rule case_drain_path;
extern const Rule case_pressure;
extern const Rule case_drain_return;
extern const Rule missing_drain_port;
extern const Rule loop_flushing;
extern const Rule loop_temperature;
extern const Rule flushing_side;
extern const Rule flushing_setting;
extern const Rule cooling;
extern const Rule cooling_capacity;
extern const Rule cooler_bypass;
extern const Rule oil_temperature;
extern const Rule viscosity_window;
extern const Rule suction_pressure;
extern const Rule line_velocity;
extern const Rule suction_shut_off;
extern const Rule reservoir_balance;
extern const Rule reservoir_size;
extern const Rule reservoir_breather;
extern const Rule return_below_level;
extern const Rule control_supply;
extern const Rule control_pressure;
extern const Rule neutral_on_loss;
extern const Rule displacement_sequence;
extern const Rule motor_overspeed;
extern const Rule torque_limit;
extern const Rule shaft_torque;
extern const Rule engine_braking;
extern const Rule load_holding;
extern const Rule start_interlock;
extern const Rule parking_brake;
extern const Rule brake_release;
extern const Rule brake_torque;
extern const Rule towing_bypass;
extern const Rule accumulator_safety;
extern const Rule test_points;
extern const Rule unconnected_port;
extern const Rule dangling_line;
extern const Rule shorted_ports;
extern const Rule isolated_part;
extern const Rule line_function;
extern const Rule double_source;
extern const Rule unused_definition;
extern const Rule reversed_rotation;
/// Apart from the kinds, as all objects of the program have different names.
namespace rules_named_like_kinds {
extern const Rule level_indicator;
}

std::span<const Rule* const> rules() {
    using rules_named_like_kinds::level_indicator;
    // A line each, so that one more changes one line.
    // clang-format off
    static constexpr const Rule* all[] = {
        &lost_loop,
        &charge_supply,
        &charge_vented,
        &charge_pump_inlet,
        &charge_pump_drive,
        &charge_relief,
        &charge_flow,
        &charge_displacement,
        &charge_pressure,
        &charge_backflow,
        &make_up_check,
        &make_up_path,
        &low_side_pressure,
        &intermediate_side,
        &unequal_cylinder,
        &crossport_relief,
        &relief_setting,
        &relief_capacity,
        &pressure_limiter,
        &pressure_rating,
        &pressure_intensification,
        &hose_safety,
        &trapped_volume,
        &blocked_pump,
        &filtration,
        &filter_bypass,
        &filter_flow,
        &filter_fineness,
        &filter_reversal,
        &filter_in_drain,
        &case_drain_path,
        &case_pressure,
        &case_drain_return,
        &missing_drain_port,
        &loop_flushing,
        &loop_temperature,
        &flushing_side,
        &flushing_setting,
        &cooling,
        &cooling_capacity,
        &cooler_bypass,
        &oil_temperature,
        &viscosity_window,
        &suction_pressure,
        &line_velocity,
        &suction_shut_off,
        &reservoir_balance,
        &reservoir_size,
        &reservoir_breather,
        &level_indicator,
        &return_below_level,
        &control_supply,
        &control_pressure,
        &neutral_on_loss,
        &displacement_sequence,
        &motor_overspeed,
        &torque_limit,
        &shaft_torque,
        &engine_braking,
        &load_holding,
        &start_interlock,
        &parking_brake,
        &brake_release,
        &brake_torque,
        &towing_bypass,
        &accumulator_safety,
        &test_points,
        &unconnected_port,
        &dangling_line,
        &shorted_ports,
        &isolated_part,
        &line_function,
        &double_source,
        &unused_definition,
        &reversed_rotation,
    };
    // clang-format on
    return all;
}

const Rule* find_rule(std::string_view id) {
    for (const Rule* rule : rules())
        if (rule->info.id == id) return rule;
    return nullptr;
}

}  // namespace loopwright
