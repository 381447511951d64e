#include <loopwright/render/frame_rooms.h>

#include <algorithm>

#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

// From a body to its frame, and from there to what is outside.
constexpr double room = 3.0;
// How far down a mark goes at most, M.
constexpr int deepest = 200;

}  // namespace

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

Box joined(const Box& a, const Box& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}

FrameRooms::FrameRooms(const Sketch& sketch, std::span<const int> parts) : sketch_(sketch) {
    for (const int p : parts)
        if (sketch.parts[static_cast<std::size_t>(p)].placed) add(p);
}

void FrameRooms::add(int part) {
    const SketchPart& p = sketch_.parts[static_cast<std::size_t>(part)];
    if (p.is_mark()) return;
    Box box = sketch_.body(part);
    for (const PortAnchor& port : p.shape.ports) {
        const Point at{p.at.x + port.at.x, p.at.y + port.at.y};
        box = joined(box, {at.x, at.y, at.x, at.y});
    }
    box = {box.left - room, box.top - room, box.right + room, box.bottom + room};
    const Circuit& circuit = sketch_.circuit();
    for (Index a = sketch_.component(part).assembly; a != none; a = circuit.assemblies[a].parent) {
        const auto [there, is_new] = rooms_.try_emplace(a, box);
        if (!is_new) there->second = joined(there->second, box);
    }
}

bool FrameRooms::is_foreign(Index assembly, const Box& box) const {
    return std::any_of(rooms_.begin(), rooms_.end(), [&](const auto& one) {
        return !is_inside(sketch_.circuit(), assembly, one.first) && overlap(box, one.second);
    });
}

bool FrameRooms::hits_frame(Index assembly, const Box& box) const {
    const Circuit& circuit = sketch_.circuit();
    const Box frame = grown(assembly, box);
    return std::any_of(rooms_.begin(), rooms_.end(), [&](const auto& one) {
        return !is_inside(circuit, assembly, one.first) &&
               !is_inside(circuit, one.first, assembly) && overlap(frame, one.second);
    });
}

const Box* FrameRooms::around(Index assembly) const {
    for (; assembly != none; assembly = sketch_.circuit().assemblies[assembly].parent)
        if (const auto there = rooms_.find(assembly); there != rooms_.end()) return &there->second;
    return nullptr;
}

Box FrameRooms::grown(Index assembly, const Box& box) const {
    const Box* around_it = around(assembly);
    return around_it == nullptr ? box : joined(*around_it, box);
}

void hang_outside(Sketch& sketch, const FrameRooms& rooms, std::span<const int> parts,
                  const std::vector<int>& levels) {
    std::vector<int> marks;
    for (const int p : parts) {
        const SketchPart& part = sketch.parts[static_cast<std::size_t>(p)];
        if (part.placed) marks.insert(marks.end(), part.marks.begin(), part.marks.end());
    }
    std::vector<int> others(parts.begin(), parts.end());
    others.insert(others.end(), marks.begin(), marks.end());
    const auto with_stub = [&sketch](int mark) {
        const Cell anchor = sketch.cell({mark, 0});
        const Box body = sketch.body(mark);
        return Box{body.left, std::min<double>(body.top, anchor.y), body.right, body.bottom};
    };
    for (const int mark : marks) {
        const auto stands_well = [&] {
            const Box own = with_stub(mark);
            if (rooms.is_foreign(none, own)) return false;
            if (std::any_of(levels.begin(), levels.end(),
                            [&](int y) { return y > own.top - 3.0 && y < own.bottom + 1.0; }))
                return false;
            return std::none_of(others.begin(), others.end(), [&](int p) {
                const Box body = sketch.body(p);
                return p != mark && sketch.parts[static_cast<std::size_t>(p)].placed &&
                       overlap(own, {body.left - 1.0, body.top - 4.0, body.right + 1.0,
                                     body.bottom + 3.0});
            });
        };
        if (!rooms.is_foreign(none, with_stub(mark))) continue;
        for (int down = 0; down < deepest && !stands_well(); ++down)
            ++sketch.parts[static_cast<std::size_t>(mark)].at.y;
    }
}

}  // namespace loopwright
