#pragma once

#include <limits>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/occupancy.h>
#include <loopwright/render/sketch.h>

/// The room that symbols, lines and texts of a layout leave, and the labels that take it. Boxes in
/// M, in the layout's coordinates.
namespace loopwright {

/// A text that looks for a place, and what it belongs to.
struct WantedLabel {
    LabelBox label = {};  ///< without its box
    double width = 0.0;   ///< M
    double height = 0.0;  ///< M
    Box target = {};      ///< what a leader leads to
    int part = -1;        ///< the part of the sketch that the target is; -1: none
    /// Texts that stand left of it are flush right.
    double axis = -std::numeric_limits<double>::max();
};

class LabelRoom {
  public:
    /// Takes in everything that the layout has, labels left out.
    LabelRoom(const Circuit& circuit, const Sketch& sketch, Layout& layout);

    bool is_free(const Box& box) const { return room_.is_free(box); }
    void take(const Box& box) { room_.take(box); }
    /// Adds the label to the layout if nothing stands there.
    bool put(const WantedLabel& wanted, const Box& box, std::vector<GridPoint> leader = {});
    /// Adds the label whatever stands there.
    void put_here(LabelBox label, const Box& box);
    /// Adds the label where there is room, as near to its target as may be, with a leader.
    void put_apart(const WantedLabel& wanted);
    /// Whether a reader would take a text there for another symbol's than the part's.
    bool misleads(int part, const Box& box) const;

  private:
    void take_part(int part);
    void take_runs();
    void take_leader(const std::vector<GridPoint>& leader);
    bool try_apart(const WantedLabel& wanted, double reach);
    bool passes_solid(int own, const std::vector<GridPoint>& leader) const;
    bool passes_line(const std::vector<GridPoint>& leader) const;
    bool runs_along_a_line(const std::vector<GridPoint>& leader) const;

    const Circuit& circuit_;
    const Sketch& sketch_;
    Layout& layout_;
    Box extent_;
    Occupancy room_;
};

/// On whole quarter modules, the size kept.
Box snapped(const Box& box);
Box moved(const Box& box, double x, double y);
/// What the letter of a port covers, M.
Box letter_box(const Circuit& circuit, const SketchPart& part, const PortAnchor& port);
/// The strip that a run takes, M.
Box run_box(GridPoint from, GridPoint to);

/// Room for one small line of text above or below a level run, right or left of an upright one, as
/// near as it may stand: on whole quarter modules, its ink half a module off the line. `at`: where
/// the text begins along the run.
Box beside_run(Point at, bool level, bool first, const LabelText& text);
/// With the room that such a text wants before and behind it along its run.
Box with_air(const Box& box, bool level);

/// Names every frame of an assembly and each place where a line passes through it (recipe LN6).
void place_frame_labels(const Circuit& circuit, const Sketch& sketch, Layout& layout,
                        LabelRoom& room);
/// Ids of lines, each beside a run of its line or led to one.
void place_line_labels(const Circuit& circuit, Layout& layout, LabelRoom& room);

}  // namespace loopwright
