#include <loopwright/tests/support/witnessed.h>

#include <algorithm>
#include <sstream>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright::testing {

namespace {

std::string_view letter(const Circuit& circuit, Index port) {
    return port == none ? std::string_view{} : circuit.ports[port].letter;
}

std::string shown(const Circuit& circuit, const Step& step, bool first, bool last) {
    if (step.type == ElementType::line) {
        std::string text(circuit.lines[step.index].path);
        if (first) text = circuit.port_name(step.from) + '>' + text;
        if (last) text += '>' + circuit.port_name(step.to);
        return text;
    }
    std::string text(circuit.components[step.index].path);
    if (step.from != none) text += fmt::format(".{}", letter(circuit, step.from));
    if (step.to != none) text += fmt::format(">{}", letter(circuit, step.to));
    return text;
}

bool has_port(const Circuit& circuit, const Step& step, Index port) {
    if (step.type == ElementType::component) return circuit.ports[port].component == step.index;
    const auto ports = circuit.ports_of(circuit.lines[step.index]);
    return std::find(ports.begin(), ports.end(), port) != ports.end();
}

/// Each step's ports are its own, and where both steps name one, the next begins where the last
/// ended; an end without a port lies in the component itself.
void expect_to_hang_together(const Circuit& circuit, std::span<const Step> steps) {
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const std::string what = shown(circuit, steps[i], false, false);
        for (const Index port : {steps[i].from, steps[i].to})
            EXPECT_TRUE(port == none || has_port(circuit, steps[i], port)) << what;
        if (i == 0) continue;
        const Index left = steps[i - 1].to;
        const Index entered = steps[i].from;
        if (left != none && entered != none) {
            EXPECT_EQ(circuit.port_name(left), circuit.port_name(entered)) << what;
        } else if (left != none) {
            EXPECT_TRUE(has_port(circuit, steps[i], left)) << what;
        } else {
            EXPECT_TRUE(entered != none && has_port(circuit, steps[i - 1], entered)) << what;
        }
    }
}

}  // namespace

std::string findings_of(const Circuit& circuit) {
    std::istringstream all(not_passed(circuit));
    std::string found;
    for (std::string line; std::getline(all, line);)
        if (line.find(" not-applicable") == std::string::npos) found += line + '\n';
    return found;
}

std::string witness_of(const Circuit& circuit, std::string_view rule, std::string_view subject) {
    for (const Verdict& verdict : check(circuit, rules()).verdicts) {
        if (verdict.rule->id != rule || verdict.subject.id != subject) continue;
        const std::span<const Step> steps = verdict.witness.steps;
        const bool path = verdict.witness.shape == WitnessShape::path;
        if (path) expect_to_hang_together(circuit, steps);
        std::string text = fmt::format("{}:", name(verdict.witness.shape));
        for (std::size_t i = 0; i < steps.size(); ++i)
            text += ' ' + shown(circuit, steps[i], path && i == 0, path && i + 1 == steps.size());
        return text;
    }
    ADD_FAILURE() << "no verdict of " << rule << " on " << subject;
    return {};
}

void expect_at_frontier(const std::string& witness, const std::string& step) {
    EXPECT_EQ(witness.find("frontier: "), 0U) << witness;
    EXPECT_NE(witness.find(' ' + step), std::string::npos) << witness;
}

}  // namespace loopwright::testing
