#pragma once

#include <vector>

#include <loopwright/render/loop_columns.h>

namespace loopwright {

/// A column that has to stand left of another, whatever their ranks.
struct Precedence {
    std::size_t left = 0;
    std::size_t right = 0;
};

/// Columns from left to right, by their standing, but as the precedences want it. What belongs to
/// one assembly stands side by side, so that its frame holds nothing else: an assembly with an
/// actuator stands where that would, any other where its first column would.
std::vector<Column> ordered(const Sketch& sketch, std::vector<Column> columns,
                            const std::vector<Precedence>& precedences);

/// The innermost assembly that holds all parts of the column but those in a suction line.
Index assembly_of(const Sketch& sketch, const Column& column);

}  // namespace loopwright
