#include <loopwright/rules/oil_ways.h>

#include <algorithm>

#include <loopwright/graph/witness.h>

namespace loopwright {

bool sure(const Edge& edge) {
    return edge.passage_class == PassageClass::element ||
           (edge.passage_class == PassageClass::switched &&
            (edge.shift != Shift::hand || edge.locked));
}

std::string_view setting_of(const Component& component) {
    if (component.kind->part == Part::device) return "opening";
    const auto& attributes = component.kind->attributes;
    const bool set = std::any_of(attributes.begin(), attributes.end(),
                                 [](const AttributeSpec& spec) { return spec.name == "setting"; });
    return set ? "setting" : "max-pressure";
}

bool locked_open(const Circuit& circuit, const Edge& edge) {
    if (edge.shift != Shift::hand || !edge.locked) return false;
    // A coupling has no position: its passage is there where it is joined.
    const std::string_view position =
        circuit.choice(circuit.components[edge.component], "position");
    return position.empty() || position == "open";
}

bool hands_on(const Edge& edge) {
    switch (edge.passage_class) {
        case PassageClass::one_way:
        case PassageClass::metering:
        case PassageClass::divider:
        case PassageClass::reduced:
            return true;
        default:
            return sure(edge);
    }
}

bool is_mesh(const Circuit& circuit, const Edge& edge) {
    if (edge.passage_class != PassageClass::element) return false;
    const auto& attributes = circuit.components[edge.component].kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == "fineness"; });
}

bool has_bypass(const Circuit& circuit, const Edge& mesh) {
    return circuit.figure(circuit.components[mesh.component], "bypass").has_value();
}

StateSet flow_states(const Edge& pump, StateSet states) {
    return pump.both_ways ? states & moving_states : states;
}

Index port_at(const Situation& s, Index edge, Index node) {
    const Edge& machine = s.region.edges[edge];
    const Passage& passage = s.circuit().passages[machine.passage];
    return node == machine.to ? passage.to : passage.from;
}

bool same_charge_pumps(const Situation& s) {
    if (!s.alike.same_feeds) return false;
    const auto outside = std::count_if(
        s.region.machines.begin(), s.region.machines.end(),
        [&](Index e) { return s.region.edges[e].part == Part::pump && s.looped[e] == 0; });
    const auto loops = std::count_if(s.loops.loops.begin(), s.loops.loops.end(),
                                     [](const Loop& loop) { return !loop.shorted; });
    return static_cast<std::size_t>(outside) == s.feeds.pumps.size() &&
           std::all_of(s.feeds.pumps.begin(), s.feeds.pumps.end(), [&](const ChargePump& pump) {
               return s.feeds.feeds(pump).size() == static_cast<std::size_t>(loops);
           });
}

void remark(const Situation& s, const FlowArc& arc, std::string_view text, std::span<Step> steps) {
    const Index component = s.region.edges[arc.edge].component;
    const Index entry = entry_port(s.graph, s.region, arc);
    for (Step& step : steps)
        if (step.type == ElementType::component && step.index == component && step.from == entry)
            step.text = text;
}

}  // namespace loopwright
