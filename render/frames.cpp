#include <loopwright/render/frames.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright {

namespace {

// Off the module grid, so that no line runs along a frame.
constexpr double frame_gap = 1.5;
// Further out for each assembly inside.
constexpr double frame_step = 1.0;
constexpr double quarter = 0.25;

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
Box joined(const Box& a, const Box& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}
Box grown(const Box& box, double by) {
    return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}

bool belongs(const Circuit& circuit, Index inner, Index assembly) {
    for (; inner != none; inner = circuit.assemblies[inner].parent)
        if (inner == assembly) return true;
    return false;
}

/// How many assemblies stand inside one another below this one.
int depth_below(const Circuit& circuit, Index assembly) {
    int depth = 0;
    for (Index a = 0; a < circuit.assemblies.size(); ++a)
        if (circuit.assemblies[a].parent == assembly)
            depth = std::max(depth, 1 + depth_below(circuit, a));
    return depth;
}

}  // namespace

void place_frames(const Circuit& circuit, const Sketch& sketch, Layout& layout) {
    for (Index a = 0; a < circuit.assemblies.size(); ++a) {
        const double gap = frame_gap + frame_step * depth_below(circuit, a);
        std::vector<Box> own;
        std::vector<Box> foreign;
        for (int p = 0; p < static_cast<int>(sketch.parts.size()); ++p) {
            const SketchPart& part = sketch.parts[static_cast<std::size_t>(p)];
            const bool inside =
                !part.is_mark() && belongs(circuit, circuit.components[part.component].assembly, a);
            Box box = sketch.body(p);
            if (inside)
                own.push_back(grown(box, gap));
            else
                foreign.push_back(grown(box, quarter));
        }
        // Nearest first, as long as nobody else gets inside.
        for (;;) {
            double least = std::numeric_limits<double>::max();
            std::size_t first = 0;
            std::size_t second = 0;
            for (std::size_t i = 0; i < own.size(); ++i)
                for (std::size_t j = i + 1; j < own.size(); ++j) {
                    const Box both = joined(own[i], own[j]);
                    const double size = (both.right - both.left) + (both.bottom - both.top) -
                                        (own[i].right - own[i].left) - (own[j].right - own[j].left);
                    if (size >= least ||
                        std::any_of(foreign.begin(), foreign.end(),
                                    [&](const Box& f) { return overlap(f, both); }))
                        continue;
                    least = size;
                    first = i;
                    second = j;
                }
            if (first == second) break;
            own[first] = joined(own[first], own[second]);
            own.erase(own.begin() + static_cast<std::ptrdiff_t>(second));
        }
        for (const Box& box : own)
            layout.frames.push_back({a,
                                     {{static_cast<int>(std::floor(box.left / quarter)),
                                       static_cast<int>(std::floor(box.top / quarter))},
                                      {static_cast<int>(std::ceil(box.right / quarter)),
                                       static_cast<int>(std::ceil(box.bottom / quarter))}}});
    }
}

}  // namespace loopwright
