#include <loopwright/render/labels.h>

#include <algorithm>
#include <cmath>
#include <map>

#include <loopwright/render/label_room.h>
#include <loopwright/render/label_text.h>
#include <loopwright/render/place.h>

namespace loopwright {

namespace {

constexpr double small_shift = 3.0;

/// What stands beside symbols.
class LabelPlacer {
  public:
    LabelPlacer(const Circuit& circuit, const Sketch& sketch, const Roles& roles, LabelRoom& room)
        : circuit_(circuit), sketch_(sketch), roles_(roles), room_(room) {}

    void place() {
        std::vector<int> waiting;
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p)
            if (!part(p).is_mark() && part(p).label_width > 0.0 && !try_planned(p))
                waiting.push_back(p);
        for (const int p : waiting)
            if (!try_near(p))
                room_.put_apart(wanted_at(p, part(p).label_width, part(p).label_height));
        place_reservoir_labels();
    }

  private:
    const SketchPart& part(int p) const { return sketch_.parts[static_cast<std::size_t>(p)]; }
    PartRole role(int p) const { return roles_.part[static_cast<std::size_t>(p)]; }

    WantedLabel wanted_at(int p, double width, double height) const {
        return {.label = {.component = part(p).component},
                .width = width,
                .height = height,
                .target = sketch_.body(p),
                .part = p,
                .axis = static_cast<double>(part(p).at.x)};
    }

    bool accept(int p, const WantedLabel& wanted, const Box& box) {
        return !room_.misleads(p, box) && room_.put(wanted, box);
    }

    bool try_planned(int p) {
        return accept(p, wanted_at(p, part(p).label_width, part(p).label_height),
                      snapped(moved(part(p).label, part(p).at.x, part(p).at.y)));
    }

    /// All places beside the symbol, each shifted a little, the least shift first.
    bool try_near(int p) {
        const WantedLabel wanted = wanted_at(p, part(p).label_width, part(p).label_height);
        struct Try {
            double cost = 0.0;
            Box box = {};
        };
        std::vector<Try> tries;
        const std::vector<Box> places = label_places(part(p), role(p));
        for (std::size_t i = 0; i < places.size(); ++i)
            for (double dy = -small_shift; dy <= small_shift; dy += 0.5)
                for (double dx = -small_shift; dx <= small_shift; dx += 0.5)
                    tries.push_back(
                        {static_cast<double>(i) * 0.8 + std::abs(dx) + std::abs(dy),
                         snapped(moved(places[i], part(p).at.x + dx, part(p).at.y + dy))});
        std::stable_sort(tries.begin(), tries.end(),
                         [](const Try& a, const Try& b) { return a.cost < b.cost; });
        return std::any_of(tries.begin(), tries.end(),
                           [&](const Try& t) { return accept(p, wanted, t.box); });
    }

    /// A reservoir is named at one of its marks; where there are several, at every mark.
    void place_reservoir_labels() {
        std::map<Index, std::vector<int>> marks;
        for (int p = 0; p < static_cast<int>(sketch_.parts.size()); ++p)
            if (part(p).is_mark()) marks[part(p).component].push_back(p);
        for (auto& [component, own] : marks) {
            LabelText text = label_text(circuit_, circuit_.components[component]);
            const auto named = std::find_if(own.begin(), own.end(),
                                            [&](int p) { return try_mark_label(p, text); });
            if (named == own.end())
                room_.put_apart(wanted_at(own.front(), text.width, text.height));
            if (marks.size() < 2) return;
            own.erase(named == own.end() ? own.begin() : named);
            text = first_line(text);
            for (const int p : own)
                if (!try_mark_label(p, text))
                    room_.put_apart(wanted_at(p, text.width, text.height));
        }
    }

    bool try_mark_label(int p, const LabelText& text) {
        const double w = text.width;
        const double h = text.height;
        const Cell at = part(p).at;
        const WantedLabel wanted = wanted_at(p, w, h);
        for (const double dy : {0.0, 0.5, 1.0, -0.5, -1.0})
            for (const Box& box :
                 {Box{1.75, -h + 1.0, 1.75 + w, 1.0}, Box{-w / 2, 1.75, w / 2, 1.75 + h},
                  Box{-1.75 - w, -h + 1.0, -1.75, 1.0}, Box{1.75, 0.0, 1.75 + w, h},
                  Box{-1.75 - w, 0.0, -1.75, h}})
                if (accept(p, wanted, snapped(moved(box, at.x, at.y + dy)))) return true;
        return false;
    }

    const Circuit& circuit_;
    const Sketch& sketch_;
    const Roles& roles_;
    LabelRoom& room_;
};

}  // namespace

void place_labels(const Circuit& circuit, const Sketch& sketch, const Roles& roles,
                  Layout& layout) {
    LabelRoom room(circuit, layout);
    place_frame_labels(circuit, sketch, layout, room);
    LabelPlacer(circuit, sketch, roles, room).place();
    place_line_labels(circuit, layout, room);
}

}  // namespace loopwright
