#include <loopwright/render/route_net.h>

#include <algorithm>
#include <set>

namespace loopwright {

namespace {

std::vector<int> points_of(const RouteGrid& grid, const Run& run) {
    std::vector<int> points;
    const int dx = run.to.x == run.from.x ? 0 : run.to.x > run.from.x ? 1 : -1;
    const int dy = run.to.y == run.from.y ? 0 : run.to.y > run.from.y ? 1 : -1;
    for (Cell c = run.from;; c = {c.x + dx, c.y + dy}) {
        points.push_back(grid.at(c));
        if (c == run.to) return points;
    }
}

Heading heading_between(const RouteGrid& grid, int from, int to) {
    for (int h = 0; h < heading_count; ++h)
        if (grid.next(from, static_cast<Heading>(h)) == to) return static_cast<Heading>(h);
    return Heading::up;
}

/// A way of neighbouring points as straight runs.
std::vector<Run> runs_of(const RouteGrid& grid, const std::vector<int>& points) {
    std::vector<Run> runs;
    std::size_t begin = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool last = i + 1 == points.size();
        if (!last && heading_between(grid, points[i - 1], points[i]) ==
                         heading_between(grid, points[i], points[i + 1]))
            continue;
        runs.push_back({grid.cell(points[begin]), grid.cell(points[i])});
        begin = i;
    }
    return runs;
}

/// Trunks and ends as pieces; an end that stands on a trunk is part of it already.
std::vector<NetPiece> pieces_of(const RouteGrid& grid, const RouteNet& net) {
    std::vector<NetPiece> pieces;
    for (const Run& trunk : net.trunks) pieces.push_back({.points = points_of(grid, trunk)});
    for (const RouteEnd& end : net.ends) {
        const int point = grid.at(end.at);
        const bool there = std::any_of(pieces.begin(), pieces.end(), [&](const NetPiece& piece) {
            return std::find(piece.points.begin(), piece.points.end(), point) != piece.points.end();
        });
        if (!there)
            pieces.push_back({.points = {point}, .loose = true, .out = heading_of(end.side)});
    }
    return pieces;
}

int distance(const RouteGrid& grid, const NetPiece& a, const NetPiece& b) {
    int least = 1 << 30;
    for (const int p : a.points)
        for (const int q : b.points) {
            const Cell c = grid.cell(p);
            const Cell d = grid.cell(q);
            least = std::min(least, std::abs(c.x - d.x) + std::abs(c.y - d.y));
        }
    return least;
}

/// The piece to join next: the one nearest to another, small ones as the source of the search.
std::size_t nearest_piece(const RouteGrid& grid, const std::vector<NetPiece>& pieces) {
    std::size_t best = 0;
    int least = 1 << 30;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        for (std::size_t j = i + 1; j < pieces.size(); ++j) {
            const int apart = distance(grid, pieces[i], pieces[j]);
            if (apart >= least) continue;
            least = apart;
            best = pieces[i].points.size() <= pieces[j].points.size() ? i : j;
        }
    return best;
}

/// Takes up what leads to no port: a trunk's end, or a piece of it that the net joins elsewhere.
void prune(RouteGrid& grid, std::int32_t net, const std::set<int>& points) {
    for (int point : points)
        while (grid.degree(net, point) == 1) {
            int heading = 0;
            while (grid.edge(point, static_cast<Heading>(heading)) != net) ++heading;
            const int next = grid.next(point, static_cast<Heading>(heading));
            grid.take_up({grid.cell(point), grid.cell(next)});
            point = next;
        }
}

/// All of the net's edges among the points, as runs without bends.
std::vector<Run> collect(const RouteGrid& grid, std::int32_t net, const std::set<int>& points,
                         bool split_at_joints) {
    std::vector<Run> runs;
    for (const Heading along : {Heading::right, Heading::down})
        for (const int start : points) {
            if (grid.edge(start, along) != net) continue;
            const bool goes_on = grid.edge(start, turned_back(along)) == net;
            if (goes_on && !(split_at_joints && grid.degree(net, start) >= 3)) continue;
            int end = grid.next(start, along);
            while (grid.edge(end, along) == net && !(split_at_joints && grid.degree(net, end) >= 3))
                end = grid.next(end, along);
            runs.push_back({grid.cell(start), grid.cell(end)});
        }
    return runs;
}

std::set<int> points_of(const RouteGrid& grid, const std::vector<Run>& runs) {
    std::set<int> points;
    for (const Run& run : runs)
        for (const int point : points_of(grid, run)) points.insert(point);
    return points;
}

/// Without the trunks that would lie on another net or touch it: they are left to the search. A net
/// that found no way at first is laid before nets with trunks.
RouteNet with_free_trunks(const RouteGrid& grid, std::int32_t net, RouteNet ends) {
    const auto is_taken = [&](const Run& run) {
        const Heading along = run.from.y == run.to.y ? Heading::right : Heading::down;
        const std::vector<int> points = points_of(grid, run);
        return std::any_of(points.begin(), points.end(),
                           [&](int point) { return grid.is_taken(net, point, along); });
    };
    ends.trunks.erase(std::remove_if(ends.trunks.begin(), ends.trunks.end(), is_taken),
                      ends.trunks.end());
    return ends;
}

}  // namespace

