#pragma once

#include <string>

/// Circuits with every figure that a computation needs.
namespace loopwright::testing {

/// As many drives of an ice resurfacer, 15 components each, with a charge pump, a filter, flushing,
/// a cooler and a reservoir of their own; every line has a bore and a length. A duty point "sweep":
/// full pump stroke, 100 N.m. Invented figures in the range of common practice.
std::string figured_drives(unsigned drives);

}  // namespace loopwright::testing
