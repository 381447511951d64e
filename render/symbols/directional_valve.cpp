// Composed from the file's positions, ports and paths (recipes DV0 to DV8, AC1 to AC13).

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

#include <loopwright/render/symbols/symbol_metrics.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/symbols/valve_row.h>

namespace loopwright {

using namespace metrics;

namespace {

/// Where a port meets each box, relative to the box's middle.
struct PortPlace {
    Index port = none;
    double x = 0.0;
    bool above = false;
};

/// Supply and return below, consumers above, two modules apart. Where the letters would put all of
/// them, or too many, on one side, the file's order shares them out.
std::vector<PortPlace> port_places(const Circuit& circuit, const Component& component) {
    std::vector<Index> above;
    std::vector<Index> below;
    for (Index p = component.ports.begin; p < component.ports.end; ++p) {
        const std::string_view letter = circuit.ports[p].letter;
        const bool low = !letter.empty() && std::string_view("PTRSptrs").find(letter.front()) !=
                                                std::string_view::npos;
        (low ? below : above).push_back(p);
    }
    const std::size_t most = std::max<std::size_t>(3, (component.ports.size() + 1) / 2);
    const bool lopsided = above.empty() || below.empty();
    if (lopsided || above.size() > most || below.size() > most) {
        above.clear();
        below.clear();
        const Index half = (component.ports.size() + (lopsided ? 0 : 1)) / 2;
        for (Index p = component.ports.begin; p < component.ports.end; ++p)
            (p - component.ports.begin < half ? above : below).push_back(p);
    }
    std::vector<PortPlace> places;
    for (const bool up : {true, false}) {
        const std::vector<Index>& row = up ? above : below;
        double x = -(static_cast<double>(row.size()) - 1) * port_pitch / 2;
        for (const Index p : row) {
            places.push_back({p, x, up});
            x += port_pitch;
        }
    }
    return places;
}

/// The paths of one position, drawn into its box.
class BoxPaths {
  public:
    BoxPaths(Strokes& strokes, const std::vector<PortPlace>& places, Index position, double middle)
        : strokes_(strokes), places_(places), middle_(middle) {
        for (const Passage& passage : strokes.circuit().passages_of(strokes.component()))
            if (passage.position == position) paths_.push_back(&passage);
    }

    void draw() {
        std::vector<std::size_t> group(places_.size());
        for (std::size_t i = 0; i < group.size(); ++i) group[i] = i;
        for (const Passage* path : paths_) {
            const std::size_t from = group[place(path->from)];
            const std::size_t to = group[place(path->to)];
            for (std::size_t& g : group)
                if (g == to) g = from;
        }
        for (std::size_t g = 0; g < places_.size(); ++g) {
            std::vector<std::size_t> members;
            for (std::size_t i = 0; i < group.size(); ++i)
                if (group[i] == g) members.push_back(i);
            if (members.size() == 1)
                strokes_.blocked(edge(members.front()), places_[members.front()].above ? 1 : -1);
            else if (members.size() == 2)
                draw_path(members);
            else if (members.size() > 2)
                draw_joined(members);
        }
    }

  private:
    std::size_t place(Index port) const {
        std::size_t i = 0;
        while (places_[i].port != port) ++i;
        return i;
    }

    Point edge(std::size_t place) const {
        return {middle_ + places_[place].x, places_[place].above ? -valve_half : valve_half};
    }

    const Passage& path_between(std::size_t a, std::size_t b) const {
        return **std::find_if(paths_.begin(), paths_.end(), [&](const Passage* path) {
            const std::size_t from = place(path->from);
            const std::size_t to = place(path->to);
            return (from == a && to == b) || (from == b && to == a);
        });
    }

    /// Two ports: a straight line across the box, or a bend on one side of it.
    void draw_path(const std::vector<std::size_t>& members) {
        const Passage& path = path_between(members[0], members[1]);
        const Point from = edge(place(path.from));
        const Point to = edge(place(path.to));
        const bool throttled = path.passage == PassageClass::metering;
        if (from.y != to.y) {
            strokes_.arrow(from, to);
            // Off the middle, where paths cross.
            const double share = from.x == to.x ? 0.5 : 0.3;
            if (throttled)
                strokes_.throttle_mark(
                    {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share},
                    to.x - from.x, to.y - from.y);
            return;
        }
        const double y = from.y + (from.y < 0 ? bend_depth : -bend_depth);
        strokes_.path({from, {from.x, y}, {to.x, y}, to});
        strokes_.head({to.x, y}, to);
        if (throttled) strokes_.throttle_mark({(from.x + to.x) / 2, y}, 1, 0, 0.8);
    }

    /// Three or more ports joined: each runs to a level line in the middle, with dots where they
    /// meet. A throttled path marks the leg of that end of it which fewer paths share.
    void draw_joined(const std::vector<std::size_t>& members) {
        std::map<double, int> legs;
        for (const std::size_t m : members) {
            strokes_.line(edge(m), {edge(m).x, 0});
            ++legs[edge(m).x];
        }
        const double left = legs.begin()->first;
        const double right = legs.rbegin()->first;
        if (left < right) strokes_.line({left, 0}, {right, 0});
        for (const auto& [x, count] : legs) {
            const bool at_end = x == left || x == right;
            if (left < right && count + (at_end ? 1 : 2) >= 3) strokes_.dot({x, 0});
        }
        for (const std::size_t m : members)
            if (is_throttled(m)) strokes_.throttle_mark({edge(m).x, edge(m).y / 2}, 0, 1);
    }

