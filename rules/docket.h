#pragma once

#include <array>
#include <utility>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/base/keep.h>
#include <loopwright/graph/situation.h>
#include <loopwright/rules/combinations.h>
#include <loopwright/rules/thresholds.h>

namespace loopwright {

struct Rule;

/// What loops, sides and ports are called in every output, made once for all rules. Components and
/// lines are called by the circuit's own text.
class SubjectNames {
  public:
    SubjectNames(const Circuit& circuit, Keep& keep) : circuit_(circuit), keep_(keep) {}

    std::string_view operator()(ElementType type, Index index);

  private:
    std::string_view& slot(std::vector<std::string_view>& names, std::size_t size, Index index);

    const Circuit& circuit_;
    Keep& keep_;
    std::vector<std::string_view> loops_;  // by component
    std::vector<std::string_view> sides_;  // by port, whose own name is the end of it
};

/// Where the verdicts on subjects stand in one docket. They come mostly in the order of the file,
/// and what a situation is asked of stands among the last: tables by subject are made where that is
/// not so.
class SubjectTable {
  public:
    explicit SubjectTable(const Circuit& circuit) : circuit_(&circuit) {}

    /// Where the subject stands; `none` if it is not there.
    Index find(ElementType type, Index index) { return find_behind(0, type, index); }
    /// The same for a subject that stands at `first` or behind it, if anywhere.
    Index find_behind(std::size_t first, ElementType type, Index index);
    /// Puts one that is not there behind all others.
    void add(ElementType type, Index index);

    /// Whether all stand in the order of types and indices.
    bool in_order() const { return in_order_; }
    /// Calls `take` for where each stands, in that order.
    template <typename Take>
    void for_each_in_order(Take take) {
        make_slots();
        for (std::size_t t = 0; t <= static_cast<std::size_t>(ElementType::waiver); ++t) {
            const auto type = static_cast<ElementType>(t);
            if (type == ElementType::shaft) continue;
            for (const Index at : slots_of(type))
                if (at != none && type_of(keys_[at]) == type) take(at);
        }
    }

  private:
    using Key = std::uint64_t;  // type and index, compared as both
    static Key key_of(ElementType type, Index index) {
        if (type == ElementType::circuit) return 0;  // there is one
        return Key{static_cast<std::uint8_t>(type)} << 32 | index;
    }
    static ElementType type_of(Key key) { return static_cast<ElementType>(key >> 32); }

    std::vector<Index>& slots_of(ElementType type);
    Index& slot_of(Key key);
    void make_slots();

    const Circuit* circuit_;
    std::vector<Key> keys_;
    bool in_order_ = true;
    bool has_slots_ = false;
    std::vector<Index> of_circuit_;
    std::vector<Index> by_port_;       // sides, and ports
    std::vector<Index> by_component_;  // loops, and components: a rule has one sort of them
    std::vector<Index> by_line_;
};

/// Folds what one rule finds in many situations into one verdict for each subject: the worst
/// outcome decides (or the best, see Rule), all states that share it are listed, and the words and
/// witness are those of the first situation that had it.
class Docket {
  public:
    /// `keep` is the memory of all that the verdicts show.
    Docket(const FlowGraph& graph, const Rule& rule, const Thresholds& thresholds,
           SubjectNames& names, Keep& keep);

    /// The rule's threshold of that name, SI.
    double threshold(std::string_view name) const { return threshold(rule_, name); }
    /// That of another rule.
    double threshold(const RuleInfo& rule, std::string_view name) const {
        return thresholds_.value(rule, name);
    }

    /// Notes an outcome for a subject in `states` of a situation. Returns the verdict to fill in
    /// (message, witness, measures) before the next call if this outcome is the deciding one for
    /// the first time, else null. `index`: Subject::index. What is filled in is constant or kept.
    /// `severity`: of what a numeric need measures; among equal outcomes the most severe one fills
    /// in the verdict.
    Verdict* record(const Situation& situation, ElementType type, Index index, StateSet states,
                    Outcome outcome, Level level = Level::error, double severity = 0.0);

    /// Names data in a verdict if that is inconclusive, beside those it names: what any of the
    /// situations that share it lacks.
    void add_missing(ElementType type, Index index, std::span<const std::string_view> data);

