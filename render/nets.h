#pragma once

#include <vector>

#include <loopwright/parser/circuit.h>

/// The circuit as it is drawn: nets of ports joined by lines, with a reservoir mark at every line
/// end that oil returns to. Unlike the nodes of the analysis a net does not lead through a housing
/// or a reservoir: on the sheet L1 and L2 of a pump are two places.
namespace loopwright {

/// One end of a net: a component's port, or a local reservoir mark that stands for a port of the
/// reservoir. Two marks may stand for the same port.
struct NetEnd {
    Index port = none;
    bool mark = false;
    friend bool operator==(const NetEnd&, const NetEnd&) = default;
};

struct Net {
    std::vector<NetEnd> ends = {};
    std::vector<Index> lines = {};  ///< in file order; never empty
};

/// All nets with at least one line, in the order of their first line. Junctions dissolve: their
/// lines are one net. A single line to a reservoir that serves several ports falls apart into one
/// net for each of them, every one with a mark of its own.
std::vector<Net> drawn_nets(const Circuit& circuit);

/// Whether the component is only a joint on the sheet.
bool is_joint(const Component& component);
bool is_reservoir(const Component& component);

/// Whether a line is drawn dashed: drains, pilots and flushing, declared or told by its ports.
bool is_dashed(const Circuit& circuit, Index line);

}  // namespace loopwright
