#include <loopwright/render/loop_bench.h>

#include <cmath>

namespace loopwright {

bool LoopBench::touches(int p, int net) {
    for (std::size_t a = 0; a < part(p).rest.ports.size(); ++a)
        if (sketch_.net_at(p, a) == net) return true;
    return false;
}

int LoopBench::top(int p) { return static_cast<int>(std::floor(sketch_.extent(p).top)); }
int LoopBench::bottom(int p) { return static_cast<int>(std::ceil(sketch_.extent(p).bottom)); }

}  // namespace loopwright
