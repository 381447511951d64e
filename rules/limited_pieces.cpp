#include <loopwright/rules/limited_pieces.h>

namespace loopwright {

namespace {

bool whichever_side_is_high(const Edge& way) {
    return open_way(way) &&
           (way.shift == Shift::never || way.shift == Shift::position || way.shift == Shift::hand);
}

bool limited(const JudgedSide& side) {
    return side.role == SideRole::main || side.role == SideRole::section;
}

}  // namespace

LimitedPieces::LimitedPieces(const Situation& s)
    : s_(s), sets_(s.region.node_count), slots_(s.region.node_count, none) {
    for (Index e = 0; e < s.region.edges.size(); ++e) {
        const Edge& way = s.region.edges[e];
        if (s.standing[e] == (open_forward | open_backward) && whichever_side_is_high(way) &&
            s.region.is_reservoir[way.from] == 0 && s.region.is_reservoir[way.to] == 0)
            sets_.join(way.from, way.to);
    }
    for (const JudgedSide& side : s.sides)
        if (limited(side))
            for (const Index node : side.nodes) sets_.join(side.nodes.front(), node);
    const auto line = charge_line();
    for (const Index node : line->order) make(node);
    for (const JudgedSide& side : s.sides)
        if (limited(side)) add_side(side);
    s.graph.work += s.region.edges.size() + s.region.node_count;
}

LimitedPiece* LimitedPieces::at(Index node) {
    const Index slot = slots_[sets_.find(node)];
    return slot == none ? nullptr : &all_[slot];
}

void LimitedPieces::find_ratings() {
    for_each_rated(s_, [&](const Rated& rated) {
        for (const RatedPlace& place : rated.places)
            if (LimitedPiece* const piece = at(place.node); piece != nullptr)
                add_rated({.type = rated.type, .index = rated.index}, place, *piece);
    });
}

bool LimitedPieces::add_way(Index from, Index to, std::vector<FlowArc>& way) {
    const auto search = s_.searches.take(s_.region.node_count);
    search->begin_at(from);
    s_.graph.work += search->run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
        const Edge& passed = s_.region.edges[arc.edge];
        return s_.standing[arc.edge] != 0 && sets_.find(arc.to) == sets_.find(from) &&
               (open_way(passed) || passed.passage_class == PassageClass::one_way ||
                passed.passage_class == PassageClass::metering ||
                passed.passage_class == PassageClass::divider);
    });
    if (!search->reached(to)) return false;
    search->add_path_to(s_.region, to, way);
    return true;
}

/// That of the pumps that feed a loop, joined on the way.
SearchPool::Lease LimitedPieces::charge_line() {
    auto line = s_.searches.take(s_.region.node_count);
    for (const ChargePump& pump : s_.feeds.pumps)
        if (!s_.feeds.feeds(pump).empty() && s_.feeds.line.reached(pump.outlet))
            line->begin_at(pump.outlet);
    s_.graph.work += line->run(s_.region, [&](Index node, const FlowArc& arc) {
        if (!s_.feeds.line.reached(arc.to) || s_.region.is_reservoir[arc.to] != 0 ||
            !stands_open(s_.standing, arc) || !whichever_side_is_high(s_.region.edges[arc.edge]))
            return false;
        sets_.join(node, arc.to);
        return true;
    });
    return line;
}

LimitedPiece& LimitedPieces::make(Index node) {
    Index& slot = slots_[sets_.find(node)];
    if (slot == none) {
        slot = static_cast<Index>(all_.size());
        all_.emplace_back();
    }
    return all_[slot];
}

/// A section is on a main side in other positions, and what its loop works at is asked there.
void LimitedPieces::add_side(const JudgedSide& side) {
    LimitedPiece& piece = make(side.nodes.front());
    if (side.role != SideRole::main) return;
    piece.on_main_side = true;
    const Circuit& circuit = s_.circuit();
    for (const Index c : s_.loops.pumps_of(s_.loops.loops[side.loop])) {
        auto working = circuit.figure(circuit.components[c], "working-pressure");
        if (!working) working = circuit.figure(circuit.components[c], "pressure-limiter");
        if (!working) {
            piece.silent_pumps.push_back(c);
        } else if (!piece.working || *working > *piece.working) {
            piece.working = working;
            piece.working_pump = c;
        }
    }
}

void LimitedPieces::add_rated(const Rated& rated, const RatedPlace& place,
                              LimitedPiece& piece) const {
    const auto rating = rating_of(s_.circuit(), rated);
    if (!rating) {
        // A part may stand there with several ports.
        if (piece.unrated.empty() || piece.unrated.back().type != rated.type ||
            piece.unrated.back().index != rated.index)
            piece.unrated.push_back(rated);
    } else if (!piece.least || *rating < *piece.least) {
        piece.least = rating;
        piece.weakest = rated;
        piece.place = place;
    }
}

}  // namespace loopwright
