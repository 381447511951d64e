#include <loopwright/rules/tolerances.h>

#include <algorithm>

#include <loopwright/parser/set_figure.h>

namespace loopwright {

namespace {

void add(const Circuit& circuit, Index c, std::string_view name, double off,
         std::vector<Toleranced>& tolerances) {
    const AttributeValue* const value = circuit.attribute(circuit.components[c], name);
    if (value == nullptr || off <= 0.0) return;
    tolerances.push_back({.component = c, .spec = value->spec, .figure = value->si, .off = off});
}

void move(Circuit& circuit, const Toleranced& one, double si) {
    const AttributeValue* const full =
        one.spec->name == "setting"
            ? circuit.attribute(circuit.components[one.component], "full-flow-pressure")
            : nullptr;
    if (full != nullptr)
        set_figure(circuit, one.component, *full->spec, full->si + (si - one.figure));
    set_figure(circuit, one.component, *one.spec, si);
}

}  // namespace

double Toleranced::at(int side) const {
    const double moved = std::clamp(figure + side * off, spec->least, spec->most);
    // Of what must be above its least, a millionth is left: as good as nothing, which a rule sees.
    constexpr double rest = 1e-6;
    return moved == spec->least && !spec->least_included ? moved + rest * (figure - moved) : moved;
}

std::vector<Toleranced> tolerances_of(const Circuit& circuit) {
    std::vector<Toleranced> tolerances;
    for (Index c = 0; c < circuit.components.size(); ++c)
        for (const AttributeValue& value : circuit.attributes_of(circuit.components[c]))
            if (value.spec->name == "tolerance") add(circuit, c, "setting", value.si, tolerances);
    for (const Tolerance& one : circuit.tolerances) {
        const auto same = [&](const Toleranced& other) {
            return other.component == one.component && other.spec == one.spec;
        };
        const auto known = std::find_if(tolerances.begin(), tolerances.end(), same);
        if (known == tolerances.end())
            add(circuit, one.component, one.spec->name, one.si, tolerances);
        else
            known->off = std::max(known->off, one.si);
    }
    return tolerances;
}

Circuit at_corner(const Circuit& circuit, std::span<const Toleranced> tolerances,
                  const Corner& corner) {
    Circuit moved = circuit;
    for (std::size_t i = 0; i < tolerances.size(); ++i)
        if (corner[i] != 0) move(moved, tolerances[i], tolerances[i].at(corner[i]));
    return moved;
}

}  // namespace loopwright
