#pragma once

#include <cstdint>
#include <queue>
#include <vector>

#include <loopwright/render/route_grid.h>

namespace loopwright {

/// What a net consists of so far: pieces that are not yet one tree.
struct NetPiece {
    std::vector<int> points = {};
    /// A port's point that nothing has been laid to: leave it outwards or aside.
    bool loose = false;
    Heading out = Heading::up;
};

/// Cheapest way from one piece of a net to any other. Keeps its arrays from call to call, so that
/// a search costs what it visits and not the size of the grid.
class RouteSearch {
  public:
    explicit RouteSearch(const RouteGrid& grid);

    /// Points from a point of `pieces[source]` to a point of another piece; empty if there is
    /// no way. `reached` becomes the piece at the far end.
    std::vector<int> find(std::int32_t net, const std::vector<NetPiece>& pieces, std::size_t source,
                          std::size_t& reached);

  private:
    struct Bounds {
        int left = 0;
        int top = 0;
        int right = 0;
        int bottom = 0;
    };
    struct Open {
        int estimate = 0;
        std::uint32_t state = 0;
        friend bool operator>(const Open& a, const Open& b) {
            return a.estimate != b.estimate ? a.estimate > b.estimate : a.state > b.state;
        }
    };

    void start(std::int32_t net, const NetPiece& piece);
    void expand(std::int32_t net, std::uint32_t state);
    void reach(std::uint32_t state, int cost, std::uint32_t from);
    /// Cost of the step that ends in `next`, bends left out; -1 where it is not allowed.
    int step_cost(std::int32_t net, int next, Heading heading) const;
    int estimate(int point) const;
    std::vector<int> way_to(std::uint32_t state) const;

    const RouteGrid& grid_;
    std::vector<std::uint32_t> seen_;  // the search that a state was last reached in
    std::vector<int> cost_;
    std::vector<std::uint32_t> from_;
    std::vector<std::uint32_t> piece_seen_;  // by point
    std::vector<std::uint32_t> piece_;
    std::uint32_t search_ = 0;
    std::uint32_t source_ = 0;
    std::vector<Bounds> goals_;
    std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
};

}  // namespace loopwright
