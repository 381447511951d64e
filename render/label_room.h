#pragma once

#include <limits>
#include <span>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/occupancy.h>
#include <loopwright/render/wire_graph.h>

/// The room that symbols, lines and texts of a layout leave, and the labels that take it. Boxes in
/// M, in the layout's coordinates.
namespace loopwright {

class Sketch;

/// A text that looks for a place, and what it belongs to.
struct WantedLabel {
    LabelBox label = {};            ///< without its box
    double width = 0.0;             ///< M
    double height = 0.0;            ///< M
    Box target = {};                ///< what a leader leads to
    bool clear_of_strokes = false;  ///< its leader keeps off stubs and the edges of symbols
    int part = -1;                  ///< the symbol of the layout that the target is; -1: none
    /// Texts that stand left of it are flush right.
    double axis = -std::numeric_limits<double>::max();
};

/// Symbols are counted as the layout has them.
class LabelRoom {
  public:
    /// Takes in everything that the layout has, labels left out.
    LabelRoom(const Circuit& circuit, Layout& layout);
    /// The same within an extent; `symbols`: those of the layout, in its order.
    LabelRoom(const Circuit& circuit, Layout& layout, std::vector<DrawnSymbol> symbols,
              const Box& extent);

    bool is_free(const Box& box) const { return room_.is_free(box); }
    void take(const Box& box) { room_.take(box); }
    /// The labels that the layout has, and their leaders.
    void take_labels();
    /// Adds the label to the layout if nothing stands there.
    bool put(const WantedLabel& wanted, const Box& box, std::vector<GridPoint> leader = {});
    /// Adds the label whatever stands there.
    void put_here(LabelBox label, const Box& box);
    /// Adds the label where there is room, as near to its target as may be, with a leader.
    void put_apart(const WantedLabel& wanted);
    /// The same no farther off than `reach` (M); false where there is no room but with a leader
    /// over symbols or texts or along a line.
    bool try_apart(const WantedLabel& wanted, double reach) { return try_within(wanted, reach, 1); }
    Box body(int part) const;
    /// Whether a port letter or the leader of a label stands in a box.
    bool has_letter_or_leader(const Box& box) const;
    /// Whether a reader would take a text there for another symbol's than the part's.
    bool misleads(int part, const Box& box) const;

  private:
    LabelRoom(const Circuit& circuit, Layout& layout, const std::vector<DrawnSymbol>& symbols);
    void take_symbol(const DrawnSymbol& symbol);
    void take_runs();
    void take_leader(const std::vector<GridPoint>& leader);
    bool try_within(const WantedLabel& wanted, double reach, int most_patience);
    bool passes_solid(const WantedLabel& wanted, const std::vector<GridPoint>& leader) const;
    bool passes_line(const std::vector<GridPoint>& leader) const;
    bool runs_along_a_line(const std::vector<GridPoint>& leader) const;

    const Circuit& circuit_;
    Layout& layout_;
    std::vector<DrawnSymbol> symbols_;
    Box extent_;
    Occupancy room_;
};

/// On whole quarter modules, the size kept.
Box snapped(const Box& box);
Box moved(const Box& box, double x, double y);
/// What the letter of a port covers, M. `at`: where its symbol stands.
Box letter_box(const Circuit& circuit, Point at, const PortAnchor& port);
/// The strip that a run takes, M.
Box run_box(GridPoint from, GridPoint to);

/// Room for one small line of text above or below a level run, right or left of an upright one, as
/// near as it may stand: on whole quarter modules, its ink half a module off the line. `at`: where
/// the text begins along the run.
Box beside_run(Point at, bool level, bool first, const LabelText& text);
/// With the room that such a text wants before and behind it along its run.
Box with_air(const Box& box, bool level);

struct StraightRun {
    GridPoint from = {};
    GridPoint to = {};
};
void longest_first(std::vector<StraightRun>& runs);
/// A point, M.
Box middle_of(const StraightRun& run);
/// Adds the label beside the first of the runs that has room for it; false where none has.
bool put_beside(std::span<const StraightRun> runs, const LabelText& text, LabelBox label,
                LabelRoom& room);

/// Names every frame of an assembly and each place where a line passes through it (recipe LN6).
void place_frame_labels(const Circuit& circuit, const Sketch& sketch, Layout& layout,
                        LabelRoom& room);
/// Ids of lines, each beside a run of its line or led to one.
void place_line_labels(const Circuit& circuit, const Layout& layout, LabelRoom& room);

}  // namespace loopwright
