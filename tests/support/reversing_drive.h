#pragma once

#include <string>

/// A second sound drive for tests, reversed by a valve.
namespace loopwright::testing {

/// A sound closed loop whose one-way pump P1 delivers through the directional valve V3. At rest
/// (position n) the valve lets P1 circulate and shuts off both lines of the motor M1, which are
/// sections then; in f and r it drives forward and in reverse, and each port of the pump has the
/// motor's line HA or HB on its side. C3 R2 stand on HA, C4 R3 on HB; charge oil from P2 through F1
/// into G2; R1, T1, E1, D1.
const std::string& reversing_drive();

}  // namespace loopwright::testing
