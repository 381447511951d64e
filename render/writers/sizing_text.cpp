#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/render/writers/sizing_report.h>
#include <loopwright/render/writers/wrapped.h>

namespace loopwright {

using namespace hydraulics;

std::string sizing_text(const Circuit& circuit, const Sizing& sizing,
                        std::span<const MetPoint> points, std::span<const std::string> unmet) {
    std::string out = circuit.title.title.empty() ? std::string("Drive sized from its duty")
                                                  : fmt::format("{}: drive sized from its duty",
                                                                visible(circuit.title.title));
    out += "\n\n";
    for (const SizedFigure& one : sizing.figures) {
        out += fmt::format("  {:<28} {}\n", one.what, one.result);
        out += wrapped("      ", one.equation);
        if (!one.figures.empty()) out += wrapped("      ", one.figures);
        out += wrapped("      source: ", one.source);
    }
    if (!points.empty()) {
        out += fmt::format("\n  {:<20} {:>16} {:>10} {:>14} {:>16}\n", "as solved", "load",
                           "travel", "motor", "prime mover");
        for (const MetPoint& one : points)
            out +=
                fmt::format("  {:<20} {:>16} {:>8.2f} % {:>14} {:>16}\n", one.id,
                            format_quantity(std::copysign(one.speed, one.asked), Dimension::speed),
                            100.0 * one.travel, format_quantity(one.pressure, Dimension::pressure),
                            format_quantity(one.power, Dimension::power));
    }
    if (!unmet.empty()) {
        out += "\nCannot be met\n";
        for (const std::string& one : unmet) out += wrapped("  - ", one);
    }
    out +=
        "\nEfficiencies of machines not chosen yet: pump 97 % and 94 %, motor 98 % and 96 %, "
        "charge "
        "pump 94 %\nand 85 % (volumetric and torque, at 250 bar, rated speed and 25 mm2/s; common "
        "practice, no source).\nChoose real machines of at least these sizes, put their figures "
        "in, "
        "and check again. Figures support\na review by a competent person and do not replace it; "
        "local codes govern.\n";
    return out;
}

}  // namespace loopwright
