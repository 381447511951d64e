#pragma once

#include <span>
#include <vector>

#include <loopwright/graph/pump_flow.h>
#include <loopwright/graph/situation.h>

/// What several rules mean by a way that nothing can close, a mesh, a relief, a pump that delivers.
namespace loopwright {

/// The class of a way that nobody can close: an element, or a valve that is not worked by hand or
/// is locked. Whether it stands open is another matter.
bool sure(const Edge& edge);

/// The attribute that holds what a part opens at or hands on.
std::string_view setting_of(const Component& component);

/// A hand valve or coupling that is secured and drawn open.
bool locked_open(const Circuit& circuit, const Edge& edge);

/// Sure, or carries the flow on all the same: checks, restrictions, dividers, reducing valves.
bool hands_on(const Edge& edge);

/// The element of a filter or strainer, which clogs.
bool is_mesh(const Circuit& circuit, const Edge& edge);

/// Whether the part of a mesh has a bypass that opens when it is clogged.
bool has_bypass(const Circuit& circuit, const Edge& mesh);

/// A relief or sequence valve's way, but no bypass beside an element.
inline bool is_relief(const Edge& edge) {
    return edge.passage_class == PassageClass::pressure_opened && !edge.bypass;
}

/// On a side of some loop, intermediate sides too.
inline bool on_a_side(const Situation& s, Index node) { return !s.loops.sides_at(node).empty(); }

/// Those of some states of the situation in which a pump that is in no loop has this flow: a
/// two-way one needs a signal.
StateSet flow_states(const Edge& pump, StateSet states);

/// The port of a machine's passage that stands on a node.
Index port_at(const Situation& s, Index edge, Index node);

/// Whether the loop is judged in the situation and has sides.
inline bool judged(const Situation& s, Index loop) {
    return s.judges(s.loops.loops[loop].first_pump) && !s.loops.loops[loop].shorted;
}

/// Whether all situations alike have the same candidates for charge pumps, each for the same loops.
/// Certain where every pump outside the loops feeds every loop.
bool same_charge_pumps(const Situation& s);

/// Says of the step over an arc what is wrong with it.
void remark(const Situation& s, const FlowArc& arc, std::string_view text, std::span<Step> steps);

}  // namespace loopwright
