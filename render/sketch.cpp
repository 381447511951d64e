#include <loopwright/render/sketch.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <loopwright/render/label_text.h>

namespace loopwright {

namespace {

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

Box moved(const Box& box, Cell by) {
    return {box.left + by.x, box.top + by.y, box.right + by.x, box.bottom + by.y};
}

void widen(Box& box, const Box& other) {
    box.left = std::min(box.left, other.left);
    box.top = std::min(box.top, other.top);
    box.right = std::max(box.right, other.right);
    box.bottom = std::max(box.bottom, other.bottom);
}

Cell rounded(Point point) {
    return {static_cast<int>(std::lround(point.x)), static_cast<int>(std::lround(point.y))};
}

Cell outwards(Side side) {
    switch (side) {
        case Side::right:
            return {1, 0};
        case Side::down:
            return {0, 1};
        case Side::left:
            return {-1, 0};
        case Side::up:
            return {0, -1};
    }
    return {};
}

// A mark with the room round it, relative to its anchor.
constexpr Box mark_room{-1.6, -0.6, 1.6, 3.6};
// Where the anchor (0, -2) of a mark stands to its origin.
constexpr int mark_drop = 2;
// Marks that find no room beside a symbol stand in further rows.
constexpr int mark_pitch = 4;
constexpr int most_mark_rows = 4;
// So much farther off stands a mark at the end of a hose.
constexpr int room_to_bend = 6;

}  // namespace

Sketch::Sketch(const Circuit& circuit)
    : circuit_(&circuit),
      part_of_(circuit.components.size(), -1),
      net_of_port_(circuit.ports.size(), -1) {
    for (Index c = 0; c < circuit.components.size(); ++c)
        if (!is_joint(circuit.components[c]) && !is_reservoir(circuit.components[c]))
            add_component(c);
    for (const Net& net : drawn_nets(circuit)) add_net(net);
    // A reservoir that nothing is joined to is still there.
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (!is_reservoir(component) || component.ports.size() == 0) continue;
        const bool shown = std::any_of(parts.begin(), parts.end(),
                                       [&](const SketchPart& part) { return part.component == c; });
        if (shown) continue;
        SketchPart& part = parts.emplace_back();
        part.component = c;
        part.port = component.ports.begin;
        part.rest = part.shape = local_reservoir(circuit, component, part.port);
        net_of_mark_.push_back(-1);
    }
}

void Sketch::add_component(Index component) {
    part_of_[component] = static_cast<int>(parts.size());
    SketchPart& part = parts.emplace_back();
    part.component = component;
    part.rest = part.shape = symbol_of(*circuit_, circuit_->components[component]);
    const LabelText label = label_text(*circuit_, circuit_->components[component]);
    part.label_width = label.width;
    part.label_height = label.height;
    net_of_mark_.push_back(-1);
}

void Sketch::add_net(const Net& net) {
    const int index = static_cast<int>(nets.size());
    SketchNet made{.lines = net.lines};
    for (const NetEnd& end : net.ends) {
        const Index owner = circuit_->ports[end.port].component;
        if (!end.mark) {
            const int p = part_of_[owner];
            const auto& ports = parts[static_cast<std::size_t>(p)].rest.ports;
            const auto anchor = std::find_if(ports.begin(), ports.end(), [&](const PortAnchor& a) {
                return a.port == end.port;
            });
            if (anchor == ports.end())
                throw std::logic_error("symbol without port " + circuit_->port_name(end.port));
            made.ends.push_back({p, static_cast<int>(anchor - ports.begin())});
            net_of_port_[end.port] = index;
            continue;
        }
        made.ends.push_back({static_cast<int>(parts.size()), 0});
        SketchPart& part = parts.emplace_back();
        part.component = owner;
        part.port = end.port;
        part.rest = part.shape = local_reservoir(*circuit_, circuit_->components[owner], end.port);
        net_of_mark_.push_back(index);
    }
    nets.push_back(std::move(made));
}

int Sketch::net_at(int part, std::size_t anchor) const {
    const SketchPart& p = parts[static_cast<std::size_t>(part)];
    if (p.is_mark()) return net_of_mark_[static_cast<std::size_t>(part)];
    return net_of_port_[p.shape.ports[anchor].port];
}

void Sketch::turn(int part, Attitude attitude) {
    SketchPart& p = parts[static_cast<std::size_t>(part)];
    p.attitude = attitude;
    p.shape = turned(p.rest, attitude);
}

void Sketch::move_to(int part, Cell at) {
    SketchPart& p = parts[static_cast<std::size_t>(part)];
    const Cell by{at.x - p.at.x, at.y - p.at.y};
    p.at = at;
    p.placed = true;
    for (const int mark : p.marks) {
        SketchPart& m = parts[static_cast<std::size_t>(mark)];
        m.at = {m.at.x + by.x, m.at.y + by.y};
        m.placed = true;
        m.block = p.block;
    }
}

Cell Sketch::cell(const SketchEnd& end) const {
    const SketchPart& p = parts[static_cast<std::size_t>(end.part)];
    const Cell offset = rounded(p.shape.ports[static_cast<std::size_t>(end.anchor)].at);
    return {p.at.x + offset.x, p.at.y + offset.y};
}

