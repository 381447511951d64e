#include <loopwright/render/route_grid.h>

#include <algorithm>
#include <cmath>

namespace loopwright {

namespace {

// Room round everything for lines that have to go outside.
constexpr int margin = 12;
// So far a stub may lie inside its body and the room round it: a shaft beside the frame of a
// control.
constexpr int way_out = 4;
constexpr double rounding = 1e-6;
// Room between a line and words, and a port letter, M.
constexpr double beside_text = 0.4;
constexpr double beside_letter = 0.1;

struct Extent {
    int left = 0;
    int top = 0;
    int right = 0;
    int bottom = 0;

    void add(double x, double y) {
        left = std::min(left, static_cast<int>(std::floor(x)));
        right = std::max(right, static_cast<int>(std::ceil(x)));
        top = std::min(top, static_cast<int>(std::floor(y)));
        bottom = std::max(bottom, static_cast<int>(std::ceil(y)));
    }
};

bool holds(const Box& box, Cell cell, double room) {
    return cell.x > box.left - room - rounding && cell.x < box.right + room + rounding &&
           cell.y > box.top - room - rounding && cell.y < box.bottom + room + rounding;
}

/// Whether a cell lies in a body that is not the one (or one of those) that the other lies in.
bool in_another_body(const RouteField& field, Cell cell, Cell own) {
    return std::any_of(field.bodies.begin(), field.bodies.end(), [&](const Box& box) {
        return holds(box, cell, 0.0) && !holds(box, own, 1.0);
    });
}

}  // namespace

Heading heading_of(Side side) {
    switch (side) {
        case Side::right:
            return Heading::right;
        case Side::down:
            return Heading::down;
        case Side::left:
            return Heading::left;
        case Side::up:
            return Heading::up;
    }
    return Heading::up;
}

RouteGrid::RouteGrid(const RouteField& field, std::span<const RouteNet> nets) {
    Extent extent;
    for (const Box& box : field.bodies) {
        extent.add(box.left, box.top);
        extent.add(box.right, box.bottom);
    }
    for (const RouteNet& net : nets) {
        for (const RouteEnd& end : net.ends) extent.add(end.at.x, end.at.y);
        for (const Run& run : net.trunks) {
            extent.add(run.from.x, run.from.y);
            extent.add(run.to.x, run.to.y);
        }
    }
    left_ = extent.left - margin;
    top_ = extent.top - margin;
    width_ = extent.right - extent.left + 1 + 2 * margin;
    height_ = extent.bottom - extent.top + 1 + 2 * margin;
    const std::size_t count = static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_);
    owner_.assign(count, free);
    right_.assign(count, free);
    down_.assign(count, free);
    gate_.assign(count, free);
    text_.assign(count, 0);
    shaft_.assign(count, 0);
    stub_.assign(count, 0);

    mark_frames(field, nets);
    for (const Box& box : field.bodies) mark_body(box);
    for (const Box& box : field.texts) mark_text(box, beside_text);
    for (const Box& box : field.letters) mark_text(box, beside_letter);
    for (const Run& run : field.shafts) {
        const int dx = run.to.x == run.from.x ? 0 : run.to.x > run.from.x ? 1 : -1;
        const int dy = run.to.y == run.from.y ? 0 : run.to.y > run.from.y ? 1 : -1;
        Cell c = run.from;
        for (;;) {
            auto& mark = shaft_[static_cast<std::size_t>(at(c))];
            const bool end = c == run.from || c == run.to;
            mark = static_cast<std::uint8_t>(mark | (end ? 3 : dx != 0 ? 1 : 2));
            if (c == run.to) break;
            c = {c.x + dx, c.y + dy};
        }
    }
    for (const RouteEnd& end : field.ports) mark_port(end, body, field);
    for (std::size_t n = 0; n < nets.size(); ++n)
        for (const RouteEnd& end : nets[n].ends)
            mark_port(end, static_cast<std::int32_t>(n), field);
}

void RouteGrid::mark_frames(const RouteField& field, std::span<const RouteNet> nets) {
    if (field.frames.empty()) return;
    frame_.assign(owner_.size(), 0);
    for (const RouteNet& net : nets) inside_.push_back(net.frames);
    for (std::size_t f = 0; f < std::min(field.frames.size(), most_frames); ++f) {
        const Box& box = field.frames[f];
        for (int y = static_cast<int>(std::ceil(box.top)); y <= box.bottom; ++y)
            for (int x = static_cast<int>(std::ceil(box.left)); x <= box.right; ++x)
                if (x >= left_ && x < left_ + width_ && y >= top_ && y < top_ + height_)
                    frame_[static_cast<std::size_t>(at({x, y}))] |= std::uint64_t{1} << f;
    }
}

void RouteGrid::mark_text(const Box& box, double room) {
    for (int y = static_cast<int>(std::ceil(box.top - room)); y <= box.bottom + room; ++y)
        for (int x = static_cast<int>(std::ceil(box.left - room)); x <= box.right + room; ++x)
            if (x >= left_ && x < left_ + width_ && y >= top_ && y < top_ + height_)
                text_[static_cast<std::size_t>(at({x, y}))] = 1;
}

void RouteGrid::mark_body(const Box& box) {
    for (int y = static_cast<int>(std::floor(box.top)) - 1; y <= box.bottom + 1; ++y)
        for (int x = static_cast<int>(std::floor(box.left)) - 1; x <= box.right + 1; ++x) {
            const bool inside = x > box.left - 1 + rounding && x < box.right + 1 - rounding &&
                                y > box.top - 1 + rounding && y < box.bottom + 1 - rounding;
            if (inside && owner_[static_cast<std::size_t>(at({x, y}))] == free)
                owner_[static_cast<std::size_t>(at({x, y}))] = body;
        }
}

