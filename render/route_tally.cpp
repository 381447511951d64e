#include <algorithm>
#include <map>
#include <utility>

#include <loopwright/render/route.h>

namespace loopwright {

namespace {

struct LevelRun {
    int y = 0;
    int left = 0;
    int right = 0;
    std::size_t net = 0;
};

int count_bends(const RoutedNet& net) {
    // Runs are split at joints and bends, so two ends in a point are a bend.
    std::map<std::pair<int, int>, int> ends;
    for (const Run& run : net.runs) {
        ++ends[{run.from.x, run.from.y}];
        ++ends[{run.to.x, run.to.y}];
    }
    for (const Cell& joint : net.joints) ends.erase({joint.x, joint.y});
    return static_cast<int>(
        std::count_if(ends.begin(), ends.end(), [](const auto& end) { return end.second == 2; }));
}

}  // namespace

RouteTally tally(std::span<const RoutedNet> nets) {
    RouteTally out;
    std::vector<LevelRun> levels;
    for (std::size_t n = 0; n < nets.size(); ++n) {
        out.bends += count_bends(nets[n]);
        for (const Run& run : nets[n].runs) {
            out.length += std::abs(run.to.x - run.from.x) + std::abs(run.to.y - run.from.y);
            if (run.from.y == run.to.y)
                levels.push_back({run.from.y, std::min(run.from.x, run.to.x),
                                  std::max(run.from.x, run.to.x), n});
        }
    }
    for (std::size_t n = 0; n < nets.size(); ++n)
        for (const Run& run : nets[n].runs) {
            if (run.from.x != run.to.x) continue;
            const int top = std::min(run.from.y, run.to.y);
            const int bottom = std::max(run.from.y, run.to.y);
            // A crossing that falls on a joint of either net cannot be, so open intervals do, but
            // for the end of a run that is split there.
            for (const LevelRun& level : levels)
                if (level.net != n && level.y > top && level.y < bottom &&
                    run.from.x > level.left && run.from.x < level.right)
                    ++out.crossings;
        }
    return out;
}

}  // namespace loopwright