std::optional<std::vector<Run>> lay_net(RouteGrid& grid, RouteSearch& search, std::int32_t net,
                                        const RouteNet& wished) {
    const RouteNet ends = with_free_trunks(grid, net, wished);
    std::vector<Run> laid;
    std::vector<NetPiece> pieces = pieces_of(grid, ends);
    if (ends.ends.size() < 2) return laid;
    for (const Run& trunk : ends.trunks) {
        grid.lay(net, trunk);
        laid.push_back(trunk);
    }
    while (pieces.size() > 1) {
        const std::size_t source = nearest_piece(grid, pieces);
        std::size_t reached = source;
        const std::vector<int> way = search.find(net, pieces, source, reached);
        if (way.empty()) {
            for (const Run& run : laid) grid.take_up(run);
            return std::nullopt;
        }
        for (const Run& run : runs_of(grid, way)) {
            grid.lay(net, run);
            laid.push_back(run);
        }
        NetPiece& target = pieces[reached];
        target.loose = false;
        target.points.insert(target.points.end(), way.begin(), way.end());
        target.points.insert(target.points.end(), pieces[source].points.begin(),
                             pieces[source].points.end());
        std::sort(target.points.begin(), target.points.end());
        target.points.erase(std::unique(target.points.begin(), target.points.end()),
                            target.points.end());
        pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(source));
    }
    const std::set<int> points = points_of(grid, laid);
    prune(grid, net, points);
    return collect(grid, net, points, false);
}

int net_cost(const RouteGrid& grid, std::int32_t net, const std::vector<Run>& runs) {
    int cost = 0;
    for (const int point : points_of(grid, runs)) {
        bool level = false;
        bool upright = false;
        for (int h = 0; h < heading_count; ++h) {
            const auto heading = static_cast<Heading>(h);
            if (grid.edge(point, heading) != net) continue;
            (is_level(heading) ? level : upright) = true;
            if (heading == Heading::right || heading == Heading::down)
                cost += route_cost::step + grid.nuisance(net, point, heading);
        }
        const int degree = grid.degree(net, point);
        if (degree == 2 && level && upright) cost += route_cost::bend;
        if (degree > 3) cost += route_cost::bend * 4;
        for (const Heading heading : {Heading::right, Heading::down}) {
            if (!(is_level(heading) ? level : upright)) continue;
            if (grid.crosses(net, point, heading)) cost += route_cost::crossing;
            if (grid.crosses_shaft(point, heading)) cost += route_cost::shaft_crossing;
        }
    }
    return cost;
}

RoutedNet finished(const RouteGrid& grid, std::int32_t net, const std::vector<Run>& runs) {
    RoutedNet out;
    const std::set<int> points = points_of(grid, runs);
    out.runs = collect(grid, net, points, true);
    for (const int point : points)
        if (grid.degree(net, point) >= 3) out.joints.push_back(grid.cell(point));
    return out;
}

}  // namespace loopwright
