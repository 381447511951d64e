#pragma once

#include <span>
#include <string_view>

#include <loopwright/graph/situation.h>
#include <loopwright/rules/docket.h>

/// Errors planted in rules. Each is one that a person could make; the second opinion must notice.
namespace loopwright {

/// What takes the place of a rule's function; null: the rule's own stays.
struct Planted {
    std::string_view rule;
    void (*judge)(const Situation&, Docket&) = nullptr;
    void (*conclude)(const FlowGraph&, const Structure&, Docket&) = nullptr;
};

/// An error in what a state is, as one rule that is asked in it shows.
struct PlantedState {
    std::string_view state;
    Planted error;
    StateSet asked = 0;  ///< the states that the rule is then asked in; 0: its own
};

std::span<const PlantedState> planted_in_states();
/// Of rules that judge situations.
std::span<const Planted> planted_in_situations();
/// Of rules about what hangs on no state.
std::span<const Planted> planted_in_the_circuit();

}  // namespace loopwright
