#pragma once

#include <cstdint>

#include <loopwright/base/finding.h>

namespace loopwright {

using StateSet = std::uint16_t;  ///< bit set over State

constexpr StateSet bit(State state) {
    return static_cast<StateSet>(1U << static_cast<unsigned>(state));
}

/// All but stopped and towing; `hold` is judged together with load and brake, which the circuit
/// description does not have yet.
inline constexpr StateSet running_states = bit(State::neutral) | bit(State::drive_forward) |
                                           bit(State::drive_reverse) | bit(State::overrun_forward) |
                                           bit(State::overrun_reverse) | bit(State::lost_signal);
inline constexpr StateSet moving_states = bit(State::drive_forward) | bit(State::drive_reverse) |
                                          bit(State::overrun_forward) | bit(State::overrun_reverse);
inline constexpr StateSet reverse_states = bit(State::drive_reverse) | bit(State::overrun_reverse);

constexpr StateSet without(StateSet states, StateSet taken) {
    return static_cast<StateSet>(states & ~taken);
}

}  // namespace loopwright
