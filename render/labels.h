#pragma once

#include <string>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>

namespace loopwright {

/// The text beside a symbol, broken into lines that fit a narrow column.
struct LabelText {
    std::vector<std::string> lines = {};
    double width = 0.0;   ///< M
    double height = 0.0;  ///< M, from the capitals' top of the first line to the last baseline
};

inline constexpr double label_text_height = 2.5;  ///< mm, of the capitals
inline constexpr double label_pitch = 1.6;        ///< M, from baseline to baseline

LabelText label_text(const Circuit& circuit, const Component& component);

}  // namespace loopwright
