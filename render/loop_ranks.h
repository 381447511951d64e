#pragma once

/// Ranks of a loop's columns: the order of a draughtsman from left to right. Between one machine's
/// rank and the next ten stands what is on its shaft.
namespace loopwright {

inline constexpr int rank_prime_mover = 0;
inline constexpr int rank_pump = 10;
inline constexpr int rank_charge_pump = 20;
inline constexpr int rank_charge_relief = 30;
inline constexpr int rank_on_charge = 32;
inline constexpr int rank_charge_line = 35;
inline constexpr int rank_make_up = 40;
inline constexpr int rank_relief_to_charge = 45;
inline constexpr int rank_side_charge = 47;
inline constexpr int rank_on_b = 48;
inline constexpr int rank_bridge = 50;
inline constexpr int rank_on_a = 52;
inline constexpr int rank_in_line = 55;
inline constexpr int rank_crossport = 60;
inline constexpr int rank_flushing = 70;
inline constexpr int rank_actuator = 80;
inline constexpr int rank_load = 90;

}  // namespace loopwright
