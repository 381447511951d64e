// A region is run through in passes over the combinations of its valves' positions. First to learn
// which valves command a loop; then, where states forbid some, which machines have a loop in those
// that are left; then each with the states that allow it. States that stand alike share one
// situation. Where loops hang together, each is also judged while the others stand in neutral.
#include <loopwright/graph/situation.h>

#include <algorithm>
#include <array>
#include <optional>

#include <loopwright/graph/cases.h>
#include <loopwright/graph/combinations.h>
#include <loopwright/graph/judged_sides.h>
#include <loopwright/graph/sections.h>
#include <loopwright/graph/structure.h>
#include <loopwright/graph/valves.h>

namespace loopwright {

namespace {

/// The number of a group of situations that holds one only.
constexpr std::uint32_t alone = 31;

bool has_machines(const KnownLoop& loop) { return !loop.pump_edges.empty(); }

/// Runs through the situations of one region after another, in the same memory.
class Runner {
  public:
    Runner(const FlowGraph& graph, StructureBuilder& structure,
           const std::function<void(const Situation&)>& judge)
        : graph_(graph),
          structure_(structure),
          judge_(judge),
          finder_(graph),
          valves_(graph),
          known_slot_(graph.circuit().components.size(), none) {}

    void run(const Region& region) {
        region_ = &region;
        valves_.begin(region);
        judging_ = find_judging_combinations(graph_, region, valves_);
        for (const KnownLoop& loop : known_) known_slot_[loop.first_pump] = none;
        known_.clear();
        looped_.assign(region.edges.size(), 0);
        for_each_combination([&](std::uint32_t /*c*/) { learn_from(all_states); });
        if (valves_.any_commands()) {
            for_each_combination([&](std::uint32_t /*c*/) { learn_commands_of_sections(); });
            forget_machines();
            for_each_combination([&](std::uint32_t /*c*/) { learn_from(allowed_somehow()); });
        }
        for (KnownLoop& loop : known_) find_pull(graph_, region, loop);
        still_.find(graph_, region, known_, looped_);
        find_open_part_ways(region, looped_, open_part_ways_);
        for_each_combination([&](std::uint32_t c) {
            combination_ = c;
            run_combination();
            if (valves_.has_towing_ways()) run_towing();
        });
        structure_.finish_region(region, looped_);
    }

  private:
    template <typename Visit>
    void for_each_combination(Visit visit) {
        for (std::uint32_t c = 0; c < valves_.combination_count(); ++c) {
            if (!judging_.empty() && judging_[c] != c) continue;
            if (valves_.combination_count() > 1 || standing_region_ != region_) stand(c);
            standing_region_ = region_;
            visit(c);
        }
    }

    void stand(std::uint32_t combination) {
        valves_.find_positions(combination, positions_);
        valves_.find_standing(positions_, base_standing_);
        find_loops();
    }

    void find_loops() {
        find_at_tank(graph_, *region_, base_standing_, searches_, at_tank_);
        for (const Direction direction :
             {Direction::none, Direction::forward, Direction::reverse}) {
            const auto d = static_cast<std::size_t>(direction);
            const std::vector<Loop>& still = loop_sets_[0].loops;
            if (d > 0 && std::none_of(still.begin(), still.end(),
                                      [](const Loop& loop) { return loop.turns_with_flow; })) {
                loops_[d] = &loop_sets_[0];
                continue;
            }
            finder_.find(*region_, base_standing_, at_tank_, direction, {}, loop_sets_[d]);
            loops_[d] = &loop_sets_[d];
        }
    }

    /// The states that these positions allow some loop.
    StateSet allowed_somehow() const {
        StateSet allowed = valves_.allowed_states(positions_);
        for (Index k = 0; k < known_.size(); ++k)
            allowed |= valves_.allowed_states_apart(positions_, k);
        return allowed;
    }

