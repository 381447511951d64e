#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/render/route.h>

namespace loopwright {

inline constexpr int heading_count = 4;

/// Headings in the order of turning clockwise.
enum class Heading : std::uint8_t { right, down, left, up };

constexpr Heading turned_back(Heading h) {
    return static_cast<Heading>((static_cast<int>(h) + 2) % heading_count);
}
constexpr bool is_level(Heading h) { return h == Heading::right || h == Heading::left; }
Heading heading_of(Side side);

/// Who lies where: the state of a routing. Grid points are numbered row by row, `at(x, y)`; an
/// edge belongs to its left or upper point.
class RouteGrid {
  public:
    static constexpr std::int32_t free = -1;
    static constexpr std::int32_t body = -2;  ///< as owner of a point: nobody may pass

    /// Takes in all that does not change: bodies, texts, shafts, ports.
    RouteGrid(const RouteField& field, std::span<const RouteNet> nets);

    int width() const { return width_; }
    int height() const { return height_; }
    std::size_t size() const { return owner_.size(); }
    int at(Cell cell) const { return (cell.y - top_) * width_ + cell.x - left_; }
    Cell cell(int point) const { return {left_ + point % width_, top_ + point / width_}; }
    /// The neighbour that way; -1 outside the grid.
    int next(int point, Heading heading) const;

    /// Lays or takes up a net's run.
    void lay(std::int32_t net, Run run);
    void take_up(Run run);
    /// The net on the edge that leaves the point that way, or `free`.
    std::int32_t edge(int point, Heading heading) const;

    /// Whether another net or a body keeps `net` from the point; a net that passes straight may be
    /// crossed (`crosses`).
    bool is_blocked(std::int32_t net, int point, Heading heading) const;
    /// The same of other nets alone.
    bool is_taken(std::int32_t net, int point, Heading heading) const;
    bool crosses(std::int32_t net, int point, Heading heading) const;
    bool crosses_shaft(int point, Heading heading) const;
    /// What a step to the point costs beyond its length: texts, room before ports, lines beside.
    int nuisance(std::int32_t net, int point, Heading heading) const;
    /// How many edges of the net meet in the point, its stub included.
    int degree(std::int32_t net, int point) const;

  private:
    void mark_frames(const RouteField& field, std::span<const RouteNet> nets);
    void mark_text(const Box& box, double room);
    void mark_body(const Box& box);
    void mark_port(const RouteEnd& end, std::int32_t net, const RouteField& field);

    int left_ = 0;
    int top_ = 0;
    int width_ = 0;
    int height_ = 0;
    std::vector<std::int32_t> owner_;  // free, body, or the net whose port or gate is there
    std::vector<std::int32_t> right_;  // net on the edge to the right
    std::vector<std::int32_t> down_;
    std::vector<std::uint8_t> text_;
    std::vector<std::uint64_t> frame_;   // bits of the frames round the point; empty: none
    std::vector<std::uint64_t> inside_;  // by net: bits of the frames that it has an end in
    std::vector<std::int32_t> gate_;     // net whose port faces the point, or free
    std::vector<std::uint8_t> shaft_;    // 1 level, 2 upright, 3 end
    std::vector<std::uint8_t> stub_;     // heading of the stub + 1 at a port's point
};

/// Costs in half modules, so that a nuisance can be less than a step.
namespace route_cost {
inline constexpr int step = 2;
inline constexpr int bend = 16;
inline constexpr int crossing = 44;
inline constexpr int shaft_crossing = 60;
inline constexpr int text = 14;
inline constexpr int gate = 8;
inline constexpr int frame = 3;
inline constexpr int beside = 2;
}  // namespace route_cost

}  // namespace loopwright
