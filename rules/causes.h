#pragma once

#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/base/keep.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/graph/flow_graph.h>

namespace loopwright {

/// Notes on each finding the one that it follows from: of the rules that `RuleInfo::follows` names,
/// in that order, the first that has a finding on the same loop or, where either is about no loop,
/// in the same region. One mistake shall not read as fifteen.
void note_causes(const FlowGraph& graph, const Structure& structure, std::vector<Verdict>& verdicts,
                 Keep& keep);

}  // namespace loopwright
