// Ten per cent of the main pump: Machinery Lubrication, March-April 2016, p. 22 (10 to 15 %).
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string charged_by(const std::string& displacement) {
    return verdicts_of(with({{R"( displacement="18 cm3/rev")", displacement}}),
                       "charge-displacement");
}

// 18 and 7.1 of 71 cm3/rev are 25 and 10 %.
TEST(ChargeDisplacement, AgainstTheLoopPump) {
    EXPECT_EQ(charged_by(R"( displacement="18 cm3/rev")"),
              std::string("charge-displacement loop:P1 pass") + all_running);
    EXPECT_EQ(charged_by(R"( displacement="7.1 cm3/rev")"),
              std::string("charge-displacement loop:P1 pass") + all_running);
    EXPECT_EQ(charged_by(R"( displacement="7 cm3/rev")"),
              std::string("charge-displacement loop:P1 fail note") + all_running);
    EXPECT_EQ(witness_of(with({}), "charge-displacement", "loop:P1"), "set: P2 P1");
}

// 18 of 71 cm3/rev, and with the second charge pump behind its valve 36.
TEST(ChargeDisplacement, TheLeastShareIsTold) {
    const std::string open = R"(<position id="open"><path from="P" to="A"/></position>)";
    const std::string shut = R"(<position id="shut" rest="yes"><path from="P" to="T"/></position>)";
    for (const std::string& positions : {open + shut, shut + open}) {
        const Circuit circuit =
            with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P3\""},
                  {"P2.P R1.P F1.A", "P2.P R1.P F1.A V9.A"},
                  {R"(<port id="S"/>)", R"(<port id="S"/><port id="X"/><port id="Y"/>)"},
                  added(R"(<pump id="P3" displacement="18 cm3/rev"/><directional-valve id="V9">
                      <port id="P"/><port id="A"/><port id="T"/>)" +
                        positions + R"(</directional-valve><line id="X7" joins="T1.X P3.S"/>
                      <line id="X8" joins="P3.P V9.P"/><line id="X9" joins="V9.T T1.Y"/>)")});
        const Rule* const only[] = {find_rule("charge-displacement")};
        const CheckResult result = check(circuit, only);
        ASSERT_EQ(result.verdicts.size(), 1U);
        ASSERT_NE(result.verdicts[0].figures, nullptr);
        EXPECT_DOUBLE_EQ(result.verdicts[0].figures->measured.si, 18.0 / 71.0);
    }
}

TEST(ChargeDisplacement, Missing) {
    std::string states = all_running;
    states.pop_back();
    EXPECT_EQ(charged_by(""),
              "charge-displacement loop:P1 inconclusive" + states + " needs P2.displacement\n");
}

TEST(ChargeDisplacement, NothingToAskWhereNoPumpCharges) {
    EXPECT_EQ(verdicts_of(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), "charge-displacement"),
              "charge-displacement circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
