#pragma once

#include <string>

#include <loopwright/render/drawing.h>

/// Drawings as files.
namespace loopwright::app {

inline constexpr double usual_dpi = 150.0;

/// "svg", "pdf" or "png" by the ending of a file; empty with a message if it tells none. `remedy`
/// ends the message.
std::string picture_format(const std::string& output, const std::string& remedy);

/// Why there can be no image of that size, or an empty text. Only of "png".
std::string too_large(const Drawing& drawing, double dpi);

std::string picture_bytes(const Drawing& drawing, const std::string& format, double dpi);

}  // namespace loopwright::app
