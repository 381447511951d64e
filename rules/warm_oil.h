#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include <loopwright/rules/at_work.h>

/// What the rules about warm oil ask of a circuit.
namespace loopwright {

/// The least of what several parts bear, and whose it is.
struct LeastLimit {
    std::optional<double> least = {};  ///< K; nothing where none gives it
    Index of = none;
    std::vector<std::string_view> missing = {};  ///< of those that do not, as "P1.max-temperature"
};

/// Of `max-temperature`; parts whose kind has none are left out.
LeastLimit least_max_temperature(const Circuit& circuit, Docket& docket,
                                 std::span<const Index> components);

/// Data without which it is not known how warm the oil of the reservoirs is at a point, as
/// "work.oil"; what a heat balance leaves out counts, as the oil is warmer with it.
std::vector<std::string_view> unknown_oil(const AtWork& at, Docket& docket);
/// Whether nothing but a guess gives the oil's temperature at a point.
bool is_oil_guessed(const AtWork& at);

/// Of the machines those whose loss of oil or torque is not known (`unknown_losses`).
std::vector<std::string_view> unknown_heat(const Circuit& circuit,
                                           std::span<const hydraulics::Assumption> assumptions,
                                           Docket& docket, std::span<const Index> machines);

}  // namespace loopwright