    /// The same at a duty point, once all situations are gone through: the worst point decides.
    /// `severity`: how far a figure is off; among equal outcomes the point where it is greatest
    /// fills in the verdict.
    Verdict* record_at(std::string_view point, ElementType type, Index index, Outcome outcome,
                       Level level = Level::error, double severity = 0.0);
    /// Of a rule that judges by more than figures at work: that a pass of the subject hangs on
    /// them.
    void await_points(ElementType type, Index index);
    /// A point that nothing is known of leaves open what passes otherwise and hangs on points;
    /// where there is no verdict yet, the circuit's.
    void leave_open(std::string_view point, std::string_view message,
                    std::span<const std::string_view> missing);

    /// A verdict that hangs on no state.
    Verdict& conclude(ElementType type, Index index, Outcome outcome, Level level = Level::error);

    /// A message of parts, one behind the other, kept.
    template <typename... Parts>
    std::string_view text(const Parts&... parts) {
        return keep_.text(parts...);
    }
    /// A quantity as it is printed for people, kept. Many verdicts tell the same few settings, so
    /// the last ones are remembered.
    std::string_view told(double si, Dimension dimension);
    /// A witness whose steps are kept.
    Witness witness(WitnessShape shape, std::span<const Step> steps) {
        return {shape, keep_.list(steps)};
    }
    /// Names of missing data, kept.
    std::span<const std::string_view> missing(std::span<const std::string_view> data) {
        return keep_.list(data);
    }

    /// Figures, kept.
    const Figures* figures(const Figures& figures) { return keep_.one(figures); }

    bool empty() const { return verdicts_.empty(); }
    /// Whether the subject has a verdict.
    bool has(ElementType type, Index index) { return subjects_.find(type, index) != none; }

    std::size_t size() const { return verdicts_.size(); }

    /// Hands the verdicts over in the order of their subjects: circuit, loops, sides, components,
    /// each as in the file. Ends the docket.
    void finish(std::vector<Verdict>& verdicts);

  private:
    /// What there is beside a verdict while its region is gone through.
    struct Entry {
        StateSet shared = 0;
        double severity = 0.0;
        // Only where valves have positions:
        std::vector<Combinations> combinations = {};  ///< for each state
        std::vector<Index> undecided = {};
        bool recurs = false;  ///< a part without passages may stand in two regions
    };

    Index add(ElementType type, Index index);
    static void count(Entry& entry, const Situation& situation, StateSet states, bool shares);
    void close_region();
    void close(Entry& entry, Verdict& verdict);
    void close_circuit(Verdict& verdict);
    bool may_recur(ElementType type, Index index) const;
    void take_over(Index at, double severity);
    void list_positions(const Entry& entry, Verdict& verdict);
    /// States in which all combinations of positions share the outcome.
    std::span<const StateUse> all_positions_of(StateSet states);
    bool decides(const Verdict& verdict, Outcome outcome, Level level) const;

    const FlowGraph& graph_;
    const RuleInfo& rule_;
    const StateSet asked_;  ///< states outside it are left out of what is noted
    const bool best_state_;
    const bool stateless_;
    const bool at_work_alone_;
    const Thresholds& thresholds_;
    SubjectNames& names_;
    Keep& keep_;
    struct Told {
        double si = 0.0;
        Dimension dimension = Dimension::ratio;
        std::string_view text = {};
    };
    std::array<Told, 4> told_ = {};  // the first is the last asked for
    std::vector<Verdict> verdicts_;
    SubjectTable subjects_;    // of them
    Index on_circuit_ = none;  // the verdict on it
    // A subject but the circuit is in one region, so its verdict is closed while it is at hand; of
    // a part in two regions what the second says takes over what the first said.
    const Index* region_joints_ = nullptr;  // known by them, as a copy of a region shares them
    std::vector<Index> valves_;             // of it
    std::vector<std::uint32_t> judging_;    // of it
    std::size_t closed_ = 0;                // so many of the verdicts
    std::vector<Entry> open_;               // of the verdicts from there on
    std::vector<StateUse> uses_;            // of the verdict being closed
    struct Recurring {
        Index at = none;
        double severity = 0.0;
    };
    std::vector<Recurring> recurring_;    // closed verdicts of what may stand in two regions
    Entry circuit_entry_;                 // of the circuit's verdict, for the region at hand
    std::vector<StateUse> circuit_uses_;  // the same, of the regions before
    std::vector<double> severities_;      // of verdicts at duty points
    std::vector<std::uint8_t> awaiting_;  // by verdict: 1 if it hangs on points
    // Lists of states without positions, made once: verdicts by the thousand share a few.
    std::vector<std::pair<StateSet, std::span<const StateUse>>> plain_uses_;
};

}  // namespace loopwright
