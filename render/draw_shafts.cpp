#include <loopwright/render/draw_shafts.h>

#include <algorithm>

#include <fmt/format.h>

#include <loopwright/render/annotate.h>

namespace loopwright {

namespace {

constexpr double half = 0.25 * 2.5;  // mm

struct Piece {
    double from = 0.0;
    double to = 0.0;
};

/// A run seen along its own axis: `along` from..to, at `across`.
struct Axis {
    bool level = true;
    double across = 0.0;
    double from = 0.0;
    double to = 0.0;
};

Axis axis_of(const ShaftRun& run) {
    const Point a = on_sheet(run.from);
    const Point b = on_sheet(run.to);
    if (run.from.y == run.to.y) return {true, a.y, std::min(a.x, b.x), std::max(a.x, b.x)};
    return {false, a.x, std::min(a.y, b.y), std::max(a.y, b.y)};
}

/// One of the two lines of a run, cut open where another run of the shaft joins on that side.
std::vector<Piece> side_line(const Axis& run, double side, const std::vector<Axis>& others) {
    std::vector<Piece> pieces{{run.from, run.to}};
    for (const Axis& other : others) {
        if (other.level == run.level || other.across < run.from - 0.01 ||
            other.across > run.to + 0.01 || run.across < other.from - 0.01 ||
            run.across > other.to + 0.01)
            continue;
        const bool joins = side < 0 ? other.from < run.across - 0.01 : other.to > run.across + 0.01;
        // A corner: the outer line goes on to the other's outer line, the inner one ends before.
        const bool at_start = std::abs(other.across - run.from) < 0.01;
        const bool at_end = std::abs(other.across - run.to) < 0.01;
        for (Piece& piece : pieces) {
            if (at_start && piece.from == run.from) piece.from += joins ? half : -half;
            if (at_end && piece.to == run.to) piece.to += joins ? -half : half;
        }
        if (at_start || at_end || !joins) continue;
        std::vector<Piece> cut;
        for (const Piece& piece : pieces) {
            if (other.across <= piece.from || other.across >= piece.to) {
                cut.push_back(piece);
                continue;
            }
            cut.push_back({piece.from, other.across - half});
            cut.push_back({other.across + half, piece.to});
        }
        pieces = std::move(cut);
    }
    return pieces;
}

}  // namespace

std::vector<Group> shaft_groups(const Circuit& circuit, const Layout& layout) {
    std::vector<Group> groups;
    for (Index s = 0; s < circuit.shafts.size(); ++s) {
        std::vector<Axis> runs;
        for (const ShaftRun& run : layout.shafts)
            if (run.shaft == s) runs.push_back(axis_of(run));
        if (runs.empty()) continue;
        Group group{.tag = {.role = Role::shaft, .shaft = s},
                    .id = fmt::format("shaft-{}", circuit.shafts[s].path),
                    .title = std::string(circuit.shafts[s].path),
                    .description = std::string(circuit.shafts[s].title)};
        std::replace(group.id.begin(), group.id.end(), '/', '.');
        for (std::size_t i = 0; i < runs.size(); ++i) {
            std::vector<Axis> others = runs;
            others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
            for (const double side : {-half, half})
                for (const Piece& span : side_line(runs[i], side, others)) {
                    const double across = runs[i].across + side;
                    const Point from =
                        runs[i].level ? Point{span.from, across} : Point{across, span.from};
                    const Point to =
                        runs[i].level ? Point{span.to, across} : Point{across, span.to};
                    group.primitives.push_back({Polyline{.points = {from, to}}, group.tag});
                }
        }
        groups.push_back(std::move(group));
    }
    return groups;
}

}  // namespace loopwright
