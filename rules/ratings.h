#pragma once

#include <optional>
#include <span>
#include <vector>

#include <loopwright/graph/situation.h>

/// What bears no more pressure than it is rated for: lines, and the components that have a
/// `max-pressure`, housings apart.
namespace loopwright {

/// Where a rated part sees pressure.
struct RatedPlace {
    Index port = none;
    Index node = none;
};

struct Rated {
    ElementType type = ElementType::component;
    Index index = none;
    std::span<const RatedPlace> places = {};  ///< empty: no line joins it
};

/// What a part is rated for, Pa; nothing where that is not given.
std::optional<double> rating_of(const Circuit& circuit, const Rated& rated);
/// The attribute that says it.
std::string_view rating_attribute(const Rated& rated);
std::string_view path_of(const Circuit& circuit, const Rated& rated);

/// Whether a component's `max-pressure` is what it bears; that of a valve that reduces is what it
/// hands on.
bool has_rating(const Circuit& circuit, const Component& component);

/// The ports of a component at which its rating counts.
void find_places(const FlowGraph& graph, const Component& component,
                 std::vector<RatedPlace>& places);

/// Calls `visit` for all of a region that has a rating, or ought to have one.
template <typename Visit>
void for_each_rated(const Situation& s, Visit visit) {
    const Circuit& circuit = s.circuit();
    for (const auto& [line, port, node] : s.region.lines) {
        const RatedPlace place{port, node};
        visit(Rated{ElementType::line, line, {&place, 1}});
    }
    std::vector<RatedPlace> places;
    for (const Index c : s.region.components) {
        if (!has_rating(circuit, circuit.components[c])) continue;
        find_places(s.graph, circuit.components[c], places);
        visit(Rated{ElementType::component, c, places});
    }
    for (const Index port : s.region.guests) {
        const Index c = circuit.ports[port].component;
        if (!has_rating(circuit, circuit.components[c])) continue;
        // A coupling that is apart may have both its ports here, or one.
        places.clear();
        for (const Index other : s.region.guests)
            if (circuit.ports[other].component == c)
                places.push_back({other, s.graph.node_of(other)});
        if (places.front().port != port) continue;
        visit(Rated{ElementType::component, c, places});
    }
}

}  // namespace loopwright