    int paths_at(std::size_t member) const {
        return static_cast<int>(
            std::count_if(paths_.begin(), paths_.end(), [&](const Passage* path) {
                return place(path->from) == member || place(path->to) == member;
            }));
    }

    bool is_throttled(std::size_t member) const {
        return std::any_of(paths_.begin(), paths_.end(), [&](const Passage* path) {
            if (path->passage != PassageClass::metering) return false;
            const std::size_t from = place(path->from);
            const std::size_t to = place(path->to);
            return member == (paths_at(from) <= paths_at(to) ? from : to);
        });
    }

    Strokes& strokes_;
    const std::vector<PortPlace>& places_;
    double middle_ = 0.0;
    std::vector<const Passage*> paths_;
};

/// The positions in the order of their boxes. With two, the one at rest stands on the right, by the
/// spring; with three in the middle (DV3). More keep the file's order, which says what neighbours
/// what.
std::vector<Index> box_order(const Circuit& circuit, const Component& component, int& rest_at) {
    std::vector<Index> order;
    int rest = 0;
    for (Index p = component.positions.begin; p < component.positions.end; ++p) {
        if (circuit.positions[p].rest) rest = static_cast<int>(order.size());
        order.push_back(p);
    }
    rest_at = order.size() == 2 || order.size() == 3 ? 1 : rest;
    const Index at_rest = order[static_cast<std::size_t>(rest)];
    order.erase(order.begin() + rest);
    order.insert(order.begin() + rest_at, at_rest);
    return order;
}

void draw_actuator(Strokes& strokes, const ValveRow& row, RowEnd end, double y) {
    const std::string_view word = strokes.circuit().choice(strokes.component(), "actuation");
    if (word == "pilot")
        draw_pilot_frame(strokes, row, end, y);
    else if (word == "lever")
        draw_lever(strokes, row, end, y);
    else if (word == "pedal")
        draw_pedal(strokes, row, end, y);
    else
        draw_solenoid(strokes, row, end, y);
}

/// A lever or a pedal moves both ways and stands on the left; a solenoid or a pilot only pushes, so
/// one stands at each end that has boxes beyond rest. Springs, or the detent, where they act.
void draw_mechanisms(Strokes& strokes, const ValveRow& row) {
    const std::string_view word = strokes.circuit().choice(strokes.component(), "actuation");
    const bool pushes_only = word == "solenoid" || word == "pilot";
    const bool detent = strokes.is_yes("detent");
    const bool left_only = row.right == 0;
    const bool left_spring = !detent && row.right > 0;
    const bool right_spring = !detent && (row.left > 0 || left_only);
    const bool left_actuator = !pushes_only || row.left > 0 || left_only || detent;
    const bool right_actuator = pushes_only && (row.right > 0 || detent);
    constexpr double upper = -valve_half / 2;
    constexpr double lower = valve_half / 2;
    if (left_actuator) draw_actuator(strokes, row, RowEnd::left, left_spring ? upper : 0.0);
    if (left_spring) draw_row_spring(strokes, row, RowEnd::left, left_actuator ? lower : 0.0);
    if (right_actuator)
        draw_actuator(strokes, row, RowEnd::right, right_spring || detent ? upper : 0.0);
    const double y = right_actuator ? lower : 0.0;
    if (detent) draw_detent(strokes, row, RowEnd::right, y, row.left + row.right + 1, row.right);
    if (right_spring) draw_row_spring(strokes, row, RowEnd::right, y);
}

}  // namespace

void draw_directional_valve(Strokes& strokes) {
    const Circuit& circuit = strokes.circuit();
    const Component& component = strokes.component();
    const std::vector<PortPlace> places = port_places(circuit, component);
    std::size_t above = 0;
    for (const PortPlace& place : places) above += place.above ? 1 : 0;
    const std::size_t most = std::max(above, places.size() - above);
    int rest_at = 0;
    const std::vector<Index> order = box_order(circuit, component, rest_at);
    const ValveRow row{.left = rest_at,
                       .right = static_cast<int>(order.size()) - 1 - rest_at,
                       .width = std::max(2 * valve_half, port_pitch * static_cast<double>(most))};
    for (const PortPlace& place : places)
        strokes.stub(place.port, {place.x, place.above ? -valve_port : valve_port},
                     place.above ? Side::up : Side::down,
                     {place.x, place.above ? -valve_half : valve_half});
    draw_boxes(strokes, row);
    for (std::size_t i = 0; i < order.size(); ++i)
        BoxPaths(strokes, places, order[i], (static_cast<int>(i) - rest_at) * row.width).draw();
    draw_mechanisms(strokes, row);
    strokes.keep_upright();
}

}  // namespace loopwright
