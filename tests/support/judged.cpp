#include <loopwright/tests/support/judged.h>

#include <algorithm>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/graph/situation.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {

namespace {

std::string line_of(const Circuit& circuit, const Verdict& verdict) {
    std::string line =
        fmt::format("{} {} {}", verdict.rule->id, verdict.subject.id, name(verdict.outcome));
    if (verdict.outcome == Outcome::fail) line += fmt::format(" {}", name(verdict.level));
    for (const StateUse& use : verdict.states) {
        line += fmt::format(" {}", name(use.state));
        if (use.positions.empty()) continue;
        line += '[';
        for (std::size_t i = 0; i < use.positions.size(); ++i)
            line += fmt::format("{}{}={}", i == 0 ? "" : " ",
                                circuit.components[use.positions[i].first].path,
                                use.positions[i].second);
        line += ']';
    }
    if (!verdict.point.empty()) line += fmt::format(" at {}", verdict.point);
    for (const std::string_view missing : verdict.missing)
        line += fmt::format(" needs {}", missing);
    return line + '\n';
}

/// Rules that the tests' small circuits need not satisfy, one to a line.
// clang-format off
constexpr std::string_view about_outfit[] = {
    "brake-torque",
    "case-drain-return",
    "cooler-bypass",
    "cooling",
    "filter-bypass",
    "filter-fineness",
    "level-indicator",
    "loop-flushing",
    "neutral-on-loss",
    "pressure-rating",
    "relief-setting",
    "reservoir-breather",
    "reservoir-size",
    "return-below-level",
    "start-interlock",
    "test-points",
};

/// Rules about figures at work: those circuits have no duty.
constexpr std::string_view at_work[] = {
    "case-pressure",
    "charge-flow",
    "charge-pressure",
    "control-pressure",
    "cooling-capacity",
    "engine-braking",
    "filter-flow",
    "line-velocity",
    "loop-temperature",
    "low-side-pressure",
    "motor-overspeed",
    "oil-temperature",
    "relief-capacity",
    "shaft-torque",
    "suction-pressure",
    "torque-limit",
    "viscosity-window",
};
// clang-format on

bool is_about_outfit(std::string_view rule) {
    return std::find(std::begin(about_outfit), std::end(about_outfit), rule) !=
               std::end(about_outfit) ||
           std::find(std::begin(at_work), std::end(at_work), rule) != std::end(at_work);
}

}  // namespace

std::string edited(std::string text, const std::vector<Edit>& edits) {
    for (const auto& [from, to] : edits) {
        const auto at = text.find(from);
        EXPECT_NE(at, std::string::npos) << "not in the circuit: " << from;
        if (at == std::string::npos) continue;
        EXPECT_EQ(text.find(from, at + 1), std::string::npos) << "more than once: " << from;
        text.replace(at, from.size(), to);
    }
    return text;
}

const std::string& sound_drive() {
    static const std::string xml = R"(<circuit format="1" title="Closed-loop drive">
<engine id="E1"/>
<pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" drain="external" case-pressure="3 bar"/>
<pump id="P2" displacement="18 cm3/rev"/>
<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>
<load id="D1"/>
<shaft id="W1" joins="E1 P1 P2"/>
<shaft id="W2" joins="M1 D1"/>
<check-valve id="C1"/>
<check-valve id="C2"/>
<relief-valve id="R1" setting="24 bar"/>
<relief-valve id="R2" setting="380 bar"/>
<relief-valve id="R3" setting="380 bar"/>
<flushing-valve id="V1"/>
<relief-valve id="R4" setting="18 bar"/>
<filter id="F1" fineness="10 um" clogging-indicator="visual"/>
<cooler id="K1" bypass="1.5 bar"/>
<reservoir id="T1" breather="yes" level-indicator="yes"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<line id="S1" joins="T1.S P2.S"/>
<line id="G1" joins="P2.P R1.P F1.A"/>
<line id="G2" joins="F1.B C1.A C2.A"/>
<line id="G3" joins="R1.T T1.R"/>
<line id="HA" joins="P1.A M1.A R2.P R3.T C1.B V1.A"/>
<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>
<line id="FL" joins="V1.F R4.P"/>
<line id="L1" joins="R4.T M1.L P1.L K1.A"/>
<line id="L2" joins="K1.B T1.D"/>
</circuit>
)";
    return xml;
}

Circuit with(const std::vector<Edit>& edits) { return circuit_from(edited(sound_drive(), edits)); }

Edit added(const std::string& parts) { return {"</circuit>", parts + "</circuit>"}; }

std::string not_passed(const Circuit& circuit) {
    std::string text;
    for (const Verdict& verdict : check(circuit, rules()).verdicts)
        if (verdict.outcome != Outcome::pass && verdict.follows == nullptr &&
            !is_about_outfit(verdict.rule->id) &&
            (verdict.outcome != Outcome::not_applicable ||
             verdict.subject.type != ElementType::circuit))
            text += line_of(circuit, verdict);
    return text;
}

std::string verdicts_of(const Circuit& circuit, std::string_view rule) {
    std::string text;
    for (const Verdict& verdict : check(circuit, rules()).verdicts)
        if (verdict.rule->id == rule) text += line_of(circuit, verdict);
    return text;
}

std::string structure_text(const Circuit& circuit) {
    const Structure structure = structure_of(circuit);
    std::string text;
    const auto list = [&](const std::vector<Index>& components) {
        for (const Index c : components) text += fmt::format(" {}", circuit.components[c].path);
    };
    for (const LoopInfo& loop : structure.loops) {
        text += loop.id;
        list(loop.pumps);
        text += " :";
        list(loop.actuators);
        text += '\n';
        for (const SideInfo& side : loop.sides)
            text += fmt::format("  {} {}\n", side.id, name(side.role));
    }
    for (const OpenPart& part : structure.open_parts) {
        text += part.id;
        list(part.pumps);
        text += " :";
        list(part.actuators);
        text += '\n';
    }
    return text;
}

}  // namespace loopwright::testing
