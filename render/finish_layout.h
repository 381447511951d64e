#pragma once

#include <vector>

#include <loopwright/render/layout.h>
#include <loopwright/render/roles.h>
#include <loopwright/render/route.h>
#include <loopwright/render/shafts.h>
#include <loopwright/render/sketch.h>

namespace loopwright {

/// A layout out of a routed sketch: wires by line, joints, shafts, frames, labels. Coordinates are
/// the sketch's own (times four); `fit_to_sheet` moves them.
Layout finish_layout(const Circuit& circuit, const Sketch& sketch, const Roles& roles,
                     const std::vector<RoutedNet>& nets, const std::vector<RoutedShaft>& shafts);

/// Which line each run of a routed net is drawn for. Lines that meet in junctions share a net; a
/// run belongs to the line that joins what lies on its two sides.
std::vector<Index> lines_of_runs(const Circuit& circuit, const Sketch& sketch, const SketchNet& net,
                                 const RoutedNet& routed);

/// Whether a run of the net lies between the first two ports of a line, where its length is.
bool between_first_two(const Circuit& circuit, const Sketch& sketch, const SketchNet& net,
                       const RoutedNet& routed, std::size_t run, Index line);

}  // namespace loopwright
