// A region is run through twice. First every combination of its valves' positions, to learn which
// machines have a loop at all and which valves command one. Then each combination again with the
// states that allow it; states that stand alike share one situation.
#include <loopwright/graph/situation.h>

#include <algorithm>
#include <array>
#include <unordered_map>

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

class RegionRunner {
  public:
    RegionRunner(const FlowGraph& graph, const Region& region, StructureBuilder& structure,
                 const std::function<void(const Situation&)>& judge)
        : graph_(graph), region_(region), structure_(structure), judge_(judge),
          valves_(graph, region), looped_(region.edges.size(), 0) {}

    void run() {
        for (std::uint32_t c = 0; c < valves_.combination_count(); ++c) {
            stand(valves_.positions(c));
            for (const LoopSet& set : loops_) learn(set);
        }
        open_part_ways_ = open_part_ways(region_, looped_);
        for (std::uint32_t c = 0; c < valves_.combination_count(); ++c) {
            std::vector<Index> positions = valves_.positions(c);
            const StateSet allowed = valves_.allowed_states(positions);
            if (allowed == 0) continue;
            if (valves_.combination_count() > 1) stand(std::move(positions));
            combination_ = c;
            run_combination(allowed);
        }
        structure_.finish_region(region_, looped_);
    }

  private:
    void stand(std::vector<Index> positions) {
        positions_ = std::move(positions);
        standing_ = valves_.standing(positions_);
        const std::vector<std::uint8_t> at_tank = find_at_tank(graph_, region_, standing_);
        for (const Direction direction :
             {Direction::none, Direction::forward, Direction::reverse})
            loops_[static_cast<std::size_t>(direction)] =
                find_loops(graph_, region_, standing_, at_tank, direction);
    }

    void learn(const LoopSet& set) {
        for (const Loop& loop : set.loops) {
            const auto [slot, fresh] =
                known_slot_.try_emplace(loop.first_pump, static_cast<Index>(known_.size()));
            if (fresh) known_.push_back({.first_pump = loop.first_pump});
            KnownLoop* known = &known_[slot->second];
            for (const Index e : set.edges_of(loop)) {
                const Edge& edge = region_.edges[e];
                if (edge.shift == Shift::position) {
                    known->reversible = true;
                    valves_.note_command(edge.component);
                }
                if (edge.passage_class != PassageClass::displacement) continue;
                looped_[e] = 1;
                std::vector<Index>& edges =
                    edge.part == Part::pump ? known->pump_edges : known->actuator_edges;
                if (std::find(edges.begin(), edges.end(), e) == edges.end()) edges.push_back(e);
                if (edge.part == Part::pump && edge.both_ways) known->reversible = true;
            }
        }
    }

