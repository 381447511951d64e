// A region is run through in passes over every combination of its valves' positions. First to learn
// which valves command a loop; then, where states forbid some combinations, which machines have a
// loop in those that are left; then each combination with the states that allow it. States that
// stand alike share one situation. Where loops hang together, each is also judged by itself while
// the others stand in neutral.
#include <loopwright/graph/situation.h>

#include <algorithm>
#include <array>
#include <optional>
#include <unordered_map>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/judged_sides.h>
#include <loopwright/graph/sections.h>
#include <loopwright/graph/structure.h>
#include <loopwright/graph/valves.h>

namespace loopwright {

namespace {

/// A flow direction and a high side, and the states they stand for.
struct Case {
    Direction direction = Direction::none;
    High high = High::neither;
    bool drive = true;
    StateSet states = 0;
};

constexpr std::array<Case, 5> cases = {{
    {.states = bit(State::neutral)},
    {.direction = Direction::forward,
     .high = High::a,
     .states = bit(State::drive_forward) | bit(State::lost_signal)},
    {.direction = Direction::forward,
     .high = High::b,
     .drive = false,
     .states = bit(State::overrun_forward) | bit(State::lost_signal)},
    {.direction = Direction::reverse,
     .high = High::b,
     .states = bit(State::drive_reverse) | bit(State::lost_signal)},
    {.direction = Direction::reverse,
     .high = High::a,
     .drive = false,
     .states = bit(State::overrun_reverse) | bit(State::lost_signal)},
}};

/// The number of a group of situations that holds one only.
constexpr std::uint32_t alone = 31;

/// Runs through the situations of one region after another, in the same memory.
class Runner {
  public:
    Runner(const FlowGraph& graph, StructureBuilder& structure,
           const std::function<void(const Situation&)>& judge)
        : graph_(graph), structure_(structure), judge_(judge), finder_(graph) {}

    void run(const Region& region) {
        region_ = &region;
        valves_.emplace(graph_, region);
        known_.clear();
        known_slot_.clear();
        looped_.assign(region.edges.size(), 0);
        for_each_combination([&](std::uint32_t /*c*/) { learn_from(running_states); });
        if (valves_->any_commands()) {
            for_each_combination([&](std::uint32_t /*c*/) { learn_commands_of_sections(); });
            forget_machines();
            for_each_combination([&](std::uint32_t /*c*/) { learn_from(allowed_somehow()); });
        }
        find_open_part_ways(region, looped_, open_part_ways_);
        for_each_combination([&](std::uint32_t c) {
            combination_ = c;
            run_combination();
        });
        structure_.finish_region(region, looped_);
    }

  private:
    template <typename Visit>
    void for_each_combination(Visit visit) {
        const std::uint32_t count = valves_->combination_count();
        for (std::uint32_t c = 0; c < count; ++c) {
            if (count > 1 || standing_region_ != region_) stand(c);
            standing_region_ = region_;
            visit(c);
        }
    }

    void stand(std::uint32_t combination) {
        positions_ = valves_->positions(combination);
        base_standing_ = valves_->standing(positions_);
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
        StateSet allowed = valves_->allowed_states(positions_);
        for (Index k = 0; k < known_.size(); ++k)
            allowed |= valves_->allowed_states_apart(positions_, k);
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
            if (set != loops_[0] && ((moving | bit(State::lost_signal)) & states) != 0) learn(*set);
        }
    }

    void learn(const LoopSet& set) {
        for (const Loop& loop : set.loops) {
            const auto [slot, fresh] =
                known_slot_.try_emplace(loop.first_pump, static_cast<Index>(known_.size()));
            if (fresh) known_.push_back({.first_pump = loop.first_pump});
            KnownLoop* known = &known_[slot->second];
            for (const Index e : set.edges_of(loop)) {
                const Edge& edge = region_->edges[e];
                if (edge.shift == Shift::position) {
                    known->reversible = true;
                    valves_->note_command(edge.component, slot->second);
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
                        valves_->note_command(region_->edges[arc.edge].component,
                                              section.known_loop);
    }

    void run_combination() {
        if (allowed_somehow() == 0) return;
        const StateSet allowed = valves_->allowed_states(positions_);
        sections_.clear();
        if (valves_->any_commands())
            sections_ = find_sections(graph_, *region_, base_standing_, *loops_[0], known_);
        struct Group {
            Case first = {};
            const LoopSet* loops = nullptr;
            std::vector<High> highs = {};
            StateSet states = 0;
            std::uint32_t alike = 0;  // into alikes
        };
        std::vector<Group> groups;
        boost::container::small_vector<StateSet, 5> alikes;
        for (const Case& one : cases) {
            const auto states = static_cast<StateSet>(one.states & allowed);
            if (states == 0) continue;
            const LoopSet& loops = *loops_[static_cast<std::size_t>(one.direction)];
            std::vector<High> highs(loops.loops.size());
            for (std::size_t i = 0; i < highs.size(); ++i)
                highs[i] = high_of(loops.loops[i], loops, one);
            const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
                return group.highs == highs && alike(*group.loops, loops, group.first, one);
            });
            if (same != groups.end()) {
                same->states |= states;
                alikes[same->alike] |= states;
                continue;
            }
            const auto beside = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
                return alike_but_for_sides(*group.loops, loops, group.first, one);
            });
            const auto alike =
                beside != groups.end() ? beside->alike : static_cast<std::uint32_t>(alikes.size());
            if (beside == groups.end()) alikes.push_back(0);
            alikes[alike] |= states;
            groups.push_back({one, &loops, std::move(highs), states, alike});
        }
        if (valves_->follows_pressure()) {
            shut_standing_ = base_standing_;
            valves_->set_all_shifted(shut_standing_, false);
            wide_standing_ = base_standing_;
            valves_->set_all_shifted(wide_standing_, true);
        }
        std::uint32_t begun =
            0;  // groups of those that are alike come in the order of their firsts
        for (const Group& group : groups) {
            alike_ = {.number = group.alike,
                      .first = group.alike == begun,
                      .states = alikes[group.alike]};
            if (alike_.first) ++begun;
            evaluate(group.first, *group.loops, group.highs, group.states);
        }
        const auto loops = std::count_if(known_.begin(), known_.end(), has_machines);
        if (loops < 2) return;
        for (Index k = 0; k < known_.size(); ++k)
            if (has_machines(known_[k])) run_apart(k, allowed);
    }

