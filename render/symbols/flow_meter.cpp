#include <numbers>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>

namespace loopwright {

using namespace metrics;

// Recipe IN6.
void draw_flow_meter(Strokes& strokes) {
    strokes.circle({0, 0}, instrument_radius);
    constexpr double sixth = std::numbers::pi / 6;
    strokes.arc({0, -throttle_x}, throttle_radius, sixth, 5 * sixth);
    strokes.arc({0, throttle_x}, throttle_radius, 7 * sixth, 11 * sixth);
    strokes.stub("A", {-valve_port, 0}, Side::left, {-instrument_radius, 0});
    strokes.stub("B", {valve_port, 0}, Side::right, {instrument_radius, 0});
}

}  // namespace loopwright
