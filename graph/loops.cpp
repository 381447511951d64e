// Strong parts over the kept arcs, then biconnected parts over the kept edges inside a strong part
// that holds a pump and an actuator; each edge split by a vertex (parts.h says why). What comes out
// is sorted by the first pump in the file and cut into sides.
#include <loopwright/graph/loops.h>

#include <algorithm>

namespace loopwright {

namespace {

constexpr std::uint8_t holds_pump = 1;
constexpr std::uint8_t holds_actuator = 2;

std::uint8_t held(const Edge& edge) {
    if (edge.passage_class != PassageClass::displacement) return 0;
    return edge.part == Part::pump ? holds_pump : edge.part == Part::actuator ? holds_actuator : 0;
}

bool is_pump(const Edge& edge) { return held(edge) == holds_pump; }

/// What an actuator's branch begins behind. What only a pilot opens is shut in other states.
bool parts_a_branch(const Edge& edge) {
    return edge.passage_class == PassageClass::one_way ||
           edge.passage_class == PassageClass::metering ||
           edge.passage_class == PassageClass::divider || edge.shift == Shift::pilot_opens;
}

/// The senses in which an edge is kept for loop finding; 0: left out.
std::uint8_t kept_ways(const Edge& edge, std::uint8_t open, Direction direction, bool metering) {
    switch (edge.passage_class) {
        case PassageClass::displacement:
            return displacement_ways(edge, direction);
        case PassageClass::switched:
            // What a pilot opens carries the flow of a drive; whether it stands open is asked
            // later.
            if (edge.shift == Shift::pilot_opens) return open_forward;
            return edge.shift == Shift::position || edge.shift == Shift::hand ? open : 0;
        case PassageClass::divider:
        case PassageClass::one_way:
        case PassageClass::element:
            return open;
        case PassageClass::metering:
            return metering && edge.shift != Shift::pressure_centred ? open : 0;
        case PassageClass::joined:
        case PassageClass::pressure_opened:
        case PassageClass::reduced:
        case PassageClass::leakage:
            break;
    }
    return 0;
}

}  // namespace

std::uint8_t displacement_ways(const Edge& edge, Direction direction) {
    if (edge.part == Part::hand_pump) return 0;  // worked in towing only
    if (!edge.both_ways) return open_forward;
    if (edge.part == Part::pump) {
        // A two-way pump's passage is written A to B, so forward (out at A) is against it.
        if (direction == Direction::forward) return open_backward;
        if (direction == Direction::reverse) return open_forward;
    }
    return open_forward | open_backward;
}

void LoopFinder::find(const Region& region, const Standing& standing,
                      const std::vector<std::uint8_t>& at_tank, Direction direction,
                      std::span<const std::uint8_t> resting, LoopSet& found) {
    region_ = &region;
    standing_ = &standing;
    at_tank_ = &at_tank;
    direction_ = direction;
    resting_ = resting;
    set_ = &found;
    has_metering_ = false;
    found_count_ = 0;
    found.loops.clear();
    found.sides.clear();
    found.machines.clear();
    found.edges.clear();
    found.nodes.clear();
    found.on_main.assign(region.node_count, 0);
    found.loop_of.assign(region.edges.size(), none);
    looped_.assign(region.edges.size(), 0);

    collect(false);
    if (has_metering_ && pump_without_loop()) collect(true);

    const auto first = found_.begin();
    std::sort(first, first + static_cast<std::ptrdiff_t>(found_count_),
              [](const Found& a, const Found& b) { return a.first_pump < b.first_pump; });
    sets_.reset(region.node_count);
    mark_.assign(region.node_count, none);
    slot_.resize(region.node_count);
    side_.resize(region.node_count);
    for (std::size_t i = 0; i < found_count_; ++i) add(found_[i]);
    index_sides();
}

void LoopFinder::collect(bool metering) {
    kept_.clear();
    arcs_.clear();
    for (Index e = 0; e < region_->edges.size(); ++e) {
        const Edge& one = edge(e);
        if (one.passage_class == PassageClass::metering) has_metering_ = true;
        if (one.from == one.to || (*at_tank_)[one.from] != 0 || (*at_tank_)[one.to] != 0) continue;
        const bool rests = !resting_.empty() && resting_[e] != 0;
        const std::uint8_t ways =
            kept_ways(one, (*standing_)[e], rests ? Direction::none : direction_, metering);
        if (ways == 0) continue;
        kept_.push_back(e);
        if ((ways & open_forward) != 0) arcs_.emplace_back(one.from, one.to);
        if ((ways & open_backward) != 0) arcs_.emplace_back(one.to, one.from);
    }
    graph_.work += region_->edges.size() + arcs_.size();
    if (kept_.empty()) return;
    const std::vector<Index>& part = parts_.strong(region_->node_count, arcs_);

    // Only strong parts with a pump and an actuator are worth splitting further.
    holds_.assign(region_->node_count, 0);
    for (const Index e : kept_)
        if (part[edge(e).from] == part[edge(e).to]) holds_[part[edge(e).from]] |= held(edge(e));
    inside_.clear();
    halves_.clear();
    for (const Index e : kept_) {
        const Edge& one = edge(e);
        if (part[one.from] != part[one.to] ||
            holds_[part[one.from]] != (holds_pump | holds_actuator))
            continue;
        const Index middle = region_->node_count + static_cast<Index>(inside_.size());
        inside_.push_back(e);
        halves_.emplace_back(one.from, middle);
        halves_.emplace_back(middle, one.to);
    }
    if (!inside_.empty()) take(metering);
}

/// Makes loops of the biconnected parts that hold a pump and an actuator.
void LoopFinder::take(bool metering) {
    const std::vector<Index>& part =
        parts_.biconnected(region_->node_count + static_cast<Index>(inside_.size()), halves_);
    graph_.work += halves_.size();
    const Index part_count = 1 + *std::max_element(part.begin(), part.end());
    holds_.assign(part_count, 0);
    wanted_.assign(part_count, metering ? 0 : 1);
    for (Index i = 0; i < inside_.size(); ++i) {
        if (part[2 * i] != part[2 * i + 1]) continue;  // a bridge: two parts of its own
        holds_[part[2 * i]] |= held(edge(inside_[i]));
        if (is_pump(edge(inside_[i])) && looped_[inside_[i]] == 0) wanted_[part[2 * i]] = 1;
    }
    found_of_part_.assign(part_count, none);
    const std::size_t before = found_count_;
    for (Index i = 0; i < inside_.size(); ++i) {
        const Index p = part[2 * i];
        if (p != part[2 * i + 1] || holds_[p] != (holds_pump | holds_actuator) || wanted_[p] == 0)
            continue;
        if (found_of_part_[p] == none) {
            found_of_part_[p] = static_cast<Index>(found_count_++);
            if (found_.size() < found_count_) found_.emplace_back();
            found_[found_of_part_[p]].first_pump = none;
            found_[found_of_part_[p]].edges.clear();
        }
        Found& found = found_[found_of_part_[p]];
        found.edges.push_back(inside_[i]);
        if (is_pump(edge(inside_[i])))
            found.first_pump = std::min(found.first_pump, edge(inside_[i]).component);
    }
    if (metering) drop_loops_inside(before);
    for (std::size_t i = 0; i < found_count_; ++i)
        for (const Index e : found_[i].edges) looped_[e] = 1;
}

/// A loop that closes over metering passages takes in those on its lines that close without.
void LoopFinder::drop_loops_inside(std::size_t before) {
    if (before == 0 || before == found_count_) return;
    in_wider_.assign(region_->edges.size(), 0);
    for (std::size_t i = before; i < found_count_; ++i)
        for (const Index e : found_[i].edges) in_wider_[e] = 1;
    const auto first = found_.begin();
    const auto end = first + static_cast<std::ptrdiff_t>(found_count_);
    const auto kept_end =
        std::remove_if(first, first + static_cast<std::ptrdiff_t>(before),
                       [&](const Found& found) { return in_wider_[found.edges.front()] != 0; });
    if (kept_end == first + static_cast<std::ptrdiff_t>(before)) return;
    const auto kept = std::move(first + static_cast<std::ptrdiff_t>(before), end, kept_end);
    found_count_ = static_cast<std::size_t>(kept - first);
}

bool LoopFinder::pump_without_loop() const {
    return std::any_of(region_->machines.begin(), region_->machines.end(),
                       [this](Index e) { return is_pump(edge(e)) && looped_[e] == 0; });
}

/// Takes the checks of ways round the pumps that do not short-circuit it out of the loop.
void LoopFinder::take_out_ways_round(Found& found) {
    const auto checks = ways_round_.checks(*region_, *standing_, found.edges);
    for (const Index e : checks) set_->loop_of[e] = none;
    if (!checks.empty())
        std::erase_if(found.edges, [&](Index e) { return set_->loop_of[e] == none; });
}

/// One two-way pump among passages that are open both ways closes its loop either way.
bool LoopFinder::turns_with_flow(const Found& found) const {
    int two_way_pumps = 0;
    bool one_sense = false;
    for (const Index e : found.edges) {
        if (is_pump(edge(e)) && edge(e).both_ways)
            ++two_way_pumps;
        else
            one_sense = one_sense || !edge(e).both_ways;
    }
    return two_way_pumps > 1 || (two_way_pumps == 1 && one_sense);
}

void LoopFinder::add(Found& found) {
    const auto loop_index = static_cast<Index>(set_->loops.size());
    for (const Index e : found.edges) set_->loop_of[e] = loop_index;
    Loop loop;
    loop.turns_with_flow = turns_with_flow(found);
    take_out_ways_round(found);
    loop.first_pump = found.first_pump;
    loop.edges.begin = static_cast<Index>(set_->edges.size());
    set_->edges.insert(set_->edges.end(), found.edges.begin(), found.edges.end());
    loop.edges.end = static_cast<Index>(set_->edges.size());
    loop.pumps = machines(found, Part::pump);
    loop.actuators = machines(found, Part::actuator);

    nodes_.clear();
    for (const Index e : found.edges) {
        for (const Index n : {edge(e).from, edge(e).to}) {
            if (mark_[n] == loop_index) continue;
            mark_[n] = loop_index;
            nodes_.push_back(n);
            sets_.single_out(n);
        }
    }
    for (const Index e : found.edges)
        if (held(edge(e)) == 0) sets_.join(edge(e).from, edge(e).to);
    loop.shorted = std::any_of(found.edges.begin(), found.edges.end(), [&](Index e) {
        return is_pump(edge(e)) && sets_.find(edge(e).from) == sets_.find(edge(e).to);
    });
    loop.sides.begin = static_cast<Index>(set_->sides.size());
    if (!loop.shorted) {
        cut_into_sides(found, loop_index, false);
        // The same again without checks and metering passages gives the branches.
        bool cut = false;
        for (const Index n : nodes_) sets_.single_out(n);
        for (const Index e : found.edges) {
            if (parts_a_branch(edge(e)))
                cut = true;
            else if (held(edge(e)) == 0)
                sets_.join(edge(e).from, edge(e).to);
        }
        if (cut) cut_into_sides(found, loop_index, true);
    }
    loop.sides.end = static_cast<Index>(set_->sides.size());
    set_->loops.push_back(loop);
}

/// Nodes of one set become a side; with `branches`, pieces at an actuator without a pump.
void LoopFinder::cut_into_sides(const Found& found, Index loop_index, bool branches) {
    touches_.clear();
    for (const Index n : nodes_) slot_[sets_.find(n)] = none;
    for (const Index n : nodes_) {
        Index& slot = slot_[sets_.find(n)];
        if (slot == none) {
            slot = static_cast<Index>(touches_.size());
            touches_.emplace_back();
        }
        ++touches_[slot].nodes.end;
    }
    Index total = 0;
    for (Touch& touch : touches_) {
        const Index count = touch.nodes.end;
        touch.nodes = {total, total};
        total += count;
    }
    members_.resize(total);
    for (const Index n : nodes_) members_[touches_[slot_[sets_.find(n)]].nodes.end++] = n;

    for (const Index e : found.edges) {
        if (held(edge(e)) == 0) continue;
        const Passage& passage = graph_.circuit().passages[edge(e).passage];
        for (const bool at_from : {true, false}) {
            const Index port = at_from ? passage.from : passage.to;
            Touch& touch = touches_[slot_[sets_.find(at_from ? edge(e).from : edge(e).to)]];
            if (!is_pump(edge(e))) {
                touch.actuator_port = std::min(touch.actuator_port, port);
            } else if (port < touch.pump_port) {
                touch.pump_port = port;
                touch.pump_port_is_a = edge(e).both_ways == at_from;
            }
        }
    }
    for (const Touch& touch : touches_) {
        LoopSide side;
        side.loop = loop_index;
        if (branches) {
            if (touch.actuator_port == none || touch.pump_port != none) continue;
            const LoopSide& parent = set_->sides[side_[members_[touch.nodes.begin]]];
            if (parent.role != SideRole::main) continue;
            side.role = SideRole::branch;
            side.letter = parent.letter;
            side.named_after = touch.actuator_port;
        } else {
            if (touch.pump_port == none && touch.actuator_port == none) continue;
            const bool main = touch.pump_port != none && touch.actuator_port != none;
            side.role = main ? SideRole::main : SideRole::intermediate;
            side.letter = !main ? High::neither : touch.pump_port_is_a ? High::a : High::b;
            side.named_after = touch.pump_port != none ? touch.pump_port : touch.actuator_port;
        }
        side.nodes.begin = static_cast<Index>(set_->nodes.size());
        for (Index i = touch.nodes.begin; i < touch.nodes.end; ++i) {
            const Index n = members_[i];
            set_->nodes.push_back(n);
            if (side.role == SideRole::main) set_->on_main[n] = 1;
            if (!branches) side_[n] = static_cast<Index>(set_->sides.size());
        }
        side.nodes.end = static_cast<Index>(set_->nodes.size());
        set_->sides.push_back(side);
    }
}

/// A node can be on sides of several loops (a common low line), so each has a list.
void LoopFinder::index_sides() {
    set_->side_offsets.assign(region_->node_count + 1, 0);
    for (const LoopSide& side : set_->sides)
        for (const Index n : set_->nodes_of(side)) ++set_->side_offsets[n + 1];
    for (Index n = 0; n < region_->node_count; ++n)
        set_->side_offsets[n + 1] += set_->side_offsets[n];
    set_->sides_by_node.resize(set_->side_offsets.back());
    slot_.assign(set_->side_offsets.begin(), set_->side_offsets.end() - 1);
    for (Index s = 0; s < set_->sides.size(); ++s)
        for (const Index n : set_->nodes_of(set_->sides[s])) set_->sides_by_node[slot_[n]++] = s;
}

Range LoopFinder::machines(const Found& found, Part part) {
    Range range;
    range.begin = static_cast<Index>(set_->machines.size());
    for (const Index e : found.edges)
        if (edge(e).part == part && held(edge(e)) != 0) set_->machines.push_back(edge(e).component);
    std::sort(set_->machines.begin() + static_cast<std::ptrdiff_t>(range.begin),
              set_->machines.end());
    range.end = static_cast<Index>(set_->machines.size());
    return range;
}

}  // namespace loopwright
