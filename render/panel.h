#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <loopwright/render/drawing.h>

namespace loopwright {

/// A rectangular piece of a sheet's text: title block, a row of a list. Millimetres from its own
/// upper left corner.
struct Panel {
    double width = 180.0;
    double height = 0.0;
    std::vector<Primitive> primitives = {};
};

/// Panels that follow one another in columns; where a column ends, the next begins with the
/// heading again.
struct PanelList {
    Panel heading = {};
    std::vector<Panel> rows = {};
    bool together = false;  ///< never broken over two columns
};

/// All lists are as wide as the title block, so that they stand in columns with it.
inline constexpr double panel_width = 180.0;
inline constexpr double panel_gap = 5.0;
/// The words of a list keep so far from its edges: a column may stand on the frame of the sheet.
inline constexpr double list_inset = 2.0;
inline constexpr double list_right = panel_width - list_inset;
inline constexpr double thin = 0.25;
inline constexpr double thick = 0.5;
inline constexpr double small_text = 1.8;
inline constexpr double normal_text = 2.5;
inline constexpr double large_text = 3.5;

void add_line(Panel& panel, Point from, Point to, double width = thin,
              Dash dash = Dash::continuous);
void add_box(Panel& panel, Point from, Point to, double width = thin);
void add_text(Panel& panel, Point baseline, std::string_view text, double height = normal_text,
              Anchor anchor = Anchor::start);
/// The head of a list.
Panel list_heading(std::string_view text);
/// A row of a list that is one paragraph.
Panel list_paragraph(std::string_view text);
/// Breaks the text to the width; gives the baseline of the last line. `at` is the first baseline.
double add_paragraph(Panel& panel, Point at, std::string_view text, double width,
                     double height = normal_text);
/// As much of the text as fits, with "..." where it is cut.
std::string fitted(std::string_view text, double height, double width);

/// Where the next line of text stands below one of that height.
constexpr double text_pitch(double height) { return height * 1.6; }

/// A copy of the primitives, moved.
void append_moved(std::vector<Primitive>& out, const std::vector<Primitive>& in, Point by);

}  // namespace loopwright
