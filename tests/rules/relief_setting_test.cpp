// Circuits that differ from the sound drive in one thing. What is expected follows by hand from the
// design: what a relief holds = its full-flow pressure, or its setting, over the charge relief's
// where it discharges into the low side. The margin of 20 bar is common practice, no source.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/reversing_drive.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::edited;
using testing::reversing_drive;
using testing::sound_drive;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

/// "fail error 404 of 400" in bar, of one relief valve; "-" without figures; missing data behind.
std::string setting_of(const Circuit& circuit, std::string_view subject) {
    constexpr double bar = 1e5;
    for (const Verdict& verdict : check(circuit, rules()).verdicts) {
        if (verdict.rule->id != "relief-setting" || verdict.subject.id != subject) continue;
        EXPECT_TRUE(verdict.states.empty());
        std::string text(name(verdict.outcome));
        if (verdict.outcome == Outcome::fail) text += fmt::format(" {}", name(verdict.level));
        if (verdict.figures != nullptr)
            text += fmt::format(" {:.4g} of {:.4g}", verdict.figures->measured.si / bar,
                                verdict.figures->required->si / bar);
        for (const std::string_view missing : verdict.missing) text += fmt::format(" {}", missing);
        return text;
    }
    return "none";
}

Edit working(const std::string& pressure) {
    return {R"(<pump id="P1")", R"(<pump id="P1" working-pressure=")" + pressure + '"'};
}
Edit rated(const std::string& line, const std::string& rating) {
    return {"<line id=\"" + line + '"', "<line id=\"" + line + "\" rating=\"" + rating + '"'};
}
Edit valve(const std::string& id, const std::string& attributes) {
    return {"<relief-valve id=\"" + id + '"', "<relief-valve id=\"" + id + "\" " + attributes};
}

/// The sound drive with every figure that the rule reads, and edits.
Circuit complete(std::vector<Edit> edits) {
    edits.insert(edits.end(), {working("360 bar"), rated("HB", "450 bar")});
    return with(edits);
}

// Of three reliefs on the loop and its charge line one hangs on each figure.
TEST(ReliefSetting, BelowAtAndAboveARating) {
    EXPECT_EQ(setting_of(complete({rated("HA", "405 bar")}), "R2"), "pass 404 of 405");
    EXPECT_EQ(setting_of(complete({rated("HA", "404 bar")}), "R2"), "pass 404 of 404");
    const Circuit weak = complete({rated("HA", "403 bar")});
    EXPECT_EQ(setting_of(weak, "R2"), "fail error 404 of 403");
    EXPECT_EQ(setting_of(weak, "R3"), "pass 404 of 450");
    EXPECT_EQ(witness_of(weak, "relief-setting", "R2"), "path: R2>P HA>P1.A");
}

// What the machines bear counts as well as what the lines do.
TEST(ReliefSetting, TheWeakestPart) {
    const Circuit circuit =
        complete({rated("HA", "450 bar"),
                  {R"(<motor id="M1")", R"(<motor id="M1" max-pressure="400 bar")"}});
    EXPECT_EQ(setting_of(circuit, "R2"), "fail error 404 of 400");
    EXPECT_EQ(setting_of(circuit, "R3"), "fail error 404 of 400");
    EXPECT_EQ(witness_of(circuit, "relief-setting", "R2"), "path: R2>P HA M1.A");
}

// A filter in the side: a hose behind it is on the side.
TEST(ReliefSetting, TheSideIsAllThatHangsTogether) {
    const Circuit circuit =
        complete({{R"(joins="P1.A M1.A R2.P)", R"(joins="P1.A F2.A R2.P)"},
                  added(R"(<filter id="F2"/><line id="HX" joins="F2.B M1.A" rating="400 bar"/>)")});
    EXPECT_EQ(setting_of(circuit, "R2"), "fail error 404 of 400");
    EXPECT_EQ(witness_of(circuit, "relief-setting", "R2"), "path: R2>P HA F2.A>B HX>M1.A");
    // What stands behind the flushing valve is not: it is open to the low side alone.
    EXPECT_EQ(setting_of(complete({rated("HA", "450 bar"), rated("FL", "30 bar")}), "R2"),
              "pass 404 of 450");
}