Side Sketch::side(const SketchEnd& end) const {
    return parts[static_cast<std::size_t>(end.part)]
        .shape.ports[static_cast<std::size_t>(end.anchor)]
        .side;
}

void Sketch::hang_marks(int part) {
    SketchPart& p = parts[static_cast<std::size_t>(part)];
    p.marks.clear();
    for (std::size_t a = 0; a < p.shape.ports.size(); ++a) {
        const int n = net_at(part, a);
        if (n < 0) continue;
        const SketchNet& net = nets[static_cast<std::size_t>(n)];
        if (net.ends.size() != 2) continue;
        for (const SketchEnd& end : net.ends)
            if (parts[static_cast<std::size_t>(end.part)].is_mark())
                hang(part, p.shape.ports[a], end.part);
    }
}

void Sketch::hang(int part, const PortAnchor& anchor, int mark) {
    SketchPart& p = parts[static_cast<std::size_t>(part)];
    const Cell port = rounded(anchor.at);
    std::vector<Cell> tries;
    // A frame with a port letter passes between the port and the mark.
    const int down = component(part).assembly == none ? 2 : 4;
    const SketchNet& net =
        nets[static_cast<std::size_t>(net_of_mark_[static_cast<std::size_t>(mark)])];
    const bool bends = std::any_of(net.lines.begin(), net.lines.end(),
                                   [&](Index line) { return circuit_->lines[line].flexible; });
    const int beside_right = static_cast<int>(std::ceil(p.shape.body.right)) + 3 - port.x;
    const int beside_left = static_cast<int>(std::floor(p.shape.body.left)) - 3 - port.x;
    switch (anchor.side) {
        case Side::down:
            tries = {{0, down},     {2, down},      {-2, down}, {0, down + 4},
                     {3, down + 1}, {-3, down + 1}, {4, down},  {-4, down}};
            break;
        case Side::right:
            tries = {{2, 2}, {3, 3}, {5, 2}, {2, 6}};
            break;
        case Side::left:
            tries = {{-2, 2}, {-3, 3}, {-5, 2}, {-2, 6}};
            break;
        case Side::up:
            tries = {{beside_right, 1}, {beside_left, 1}};
            break;
    }
    // Past the marks of many ports.
    const std::size_t near = tries.size();
    for (int row = 1; row <= most_mark_rows; ++row)
        for (std::size_t t = 0; t < near; ++t) {
            const Cell by = tries[t];
            if (anchor.side == Side::up)
                tries.push_back({by.x + (by.x > 0 ? mark_pitch : -mark_pitch) * row, by.y});
            else
                tries.push_back({by.x, by.y + mark_pitch * row});
        }
    if (bends)
        for (Cell& by : tries) by.y += room_to_bend;
    Cell chosen = tries.front();
    for (const Cell& by : tries) {
        if (!is_free(part, anchor, {port.x + by.x, port.y + by.y})) continue;
        chosen = by;
        break;
    }
    p.marks.push_back(mark);
    SketchPart& m = parts[static_cast<std::size_t>(mark)];
    m.at = {p.at.x + port.x + chosen.x, p.at.y + port.y + chosen.y + mark_drop};
    m.placed = p.placed;
    m.block = p.block;
}

bool Sketch::is_free(int part, const PortAnchor& own, Cell anchor) const {
    const SketchPart& p = parts[static_cast<std::size_t>(part)];
    const Box room = moved(mark_room, anchor);
    if (overlap(room, p.shape.body)) return false;
    for (const int other : p.marks) {
        const Cell at = parts[static_cast<std::size_t>(other)].at;
        if (overlap(room, moved(mark_room, {at.x - p.at.x, at.y - p.at.y - mark_drop})))
            return false;
    }
    return std::none_of(p.shape.ports.begin(), p.shape.ports.end(), [&](const PortAnchor& port) {
        const Cell at = rounded(port.at);
        const Cell out = outwards(port.side);
        // As far as a mark may hang: a working line must not step round it.
        constexpr int far = 8;
        const Box lane{at.x - 0.4 + std::min(0, far * out.x), at.y - 0.4 + std::min(0, far * out.y),
                       at.x + 0.4 + std::max(0, far * out.x),
                       at.y + 0.4 + std::max(0, far * out.y)};
        // The mark may stand in the lane of its own port.
        return port.port != own.port && overlap(room, lane);
    });
}

Box Sketch::extent(int part) const {
    const SketchPart& p = parts[static_cast<std::size_t>(part)];
    Box box = p.shape.body;
    for (const PortAnchor& port : p.shape.ports)
        widen(box, {port.at.x, port.at.y, port.at.x, port.at.y});
    for (const ShaftAnchor& shaft : p.shape.shafts)
        widen(box, {shaft.at.x, shaft.at.y, shaft.at.x, shaft.at.y});
    if (p.label_width > 0.0) widen(box, p.label);
    for (const int mark : p.marks) {
        const Cell at = parts[static_cast<std::size_t>(mark)].at;
        widen(box,
              {at.x - p.at.x - 1.0, at.y - p.at.y - 2.0, at.x - p.at.x + 1.0, at.y - p.at.y + 1.0});
    }
    return box;
}

Box Sketch::body(int part) const {
    const SketchPart& p = parts[static_cast<std::size_t>(part)];
    return moved(p.shape.body, p.at);
}

}  // namespace loopwright
