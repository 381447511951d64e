#include <loopwright/parser/set_figure.h>

namespace loopwright {

bool set_figure(Circuit& circuit, Range& attributes, const AttributeSpec& spec, double si) {
    for (Index i = attributes.begin; i < attributes.end; ++i)
        if (circuit.attributes[i].spec == &spec) {
            const bool changes = circuit.attributes[i].si != si;
            circuit.attributes[i].si = si;
            return changes;
        }
    const auto begin = static_cast<Index>(circuit.attributes.size());
    for (Index i = attributes.begin; i < attributes.end; ++i) {
        const AttributeValue one = circuit.attributes[i];
        circuit.attributes.push_back(one);
    }
    circuit.attributes.push_back({.spec = &spec, .si = si});
    attributes = {begin, static_cast<Index>(circuit.attributes.size())};
    return true;
}

bool set_figure(Circuit& circuit, Index component, const AttributeSpec& spec, double si) {
    Component& part = circuit.components[component];
    if (!set_figure(circuit, part.attributes, spec, si)) return false;
    for (Index p = part.passages.begin; p < part.passages.end; ++p) {
        Passage& passage = circuit.passages[p];
        for (const PassageSpec& one : part.kind->passages)
            if (one.opening == spec.name && one.passage == passage.passage &&
                one.from == circuit.ports[passage.from].letter &&
                one.to == circuit.ports[passage.to].letter)
                passage.opening = si;
    }
    return true;
}

}  // namespace loopwright
