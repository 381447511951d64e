#pragma once

#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/graph/situation.h>
#include <loopwright/graph/states.h>
#include <loopwright/rules/docket.h>

namespace loopwright {

struct AtWork;

/// One need of a closed loop: its words and facts, and how it is judged. A rule is constant data
/// in a file of its own, named after its id; registry.cpp lists all.
struct Rule {
    RuleInfo info = {};
    StateSet asked = running_states;  ///< the states that it is asked in
    /// Judges the subjects of one situation; called for every situation of the states asked in.
    void (*judge)(const Situation&, Docket&) = nullptr;
    /// Judges all situations that are alike (`Situation::alike`) at once, shown the first of them.
    /// False, with nothing recorded, where it cannot tell: then `judge` is called for each. May be
    /// null.
    bool (*judge_alike)(const Situation&, Docket&) = nullptr;
    /// After all situations: what does not hang on a state. May be null.
    void (*conclude)(const FlowGraph&, const Structure&, Docket&) = nullptr;
    /// Judges the subjects at one duty point; called for each that stands (at_work.h), after
    /// all situations. May be null.
    void (*judge_point)(const AtWork&, Docket&) = nullptr;
    /// Whether a circuit has anything to ask `judge_point` of: asked where it has no duty.
    bool (*concerns)(const FlowGraph&, const Structure&) = nullptr;
    bool at_cold_start = false;  ///< `judge_point` is asked at the cold start, too
    /// And at points that no machine works at (`AtWork::is_torn`): it fails what is drawn empty or
    /// overwhelmed there, and says nothing of anything else.
    bool where_torn = false;
    /// The best state decides instead of the worst (a need to be met in one state only).
    bool best_state = false;
    /// Its verdicts hang on no state, though what they are made of is found in situations.
    bool stateless = false;

    /// Whether figures at work are all that it judges by.
    bool is_asked_at_work_alone() const {
        return judge == nullptr && judge_alike == nullptr && conclude == nullptr;
    }
};

}  // namespace loopwright