    /// The loops that there are in some states.
    void learn_from(StateSet states) {
        if (states == 0) return;
        learn(*loops_[0]);
        const StateSet forward_states = without(moving_states, reverse_states);
        for (const auto& [direction, moving] : {std::pair{Direction::forward, forward_states},
                                                std::pair{Direction::reverse, reverse_states}}) {
            const LoopSet* set = loops_[static_cast<std::size_t>(direction)];
            if (set != loops_[0] && ((moving | either_way) & states) != 0) learn(*set);
        }
    }

    void learn(const LoopSet& set) {
        for (const Loop& loop : set.loops) {
            Index& slot = known_slot_[loop.first_pump];
            if (slot == none) {
                slot = static_cast<Index>(known_.size());
                known_.push_back({.first_pump = loop.first_pump});
            }
            KnownLoop* known = &known_[slot];
            for (const Index e : set.edges_of(loop)) {
                const Edge& edge = region_->edges[e];
                if (edge.shift == Shift::position) {
                    known->reversible = true;
                    valves_.note_command(edge.component, slot);
                }
                if (edge.passage_class != PassageClass::displacement) continue;
                looped_[e] = 1;
                (edge.part == Part::pump ? known->pump_edges : known->actuator_edges).push_back(e);
                if (edge.part == Part::pump && edge.both_ways) known->reversible = true;
            }
            for (auto* edges : {&known->pump_edges, &known->actuator_edges}) {
                std::sort(edges->begin(), edges->end());
                edges->erase(std::unique(edges->begin(), edges->end()), edges->end());
            }
        }
    }

    void forget_machines() {
        looped_.assign(region_->edges.size(), 0);
        for (KnownLoop& loop : known_) {
            loop.pump_edges.clear();
            loop.actuator_edges.clear();
        }
    }

    /// A valve with a path that leads to a section commands its loop.
    void learn_commands_of_sections() {
        sections_ = find_sections(graph_, *region_, base_standing_, *loops_[0], known_);
        for (const Section& section : sections_)
            for (const Index node : section.nodes)
                for (const FlowArc& arc : region_->arcs_of(node))
                    if (region_->edges[arc.edge].shift == Shift::position)
                        valves_.note_command(region_->edges[arc.edge].component,
                                             section.known_loop);
    }

    void run_combination() {
        if (allowed_somehow() == 0) return;
        const StateSet allowed = valves_.allowed_states(positions_);
        sections_.clear();
        if (valves_.any_commands())
            sections_ = find_sections(graph_, *region_, base_standing_, *loops_[0], known_);
        find_shifted();
        evaluate_groups(without_towing(allowed));
        if (std::count_if(known_.begin(), known_.end(), has_machines) < 2) return;
        for (Index k = 0; k < known_.size(); ++k)
            if (has_machines(known_[k])) run_apart(k, allowed);
    }

    void evaluate_groups(StateSet allowed) {
        for (const StateSet states : by_signal(allowed)) evaluate_groups_of(states);
    }

    /// States in two, with a signal and without, where that makes a difference.
    std::array<StateSet, 2> by_signal(StateSet states) const {
        if (!still_.two_way_outside) return {states, 0};
        return {without(states, either_way), static_cast<StateSet>(states & either_way)};
    }

    void evaluate_groups_of(StateSet allowed) {
        groups_.find(*region_, loops_, allowed, still_.pumps_turn_alike);
        std::uint32_t begun = 0;
        for (const CaseGroup& group : groups_.groups()) {
            alike_ = {.number = group.alike,
                      .first = group.alike == begun,
                      .states = groups_.states_alike(group.alike)};
            if (alike_.first) ++begun;
            evaluate(group.first, *group.loops, group.highs, group.states);
        }
    }

    /// Where ways are meant for it, towing is a situation of its own.
    StateSet without_towing(StateSet states) const {
        return valves_.has_towing_ways() ? without(states, bit(State::towing)) : states;
    }

    void run_towing() {
        if ((valves_.allowed_states(positions_) & bit(State::towing)) == 0) return;
        valves_.open_towing_ways(base_standing_);
        find_loops();
        find_shifted();
        evaluate_groups(bit(State::towing));
        standing_region_ = nullptr;  // what stands for the combination is overwritten
    }

