#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/text_metrics.h>

namespace loopwright {

using namespace metrics;

// Recipe SH5: no item of the standard, a box with its ratio.
void draw_gearbox(Strokes& strokes) {
    const double half = on_shaft_half;
    strokes.box(-half, -half, half, half);
    std::string text = "i";
    if (const auto ratio = strokes.circuit().figure(strokes.component(), "ratio")) {
        const std::string whole = "i = " + format_quantity(*ratio, Dimension::ratio);
        if (text_width(whole, small_letter_mm) / module_mm < 2 * half - 0.4) text = whole;
    }
    strokes.text({0, 0}, text, small_letter_mm);
    // Which end is which decides what the ratio means.
    strokes.text({-half + end_mark_x, half - end_mark_y}, "in", small_letter_mm);
    strokes.shaft({-half, 0}, Side::left);
    strokes.shaft({half, 0}, Side::right, true);
    strokes.free_shaft({-half, 0}, Side::left);
    strokes.free_shaft({half, 0}, Side::right, true);
}

}  // namespace loopwright