void RouteGrid::mark_port(const RouteEnd& end, std::int32_t net, const RouteField& field) {
    const Heading out = heading_of(end.side);
    int point = at(end.at);
    owner_[static_cast<std::size_t>(point)] = net;
    stub_[static_cast<std::size_t>(point)] =
        static_cast<std::uint8_t>(static_cast<int>(turned_back(out)) + 1);
    // The stub itself, back into the body, and the way out where the body's clearance covers it.
    const int back = next(point, turned_back(out));
    if (back >= 0 && owner_[static_cast<std::size_t>(back)] == free)
        owner_[static_cast<std::size_t>(back)] = body;
    if (net == body) return;
    const Cell inside = back >= 0 ? cell(back) : end.at;
    point = next(point, out);
    for (int i = 0; i < way_out && point >= 0 && owner_[static_cast<std::size_t>(point)] == body &&
                    !in_another_body(field, cell(point), inside);
         ++i) {
        owner_[static_cast<std::size_t>(point)] = net;
        point = next(point, out);
    }
    if (point >= 0) gate_[static_cast<std::size_t>(point)] = net;
}

int RouteGrid::next(int point, Heading heading) const {
    switch (heading) {
        case Heading::right:
            return point % width_ + 1 < width_ ? point + 1 : -1;
        case Heading::left:
            return point % width_ > 0 ? point - 1 : -1;
        case Heading::down:
            return point / width_ + 1 < height_ ? point + width_ : -1;
        case Heading::up:
            return point / width_ > 0 ? point - width_ : -1;
    }
    return -1;
}

void RouteGrid::lay(std::int32_t net, Run run) {
    const int x0 = std::min(run.from.x, run.to.x);
    const int y0 = std::min(run.from.y, run.to.y);
    const int x1 = std::max(run.from.x, run.to.x);
    const int y1 = std::max(run.from.y, run.to.y);
    for (int x = x0; x < x1; ++x) right_[static_cast<std::size_t>(at({x, y0}))] = net;
    for (int y = y0; y < y1; ++y) down_[static_cast<std::size_t>(at({x0, y}))] = net;
}

void RouteGrid::take_up(Run run) { lay(free, run); }

std::int32_t RouteGrid::edge(int point, Heading heading) const {
    switch (heading) {
        case Heading::right:
            return right_[static_cast<std::size_t>(point)];
        case Heading::down:
            return down_[static_cast<std::size_t>(point)];
        case Heading::left:
            return point % width_ > 0 ? right_[static_cast<std::size_t>(point - 1)] : free;
        case Heading::up:
            return point >= width_ ? down_[static_cast<std::size_t>(point - width_)] : free;
    }
    return free;
}

bool RouteGrid::is_blocked(std::int32_t net, int point, Heading heading) const {
    const std::int32_t owner = owner_[static_cast<std::size_t>(point)];
    if (owner != free && owner != net) return true;
    const std::uint8_t shaft = shaft_[static_cast<std::size_t>(point)];
    if (shaft == 3 || shaft == (is_level(heading) ? 1 : 2)) return true;
    return is_taken(net, point, heading);
}

bool RouteGrid::is_taken(std::int32_t net, int point, Heading heading) const {
    const std::int32_t ahead = edge(point, heading);
    const std::int32_t behind = edge(point, turned_back(heading));
    const Heading aside = is_level(heading) ? Heading::up : Heading::right;
    const std::int32_t one = edge(point, aside);
    const std::int32_t other = edge(point, turned_back(aside));
    const auto foreign = [net](std::int32_t n) { return n != free && n != net; };
    if (foreign(ahead) || foreign(behind)) return true;
    // Another net that bends, ends or joins here may not be touched.
    return (foreign(one) || foreign(other)) && one != other;
}

bool RouteGrid::crosses(std::int32_t net, int point, Heading heading) const {
    const std::int32_t one = edge(point, is_level(heading) ? Heading::up : Heading::right);
    return one != free && one != net;
}

bool RouteGrid::crosses_shaft(int point, Heading heading) const {
    return shaft_[static_cast<std::size_t>(point)] == (is_level(heading) ? 2 : 1);
}

int RouteGrid::nuisance(std::int32_t net, int point, Heading heading) const {
    int cost = text_[static_cast<std::size_t>(point)] != 0 ? route_cost::text : 0;
    const std::int32_t gate = gate_[static_cast<std::size_t>(point)];
    if (gate != free && gate != net) cost += route_cost::gate;
    if (!frame_.empty() && net >= 0 &&
        (frame_[static_cast<std::size_t>(point)] & ~inside_[static_cast<std::size_t>(net)]) != 0)
        cost += route_cost::frame;
    const Heading aside = is_level(heading) ? Heading::up : Heading::right;
    for (const Heading side : {aside, turned_back(aside)}) {
        const int beside = next(point, side);
        if (beside < 0) continue;
        const std::int32_t there = edge(beside, heading);
        if (there != free && there != net) cost += route_cost::beside;
    }
    return cost;
}

int RouteGrid::degree(std::int32_t net, int point) const {
    int count = stub_[static_cast<std::size_t>(point)] != 0 &&
                        owner_[static_cast<std::size_t>(point)] == net
                    ? 1
                    : 0;
    for (int h = 0; h < heading_count; ++h)
        if (edge(point, static_cast<Heading>(h)) == net) ++count;
    return count;
}

}  // namespace loopwright
