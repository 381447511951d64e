#include <loopwright/render/route_search.h>

#include <algorithm>

namespace loopwright {

namespace {

constexpr std::uint32_t no_state = 0xffffffffu;
// A fourth end on a joint is allowed only where the way round is longer than this.
constexpr int fourth_end = 80;
constexpr int most_ends = 4;

}  // namespace

RouteSearch::RouteSearch(const RouteGrid& grid)
    : grid_(grid),
      seen_(grid.size() * heading_count, 0),
      cost_(grid.size() * heading_count, 0),
      from_(grid.size() * heading_count, no_state),
      piece_seen_(grid.size(), 0),
      piece_(grid.size(), 0) {}

std::vector<int> RouteSearch::find(std::int32_t net, const std::vector<NetPiece>& pieces,
                                   std::size_t source, std::size_t& reached) {
    ++search_;
    source_ = static_cast<std::uint32_t>(source);
    open_ = {};
    goals_.clear();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].points.empty()) continue;
        Bounds bounds{1 << 30, 1 << 30, -(1 << 30), -(1 << 30)};
        for (const int point : pieces[i].points) {
            piece_seen_[static_cast<std::size_t>(point)] = search_;
            piece_[static_cast<std::size_t>(point)] = static_cast<std::uint32_t>(i);
            const Cell c = grid_.cell(point);
            bounds = {std::min(bounds.left, c.x), std::min(bounds.top, c.y),
                      std::max(bounds.right, c.x), std::max(bounds.bottom, c.y)};
        }
        if (i != source) goals_.push_back(bounds);
    }
    start(net, pieces[source]);
    while (!open_.empty()) {
        const Open top = open_.top();
        open_.pop();
        const int point = static_cast<int>(top.state / heading_count);
        if (top.estimate > cost_[top.state] + estimate(point)) continue;
        const auto at = static_cast<std::size_t>(point);
        if (piece_seen_[at] == search_ && piece_[at] != source) {
            reached = piece_[at];
            return way_to(top.state);
        }
        expand(net, top.state);
    }
    return {};
}

int RouteSearch::step_cost(std::int32_t net, int next, Heading heading) const {
    if (grid_.is_blocked(net, next, heading)) return -1;
    int cost = route_cost::step + grid_.nuisance(net, next, heading);
    if (grid_.crosses(net, next, heading)) cost += route_cost::crossing;
    if (grid_.crosses_shaft(next, heading)) cost += route_cost::shaft_crossing;
    const auto at = static_cast<std::size_t>(next);
    if (piece_seen_[at] == search_) {
        if (piece_[at] == source_) return -1;
        const int degree = grid_.degree(net, next);
        if (degree >= most_ends) return -1;
        if (degree == 3) cost += fourth_end;
    }
    return cost;
}

void RouteSearch::start(std::int32_t net, const NetPiece& piece) {
    for (const int point : piece.points) {
        const int degree = grid_.degree(net, point);
        if (degree >= most_ends) continue;
        for (int h = 0; h < heading_count; ++h) {
            const auto heading = static_cast<Heading>(h);
            if (piece.loose && heading == turned_back(piece.out)) continue;
            const int next = grid_.next(point, heading);
            if (next < 0 || grid_.edge(point, heading) != RouteGrid::free) continue;
            int cost = step_cost(net, next, heading);
            if (cost < 0) continue;
            if (piece.loose && heading != piece.out) cost += route_cost::bend;
            if (!piece.loose && degree >= 3) cost += fourth_end;
            const std::uint32_t from =
                static_cast<std::uint32_t>(point) * heading_count + static_cast<std::uint32_t>(h);
            from_[from] = no_state;
            seen_[from] = search_;
            cost_[from] = -1;  // nothing is cheaper: never reached again
            reach(static_cast<std::uint32_t>(next) * heading_count + static_cast<std::uint32_t>(h),
                  cost, from);
        }
    }
}

void RouteSearch::expand(std::int32_t net, std::uint32_t state) {
    const int point = static_cast<int>(state / heading_count);
    const auto heading = static_cast<Heading>(state % heading_count);
    const bool straight_only =
        grid_.crosses(net, point, heading) || grid_.crosses_shaft(point, heading);
    for (int h = 0; h < heading_count; ++h) {
        const auto turn = static_cast<Heading>(h);
        if (turn == turned_back(heading) || (straight_only && turn != heading)) continue;
        const int next = grid_.next(point, turn);
        if (next < 0 || grid_.edge(point, turn) != RouteGrid::free) continue;
        const int step = step_cost(net, next, turn);
        if (step < 0) continue;
        reach(static_cast<std::uint32_t>(next) * heading_count + static_cast<std::uint32_t>(h),
              cost_[state] + step + (turn != heading ? route_cost::bend : 0), state);
    }
}

void RouteSearch::reach(std::uint32_t state, int cost, std::uint32_t from) {
    if (seen_[state] == search_ && cost_[state] <= cost) return;
    seen_[state] = search_;
    cost_[state] = cost;
    from_[state] = from;
    open_.push({cost + estimate(static_cast<int>(state / heading_count)), state});
}

int RouteSearch::estimate(int point) const {
    const Cell c = grid_.cell(point);
    int least = 1 << 30;
    for (const Bounds& goal : goals_) {
        const int dx = std::max({goal.left - c.x, c.x - goal.right, 0});
        const int dy = std::max({goal.top - c.y, c.y - goal.bottom, 0});
        least = std::min(least, dx + dy + (dx != 0 && dy != 0 ? route_cost::bend / 2 : 0));
    }
    return least * route_cost::step;
}

std::vector<int> RouteSearch::way_to(std::uint32_t state) const {
    std::vector<int> points;
    for (; state != no_state; state = from_[state])
        points.push_back(static_cast<int>(state / heading_count));
    std::reverse(points.begin(), points.end());
    return points;
}

}  // namespace loopwright
