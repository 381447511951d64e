#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/render/symbol.h>

/// Where everything stands: the stage between placing/routing and drawing. All coordinates are
/// whole quarter modules (0.625 mm) on the sheet's drawing area, so that a layout can be written as
/// JSON, read back, and gives the same drawing.
namespace loopwright {

struct GridPoint {
    int x = 0;  ///< quarter modules
    int y = 0;
    friend bool operator==(const GridPoint&, const GridPoint&) = default;
};

struct GridBox {
    GridPoint from = {};
    GridPoint to = {};
    friend bool operator==(const GridBox&, const GridBox&) = default;
};

/// A placed symbol. A reservoir is placed once for each line end that it receives; `port` then
/// names the port of that mark.
struct Placed {
    Index component = none;
    Index port = none;  ///< reservoir marks only
    GridPoint at = {};
    Attitude attitude = {};
};

/// One straight run of a net's wire. A net is a node of the circuit: lines joined by junctions.
/// `line` is the circuit's line the run is drawn for.
struct Wire {
    Index line = none;
    GridPoint from = {};
    GridPoint to = {};
    /// Drawn as a hose (recipe LN3), an arc between two dots that sags, where the run is level,
    /// down (1) or up (-1), where it is upright, to the right (1) or left (-1). 0: straight.
    int sag = 0;
};

struct Joint {
    Index line = none;
    GridPoint at = {};
};

struct ShaftRun {
    Index shaft = none;
    GridPoint from = {};
    GridPoint to = {};
};

/// The words beside a component, a line, or a frame: then the assembly's name, or with `port` the
/// letter of its declared port that stands for that port.
struct LabelBox {
    Index component = none;
    Index line = none;
    Index port = none;
    Index assembly = none;
    GridBox box = {};  ///< what the text covers
    bool right_aligned = false;
    std::vector<GridPoint> leader = {};  ///< empty: none
};

struct FrameBox {
    Index assembly = none;
    GridBox box = {};
};

struct Layout {
    std::string sheet = "A3";  ///< A4 (upright), A3, A2, A1, A0
    std::vector<Placed> placed = {};
    std::vector<Wire> wires = {};
    std::vector<Joint> joints = {};
    std::vector<ShaftRun> shafts = {};
    std::vector<LabelBox> labels = {};
    std::vector<FrameBox> frames = {};
};

}  // namespace loopwright
