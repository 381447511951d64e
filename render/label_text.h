#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>

/// The words of labels, broken into lines and measured.
namespace loopwright {

/// The text beside a symbol or a line.
struct LabelText {
    std::vector<std::string> lines = {};
    double width = 0.0;   ///< M
    double height = 0.0;  ///< M, from the capitals' top of the first line to below the last
};

inline constexpr double label_text_height = 2.5;  ///< mm, of the capitals
inline constexpr double line_text_height = 1.8;   ///< mm, of ids of lines, frames and their ports
inline constexpr double label_pitch = 1.6;        ///< M, from baseline to baseline

/// `label_lines`, broken where one is wider than a narrow column.
LabelText label_text(const Circuit& circuit, const Component& component);
/// Only its first line: the designation.
LabelText first_line(const LabelText& text);

/// The id of a line and its bore: "HA 25 mm".
LabelText line_text(const Circuit& circuit, const Line& line);

/// One small line: what names a frame or a port in it.
LabelText small_text_of(std::string text);

/// Advance of a text in M; `height` in mm, of the capitals.
double text_width_m(std::string_view text, double height);

/// Breaks at blanks so that no line is wider than `width` (mm), words excepted.
std::vector<std::string> broken(std::string_view text, double height, double width);

}  // namespace loopwright
