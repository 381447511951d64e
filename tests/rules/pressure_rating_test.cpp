// Circuits that differ from the sound drive in one thing. What is expected follows by hand from the
// design's words on ceilings: charge line = its relief; low side = charge line; high side = relief
// over what it discharges into.
#include <sstream>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::edited;
using testing::sound_drive;
using testing::with;
using testing::witness_of;

/// "pass 404 of 450" in bar, of one subject; "-" for a figure that is not there.
std::string rating_of(const Circuit& circuit, std::string_view subject) {
    constexpr double bar = 1e5;
    const auto figure = [](const std::optional<Measure>& measure) {
        return measure ? fmt::format("{:.4g}", measure->si / bar) : std::string("-");
    };
    for (const Verdict& verdict : check(circuit, rules()).verdicts) {
        if (verdict.rule->id != "pressure-rating" || verdict.subject.id != subject) continue;
        std::string text = fmt::format("{} {} of {}", name(verdict.outcome),
                                       verdict.figures ? figure(verdict.figures->measured) : "-",
                                       verdict.figures ? figure(verdict.figures->required) : "-");
        for (const std::string_view missing : verdict.missing) text += fmt::format(" {}", missing);
        return text;
    }
    return "none";
}

const Edit rated_side{R"(<line id="HA")", R"(<line id="HA" rating="450 bar")"};
const Edit rated_charge{R"(<line id="G1")", R"(<line id="G1" rating="60 bar")"};

// 380 bar over a low side at 24 bar.
TEST(PressureRating, ReliefIntoTheOtherSide) {
    const Circuit circuit = with({rated_side, rated_charge});
    EXPECT_EQ(rating_of(circuit, "HA"), "pass 404 of 450");
    EXPECT_EQ(rating_of(circuit, "G1"), "pass 24 of 60");
    EXPECT_EQ(witness_of(circuit, "pressure-rating", "HA"), "set: HA R2");
}

// The flushing valve takes oil out of the low side at 18 bar, but what limits it is the charge
// line.
TEST(PressureRating, WhatDrainsFreelyNeedsNoRating) {
    const Circuit circuit = with({});
    for (const char* line : {"S1", "G3", "L1", "L2"})
        EXPECT_EQ(rating_of(circuit, line), "pass 0 of -") << line;
    EXPECT_EQ(rating_of(circuit, "FL"), "inconclusive 18 of - FL.rating");
    EXPECT_EQ(rating_of(circuit, "K1"), "pass 0 of -");
}