    static bool has_machines(const KnownLoop& loop) { return !loop.pump_edges.empty(); }

    /// One loop in each state, the others in neutral, where that makes a difference.
    void run_apart(Index k, StateSet allowed) {
        const StateSet apart = valves_->allowed_states_apart(positions_, k);
        rest_all_but(known_[k]);
        LoopSet mixed;
        std::optional<Direction> mixed_direction;
        for (const Case& one : cases) {
            if (one.high == High::neither) continue;
            const LoopSet* loops = loops_[static_cast<std::size_t>(one.direction)];
            auto states = static_cast<StateSet>(one.states & apart);
            if (!valves_->follows_pressure() && loops == loops_[0])
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
                    highs[i] = high_of(loops->loops[i], *loops, one);
            alike_ = {.number = alone, .states = states};
            evaluate(one, *loops, highs, states, k);
        }
    }

    /// Notes the machines of all other loops but those that this one has too.
    void rest_all_but(const KnownLoop& loop) {
        resting_ = looped_;
        for (const auto* edges : {&loop.pump_edges, &loop.actuator_edges})
            for (const Index e : *edges) resting_[e] = 0;
    }

    /// One-way pumps have no reverse: driving, their outlet is high; overrunning, their inlet.
    High high_of(const Loop& loop, const LoopSet& loops, const Case& one) const {
        if (one.high == High::neither) return High::neither;
        for (const Index e : loops.edges_of(loop))
            if (region_->edges[e].part == Part::pump && region_->edges[e].both_ways &&
                region_->edges[e].passage_class == PassageClass::displacement)
                return one.high;
        return one.drive ? High::a : High::b;
    }

    /// Whether two cases of the same high sides stand alike.
    bool alike(const LoopSet& a, const LoopSet& b, const Case& case_a, const Case& case_b) const {
        return alike_but_for_sides(a, b, case_a, case_b) &&
               (case_a.direction == Direction::none) == (case_b.direction == Direction::none);
    }

    bool alike_but_for_sides(const LoopSet& a, const LoopSet& b, const Case& case_a,
                             const Case& case_b) const {
        if (&a != &b && (a.edges != b.edges || a.machines != b.machines || a.nodes != b.nodes))
            return false;
        if (case_a.direction == case_b.direction) return true;
        // A two-way pump outside the loops turns with the direction.
        for (const Index e : region_->machines) {
            const Edge& edge = region_->edges[e];
            if (edge.part == Part::pump && edge.both_ways && a.loop_of[e] == none) return false;
        }
        return true;
    }

    void evaluate(const Case& one, const LoopSet& loops, const std::vector<High>& highs,
                  StateSet states, Index judged = none) {
        loop_states_.clear();
        for (const Loop& loop : loops.loops)
            loop_states_.push_back(states & states_of(loop.first_pump));
        alike_loop_states_.clear();
        for (const Loop& loop : loops.loops)
            alike_loop_states_.push_back(alike_.states & states_of(loop.first_pump));
        alike_.loop_states = alike_loop_states_;
        alike_.shut = valves_->follows_pressure() ? &shut_standing_ : &base_standing_;
        alike_.wide = valves_->follows_pressure() ? &wide_standing_ : &base_standing_;
        standing_ = base_standing_;
        valves_->set_by_pressure(loops, highs, standing_);
        find_feeds(graph_, *region_, standing_, loops, looped_, open_part_ways_, one.direction,
                   feeds_);
        Situation situation{.graph = graph_,
                            .region = *region_,
                            .loops = loops,
                            .states = states,
                            .combination = combination_,
                            .valves = valves_->valves(),
                            .positions = positions_,
                            .undecided = valves_->undecided(),
                            .direction = one.direction,
                            .highs = highs,
                            .loop_states = loop_states_,
                            .judged_pump = judged == none ? none : known_[judged].first_pump,
                            .resting = resting_,
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

    StateSet states_of(Index first_pump) const {
        const auto known = known_slot_.find(first_pump);
        if (known == known_slot_.end()) return 0;  // only while other loops stand in neutral
        return known_[known->second].states();
    }

    const FlowGraph& graph_;
    StructureBuilder& structure_;
    const std::function<void(const Situation&)>& judge_;
    LoopFinder finder_;

    // Of the region at hand.
    const Region* region_ = nullptr;
    std::optional<ValveBoard> valves_;
    std::vector<KnownLoop> known_;
    std::unordered_map<Index, Index> known_slot_;  // first pump -> known_; never iterated
    std::vector<std::uint8_t> looped_;
    std::vector<std::uint8_t> open_part_ways_;
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
    std::vector<Section> sections_;
    std::vector<std::uint8_t> resting_;  // of the loop judged apart

    // Of the situation at hand.
    Standing standing_;
    Feeds feeds_;
    SearchPool searches_;
    std::vector<JudgedSide> sides_;
    std::vector<StateSet> loop_states_;
    Alike alike_;
    std::vector<StateSet> alike_loop_states_;
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
