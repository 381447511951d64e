// Strong parts over the kept arcs, then biconnected parts over the kept edges inside a strong part
// that holds a pump and an actuator; each edge split by a vertex (parts.h says why). What comes out
// is sorted by the first pump in the file and cut into sides.
#include <loopwright/graph/loops.h>

#include <algorithm>
#include <utility>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/graph/parts.h>

namespace loopwright {

namespace {

using Pair = std::pair<Index, Index>;

/// The senses in which an edge is kept for loop finding; 0: left out.
std::uint8_t kept_ways(const Edge& edge, std::uint8_t open, Direction direction, bool metering) {
    switch (edge.passage_class) {
        case PassageClass::displacement: return displacement_ways(edge, direction);
        case PassageClass::switched:
            return edge.shift == Shift::position || edge.shift == Shift::hand ? open : 0;
        case PassageClass::one_way:
        case PassageClass::element: return open;
        case PassageClass::metering:
            return metering && edge.shift != Shift::pressure_centred ? open : 0;
        case PassageClass::joined:
        case PassageClass::pressure_opened:
        case PassageClass::leakage: break;
    }
    return 0;
}

class LoopFinder {
  public:
    LoopFinder(const FlowGraph& graph, const Region& region, const Standing& standing,
               const std::vector<std::uint8_t>& at_tank, Direction direction)
        : graph_(graph), region_(region), standing_(standing), at_tank_(at_tank),
          direction_(direction) {}

    LoopSet find() {
        set_.on_main.assign(region_.node_count, 0);
        set_.loop_of.assign(region_.edges.size(), none);
        looped_.assign(region_.edges.size(), 0);
        collect(false);
        if (has_metering_ && pump_without_loop()) collect(true);
        finish();
        return std::move(set_);
    }

  private:
    struct Found {
        Index first_pump = none;
        std::vector<Index> edges = {};
    };

    void collect(bool metering) {
        std::vector<Index> kept;
        std::vector<Pair> arcs;
        for (Index e = 0; e < region_.edges.size(); ++e) {
            const Edge& edge = region_.edges[e];
            if (edge.passage_class == PassageClass::metering) has_metering_ = true;
            if (edge.from == edge.to || at_tank_[edge.from] != 0 || at_tank_[edge.to] != 0)
                continue;
            const std::uint8_t ways = kept_ways(edge, standing_[e], direction_, metering);
            if (ways == 0) continue;
            kept.push_back(e);
            if ((ways & open_forward) != 0) arcs.emplace_back(edge.from, edge.to);
            if ((ways & open_backward) != 0) arcs.emplace_back(edge.to, edge.from);
        }
        graph_.work += region_.edges.size() + arcs.size();
        if (kept.empty()) return;
        const std::vector<Index> part =
            strong_parts(make_rows(region_.node_count, arcs, false));

        // Only strong parts with a pump and an actuator are worth splitting further.
        std::vector<std::uint8_t> holds(region_.node_count, 0);
        for (const Index e : kept) {
            const Edge& edge = region_.edges[e];
            if (edge.passage_class != PassageClass::displacement || part[edge.from] != part[edge.to])
                continue;
            holds[part[edge.from]] |= edge.part == Part::pump ? 1 : edge.part == Part::actuator ? 2 : 0;
        }
        std::vector<Index> inside;
        std::vector<Pair> halves;
        for (const Index e : kept) {
            const Edge& edge = region_.edges[e];
            if (part[edge.from] != part[edge.to] || holds[part[edge.from]] != 3) continue;
            const Index middle = region_.node_count + static_cast<Index>(inside.size());
            inside.push_back(e);
            halves.emplace_back(edge.from, middle);
            halves.emplace_back(middle, edge.to);
        }
        if (inside.empty()) return;
        const std::vector<Index> biconnected = biconnected_parts(
            region_.node_count + static_cast<Index>(inside.size()), halves);
        graph_.work += halves.size();
        take(inside, biconnected, metering);
    }

