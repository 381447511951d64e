#include <loopwright/rules/ratings.h>

#include <algorithm>

namespace loopwright {

std::optional<double> rating_of(const Circuit& circuit, const Rated& rated) {
    if (rated.type != ElementType::line)
        return circuit.figure(circuit.components[rated.index], "max-pressure");
    const auto& rating = circuit.lines[rated.index].rating;
    return rating ? std::optional(rating->si()) : std::nullopt;
}

std::string_view rating_attribute(const Rated& rated) {
    return rated.type == ElementType::line ? "rating" : "max-pressure";
}

std::string_view path_of(const Circuit& circuit, const Rated& rated) {
    return rated.type == ElementType::line ? circuit.lines[rated.index].path
                                           : circuit.components[rated.index].path;
}

bool has_rating(const Circuit& circuit, const Component& component) {
    if (component.kind->part == Part::plumbing || component.kind->part == Part::instrument) {
        const auto passages = circuit.passages_of(component);
        if (std::any_of(passages.begin(), passages.end(), [](const Passage& passage) {
                return passage.passage == PassageClass::reduced;
            }))
            return false;
    }
    const auto& attributes = component.kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == "max-pressure"; });
}

void find_places(const FlowGraph& graph, const Component& component,
                 std::vector<RatedPlace>& places) {
    places.clear();
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (graph.circuit().ports[port].use != PortUse::drain && !graph.lines_of(port).empty())
            places.push_back({port, graph.node_of(port)});
}

}  // namespace loopwright