    void run_combination(StateSet allowed) {
        sections_.clear();
        if (valves_.any_commands())
            sections_ = find_sections(graph_, region_, standing_,
                                      loops_[static_cast<std::size_t>(Direction::none)], known_);
        struct Group {
            Case first = {};
            const LoopSet* loops = nullptr;
            std::vector<High> highs = {};
            StateSet states = 0;
        };
        std::vector<Group> groups;
        for (const Case& one : cases) {
            const auto states = static_cast<StateSet>(one.states & allowed);
            if (states == 0) continue;
            const LoopSet& loops = loops_[static_cast<std::size_t>(one.direction)];
            std::vector<High> highs(loops.loops.size());
            for (std::size_t i = 0; i < highs.size(); ++i)
                highs[i] = high_of(loops.loops[i], loops, one);
            const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
                return group.highs == highs && alike(*group.loops, loops, group.first, one);
            });
            if (same != groups.end())
                same->states |= states;
            else
                groups.push_back({one, &loops, std::move(highs), states});
        }
        for (const Group& group : groups) {
            evaluate(group.first, *group.loops, group.highs, group.states, none);
            // Each loop by itself too, all others in neutral, where flushing valves make it differ.
            if (group.loops->loops.size() < 2 || !valves_.has_flushing() ||
                group.first.high == High::neither)
                continue;
            for (Index i = 0; i < group.loops->loops.size(); ++i) {
                std::vector<High> highs(group.highs.size(), High::neither);
                highs[i] = group.highs[i];
                evaluate(group.first, *group.loops, highs, group.states, i);
            }
        }
    }

    /// One-way pumps have no reverse: driving, their outlet is high; overrunning, their inlet.
    High high_of(const Loop& loop, const LoopSet& loops, const Case& one) const {
        if (one.high == High::neither) return High::neither;
        for (const Index e : loops.edges_of(loop))
            if (region_.edges[e].part == Part::pump && region_.edges[e].both_ways &&
                region_.edges[e].passage_class == PassageClass::displacement)
                return one.high;
        return one.drive ? High::a : High::b;
    }

    /// Whether two cases stand alike but for the side that is high.
    bool alike(const LoopSet& a, const LoopSet& b, const Case& case_a, const Case& case_b) const {
        if (&a != &b && (a.edges != b.edges || a.machines != b.machines || a.nodes != b.nodes))
            return false;
        if (case_a.direction == case_b.direction) return true;
        // A two-way pump outside the loops turns with the direction.
        for (Index e = 0; e < region_.edges.size(); ++e) {
            const Edge& edge = region_.edges[e];
            if (edge.part == Part::pump && edge.both_ways && looped_[e] == 0 &&
                edge.passage_class == PassageClass::displacement)
                return false;
        }
        return case_a.direction != Direction::none && case_b.direction != Direction::none;
    }

    void evaluate(const Case& one, const LoopSet& loops, const std::vector<High>& highs,
                  StateSet states, Index judged_loop) {
        std::vector<StateSet> loop_states;
        for (const Loop& loop : loops.loops)
            loop_states.push_back(states & states_of(loop.first_pump));
        Situation situation{.graph = graph_,
                            .region = region_,
                            .loops = loops,
                            .states = states,
                            .combination = combination_,
                            .valves = valves_.valves(),
                            .positions = positions_,
                            .undecided = valves_.undecided(),
                            .direction = one.direction,
                            .highs = highs,
                            .loop_states = loop_states,
                            .judged_loop = judged_loop,
                            .standing = standing_,
                            .looped = looped_,
                            .open_part_ways = open_part_ways_};
        valves_.set_flushing(loops, highs, situation.standing);
        situation.feeds = find_feeds(graph_, region_, situation.standing, loops, looped_,
                                     open_part_ways_, one.direction);
        add_sides(situation);
        structure_.see(situation);
        if (judge_) judge_(situation);
    }

    StateSet states_of(Index first_pump) const {
        if (known_[known_slot_.at(first_pump)].reversible) return running_states;
        return without(running_states, reverse_states);
    }

    void add_sides(Situation& situation) const {
        const LoopSet& loops = situation.loops;
        for (Index i = 0; i < loops.loops.size(); ++i) {
            if (situation.judged_loop != none && situation.judged_loop != i) continue;
            if (situation.loop_states[i] == 0) continue;
            const Loop& loop = loops.loops[i];
            for (const Side& side : loops.sides_of(loop))
                situation.sides.push_back(
                    {.role = side.role,
                     .named_after = side.named_after,
                     .first_pump = loop.first_pump,
                     .loop = i,
                     .nodes = loops.nodes_of(side),
                     .states = situation.loop_states[i],
                     .may_be_low = situation.highs[i] == High::neither ||
                                   side.letter != situation.highs[i]});
        }
        if (situation.judged_loop != none) return;
        for (const Section& section : sections_) {
            const KnownLoop& known = known_[section.known_loop];
            const StateSet states = situation.states & states_of(known.first_pump);
            const auto& nodes = section.nodes;
            const bool vented = std::any_of(nodes.begin(), nodes.end(), [&](Index n) {
                return situation.feeds.vented[n] != 0;
            });
            if (states == 0 || vented) continue;
            situation.sides.push_back({.role = SideRole::section,
                                       .named_after = section.named_after,
                                       .first_pump = known.first_pump,
                                       .nodes = nodes,
                                       .states = states});
        }
    }

    const FlowGraph& graph_;
    const Region& region_;
    StructureBuilder& structure_;
    const std::function<void(const Situation&)>& judge_;

    ValveBoard valves_;
    std::vector<KnownLoop> known_;
    std::unordered_map<Index, Index> known_slot_;  // first pump -> known_; never iterated
    std::vector<std::uint8_t> looped_;
    std::vector<std::uint8_t> open_part_ways_;

    // Of the combination at hand.
    std::uint32_t combination_ = 0;
    std::vector<Index> positions_;
    Standing standing_;
    std::array<LoopSet, 3> loops_;  // by direction
    std::vector<Section> sections_;
};

}  // namespace

Structure for_each_situation(const FlowGraph& graph,
                             const std::function<void(const Situation&)>& judge) {
    StructureBuilder structure(graph);
    for (const Region& region : graph.regions())
        RegionRunner(graph, region, structure, judge).run();
    return structure.finish();
}

Structure structure_of(const Circuit& circuit) {
    const FlowGraph graph(circuit);
    return for_each_situation(graph, {});
}

}  // namespace loopwright
