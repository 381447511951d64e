#include <loopwright/rules/registry.h>

#include <loopwright/rules/rule.h>

namespace loopwright {

extern const Rule lost_loop;
extern const Rule charge_supply;
extern const Rule charge_vented;
extern const Rule charge_backflow;
extern const Rule make_up_check;
extern const Rule crossport_relief;
extern const Rule hose_safety;
extern const Rule filtration;
extern const Rule filter_bypass;
extern const Rule filter_in_drain;
extern const Rule case_drain_path;
extern const Rule case_drain_return;
extern const Rule missing_drain_port;
extern const Rule loop_flushing;
extern const Rule flushing_side;
extern const Rule cooling;
extern const Rule cooler_bypass;
extern const Rule suction_shut_off;
extern const Rule reservoir_balance;
extern const Rule reservoir_size;
extern const Rule reservoir_breather;
extern const Rule return_below_level;
extern const Rule dangling_line;
extern const Rule shorted_ports;
extern const Rule unused_definition;

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
        &charge_backflow,
        &make_up_check,
        &crossport_relief,
        &hose_safety,
        &filtration,
        &filter_bypass,
        &filter_in_drain,
        &case_drain_path,
        &case_drain_return,
        &missing_drain_port,
        &loop_flushing,
        &flushing_side,
        &cooling,
        &cooler_bypass,
        &suction_shut_off,
        &reservoir_balance,
        &reservoir_size,
        &reservoir_breather,
        &level_indicator,
        &return_below_level,
        &dangling_line,
        &shorted_ports,
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