TEST(ReliefSetting, FullFlowCounts) {
    EXPECT_EQ(setting_of(complete({rated("HA", "420 bar"),
                                   valve("R2", R"(full-flow-pressure="400 bar")")}),
                         "R2"),
              "fail error 424 of 420");
}

// Drained outside, the charge pressure is not added.
TEST(ReliefSetting, DrainJoined) {
    const Edit drained = valve("R2", R"(drain="external")");
    const Edit port{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};
    const Edit line = added(R"(<line id="Y1" joins="R2.Y T1.E"/>)");
    EXPECT_EQ(setting_of(complete({rated("HA", "400 bar"), drained, port, line}), "R2"),
              "pass 380 of 400");
    EXPECT_EQ(setting_of(complete({rated("HA", "400 bar"), drained}), "R2"),
              "fail error 404 of 400");
}

// A relief into the charge line stands on the charge relief as well.
TEST(ReliefSetting, IntoTheChargeLine) {
    EXPECT_EQ(setting_of(complete({rated("HA", "400 bar"),
                                   {"R3.P R2.T C2.B", "R3.P C2.B"},
                                   {"F1.B C1.A C2.A", "F1.B C1.A C2.A R2.T"}}),
                         "R2"),
              "fail error 404 of 400");
}

TEST(ReliefSetting, ChargeRelief) {
    EXPECT_EQ(setting_of(complete({rated("G2", "24 bar")}), "R1"), "pass 24 of 24");
    const Circuit weak = complete({rated("G2", "20 bar")});
    EXPECT_EQ(setting_of(weak, "R1"), "fail error 24 of 20");
    EXPECT_EQ(witness_of(weak, "relief-setting", "R1"), "path: R1>P G1 F1.A>B G2>C2.A");
    // The flushing relief is on neither.
    EXPECT_EQ(setting_of(weak, "R4"), "none");
}

// Every figure is there: a line that bears less than its relief lets stand is all that is wrong.
TEST(ReliefSetting, OneLineTooWeak) {
    const auto lines = [](const std::string& rating) {
        return verdicts_of(complete({rated("HA", rating), rated("G2", "60 bar")}),
                           "relief-setting");
    };
    EXPECT_EQ(lines("450 bar"),
              "relief-setting R1 pass\nrelief-setting R2 pass\nrelief-setting R3 pass\n");
    EXPECT_EQ(lines("400 bar"),
              "relief-setting R1 pass\nrelief-setting R2 fail error\nrelief-setting R3 pass\n");
}

TEST(ReliefSetting, MissingFigures) {
    EXPECT_EQ(setting_of(complete({}), "R2"),
              "inconclusive HA.rating P1.max-pressure M1.max-pressure");
    EXPECT_EQ(setting_of(complete({}), "R1"),
              "inconclusive G1.rating G2.rating P2.max-pressure F1.max-pressure");
    const Edit without{R"(<relief-valve id="R2" setting="380 bar"/>)",
                       R"(<relief-valve id="R2"/>)"};
    EXPECT_EQ(setting_of(complete({rated("HA", "450 bar"), without}), "R2"),
              "inconclusive R2.setting");
    EXPECT_EQ(setting_of(complete({rated("HA", "450 bar"), without}), "R3"), "pass 404 of 450");
    EXPECT_EQ(setting_of(with({rated("HA", "450 bar")}), "R2"), "inconclusive P1.working-pressure");
}

// Without the charge relief's setting a rating may still be below that of the relief alone.
TEST(ReliefSetting, MissingSettingOfTheChargeRelief) {
    const Edit without{R"( setting="24 bar")", ""};
    EXPECT_EQ(setting_of(complete({rated("HA", "450 bar"), without}), "R2"),
              "inconclusive R1.setting");
    EXPECT_EQ(setting_of(complete({rated("HA", "370 bar"), without}), "R2"),
              "fail error 380 of 370");
}

