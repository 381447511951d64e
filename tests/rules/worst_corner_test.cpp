// Numeric rules at the worst corner of declared tolerances. What is expected is worked out by hand,
// or by going through the corners one circuit at a time, each written with the figures moved.
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/tolerances.h>
#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/generated_circuit.h>

namespace loopwright {
namespace {

using testing::added;
using testing::at_work;
using testing::circuit_from;
using testing::Edit;
using testing::edited;
using testing::sound_drive;
using testing::with;

/// The verdict of a rule on a subject, kept with its result.
struct Told {
    Outcome outcome = Outcome::not_applicable;
    Level level = Level::note;
    double measured = 0.0;
    std::string message;
};

Told told(const Circuit& circuit, std::string_view rule, std::string_view subject) {
    const Rule* const only[] = {find_rule(rule)};
    const CheckResult result = check(circuit, only);
    for (const Verdict& verdict : result.verdicts)
        if (verdict.subject.id == subject)
            return {verdict.outcome, verdict.level,
                    verdict.figures == nullptr ? 0.0 : verdict.figures->measured.si,
                    std::string(verdict.message)};
    ADD_FAILURE() << "no verdict of " << rule << " on " << subject;
    return {};
}

Edit tolerance(const std::string& id, const std::string& setting, const std::string& off) {
    return {"id=\"" + id + "\" setting=\"" + setting + '"',
            "id=\"" + id + "\" setting=\"" + setting + "\" tolerance=\"" + off + '"'};
}

constexpr double bar = 1e5;

// 24 less 18 bar leave 6 bar, of which 2 are asked for; 22 less 20 bar leave 2, 21.9 less 20.1 do
// not.
TEST(WorstCorner, TwoSettingsAgainstOneAnother) {
    const auto at = [](const std::string& charge, const std::string& flushing) {
        return told(with({tolerance("R1", "24 bar", charge), tolerance("R4", "18 bar", flushing)}),
                    "flushing-setting", "R4");
    };
    const Told fits = at("2 bar", "2 bar");
    EXPECT_EQ(fits.outcome, Outcome::pass);
    EXPECT_NEAR(fits.measured, 2 * bar, 1e-3);
    EXPECT_NE(fits.message.find("(worst corner of the tolerances: R1.setting 22 bar, R4.setting "
                                "20 bar)"),
              std::string::npos)
        << fits.message;
    EXPECT_EQ(at("2.1 bar", "2.1 bar").outcome, Outcome::fail);
    EXPECT_EQ(at("2.1 bar", "2.1 bar").level, Level::warning);
    // 24 less 4 is not above 18 and 2: nothing flows.
    EXPECT_EQ(at("4 bar", "2 bar").level, Level::error);
    EXPECT_EQ(told(with({}), "flushing-setting", "R4").message.find("corner"), std::string::npos);
}

// Either alone changes nothing, as the lower one limits the side: 380 and 10 bar, on 24 bar.
TEST(WorstCorner, TwoValvesOfWhichTheLowerCounts) {
    const auto rated = [](const std::string& off) {
        return told(
            with(
                {tolerance("R2", "380 bar", off),
                 {R"(<line id="HA" joins="P1.A M1.A R2.P R3.T C1.B V1.A"/>)",
                  R"(<line id="HA" rating="408 bar" joins="P1.A M1.A R2.P R3.T C1.B V1.A R5.P"/>)"},
                 {R"(<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>)",
                  R"(<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B R5.T"/>)"},
                 added(R"(<relief-valve id="R5" setting="380 bar" tolerance="10 bar"/>)")}),
            "pressure-rating", "HA");
    };
    EXPECT_EQ(rated("0 bar").outcome, Outcome::pass);
    const Told both = rated("10 bar");
    EXPECT_EQ(both.outcome, Outcome::fail);
    EXPECT_NE(both.message.find("R2.setting 390 bar, R5.setting 390 bar"), std::string::npos)
        << both.message;
    // The lower of the two, 382 and 24 bar, is borne.
    EXPECT_EQ(rated("2 bar").outcome, Outcome::pass);
}

// 2400 rpm x 71 (1 + 2 %) / 80 (1 - 2 %) are 2216.9 rpm.
TEST(WorstCorner, FiguresAtWork) {
    const auto within = [](const std::string& most) {
        return told(
            at_work({{R"(low-side-pressure="12 bar")", R"(low-side-pressure="12 bar" )"},
                     {"/>\n<pump id=\"P2\"",
                      R"(><tolerance of="displacement" value="2 %"/></pump> <pump id="P2")"},
                     {R"(max-speed="4500 rpm")", R"(max-speed=")" + most + R"( rpm")"},
                     {"/>\n<load id=\"D1\"",
                      R"(><tolerance of="displacement" value="2 %"/></motor> <load id="D1")"}}),
            "motor-overspeed", "M1");
    };
    EXPECT_EQ(within("2217").outcome, Outcome::pass);
    EXPECT_EQ(within("2216").outcome, Outcome::fail);
    EXPECT_NEAR(within("2217").measured * 30.0 / std::numbers::pi, 2400.0 * 71.0 * 1.02 / 78.4,
                1e-3);
    EXPECT_NE(within("2217").message.find("P1.displacement 72.42 cm3/rev, M1.displacement 78.4 "),
              std::string::npos)
        << within("2217").message;
}

TEST(WorstCorner, WhatDoesNotMatterIsNotTold) {
    const Circuit circuit = with({tolerance("R2", "380 bar", "10 bar")});
    const std::string as_given = told(with({}), "flushing-setting", "R4").message;
    EXPECT_EQ(told(circuit, "flushing-setting", "R4").message, as_given);
}

// R2 limits what it limits whatever R3 does, which the pump on both sides hangs on.
TEST(WorstCorner, OnlyWhatMattersIsTold) {
    const Circuit circuit = with(
        {tolerance("R1", "24 bar", "1 bar"),
         tolerance("R2", "380 bar", "10 bar"),
         tolerance("R3", "380 bar", "10 bar"),
         {R"(<pump id="P1")", R"(<pump id="P1" max-pressure="500 bar" working-pressure="300 bar")"},
         {R"(<line id="HA" )", R"(<line id="HA" rating="450 bar" )"},
         {R"(<line id="HB" )", R"(<line id="HB" rating="450 bar" )"}});
    const Told line = told(circuit, "pressure-rating", "HA");
    EXPECT_NE(line.message.find("tolerances: R1.setting 25 bar, R2.setting 390 bar)"),
              std::string::npos)
        << line.message;
}

// A spring that is set 10 bar too high holds as much more at full flow: 410 and 10, on 24 bar.
TEST(WorstCorner, FullFlowPressureMovesWithTheSetting) {
    const auto rated = [](const std::string& rating) {
        return told(
                   with(
                       {{R"(<relief-valve id="R2" setting="380 bar"/>)",
                         R"(<relief-valve id="R2" setting="380 bar" tolerance="10 bar" full-flow-pressure="410 bar"/>)"},
                        {R"(<line id="HA" )", R"(<line id="HA" rating=")" + rating + R"(" )"}}),
                   "pressure-rating", "HA")
            .outcome;
    };
    EXPECT_EQ(rated("444 bar"), Outcome::pass);
    EXPECT_EQ(rated("443 bar"), Outcome::fail);
}

// A device that nobody knows the inside of takes nothing from it, and gives nothing.
TEST(WorstCorner, BesideAnUnknownInside) {
    const Edit device =
        added(R"(<device id="X9" inside="unknown"><port id="a"/><port id="b"/></device>
                                 <line id="Y1" joins="X9.a X9.b"/>)");
    const Told beside =
        told(with({tolerance("R1", "24 bar", "1 bar"), device}), "flushing-setting", "R4");
    EXPECT_EQ(beside.outcome, Outcome::pass);
    EXPECT_NEAR(beside.measured, 5 * bar, 1e-3);
    EXPECT_NE(beside.message.find("R1.setting 23 bar"), std::string::npos) << beside.message;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
    return text;
}

// What nothing joins is moved at once: of three drives no more runs are made than of one.
TEST(WorstCorner, DrivesApartAreMovedAtOnce) {
    const auto runs = [](unsigned drives) {
        std::string text = testing::many_loops(15 * drives);
        const Circuit as_given = circuit_from(text);
        for (const char* setting : {R"(setting="24 bar")", R"(setting="18 bar")"})
            text = replaced(text, setting, std::string(setting) + R"( tolerance="3 bar")");
        const Circuit circuit = circuit_from(text);
        const Told last = told(circuit, "flushing-setting", fmt::format("U{}", drives - 1));
        EXPECT_EQ(last.outcome, Outcome::fail);
        EXPECT_NEAR(last.measured, 0.0, 1e-3);
        const std::string which = fmt::format(
            "(worst corner of the tolerances: R{0}.setting 21 bar, U{0}.setting 21 bar)",
            drives - 1);
        EXPECT_NE(last.message.find(which), std::string::npos) << last.message;
        return static_cast<double>(check(circuit, rules()).work) /
               static_cast<double>(check(as_given, rules()).work);
    };
    EXPECT_NEAR(runs(3), runs(1), 0.1);
    EXPECT_GT(runs(1), 4.0);
}

TEST(Tolerances, BothSpellingsAndTheirRange) {
    const Circuit circuit = with(
        {{R"(<relief-valve id="R4" setting="18 bar"/>)",
          R"(<relief-valve id="R4" setting="18 bar"><tolerance of="setting" value="5 %"/></relief-valve>)"},
         {R"(<cooler id="K1" bypass="1.5 bar"/>)",
          R"(<cooler id="K1" bypass="1.5 bar"><tolerance of="bypass" value="2 bar"/></cooler>)"},
         tolerance("R1", "24 bar", "1 bar"),
         tolerance("R2", "380 bar", "0 bar")});
    const auto all = tolerances_of(circuit);
    ASSERT_EQ(all.size(), 3U);
    std::map<std::string, const Toleranced*> by_name;
    for (const Toleranced& one : all)
        by_name[fmt::format("{}.{}", circuit.components[one.component].path, one.spec->name)] =
            &one;
    EXPECT_NEAR(by_name.at("R1.setting")->at(1), 25 * bar, 1e-6);
    EXPECT_NEAR(by_name.at("R4.setting")->at(-1), 17.1 * bar, 1e-6);
    EXPECT_EQ(by_name.at("K1.bypass")->at(-1), 0.0);  // no less than a file may say
    EXPECT_EQ(by_name.at("K1.bypass")->at(0), 1.5 * bar);
    const Circuit moved = at_corner(circuit, all, Corner(all.size(), 1));
    for (const Passage& passage : moved.passages) {
        if (moved.components[passage.component].path != "R1") continue;
        EXPECT_NEAR(passage.opening, 25 * bar, 1e-6);
    }
    for (const Toleranced& one : all)
        EXPECT_EQ(*moved.figure(moved.components[one.component], one.spec->name), one.at(1));
}

/// What a rule says of a subject, as bad as it gets.
struct Worth {
    int rank = 0;
    double off = 0.0;
};

std::map<std::string, Worth> worths(const Circuit& circuit) {
    std::map<std::string, Worth> all;
    const CheckResult result = check(circuit, rules());
    for (const Verdict& verdict : result.verdicts) {
        Worth worth{.rank = 4 * static_cast<int>(verdict.outcome)};
        if (verdict.outcome == Outcome::fail) worth.rank += static_cast<int>(verdict.level);
        if (const Figures* const figures = verdict.figures; figures != nullptr && figures->margin &&
                                                            figures->required &&
                                                            std::abs(figures->required->si) > 1e-9)
            worth.off = -figures->margin->si / std::abs(figures->required->si);
        all[fmt::format("{} {}", verdict.rule->id, verdict.subject.id)] = worth;
    }
    return all;
}

/// A relief valve's setting, bar.
struct Setting {
    std::string id;
    int bar = 0;
    int off = 0;
};

/// The drive at work with a second relief valve beside R2. No valve has a full-flow pressure.
const std::string& with_two_on_a_side() {
    static const std::string xml = [] {
        std::string text = testing::drive_at_work();
        const std::string full = R"( full-flow-pressure="410 bar" full-flow="200 L/min")";
        for (auto at = text.find(full); at != std::string::npos; at = text.find(full))
            text.erase(at, full.size());
        return edited(text, {{"V1.A\"", "V1.A R5.P\""},
                             {"V1.B\"", "V1.B R5.T\""},
                             added(R"(<relief-valve id="R5" setting="385 bar"/>)")});
    }();
    return xml;
}

std::string written(const std::vector<Setting>& settings, const std::vector<int>& sides,
                    bool tolerated) {
    std::vector<Edit> edits;
    for (std::size_t i = 0; i < settings.size(); ++i) {
        const auto& [id, bar, off] = settings[i];
        edits.emplace_back(fmt::format(R"(id="{}" setting="{} bar")", id, bar),
                           fmt::format(R"(id="{}" setting="{} bar" tolerance="{} bar")", id,
                                       bar + sides[i] * off, tolerated ? off : 0));
    }
    return edited(with_two_on_a_side(), edits);
}

/// Against every circuit with each setting as given or at either end, written so.
void expect_worst_of_all(const std::vector<Setting>& settings) {
    const std::vector<int> as_given(settings.size(), 0);
    const auto found = worths(circuit_from(written(settings, as_given, true)));
    std::map<std::string, Worth> worst;
    std::size_t count = 1;
    for (std::size_t i = 0; i < settings.size(); ++i) count *= 3;
    for (std::size_t combination = 0; combination < count; ++combination) {
        std::vector<int> sides;
        for (std::size_t i = 0, left = combination; i < settings.size(); ++i, left /= 3)
            sides.push_back(static_cast<int>(left % 3) - 1);
        for (const auto& [key, worth] : worths(circuit_from(written(settings, sides, false)))) {
            const auto [at, fresh] = worst.emplace(key, worth);
            if (!fresh && (worth.rank > at->second.rank ||
                           (worth.rank == at->second.rank && worth.off > at->second.off)))
                at->second = worth;
        }
    }
    const auto nominal = worths(circuit_from(written(settings, as_given, false)));
    std::size_t worse = 0;
    for (const auto& [key, worth] : found) {
        if (worth.rank != nominal.at(key).rank || worth.off > nominal.at(key).off + 1e-4) ++worse;
        EXPECT_EQ(worth.rank, worst.at(key).rank) << key;
        EXPECT_NEAR(worth.off, worst.at(key).off, 2e-6) << key;
    }
    EXPECT_GE(worse, 3U);
}

TEST(WorstCorner, IsTheWorstOfAllCorners) {
    expect_worst_of_all({{"R1", 24, 1}, {"R4", 18, 1}});
    expect_worst_of_all({{"R1", 24, 3}, {"R4", 18, 4}, {"R2", 380, 20}});
}

// More than are gone through in full.
TEST(WorstCorner, IsFoundDatumByDatum) {
    expect_worst_of_all(
        {{"R1", 24, 3}, {"R4", 18, 2}, {"R2", 380, 20}, {"R3", 380, 15}, {"R5", 385, 30}});
}

}  // namespace
}  // namespace loopwright
