#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <stdexcept>

#include <loopwright/render/finish_layout.h>
#include <loopwright/render/frame_rooms.h>
#include <loopwright/render/hoses.h>
#include <loopwright/render/label_room.h>
#include <loopwright/render/nesting.h>
#include <loopwright/render/place.h>
#include <loopwright/render/render.h>
#include <loopwright/render/route.h>
#include <loopwright/render/shafts.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

namespace {

// Room between neighbours is enlarged that often before everything is drawn apart.
constexpr int most_enlargements = 4;
constexpr int widest_spread = 4;
// Above this many nets only one arrangement is tried.
constexpr std::size_t many_nets = 60;
// Blocks stand below one another; beside one another where the sheet is too low for them.
constexpr int most_columns = 3;
// So far a trunk may reach into the room round the body whose port it ends in, M.
constexpr double own_port = 1.5;
// Between a level line in a frame and the lines outside, M.
constexpr double beside_level = 2.0;

RouteField field_of(const Sketch& sketch) {
    RouteField field;
    for (int p = 0; p < static_cast<int>(sketch.parts.size()); ++p) {
        const SketchPart& part = sketch.parts[static_cast<std::size_t>(p)];
        field.bodies.push_back(sketch.body(p));
        if (part.label_width > 0.0)
            field.texts.push_back({part.label.left + part.at.x, part.label.top + part.at.y,
                                   part.label.right + part.at.x, part.label.bottom + part.at.y});
        if (!part.is_mark())
            for (const PortAnchor& port : part.shape.ports)
                field.letters.push_back(letter_box(sketch.circuit(), part.place(), port));
        for (std::size_t a = 0; a < part.shape.ports.size(); ++a) {
            const int n = sketch.net_at(p, a);
            if (n >= 0 && sketch.nets[static_cast<std::size_t>(n)].ends.size() > 1) continue;
            const SketchEnd end{p, static_cast<int>(a)};
            field.ports.push_back({sketch.cell(end), sketch.side(end)});
        }
    }
    return field;
}

std::vector<RouteNet> nets_of(const Sketch& sketch) {
    std::vector<RouteNet> nets;
    for (const SketchNet& net : sketch.nets) {
        RouteNet& out = nets.emplace_back();
        if (net.ends.size() < 2) continue;
        for (const SketchEnd& end : net.ends)
            out.ends.push_back({sketch.cell(end), sketch.side(end)});
        out.trunks = net.trunks;
    }
    return nets;
}

/// Trunks that would run into a body or another net's port are left to the search.
void drop_blocked_trunks(std::vector<RouteNet>& nets, const RouteField& field) {
    const auto hits = [&](std::size_t n, const Run& run) {
        for (const Box& body : field.bodies)
            if (run.from.y > body.top - 1.0 && run.from.y < body.bottom + 1.0 &&
                std::min<double>(run.to.x, body.right + 1.0) -
                        std::max<double>(run.from.x, body.left - 1.0) >
                    own_port)
                return true;
        for (std::size_t m = 0; m < nets.size(); ++m) {
            if (m == n) continue;
            for (const RouteEnd& end : nets[m].ends)
                if (end.at.y == run.from.y && end.at.x >= run.from.x && end.at.x <= run.to.x)
                    return true;
            for (const Run& other : nets[m].trunks)
                if (m < n && other.from.y == run.from.y && other.from.x <= run.to.x &&
                    run.from.x <= other.to.x)
                    return true;
        }
        return false;
    };
    for (std::size_t n = 0; n < nets.size(); ++n) {
        auto& trunks = nets[n].trunks;
        trunks.erase(std::remove_if(trunks.begin(), trunks.end(),
                                    [&](const Run& run) { return hits(n, run); }),
                     trunks.end());
    }
}

/// The frames that nets go round if they have no end inside.
void add_frames(const Sketch& sketch, const std::vector<ShaftNet>& shafts, RouteField& field,
                std::vector<RouteNet>& nets) {
    std::vector<int> parts(sketch.parts.size());
    std::iota(parts.begin(), parts.end(), 0);
    const Circuit& circuit = sketch.circuit();
    const FrameRooms rooms(sketch, parts);
    for (const auto& one : rooms.all()) {
        const Index assembly = one.first;
        if (field.frames.size() == most_frames) return;
        const std::uint64_t bit = std::uint64_t{1} << field.frames.size();
        field.frames.push_back(one.second);
        const auto is_in = [&](Index component) {
            return is_inside(circuit, circuit.components[component].assembly, assembly);
        };
        Box& frame = field.frames.back();
        for (std::size_t n = 0; n < sketch.nets.size(); ++n) {
            const SketchNet& net = sketch.nets[n];
            if (std::none_of(net.ends.begin(), net.ends.end(), [&](const SketchEnd& end) {
                    return is_in(sketch.parts[static_cast<std::size_t>(end.part)].component);
                }))
                continue;
            nets[n].frames |= bit;
            // Its own level lines it takes in.
            for (const Run& run : net.trunks)
                if (run.from.x < frame.right && run.to.x > frame.left) {
                    frame.top = std::min(frame.top, run.from.y - beside_level);
                    frame.bottom = std::max(frame.bottom, run.from.y + beside_level);
                }
        }
        for (std::size_t s = 0; s < shafts.size(); ++s)
            for (const Index component : circuit.components_of(circuit.shafts[shafts[s].shaft]))
                if (is_in(component)) nets[sketch.nets.size() + s].frames |= bit;
    }
}

struct Attempt {
    Sketch sketch;
    std::vector<RoutedNet> nets = {};
    std::vector<RoutedShaft> shafts = {};
    double cost = 0.0;
};

std::optional<Attempt> attempt(const Circuit& circuit, const Roles& roles,
                               const Structure& structure, Sketch sketch, const Spacing& spacing,
                               int columns) {
    place(sketch, roles, structure, spacing, columns);
    RouteField field = field_of(sketch);
    std::vector<RouteNet> nets = nets_of(sketch);
    std::vector<ShaftNet> shafts = shaft_nets(circuit, sketch);
    const std::size_t oil = nets.size();
    for (const ShaftNet& shaft : shafts) nets.push_back(shaft.net);
    add_frames(sketch, shafts, field, nets);
    drop_blocked_trunks(nets, field);
    std::optional<std::vector<RoutedNet>> routed = route(field, nets);
    if (!routed) return std::nullopt;
    Attempt out{.sketch = std::move(sketch)};
    const RouteTally figures = tally(*routed);
    out.cost = figures.crossings * 60.0 + figures.bends * 10.0 + figures.length;
    for (std::size_t s = 0; s < shafts.size(); ++s)
        out.shafts.push_back({shafts[s].shaft, (*routed)[oil + s].runs});
    routed->resize(oil);
    out.nets = std::move(*routed);
    return out;
}

/// The cheapest of the arrangements that differ in what only a routing can judge.
std::optional<Attempt> best_attempt(const Circuit& circuit, const Roles& roles,
                                    const Structure& structure, const Sketch& blank,
                                    Spacing spacing, int columns) {
    std::optional<Attempt> chosen;
    for (int choice = 0; choice < (blank.nets.size() > many_nets ? 1 : 4); ++choice) {
        spacing.drains_below = (choice & 1) != 0;
        spacing.mirror_actuators = (choice & 2) != 0;
        std::optional<Attempt> tried = attempt(circuit, roles, structure, blank, spacing, columns);
        if (tried && (!chosen || tried->cost < chosen->cost)) chosen = std::move(tried);
    }
    return chosen;
}

/// Room, from the least that a draughtsman would leave to so much that any line finds a way.
std::vector<Spacing> rooms() {
    std::vector<Spacing> out(1);
    for (int i = 0; i < most_enlargements; ++i) {
        Spacing more = out.back();
        more.column += 2;
        more.row += 2;
        more.stack += 2;
        out.push_back(more);
    }
    while (out.back().spread < widest_spread) {
        Spacing more = out.back();
        ++more.spread;
        out.push_back(more);
    }
    return out;
}

struct Routed {
    std::optional<Layout> layout = {};  ///< nothing where no room is enough for the lines
    /// With less room, some hose drawn straight; nothing where the other is as narrow.
    std::optional<Layout> narrower = {};
};

/// With the least room that all lines find their way in, and hoses to sag if any room is enough.
Routed routed_layout(const Circuit& circuit, const Roles& roles, const Structure& structure,
                     const Sketch& blank, int columns) {
    std::optional<Layout> found;
    for (const Spacing& spacing : rooms()) {
        const std::optional<Attempt> chosen =
            best_attempt(circuit, roles, structure, blank, spacing, columns);
        if (!chosen) continue;
        Layout layout = finish_layout(circuit, chosen->sketch, roles, chosen->nets, chosen->shafts);
        if (hoses_shown(circuit, layout)) return {std::move(layout), std::move(found)};
        if (!found) found = std::move(layout);
    }
    return {std::move(found), std::nullopt};
}

}  // namespace

Layout lay_out(const Circuit& circuit, const Structure& structure, std::string_view sheet) {
    const Sketch blank(circuit);
    const Roles roles = roles_of(blank, structure);
    std::optional<Layout> narrowest;
    std::optional<Layout> spare;
    for (int columns = 1; columns <= most_columns; ++columns) {
        Routed routed = routed_layout(circuit, roles, structure, blank, columns);
        if (!routed.layout) throw std::logic_error("no way found for a line of the drawing");
        if (fit_to_sheet(circuit, *routed.layout, sheet)) return *std::move(routed.layout);
        if (!narrowest) narrowest = std::move(routed.layout);
        if (!spare) spare = std::move(routed.narrower);
    }
    // Rather a hose drawn straight than a drawing that no sheet holds.
    if (spare && fit_to_sheet(circuit, *spare, sheet)) return *std::move(spare);
    throw too_large(circuit, *narrowest, sheet);
}

}  // namespace loopwright
