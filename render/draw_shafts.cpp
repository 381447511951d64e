#include <loopwright/render/draw_shafts.h>

#include <algorithm>

#include <fmt/format.h>

#include <loopwright/render/annotate.h>

namespace loopwright {

namespace {

constexpr double half = 0.25 * 2.5;  // mm
constexpr double touch = 0.01;       // mm

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

/// Whether another run of the shaft leaves the run on that side of it.
bool joins(const Axis& run, const Axis& other, double side) {
    return side < 0 ? other.from < run.across - touch : other.to > run.across + touch;
}

/// By how much one line of a run ends short of the run's end: where others join on its side it ends
/// before them; at the outside of a corner it goes on to the other's outer line.
double shortened(const Axis& run, double end, double side, const std::vector<Axis>& others) {
    bool corner = false;
    for (const Axis& other : others) {
        if (std::abs(other.across - end) > touch) continue;
        if (joins(run, other, side)) return half;
        corner = true;
    }
    return corner ? -half : 0.0;
}

/// One of the two lines of a run, cut open where other runs of the shaft join on that side.
/// `others`: the runs across it that touch it.
std::vector<Piece> side_line(const Axis& run, double side, const std::vector<Axis>& others) {
    std::vector<Piece> pieces{{run.from + shortened(run, run.from, side, others),
                               run.to - shortened(run, run.to, side, others)}};
    for (const Axis& other : others) {
        const bool inside = other.across > run.from + touch && other.across < run.to - touch;
        if (!inside || !joins(run, other, side)) continue;
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

std::vector<Axis> touching(const Axis& run, const std::vector<Axis>& runs) {
    std::vector<Axis> out;
    for (const Axis& other : runs)
        if (other.level != run.level && other.across > run.from - touch &&
            other.across < run.to + touch && run.across > other.from - touch &&
            run.across < other.to + touch)
            out.push_back(other);
    return out;
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
        for (const Axis& run : runs) {
            const std::vector<Axis> others = touching(run, runs);
            for (const double side : {-half, half})
                for (const Piece& span : side_line(run, side, others)) {
                    const double across = run.across + side;
                    const Point from =
                        run.level ? Point{span.from, across} : Point{across, span.from};
                    const Point to = run.level ? Point{span.to, across} : Point{across, span.to};
                    group.primitives.push_back({Polyline{.points = {from, to}}, group.tag});
                }
        }
        groups.push_back(std::move(group));
    }
    return groups;
}

}  // namespace loopwright
