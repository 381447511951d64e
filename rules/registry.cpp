#include <loopwright/rules/registry.h>

#include <loopwright/rules/rule.h>

namespace loopwright {

extern const Rule lost_loop;
extern const Rule charge_supply;
extern const Rule charge_vented;
extern const Rule charge_pump_inlet;
extern const Rule charge_pump_drive;
extern const Rule charge_relief;
extern const Rule charge_backflow;
extern const Rule make_up_check;
extern const Rule make_up_path;
extern const Rule intermediate_side;
extern const Rule unequal_cylinder;
extern const Rule crossport_relief;
extern const Rule hose_safety;
extern const Rule blocked_pump;
extern const Rule filtration;
extern const Rule filter_reversal;
extern const Rule case_drain_path;
extern const Rule dangling_line;
extern const Rule shorted_ports;
extern const Rule double_source;
extern const Rule unused_definition;

std::span<const Rule* const> rules() {
    // A line each, so that one more changes one line.
    // clang-format off
    static constexpr const Rule* all[] = {
        &lost_loop,
        &charge_supply,
        &charge_vented,
        &charge_pump_inlet,
        &charge_pump_drive,
        &charge_relief,
        &charge_backflow,
        &make_up_check,
        &make_up_path,
        &intermediate_side,
        &unequal_cylinder,
        &crossport_relief,
        &hose_safety,
        &blocked_pump,
        &filtration,
        &filter_reversal,
        &case_drain_path,
        &dangling_line,
        &shorted_ports,
        &double_source,
        &unused_definition,
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
