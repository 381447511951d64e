// Half the charge flow per minute, 30 s: US Army TM 5-3895-346-14 (published values C-25). At
// 2400 rpm the sound drive's 18 cm3/rev are 43.2 L/min, so 21.6 L.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit rated{R"(<engine id="E1"/>)", R"(<engine id="E1" speed="2400 rpm"/>)"};

Edit volume(const std::string& quantity) {
    return {R"(<reservoir id="T1" )", R"(<reservoir id="T1" volume=")" + quantity + "\" "};
}

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "reservoir-size");
}

TEST(ReservoirSize, HalfTheChargeFlowPerMinute) {
    EXPECT_EQ(judged({rated, volume("21.6 L")}), "reservoir-size T1 pass\n");
    EXPECT_EQ(judged({rated, volume("21.5 L")}), "reservoir-size T1 fail warning\n");
    EXPECT_EQ(witness_of(with({rated, volume("60 L")}), "reservoir-size", "T1"), "set: T1 P2");
}

TEST(ReservoirSize, FiguresAreMissing) {
    EXPECT_EQ(judged({}), "reservoir-size T1 inconclusive needs T1.volume needs E1.speed\n");
    EXPECT_EQ(judged({rated, volume("60 L"), {R"( displacement="18 cm3/rev")", ""}}),
              "reservoir-size T1 inconclusive needs P2.displacement\n");
}

TEST(ReservoirSize, AGearboxChangesTheSpeed) {
    const Edit apart{R"(<shaft id="W1" joins="E1 P1 P2"/>)",
                     R"(<shaft id="W1" joins="E1 P1 X1.in"/><shaft id="W3" joins="X1.out P2"/>)"};
    EXPECT_EQ(judged({rated, volume("10.8 L"), apart, added(R"(<gearbox id="X1" ratio="2"/>)")}),
              "reservoir-size T1 pass\n");
    EXPECT_EQ(judged({rated, volume("10.7 L"), apart, added(R"(<gearbox id="X1" ratio="2"/>)")}),
              "reservoir-size T1 fail warning\n");
    EXPECT_EQ(judged({rated, volume("10.8 L"), apart, added(R"(<gearbox id="X1"/>)")}),
              "reservoir-size T1 inconclusive needs X1.ratio\n");
}

// 3000 rpm of the faster one are 54 L/min, so 27 L, whichever the file names first.
TEST(ReservoirSize, TheFasterOfTwoOnOneShaft) {
    for (const std::string movers : {"E1 E2", "E2 E1"}) {
        const Edit both{"joins=\"E1 P1 P2\"", "joins=\"" + movers + " P1 P2\""};
        const Edit second = added(R"(<electric-motor id="E2" speed="3000 rpm"/>)");
        EXPECT_EQ(judged({rated, volume("27 L"), both, second}), "reservoir-size T1 pass\n");
        EXPECT_EQ(judged({rated, volume("26.9 L"), both, second}),
                  "reservoir-size T1 fail warning\n");
        EXPECT_EQ(judged({rated, volume("27 L"), both, added(R"(<electric-motor id="E2"/>)")}),
                  "reservoir-size T1 inconclusive needs E2.speed\n");
    }
}

// Where the valve vents the charge line, P2 feeds nothing; it does in the other position.
TEST(ReservoirSize, ThePumpChargesInOnePosition) {
    const std::string open = R"(<position id="open" rest="yes"><path from="G" to="T"/></position>)";
    const std::string shut = R"(<position id="shut"></position>)";
    for (const std::string& positions : {open + shut, shut + open}) {
        const Edit valve =
            added(R"(<directional-valve id="V9"><port id="G"/><port id="T"/>)" + positions +
                  R"(</directional-valve><line id="X9" joins="V9.T T1.X"/>)");
        EXPECT_EQ(judged({rated,
                          volume("21.6 L"),
                          {"F1.B C1.A C2.A", "F1.B C1.A C2.A V9.G"},
                          {R"(<port id="S"/>)", R"(<port id="S"/><port id="X"/>)"},
                          valve}),
                  "reservoir-size T1 pass\n");
    }
}

TEST(ReservoirSize, NotAskedWhereNoChargePumpDraws) {
    EXPECT_EQ(judged({rated, volume("60 L"), {"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}),
              "reservoir-size circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