    void find_shifted() {
        if (!valves_.follows_pressure()) return;
        shut_standing_ = base_standing_;
        valves_.set_all_shifted(shut_standing_, false);
        wide_standing_ = base_standing_;
        valves_.set_all_shifted(wide_standing_, true);
    }

    /// One loop in each state, the others in neutral, where that makes a difference.
    void run_apart(Index k, StateSet allowed) {
        const StateSet apart = without_towing(valves_.allowed_states_apart(positions_, k));
        rest_all_but(known_[k]);
        LoopSet mixed;
        std::optional<Direction> mixed_direction;
        for (const Case& one : cases) {
            if (one.high == High::neither) continue;
            const LoopSet* loops = loops_[static_cast<std::size_t>(one.direction)];
            auto states = static_cast<StateSet>(one.states & apart);
            if (!valves_.follows_pressure() && loops == loops_[0])
                states = without(states, allowed);
            if (states == 0) continue;
            if (loops != loops_[0]) {
                if (mixed_direction != one.direction)
                    finder_.find(*region_, base_standing_, at_tank_, one.direction, resting_,
                                 mixed);
                mixed_direction = one.direction;
                loops = &mixed;
            }
            std::vector<High> highs(loops->loops.size(), High::neither);
            for (std::size_t i = 0; i < highs.size(); ++i)
                if (loops->loops[i].first_pump == known_[k].first_pump)
                    highs[i] = high_of(*region_, *loops, loops->loops[i], one);
            for (const StateSet some : by_signal(states)) {
                if (some == 0) continue;
                alike_ = {.number = alone, .states = some};
                evaluate(one, *loops, highs, some, k);
            }
        }
    }

    /// Notes the machines of all other loops but those that this one has too.
    void rest_all_but(const KnownLoop& loop) {
        resting_ = looped_;
        for (const auto* edges : {&loop.pump_edges, &loop.actuator_edges})
            for (const Index e : *edges) resting_[e] = 0;
    }

    void evaluate(const Case& one, const LoopSet& loops, std::span<const High> highs,
                  StateSet states, Index judged = none) {
        find_loop_states(loops, highs, states);
        Turning turning{.direction = one.direction, .signal = without(states, either_way) != 0};
        if (one.neutral()) turning.still = still_.still;
        alike_.shut = valves_.follows_pressure() ? &shut_standing_ : &base_standing_;
        alike_.wide = valves_.follows_pressure() ? &wide_standing_ : &base_standing_;
        standing_ = base_standing_;
        valves_.set_by_pressure(loops, highs, standing_);
        update_feeds(loops, turning);
        Situation situation{.graph = graph_,
                            .region = *region_,
                            .loops = loops,
                            .states = states,
                            .combination = combination_,
                            .judging = judging_,
                            .valves = valves_.valves(),
                            .positions = positions_,
                            .undecided = valves_.undecided(),
                            .turning = turning,
                            .highs = highs,
                            .loop_states = loop_states_,
                            .judged_pump = judged == none ? none : known_[judged].first_pump,
                            .resting = judged == none ? std::span<const std::uint8_t>() : resting_,
                            .standing = standing_,
                            .feeds = feeds_,
                            .searches = searches_,
                            .looped = looped_,
                            .open_part_ways = open_part_ways_,
                            .alike = alike_};
        find_judged_sides(situation, sections_, known_, sides_);
        situation.sides = sides_;
        structure_.see(situation);
        if (judge_) judge_(situation);
    }

