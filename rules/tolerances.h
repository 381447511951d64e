#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/parser/circuit.h>

/// How far the data of a circuit may be off, and the circuit that comes of it.
namespace loopwright {

/// A datum of a component that may be off by so much, either way; SI.
struct Toleranced {
    Index component = none;
    const AttributeSpec* spec = nullptr;
    double figure = 0.0;  ///< as given, or by default
    double off = 0.0;     ///< above 0

    /// What it is on one side: -1 lowest, 0 as given, 1 highest. Never outside what a file may say.
    double at(int side) const;
};

/// All of a circuit: `tolerance` elements, and the attribute of that name, which is the setting's.
std::vector<Toleranced> tolerances_of(const Circuit& circuit);

/// On which side each of them stands.
using Corner = std::vector<std::int8_t>;

/// The circuit there. What a valve holds at its full flow moves with its setting, as both hang on
/// one spring.
Circuit at_corner(const Circuit& circuit, std::span<const Toleranced> tolerances,
                  const Corner& corner);

}  // namespace loopwright
