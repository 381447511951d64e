#include <loopwright/render/layout_fit.h>

#include <map>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/render/annotate.h>
#include <loopwright/render/nets.h>
#include <loopwright/render/sheet.h>
#include <loopwright/render/wire_graph.h>

namespace loopwright {

namespace {

/// Points of the grid that runs join at their ends.
class Joined {
  public:
    explicit Joined(std::size_t most) : sets_(most) {}
    void join(GridPoint a, GridPoint b) { sets_.join(number(a), number(b)); }
    Index set_at(GridPoint p) { return sets_.find(number(p)); }

  private:
    Index number(GridPoint p) {
        return numbers_.try_emplace({p.x, p.y}, static_cast<Index>(numbers_.size())).first->second;
    }
    std::map<std::pair<int, int>, Index> numbers_;
    DisjointSets sets_;
};

/// How often each symbol must stand on the sheet: a component once, a reservoir's port as often as
/// a net ends in it.
using Shown = std::map<std::pair<Index, Index>, int>;

Shown wanted(const Circuit& circuit, const std::vector<Net>& nets) {
    Shown shown;
    std::vector<bool> marked(circuit.components.size(), false);
    for (const Net& net : nets)
        for (const NetEnd& end : net.ends) {
            if (!end.mark) continue;
            const Index owner = circuit.ports[end.port].component;
            ++shown[{owner, end.port}];
            marked[owner] = true;
        }
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (is_joint(component)) continue;
        if (!is_reservoir(component))
            shown[{c, none}] = 1;
        else if (!marked[c] && component.ports.size() > 0)
            shown[{c, component.ports.begin}] = 1;
    }
    return shown;
}

std::string symbols_misfit(const Circuit& circuit, const Layout& layout,
                           const std::vector<Net>& nets) {
    Shown left = wanted(circuit, nets);
    const auto named = [&](std::pair<Index, Index> symbol) {
        return symbol.second == none ? std::string(circuit.components[symbol.first].path)
                                     : circuit.port_name(symbol.second);
    };
    for (const Placed& placed : layout.placed)
        if (--left[{placed.component, placed.port}] < 0)
            return fmt::format("a symbol too many for {}", named({placed.component, placed.port}));
    for (const auto& [symbol, count] : left)
        if (count > 0) return fmt::format("no symbol for {}", named(symbol));
    return {};
}

std::string wires_misfit(const Circuit& circuit, const Layout& layout,
                         const std::vector<DrawnSymbol>& symbols, const std::vector<Net>& nets) {
    const WireGraph places(layout, symbols);
    Joined wires(2 * layout.wires.size() + circuit.ports.size() + symbols.size());
    for (const Wire& wire : layout.wires) wires.join(wire.from, wire.to);
    std::map<Index, std::size_t> net_of_set;
    for (std::size_t n = 0; n < nets.size(); ++n) {
        const auto broken = [&](std::string_view what) {
            return fmt::format("{} line {}", what, circuit.lines[nets[n].lines.front()].path);
        };
        Index set = none;
        for (const NetEnd& end : nets[n].ends) {
            bool reached = false;
            for (const GridPoint& place : places.places_of(end.port)) {
                if (set == none && !end.mark) set = wires.set_at(place);
                reached = reached || set == none || wires.set_at(place) == set;
            }
            if (!reached) return broken("a wire is missing of");
        }
        if (set != none && !net_of_set.try_emplace(set, n).second)
            return broken("another line's wire meets");
    }
    return {};
}

std::string shafts_misfit(const Circuit& circuit, const Layout& layout,
                          const std::vector<DrawnSymbol>& symbols) {
    std::size_t anchors = 0;
    for (const DrawnSymbol& symbol : symbols) anchors += symbol.shape.shafts.size();
    std::vector<const DrawnSymbol*> symbol_of(circuit.components.size(), nullptr);
    for (const DrawnSymbol& symbol : symbols) symbol_of[symbol.placed.component] = &symbol;
    for (Index s = 0; s < circuit.shafts.size(); ++s) {
        Joined runs(2 * layout.shafts.size() + anchors);
        for (const ShaftRun& run : layout.shafts)
            if (run.shaft == s) runs.join(run.from, run.to);
        Index set = none;
        const auto components = circuit.components_of(circuit.shafts[s]);
        // A shaft leads through its machines.
        const auto stubs = [&](Index component, auto&& use) {
            const DrawnSymbol& symbol = *symbol_of[component];
            const ShaftAnchor* first = nullptr;
            for (const ShaftAnchor& anchor : symbol.shape.shafts) {
                if (shaft_at(circuit.components[component], anchor) != s) continue;
                if (first == nullptr) first = &anchor;
                use(on_grid(symbol.placed, first->at), on_grid(symbol.placed, anchor.at));
            }
        };
        for (const Index component : components)
            stubs(component, [&](GridPoint first, GridPoint other) { runs.join(first, other); });
        for (const Index component : components) {
            bool apart = false;
            stubs(component, [&](GridPoint first, GridPoint) {
                if (set == none) set = runs.set_at(first);
                apart = runs.set_at(first) != set;
            });
            if (apart) return fmt::format("a piece is missing of shaft {}", circuit.shafts[s].path);
        }
    }
    return {};
}

/// Whether all of it stands inside the frame of its sheet.
std::string sheet_misfit(const Circuit& circuit, const Layout& layout) {
    const SheetSize& size = *find_sheet(layout.sheet);
    for (const GridBox& box : ink_of(circuit, layout))
        for (const Point corner : {on_sheet(box.from), on_sheet(box.to)})
            if (corner.x < margin_left || corner.x > size.width - margin || corner.y < margin ||
                corner.y > size.height - margin)
                return fmt::format("the sheet {} is too small for it", layout.sheet);
    return {};
}

}  // namespace

std::string misfit(const Circuit& circuit, const Layout& layout) {
    const std::vector<Net> nets = drawn_nets(circuit);
    std::string what = symbols_misfit(circuit, layout, nets);
    if (!what.empty()) return what;
    const std::vector<DrawnSymbol> symbols = drawn_symbols(circuit, layout);
    what = wires_misfit(circuit, layout, symbols, nets);
    if (what.empty()) what = shafts_misfit(circuit, layout, symbols);
    return what.empty() ? sheet_misfit(circuit, layout) : what;
}

}  // namespace loopwright