    void find_loop_states(const LoopSet& loops, std::span<const High> highs, StateSet states) {
        for (auto* list : {&loop_states_, &alike_loop_states_}) list->clear();
        alike_low_states_.clear();
        for (std::size_t i = 0; i < loops.loops.size(); ++i) {
            const KnownLoop* known = known_as(loops.loops[i].first_pump);
            const StateSet has = known == nullptr ? StateSet{0} : known->states();
            const High pull = known == nullptr ? High::neither : known->pull;
            loop_states_.push_back(pulled_away(pull, highs[i]) ? StateSet{0} : states & has);
            alike_loop_states_.push_back(alike_.states & has);
            const auto low = [&](High side) {
                return static_cast<StateSet>(has &
                                             groups_.states_low(alike_.number, i, side, pull));
            };
            alike_low_states_.push_back(
                alike_.number == alone ? LowStates{} : LowStates{low(High::a), low(High::b)});
        }
        alike_.loop_states = alike_loop_states_;
        alike_.low_states = alike_low_states_;
    }

    /// Finds the feeds of the situation at hand, where those at hand are not the same.
    void update_feeds(const LoopSet& loops, const Turning& turning) {
        const auto hold_in = [&](const Standing& other) {
            return hold_with(feeds_, *region_, loops, open_part_ways_,
                             valves_.shifted_by_pressure(), feeds_standing_, other);
        };
        if (!alike_.first && alike_.number == feeds_number_ &&
            (feeds_of_all_ || hold_in(standing_)))
            return;
        find_feeds(graph_, *region_, standing_, loops, looped_, open_part_ways_, turning, searches_,
                   feeds_);
        feeds_standing_ = standing_;
        feeds_number_ = alike_.number;
        // What holds with all shut and with all open holds between.
        feeds_of_all_ = alike_.first && alike_.number != alone && hold_in(*alike_.shut) &&
                        hold_in(*alike_.wide);
        // A loop that has no states here but some in others has no sides here.
        alike_.same_feeds =
            feeds_of_all_ &&
            std::equal(loop_states_.begin(), loop_states_.end(), alike_loop_states_.begin(),
                       [](StateSet here, StateSet all) { return (here == 0) == (all == 0); });
    }

    /// Null only while other loops stand in neutral.
    const KnownLoop* known_as(Index first_pump) const {
        const Index known = known_slot_[first_pump];
        return known == none ? nullptr : &known_[known];
    }

    const FlowGraph& graph_;
    StructureBuilder& structure_;
    const std::function<void(const Situation&)>& judge_;
    LoopFinder finder_;

    // Of the region at hand.
    const Region* region_ = nullptr;
    ValveBoard valves_;
    std::vector<KnownLoop> known_;
    std::vector<Index> known_slot_;  // by first pump, into known_
    std::vector<std::uint8_t> looped_;
    std::vector<std::uint8_t> open_part_ways_;
    StillDrives still_;
    std::vector<std::uint32_t> judging_;
    const Region* standing_region_ = nullptr;  // that the one combination stands for

    // Of the combination at hand.
    std::uint32_t combination_ = 0;
    std::vector<Index> positions_;
    Standing base_standing_;
    Standing shut_standing_;
    Standing wide_standing_;
    std::vector<std::uint8_t> at_tank_;
    std::array<LoopSet, 3> loop_sets_;
    std::array<const LoopSet*, 3> loops_ = {};  // by direction; may share a set
    CaseGroups groups_;
    std::vector<Section> sections_;
    std::vector<std::uint8_t> resting_;  // of the loop judged apart

    // Of the situation at hand.
    Standing standing_;
    Feeds feeds_;
    Standing feeds_standing_;         // that they were found in
    std::uint32_t feeds_number_ = 0;  // of those alike that they were found for
    bool feeds_of_all_ = false;       // of those
    SearchPool searches_;
    std::vector<JudgedSide> sides_;
    std::vector<StateSet> loop_states_;
    Alike alike_;
    std::vector<StateSet> alike_loop_states_;
    std::vector<LowStates> alike_low_states_;
};

}  // namespace

Structure for_each_situation(const FlowGraph& graph,
                             const std::function<void(const Situation&)>& judge) {
    StructureBuilder structure(graph);
    Runner runner(graph, structure, judge);
    for (const Region& region : graph.regions()) runner.run(region);
    return structure.finish();
}

Structure structure_of(const Circuit& circuit) {
    const FlowGraph graph(circuit);
    return for_each_situation(graph, {});
}

}  // namespace loopwright
