// What report, JSON and sheet call states, steps, subjects and remarks.
#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/writers/listed.h>
#include <loopwright/render/writers/report.h>

namespace loopwright {

std::string state_text(const Circuit& circuit, const StateUse& use) {
    std::string text(name(use.state));
    if (use.positions.empty()) return text;
    text += " (";
    for (std::size_t i = 0; i < use.positions.size(); ++i)
        text +=
            fmt::format("{}{} at {}", i == 0 ? "" : ", ",
                        circuit.components[use.positions[i].first].path, use.positions[i].second);
    return text + ')';
}

std::string states_text(const Circuit& circuit, const Verdict& verdict) {
    Listed states;
    for (const StateUse& use : verdict.states) states.add(state_text(circuit, use));
    return states.text();
}

std::string point_text(const Verdict& verdict) {
    std::string text = fmt::format("duty point {}", verdict.point);
    const Figures* const figures = verdict.figures;
    if (figures == nullptr || !figures->required || !figures->margin) return text;
    const auto told = [](const Measure& one) { return format_quantity(one.si, one.dimension); };
    return fmt::format("{}: measured {}, required {}, margin {}", text, told(figures->measured),
                       told(*figures->required), told(*figures->margin));
}

std::string missing_text(const Verdict& verdict) {
    Listed missing;
    for (const std::string_view datum : verdict.missing) missing.add(datum);
    return missing.text();
}

std::string step_text(const Circuit& circuit, const Step& step) {
    std::string text;
    if (step.type == ElementType::line)
        text = fmt::format("line {}", circuit.lines[step.index].path);
    else if (step.type == ElementType::component)
        text = fmt::format("{} {}", circuit.components[step.index].kind->title,
                           circuit.components[step.index].path);
    const auto end = [&](Index port) {
        return step.type == ElementType::line ? circuit.port_name(port)
                                              : std::string(circuit.ports[port].letter);
    };
    if (step.from != none && step.to != none)
        text += fmt::format(" from {} to {}", end(step.from), end(step.to));
    else if (step.to != none)
        text += fmt::format(", port {}", end(step.to));
    if (!step.text.empty()) text += fmt::format(": {}", step.text);
    return text;
}

SourceRef place_of(const Circuit& circuit, const Subject& subject) {
    switch (subject.type) {
        case ElementType::loop:
        case ElementType::component:
            return circuit.components[subject.index].place;
        case ElementType::side:
        case ElementType::port:
            return circuit.components[circuit.ports[subject.index].component].place;
        case ElementType::line:
            return circuit.lines[subject.index].place;
        case ElementType::shaft:
            return circuit.shafts[subject.index].place;
        case ElementType::waiver:
            return circuit.waivers[subject.index].place;
        case ElementType::circuit:
            break;
    }
    return circuit.place;
}

SourceRef place_of(const Circuit& circuit, const Step& step) {
    return step.type == ElementType::line ? circuit.lines[step.index].place
                                          : circuit.components[step.index].place;
}

std::string remark_text(const Remark& remark) {
    std::string text = fmt::format("{}: {}", remark.subject.id, remark.text);
    if (remark.by.empty() && remark.date.empty()) return text;
    return text + fmt::format(" ({}{}{})", remark.by,
                              remark.by.empty() || remark.date.empty() ? "" : ", ", remark.date);
}

}  // namespace loopwright
