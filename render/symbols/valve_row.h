#pragma once

#include <loopwright/render/symbols/strokes.h>

/// What the symbols of valves with several positions share: a row of boxes with common edges, and
/// what stands at its ends.
namespace loopwright {

/// The two ends of a row; mechanisms on the left are the mirror image of those on the right.
enum class RowEnd : std::uint8_t { left, right };

/// A row of `left` boxes, the box at rest about the origin, and `right` boxes.
struct ValveRow {
    int left = 0;
    int right = 0;
    double width = 4.0;  ///< of a box

    double end(RowEnd side) const {
        return side == RowEnd::left ? -width / 2 - left * width : width / 2 + right * width;
    }
};

void draw_boxes(Strokes& strokes, const ValveRow& row);

// Mechanisms at an end, level with y.
void draw_row_spring(Strokes& strokes, const ValveRow& row, RowEnd end, double y);
void draw_solenoid(Strokes& strokes, const ValveRow& row, RowEnd end, double y);
void draw_pilot_frame(Strokes& strokes, const ValveRow& row, RowEnd end, double y);
void draw_lever(Strokes& strokes, const ValveRow& row, RowEnd end, double y);
void draw_pedal(Strokes& strokes, const ValveRow& row, RowEnd end, double y);
/// Notches, one a position; the tick stands in the notch of the position at rest, which is number
/// `held` from the row outwards.
void draw_detent(Strokes& strokes, const ValveRow& row, RowEnd end, double y, int positions,
                 int held);

}  // namespace loopwright
