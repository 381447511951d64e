#include <algorithm>
#include <cmath>

#include <loopwright/render/place.h>

namespace loopwright {

namespace {

constexpr double label_gap = 0.75;

int mismatch(Side is, Side wanted) {
    if (is == wanted) return 0;
    const auto level = [](Side s) { return s == Side::left || s == Side::right; };
    return level(is) == level(wanted) ? 3 : 2;
}

bool is_machine(const Symbol& symbol) { return !symbol.shafts.empty(); }

int port_count(const Symbol& symbol, Side side) {
    return static_cast<int>(std::count_if(symbol.ports.begin(), symbol.ports.end(),
                                          [side](const PortAnchor& a) { return a.side == side; }));
}

}  // namespace

void turn_to_wishes(Sketch& sketch, int part, const std::vector<PortWish>& wishes) {
    const SketchPart& p = sketch.parts[static_cast<std::size_t>(part)];
    Attitude best{};
    double least = 1e300;
    for (const bool mirrored : {false, true})
        for (int quarter = 0; quarter < 4; ++quarter) {
            if (p.rest.upright && quarter != 0) continue;
            if (is_machine(p.rest) && quarter % 2 != 0) continue;
            const Attitude attitude{quarter, mirrored};
            const Symbol shape = turned(p.rest, attitude);
            double cost = 0.0;
            for (const PortWish& wish : wishes)
                cost +=
                    10.0 * wish.weight *
                    mismatch(shape.ports[static_cast<std::size_t>(wish.anchor)].side, wish.side);
            // At rest where nothing speaks against it; springs to the right, where the label is.
            cost += 0.3 * quarter + (mirrored ? 0.5 : 0.0);
            cost += std::max(0.0, -shape.body.left - shape.body.right);
            if (cost < least - 1e-9) {
                least = cost;
                best = attitude;
            }
        }
    sketch.turn(part, best);
}

void turn_on_shaft(Sketch& sketch, const Roles& roles, int part) {
    for (const TrainPart& one : roles.train_of(part))
        if (one.part == part) sketch.turn(part, {.mirrored = one.backwards});
}

std::vector<Box> label_places(const SketchPart& part, PartRole role) {
    const Symbol& shape = part.shape;
    const double w = part.label_width;
    const double h = part.label_height;
    const Box& body = shape.body;
    const auto box = [&](double left, double top) { return Box{left, top, left + w, top + h}; };
    const double middle_y = (body.top + body.bottom - h) / 2;
    const double middle_x = (body.left + body.right - w) / 2;
    const Box right = box(body.right + label_gap, middle_y);
    const Box left = box(body.left - label_gap - w, middle_y);
    const Box below = box(middle_x, body.bottom + label_gap);
    const Box above = box(middle_x, body.top - label_gap - h);
    const Box upper_right = box(1.0, body.top - label_gap - h);
    const Box upper_left = box(-1.0 - w, body.top - label_gap - h);
    const Box lower_right = box(1.0, body.bottom + label_gap);
    const Box lower_left = box(-1.0 - w, body.bottom + label_gap);
    if (is_machine(shape) && role != PartRole::prime_mover && role != PartRole::load) {
        if (role == PartRole::charge_pump)
            return {upper_left, lower_right, lower_left, upper_right, right, left};
        return {upper_right, upper_left, lower_right, lower_left, right, left};
    }
    // Nothing stands right of a load; the label of the machine that turns it reaches over it.
    if (role == PartRole::load) return {right, below, above, lower_right, upper_right, left};
    const bool upright = port_count(shape, Side::up) + port_count(shape, Side::down) >=
                         port_count(shape, Side::left) + port_count(shape, Side::right);
    const bool wide = body.right - body.left > 10.0;
    if (!upright || shape.ports.empty())
        return {below, above, lower_right, lower_left, upper_right, upper_left, right, left};
    if (wide) {
        // Beside the stubs, so that their lines pass.
        return {box(2.0, body.top - label_gap - h),
                box(-2.0 - w, body.top - label_gap - h),
                box(2.0, body.bottom + label_gap),
                box(-2.0 - w, body.bottom + label_gap),
                right,
                left};
    }
    return {right, left, upper_right, upper_left, lower_right, lower_left};
}

void plan_label(Sketch& sketch, int part, PartRole role) {
    SketchPart& p = sketch.parts[static_cast<std::size_t>(part)];
    if (p.label_width > 0.0) p.label = label_places(p, role).front();
}

}  // namespace loopwright
