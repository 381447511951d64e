#pragma once

#include <string>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/render/nets.h>
#include <loopwright/render/route.h>
#include <loopwright/render/symbol.h>

/// The working model of placing: symbols with a place and an attitude, and the nets between their
/// ports, in whole modules. A layout is made of it once everything is routed.
namespace loopwright {

/// One symbol on the sheet: a component, or a reservoir mark.
struct SketchPart {
    Index component = none;
    Index port = none;  ///< reservoir marks: the port that the mark stands for
    Symbol rest = {};
    Symbol shape = {};  ///< `rest` in its attitude
    Attitude attitude = {};
    Cell at = {};
    bool placed = false;
    int block = -1;
    double label_width = 0.0;  ///< M; 0: no label
    double label_height = 0.0;
    Box label = {};               ///< planned, relative to the origin
    std::vector<int> marks = {};  ///< parts that hang on this one's ports

    bool is_mark() const { return port != none; }
    Point place() const { return {static_cast<double>(at.x), static_cast<double>(at.y)}; }
};

/// An end of a net in the sketch.
struct SketchEnd {
    int part = -1;
    int anchor = -1;  ///< index into the symbol's ports
};

struct SketchNet {
    std::vector<SketchEnd> ends = {};
    std::vector<Index> lines = {};
    std::vector<Run> trunks = {};
};

class Sketch {
  public:
    explicit Sketch(const Circuit& circuit);

    const Circuit& circuit() const { return *circuit_; }
    std::vector<SketchPart> parts = {};
    std::vector<SketchNet> nets = {};

    /// The part of a component; -1 for joints and reservoirs.
    int part_of(Index component) const { return part_of_[component]; }
    /// The net at a port of a part's symbol; -1 where none is.
    int net_at(int part, std::size_t anchor) const;
    /// The net that a port of the circuit belongs to; -1 where none does.
    int net_of_port(Index port) const { return net_of_port_[port]; }

    void turn(int part, Attitude attitude);
    void move_to(int part, Cell at);
    Cell cell(const SketchEnd& end) const;
    Side side(const SketchEnd& end) const;
    const Component& component(int part) const {
        return circuit_->components[parts[static_cast<std::size_t>(part)].component];
    }

    /// Hangs reservoir marks on the ports of the part that lead to nothing but a reservoir. To be
    /// called after the part has its attitude.
    void hang_marks(int part);
    /// Body, stubs, marks and planned label of a part, relative to its origin.
    Box extent(int part) const;
    /// The body in its place.
    Box body(int part) const;

  private:
    void add_component(Index component);
    void add_net(const Net& net);
    void hang(int part, const PortAnchor& anchor, int mark);
    bool is_free(int part, const PortAnchor& own, Cell anchor) const;

    const Circuit* circuit_;
    std::vector<int> part_of_;
    std::vector<int> net_of_port_;
    std::vector<int> net_of_mark_;  // by part
};

}  // namespace loopwright
