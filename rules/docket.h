#pragma once

#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/graph/situation.h>

namespace loopwright {

/// Folds what one rule finds in many situations into one verdict for each subject: the worst
/// outcome decides (or the best, see Rule), all states that share it are listed, and the words and
/// witness are those of the first situation that had it.
class Docket {
  public:
    Docket(const FlowGraph& graph, const RuleInfo& rule, bool best_state);

    /// Notes an outcome for a subject in `states` of a situation. Returns the verdict to fill in
    /// (message, witness, measures) before the next call if this outcome is the deciding one for
    /// the first time, else null. `index`: Subject::index.
    Verdict* record(const Situation& situation, ElementType type, Index index, StateSet states,
                    Outcome outcome, Level level = Level::error);

    /// A verdict that hangs on no state.
    Verdict& conclude(ElementType type, Index index, Outcome outcome, Level level = Level::error);

    bool empty() const { return size() == 0; }

    std::size_t size() const { return open_.size() + closed_.size(); }

    /// Hands the verdicts over in the order of their subjects: circuit, loops, sides, components,
    /// each as in the file. Ends the docket.
    void finish(std::vector<Verdict>& verdicts);

  private:
    /// In how many combinations a state was asked, and shared the deciding outcome.
    struct Share {
        std::uint32_t asked = 0;
        std::uint32_t shared = 0;
        std::uint32_t last_asked = none;
        std::uint32_t last_shared = none;
    };
    struct Use {
        State state = State::neutral;
        std::uint32_t combination = 0;
        std::vector<std::pair<Index, std::string_view>> positions = {};
    };
    struct Entry {
        Verdict verdict = {};
        StateSet shared = 0;
        // Only where valves have positions:
        std::vector<Share> shares = {};  ///< for each state
        std::vector<Use> uses = {};
        std::vector<Index> undecided = {};
    };

    Entry& entry_of(ElementType type, Index index, bool& fresh);
    static void count(Entry& entry, const Situation& situation, StateSet states, bool shares);
    void close_region();
    void close(Entry& entry);
    bool decides(const Verdict& verdict, Outcome outcome, Level level) const;

    const FlowGraph& graph_;
    const RuleInfo& rule_;
    bool best_state_;
    // A subject is in one region, so its verdict is closed while it is at hand.
    const Region* region_ = nullptr;
    std::vector<Entry> open_;
    std::vector<Index> by_port_;       // sides, into open_
    std::vector<Index> by_component_;  // loops and components: a rule has one sort of them
    std::vector<Verdict> closed_;
};

}  // namespace loopwright