/// What the rule does not pass, of the sound drive with every rating, one of them to choose.
std::string not_rated(const std::string& of_the_charge_filter) {
    const auto rated = [](const std::string& part, const std::string& rating) {
        return Edit{part + '"', part + "\" " + rating};
    };
    const Circuit circuit =
        with({rated_side, rated_charge, rated(R"(<line id="HB)", R"(rating="450 bar")"),
              rated(R"(<line id="G2)", R"(rating="60 bar")"),
              rated(R"(<line id="FL)", R"(rating="60 bar")"),
              rated(R"(<pump id="P1)", R"(max-pressure="450 bar")"),
              rated(R"(<pump id="P2)", R"(max-pressure="60 bar")"),
              rated(R"(<motor id="M1)", R"(max-pressure="450 bar")"),
              rated(R"(<filter id="F1)", of_the_charge_filter)});
    std::istringstream all(testing::verdicts_of(circuit, "pressure-rating"));
    std::string found;
    for (std::string line; std::getline(all, line);)
        if (line.find(" pass") == std::string::npos) found += line + '\n';
    return found;
}

TEST(PressureRating, OneFilterTooWeak) {
    EXPECT_EQ(not_rated(R"(max-pressure="60 bar")"), "");
    EXPECT_EQ(not_rated(R"(max-pressure="20 bar")"),
              std::string("pressure-rating F1 fail error") + testing::all_running);
}

TEST(PressureRating, MissingRating) {
    EXPECT_EQ(rating_of(with({}), "HA"), "inconclusive 404 of - HA.rating");
    EXPECT_EQ(rating_of(with({}), "P1"), "inconclusive 404 of - P1.max-pressure");
}

TEST(PressureRating, TooHighASettingOrFullFlow) {
    EXPECT_EQ(rating_of(with({rated_side,
                              {R"(id="R2" setting="380 bar")", R"(id="R2" setting="430 bar")"}}),
                        "HA"),
              "fail 454 of 450");
    EXPECT_EQ(rating_of(with({rated_side,
                              {R"(id="R2" setting="380 bar")",
                               R"(id="R2" setting="380 bar" full-flow-pressure="425 bar")"}}),
                        "HA"),
              "pass 449 of 450");
}

// A spring chamber that drains outside counts from there.
TEST(PressureRating, SpringChamberDrainedOutside) {
    EXPECT_EQ(
        rating_of(
            with({rated_side,
                  {R"(id="R2" setting="380 bar")", R"(id="R2" setting="380 bar" drain="external")"},
                  {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                  added(R"(<line id="Y1" joins="R2.Y T1.E"/>)")}),
            "HA"),
        "pass 380 of 450");
}

TEST(PressureRating, MissingSetting) {
    // Whatever the charge relief is set to, 60 bar are not known to be enough.
    EXPECT_EQ(rating_of(with({rated_charge, {R"( setting="24 bar")", ""}}), "G1"),
              "inconclusive - of - R1.setting");
    // The crossport relief alone is more than a line for 100 bar bears, whatever the charge relief.
    EXPECT_EQ(rating_of(with({{R"(<line id="HA")", R"(<line id="HA" rating="100 bar")"},
                              {R"( setting="24 bar")", ""}}),
                        "HA"),
              "fail 380 of 100");
}

// Nothing limits the charge pump.
TEST(PressureRating, NoRelief) {
    const Circuit circuit =
        with({rated_charge, {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P F1.A\""}});
    EXPECT_EQ(rating_of(circuit, "G1"), "fail - of -");
}

TEST(PressureRating, ABrakeBehindAReducingValve) {
    const auto brake = [](const std::string& bears) {
        return rating_of(with({{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A X1.P\""},
                               added(R"(<reducing-valve id="X1" setting="15 bar"/>
                      <brake id="B1" max-pressure=")" +
                                     bears + R"("/>
                      <line id="Z1" joins="X1.A B1.Z"/>)")}),
                         "B1");
    };
    EXPECT_EQ(brake("20 bar"), "pass 15 of 20");
    EXPECT_EQ(brake("14 bar"), "fail 15 of 14");
}

// Drained inside, the charge pump leaks into its inlet; while it turns it draws that in. One that
// stands does not, and a hand valve keeps the oil there.
TEST(PressureRating, LeakageIntoTheSuctionOfAPump) {
    const auto suction = [](const std::string& turned) {
        return rating_of(
            with({{"joins=\"T1.S P2.S\"", "joins=\"T1.S X1.A\""},
                  {R"(<line id="G1" joins="P2.P)", R"(<line id="G1" joins="P2.P P3.P)"},
                  {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                  {"E1 P1 P2", "E1 P1 P2" + turned},
                  added(R"(<line id="S2" joins="X1.B P2.S"/><shut-off-valve id="X1"/>
                           <pump id="P3"/><shut-off-valve id="X3"/>
                           <line id="S3" joins="T1.E X3.A"/>
                           <line id="S4" joins="X3.B P3.S" rating="20 bar"/>)")}),
            "S4");
    };
    EXPECT_EQ(suction(" P3"), "pass 0 of 20");
    EXPECT_EQ(suction(""), "fail 24 of 20");
}

// Nothing but reservoirs joins the lines of its halves; the one that sees more decides, whichever
// comes first.
TEST(PressureRating, BothHalvesOfACouplingThatIsApart) {
    const auto coupling = [](const std::string& on_charge, const std::string& on_other,
                             const std::string& setting) {
        return rating_of(
            with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.A X1." + on_charge + '"'},
                  {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/><port id="F"/>)"},
                  {"E1 P1 P2", "E1 P1 P2 P3"},
                  added(R"(<quick-coupling id="X1" joined="no" max-pressure="50 bar"/>
                           <pump id="P3"/><relief-valve id="R9")" +
                        setting + R"(/><line id="S3" joins="T1.E P3.S"/>
                           <line id="N1" joins="P3.P R9.P X1.)" +
                        on_other + R"("/><line id="N2" joins="R9.T T1.F"/>)")}),
            "X1");
    };
    for (const auto& [one, other] : {std::pair{"A", "B"}, std::pair{"B", "A"}}) {
        EXPECT_EQ(coupling(one, other, R"( setting="50 bar")"), "pass 50 of 50");
        EXPECT_EQ(coupling(one, other, R"( setting="20 bar")"), "pass 24 of 50");
        EXPECT_EQ(coupling(one, other, R"( setting="60 bar")"), "fail 60 of 50");
        EXPECT_EQ(coupling(one, other, ""), "inconclusive - of - R9.setting");
    }
}

TEST(PressureRating, NothingToAskWithoutAnyWay) {
    EXPECT_EQ(
        testing::verdicts_of(circuit_from(R"(<circuit format="1"><engine id="E1"/></circuit>)"),
                             "pressure-rating"),
        "pressure-rating circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