    /// Makes loops of the biconnected parts that hold a pump and an actuator.
    void take(const std::vector<Index>& inside, const std::vector<Index>& biconnected,
              bool metering) {
        const Index part_count = 1 + *std::max_element(biconnected.begin(), biconnected.end());
        std::vector<std::uint8_t> holds(part_count, 0);
        std::vector<std::uint8_t> wanted(part_count, metering ? 0 : 1);
        for (Index i = 0; i < inside.size(); ++i) {
            const Edge& edge = region_.edges[inside[i]];
            // A bridge's two halves lie in parts of their own.
            if (edge.passage_class != PassageClass::displacement ||
                biconnected[2 * i] != biconnected[2 * i + 1])
                continue;
            const Index p = biconnected[2 * i];
            holds[p] |= edge.part == Part::pump ? 1 : edge.part == Part::actuator ? 2 : 0;
            if (edge.part == Part::pump && looped_[inside[i]] == 0) wanted[p] = 1;
        }
        std::vector<Index> found_of_part(part_count, none);
        std::vector<Index> taken;
        for (Index i = 0; i < inside.size(); ++i) {
            const Index p = biconnected[2 * i];
            if (p != biconnected[2 * i + 1] || holds[p] != 3 || wanted[p] == 0) continue;
            if (found_of_part[p] == none) {
                found_of_part[p] = static_cast<Index>(found_.size());
                found_.emplace_back();
            }
            Found& found = found_[found_of_part[p]];
            found.edges.push_back(inside[i]);
            taken.push_back(inside[i]);
            const Edge& edge = region_.edges[inside[i]];
            if (edge.part == Part::pump && edge.passage_class == PassageClass::displacement)
                found.first_pump = std::min(found.first_pump, edge.component);
        }
        for (const Index e : taken) looped_[e] = 1;
    }

    bool pump_without_loop() const {
        for (Index e = 0; e < region_.edges.size(); ++e)
            if (region_.edges[e].passage_class == PassageClass::displacement &&
                region_.edges[e].part == Part::pump && looped_[e] == 0)
                return true;
        return false;
    }

    void finish() {
        std::sort(found_.begin(), found_.end(), [](const Found& a, const Found& b) {
            return a.first_pump < b.first_pump;
        });
        sets_.reset(region_.node_count);
        mark_.assign(region_.node_count, none);
        slot_.assign(region_.node_count, none);
        side_.assign(region_.node_count, none);
        for (const Found& found : found_) add(found);
        index_sides();
    }

    void add(const Found& found) {
        const auto loop_index = static_cast<Index>(set_.loops.size());
        Loop loop;
        loop.first_pump = found.first_pump;
        loop.edges.begin = static_cast<Index>(set_.edges.size());
        set_.edges.insert(set_.edges.end(), found.edges.begin(), found.edges.end());
        loop.edges.end = static_cast<Index>(set_.edges.size());
        loop.pumps = machines(found, Part::pump);
        loop.actuators = machines(found, Part::actuator);

        nodes_.clear();
        for (const Index e : found.edges) {
            const Edge& edge = region_.edges[e];
            set_.loop_of[e] = loop_index;
            for (const Index n : {edge.from, edge.to}) {
                if (mark_[n] == loop_index) continue;
                mark_[n] = loop_index;
                nodes_.push_back(n);
                sets_.single_out(n);
            }
        }
        for (const Index e : found.edges) {
            const Edge& edge = region_.edges[e];
            if (edge.passage_class != PassageClass::displacement) sets_.join(edge.from, edge.to);
        }
        for (const Index e : found.edges) {
            const Edge& edge = region_.edges[e];
            if (edge.part == Part::pump && edge.passage_class == PassageClass::displacement &&
                sets_.find(edge.from) == sets_.find(edge.to))
                loop.shorted = true;
        }
        loop.sides.begin = static_cast<Index>(set_.sides.size());
        if (!loop.shorted) {
            cut_into_sides(found, loop_index, false);
            // The same again without checks and metering passages gives the branches.
            for (const Index n : nodes_) sets_.single_out(n);
            bool cut = false;
            for (const Index e : found.edges) {
                const Edge& edge = region_.edges[e];
                switch (edge.passage_class) {
                    case PassageClass::displacement: break;
                    case PassageClass::one_way:
                    case PassageClass::metering: cut = true; break;
                    default: sets_.join(edge.from, edge.to);
                }
            }
            if (cut) cut_into_sides(found, loop_index, true);
        }
        loop.sides.end = static_cast<Index>(set_.sides.size());
        set_.loops.push_back(loop);
    }

