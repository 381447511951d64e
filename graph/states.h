#pragma once

#include <cstdint>

#include <loopwright/base/finding.h>

namespace loopwright {

using StateSet = std::uint16_t;  ///< bit set over State

constexpr StateSet bit(State state) {
    return static_cast<StateSet>(1U << static_cast<unsigned>(state));
}

/// All but stopped and towing.
inline constexpr StateSet running_states = bit(State::neutral) | bit(State::drive_forward) |
                                           bit(State::drive_reverse) | bit(State::overrun_forward) |
                                           bit(State::overrun_reverse) | bit(State::hold) |
                                           bit(State::lost_signal);
inline constexpr StateSet all_states = running_states | bit(State::stopped) | bit(State::towing);
/// Those in which no valve is operated.
inline constexpr StateSet rest_states =
    bit(State::hold) | bit(State::lost_signal) | bit(State::stopped) | bit(State::towing);
inline constexpr StateSet moving_states = bit(State::drive_forward) | bit(State::drive_reverse) |
                                          bit(State::overrun_forward) | bit(State::overrun_reverse);
inline constexpr StateSet reverse_states = bit(State::drive_reverse) | bit(State::overrun_reverse);

constexpr StateSet without(StateSet states, StateSet taken) {
    return static_cast<StateSet>(states & ~taken);
}

}  // namespace loopwright
