#include <loopwright/render/contours.h>

#include <algorithm>
#include <array>
#include <map>

namespace loopwright {

namespace {

/// A crossing lies on an edge of the grid: from a node to the right of it, or below.
struct Edge {
    int column = 0;
    int row = 0;
    bool down = false;
    // NOLINTNEXTLINE(modernize-use-nullptr)
    friend auto operator<=>(const Edge&, const Edge&) = default;
};

/// Segments that meet on edges, two at most on each, put together to lines.
std::vector<std::vector<Edge>> chained(const std::vector<std::array<Edge, 2>>& segments) {
    std::map<Edge, std::vector<std::size_t>> at;
    for (std::size_t i = 0; i < segments.size(); ++i)
        for (const Edge& end : segments[i]) at[end].push_back(i);
    std::vector<bool> used(segments.size(), false);
    // On from the last edge of a line as far as there is a segment.
    const auto follow = [&](std::vector<Edge>& line) {
        for (bool on = true; on;) {
            on = false;
            for (const std::size_t next : at[line.back()]) {
                if (used[next]) continue;
                used[next] = on = true;
                line.push_back(segments[next][segments[next][0] == line.back() ? 1 : 0]);
                break;
            }
        }
    };
    std::vector<std::vector<Edge>> lines;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        if (used[i]) continue;
        used[i] = true;
        std::vector<Edge>& line = lines.emplace_back(segments[i].begin(), segments[i].end());
        follow(line);
        std::reverse(line.begin(), line.end());
        follow(line);
    }
    return lines;
}

}  // namespace

std::vector<std::vector<Point>> contours(
    int columns, int rows, const std::function<std::optional<double>(int, int)>& figure,
    double level) {
    std::vector<std::array<Edge, 2>> segments;
    for (int c = 0; c + 1 < columns; ++c)
        for (int r = 0; r + 1 < rows; ++r) {
            const std::array corners{figure(c, r), figure(c + 1, r), figure(c + 1, r + 1),
                                     figure(c, r + 1)};
            if (!std::all_of(corners.begin(), corners.end(), [](const auto& one) { return one; }))
                continue;
            const std::array edges{Edge{c, r, false}, Edge{c + 1, r, true}, Edge{c, r + 1, false},
                                   Edge{c, r, true}};
            std::array<bool, 4> above{};
            for (std::size_t i = 0; i < 4; ++i) above[i] = *corners[i] >= level;
            std::vector<Edge> crossed;
            for (std::size_t i = 0; i < 4; ++i)
                if (above[i] != above[(i + 1) % 4]) crossed.push_back(edges[i]);
            if (crossed.size() == 2) segments.push_back({crossed[0], crossed[1]});
            if (crossed.size() != 4) continue;
            // A saddle: the corners that are like its middle hang together.
            const double middle = (*corners[0] + *corners[1] + *corners[2] + *corners[3]) / 4.0;
            const bool round_first = (middle >= level) != above[0];
            segments.push_back({crossed[0], crossed[round_first ? 3 : 1]});
            segments.push_back({crossed[2], crossed[round_first ? 1 : 3]});
        }
    std::vector<std::vector<Point>> lines;
    for (const std::vector<Edge>& chain : chained(segments)) {
        std::vector<Point>& line = lines.emplace_back();
        for (const Edge& edge : chain) {
            const double from = *figure(edge.column, edge.row);
            const double to =
                *figure(edge.column + (edge.down ? 0 : 1), edge.row + (edge.down ? 1 : 0));
            const double share = (level - from) / (to - from);
            line.push_back(
                {edge.column + (edge.down ? 0.0 : share), edge.row + (edge.down ? share : 0.0)});
        }
    }
    return lines;
}

}  // namespace loopwright
