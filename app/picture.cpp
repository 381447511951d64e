#include <loopwright/app/picture.h>

#include <algorithm>
#include <cmath>
#include <filesystem>

#include <fmt/format.h>

#include <loopwright/app/commands.h>
#include <loopwright/render/render.h>

namespace loopwright::app {

std::string picture_format(const std::string& output, const std::string& remedy) {
    const std::string ending = std::filesystem::path(output).extension().string();
    for (const char* known : {"svg", "pdf", "png"})
        if (ending == std::string(".") + known) return known;
    complain(fmt::format("{}: the ending tells no format; {}", output, remedy));
    return {};
}

std::string too_large(const Drawing& drawing, double dpi) {
    constexpr double most_pixels = 32'767;  // Cairo counts them in 16 bits
    constexpr double mm_per_inch = 25.4;
    const double most_dpi = most_pixels * mm_per_inch / std::max(drawing.width, drawing.height);
    if (dpi <= most_dpi) return {};
    return fmt::format("--dpi {}: the image has more than {} pixels a side; at most {:.0f} here",
                       dpi, most_pixels, std::floor(most_dpi));
}

std::string picture_bytes(const Drawing& drawing, const std::string& format, double dpi) {
    if (format == "svg") return to_svg(drawing);
    return format == "pdf" ? to_pdf(drawing) : to_png(drawing, dpi);
}

}  // namespace loopwright::app