TEST(ReliefSetting, MarginOverTheWorkingPressure) {
    const auto at = [](const std::string& pressure) {
        return setting_of(with({rated("HA", "450 bar"), working(pressure)}), "R2");
    };
    EXPECT_EQ(at("360 bar"), "pass 404 of 450");
    EXPECT_EQ(at("361 bar"), "fail warning 19 of 20");
    EXPECT_EQ(at("400 bar"), "fail warning -20 of 20");
    EXPECT_EQ(
        witness_of(with({rated("HA", "450 bar"), working("361 bar")}), "relief-setting", "R2"),
        "set: P1 R2");
}

// A limiter is the highest pressure that the pump works at, unless it says another.
TEST(ReliefSetting, LimiterInPlaceOfTheWorkingPressure) {
    const auto limited = [](const std::string& attributes) {
        return setting_of(
            with({rated("HA", "450 bar"), {R"(<pump id="P1")", R"(<pump id="P1" )" + attributes}}),
            "R2");
    };
    EXPECT_EQ(limited(R"(pressure-limiter="360 bar")"), "pass 404 of 450");
    EXPECT_EQ(limited(R"(pressure-limiter="370 bar")"), "fail warning 10 of 20");
    EXPECT_EQ(limited(R"(pressure-limiter="370 bar" working-pressure="300 bar")"),
              "pass 404 of 450");
}

// An error says more than a warning, a warning more than a figure that is missing.
TEST(ReliefSetting, TheWorstOfBoth) {
    EXPECT_EQ(setting_of(with({rated("HA", "400 bar"), working("370 bar")}), "R2"),
              "fail error 404 of 400");
    EXPECT_EQ(setting_of(with({working("370 bar")}), "R2"), "fail warning 10 of 20");
    EXPECT_EQ(setting_of(with({rated("HA", "400 bar")}), "R2"), "fail error 404 of 400");
    EXPECT_EQ(setting_of(with({}), "R2"),
              "inconclusive P1.working-pressure HA.rating P1.max-pressure M1.max-pressure");
}

// At rest the reliefs stand on sections, in motion on the sides; they are asked once.
TEST(ReliefSetting, OnSections) {
    const std::string asked = edited(
        reversing_drive(), {working("230 bar"), rated("HA", "270 bar"), rated("HB", "260 bar")});
    EXPECT_EQ(setting_of(circuit_from(asked), "R2"), "pass 270 of 270");
    EXPECT_EQ(setting_of(circuit_from(asked), "R3"), "fail error 270 of 260");
}

// A relief whose outlet a valve open both ways leads back to its inlet limits nothing; a sequence
// valve opens to another consumer.
TEST(ReliefSetting, OnlyReliefsThatLimit) {
    const Edit at_inlet{"P1.A M1.A R2.P", "P1.A M1.A R2.P X1.P"};
    EXPECT_EQ(setting_of(complete({at_inlet,
                                   {"X1.P", "X1.P X2.A"},
                                   added(R"(<relief-valve id="X1" setting="30 bar"/>)"
                                         R"(<shut-off-valve id="X2" locked="yes"/>)"
                                         R"(<line id="N1" joins="X1.T X2.B"/>)")}),
                         "X1"),
              "none");
    const auto into_other_side = [&](const std::string& kind, const std::string& outlet) {
        return setting_of(complete({at_inlet,
                                    rated("HA", "450 bar"),
                                    {"P1.B M1.B", "P1.B M1.B " + outlet},
                                    added("<" + kind + R"( id="X1" setting="300 bar"/>)")}),
                          "X1");
    };
    EXPECT_EQ(into_other_side("relief-valve", "X1.T"), "fail warning -60 of 20");
    EXPECT_EQ(into_other_side("sequence-valve", "X1.A"), "none");
}

TEST(ReliefSetting, NothingToAskWithoutOne) {
    EXPECT_EQ(verdicts_of(with({{"M1.A R2.P R3.T", "M1.A"},
                                {"M1.B R3.P R2.T", "M1.B"},
                                {"P2.P R1.P F1.A", "P2.P F1.A"},
                                {"R1.T T1.R", "T1.R"}}),
                          "relief-setting"),
              "relief-setting circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