    /// Nodes of one set become a side; with `branches`, pieces at an actuator without a pump.
    void cut_into_sides(const Found& found, Index loop_index, bool branches) {
        struct Touch {
            Index pump_port = none;
            Index actuator_port = none;
            bool pump_port_is_a = false;
        };
        std::vector<Touch> touches;
        std::vector<std::vector<Index>> members;
        for (const Index n : nodes_) slot_[sets_.find(n)] = none;
        for (const Index n : nodes_) {
            Index& slot = slot_[sets_.find(n)];
            if (slot == none) {
                slot = static_cast<Index>(members.size());
                members.emplace_back();
            }
            members[slot].push_back(n);
        }
        touches.resize(members.size());
        for (const Index e : found.edges) {
            const Edge& edge = region_.edges[e];
            if (edge.passage_class != PassageClass::displacement) continue;
            const Passage& passage = graph_.circuit().passages[edge.passage];
            for (const bool at_from : {true, false}) {
                const Index port = at_from ? passage.from : passage.to;
                Touch& touch = touches[slot_[sets_.find(at_from ? edge.from : edge.to)]];
                if (edge.part == Part::pump && port < touch.pump_port) {
                    touch.pump_port = port;
                    touch.pump_port_is_a = edge.both_ways == at_from;
                }
                if (edge.part == Part::actuator)
                    touch.actuator_port = std::min(touch.actuator_port, port);
            }
        }
        for (Index i = 0; i < members.size(); ++i) {
            const Touch& touch = touches[i];
            Side side;
            side.loop = loop_index;
            if (branches) {
                if (touch.actuator_port == none || touch.pump_port != none) continue;
                const Side& parent = set_.sides[side_[members[i].front()]];
                if (parent.role != SideRole::main) continue;
                side.role = SideRole::branch;
                side.letter = parent.letter;
                side.named_after = touch.actuator_port;
            } else {
                const bool main = touch.pump_port != none && touch.actuator_port != none;
                side.role = main ? SideRole::main : SideRole::intermediate;
                side.letter = !main ? High::neither : touch.pump_port_is_a ? High::a : High::b;
                side.named_after = touch.pump_port != none ? touch.pump_port : touch.actuator_port;
            }
            side.nodes.begin = static_cast<Index>(set_.nodes.size());
            set_.nodes.insert(set_.nodes.end(), members[i].begin(), members[i].end());
            side.nodes.end = static_cast<Index>(set_.nodes.size());
            for (const Index n : members[i]) {
                if (side.role == SideRole::main) set_.on_main[n] = 1;
                if (!branches) side_[n] = static_cast<Index>(set_.sides.size());
            }
            set_.sides.push_back(side);
        }
    }

    /// A node can be on sides of several loops (a common low line), so each has a list.
    void index_sides() {
        set_.side_offsets.assign(region_.node_count + 1, 0);
        for (const Side& side : set_.sides)
            for (const Index n : set_.nodes_of(side)) ++set_.side_offsets[n + 1];
        for (Index n = 0; n < region_.node_count; ++n)
            set_.side_offsets[n + 1] += set_.side_offsets[n];
        set_.sides_by_node.resize(set_.side_offsets.back());
        std::vector<Index> cursor(set_.side_offsets.begin(), set_.side_offsets.end() - 1);
        for (Index s = 0; s < set_.sides.size(); ++s)
            for (const Index n : set_.nodes_of(set_.sides[s])) set_.sides_by_node[cursor[n]++] = s;
    }

    Range machines(const Found& found, Part part) {
        Range range;
        range.begin = static_cast<Index>(set_.machines.size());
        for (const Index e : found.edges)
            if (region_.edges[e].part == part &&
                region_.edges[e].passage_class == PassageClass::displacement)
                set_.machines.push_back(region_.edges[e].component);
        const auto first = set_.machines.begin() + static_cast<std::ptrdiff_t>(range.begin);
        std::sort(first, set_.machines.end());
        set_.machines.erase(std::unique(first, set_.machines.end()), set_.machines.end());
        range.end = static_cast<Index>(set_.machines.size());
        return range;
    }

    const FlowGraph& graph_;
    const Region& region_;
    const Standing& standing_;
    const std::vector<std::uint8_t>& at_tank_;
    Direction direction_;
    bool has_metering_ = false;
    std::vector<Found> found_;
    LoopSet set_;
    DisjointSets sets_;
    std::vector<std::uint8_t> looped_;  // edges of machines that have a loop
    // Scratch, indexed by node: the last loop it was met in, its set's number, its side.
    std::vector<Index> mark_;
    std::vector<Index> slot_;
    std::vector<Index> side_;
    std::vector<Index> nodes_;  // of the loop at hand
};

}  // namespace

std::uint8_t displacement_ways(const Edge& edge, Direction direction) {
    if (!edge.both_ways) return open_forward;
    if (edge.part == Part::pump) {
        // A two-way pump's passage is written A to B, so forward (out at A) is against it.
        if (direction == Direction::forward) return open_backward;
        if (direction == Direction::reverse) return open_forward;
    }
    return open_forward | open_backward;
}

LoopSet find_loops(const FlowGraph& graph, const Region& region, const Standing& standing,
                   const std::vector<std::uint8_t>& at_tank, Direction direction) {
    return LoopFinder(graph, region, standing, at_tank, direction).find();
}

}  // namespace loopwright
