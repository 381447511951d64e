// Circuits that differ from the sound drive in one thing. What is expected follows by hand from the
// design's words: loop pressure reaches the charge line other than through a relief.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const std::string b_passes = std::string("charge-backflow side:P1.B pass") + all_running;

std::string a_is(const std::string& outcome) {
    return "charge-backflow side:P1.A " + outcome + all_running;
}

TEST(ChargeBackflow, ChecksShutTheSidesOff) {
    EXPECT_EQ(verdicts_of(with({}), "charge-backflow"), a_is("pass") + b_passes);
}

TEST(ChargeBackflow, AReliefIntoTheChargeLineIsNone) {
    EXPECT_EQ(verdicts_of(with({{"R2.P R3.T C1.B", "R2.P C1.B"},
                                {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A R3.T\""}}),
                          "charge-backflow"),
              a_is("pass") + b_passes);
}

TEST(ChargeBackflow, CheckTurnedRound) {
    const Circuit circuit = with({{"R3.T C1.B V1.A", "R3.T C1.A V1.A"},
                                  {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.B C2.A\""}});
    EXPECT_EQ(verdicts_of(circuit, "charge-backflow"), a_is("fail error") + b_passes);
    EXPECT_EQ(witness_of(circuit, "charge-backflow", "side:P1.A"), "path: P1.A>HA C1.A>B");
}

TEST(ChargeBackflow, AnOpenValveBesideTheCheckButNoOrifice) {
    const auto beside = [](const std::string& part) {
        return verdicts_of(with({{"C1.B V1.A", "C1.B V1.A H1.B"},
                                 {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A H1.A\""},
                                 added(part)}),
                           "charge-backflow");
    };
    EXPECT_EQ(beside(R"(<shut-off-valve id="H1" position="closed"/>)"), a_is("pass") + b_passes);
    // What a restriction lets back is a matter of amount.
    EXPECT_EQ(beside(R"(<orifice id="H1" bore="1 mm"/>)"), a_is("pass") + b_passes);
    EXPECT_NE(beside(R"(<shut-off-valve id="H1"/>)").find("side:P1.A fail error"),
              std::string::npos);
}

// Opened by the other side's pressure it lets the low side out; opened by its own, the high one.
TEST(ChargeBackflow, CheckThatAPilotOpens) {
    const auto opened_from = [](const std::string& joins) {
        return verdicts_of(
            with({{R"(<check-valve id="C1"/>)", R"(<check-valve id="C1" pilot="opens"/>)"},
                  {joins, joins + " C1.X"}}),
            "charge-backflow");
    };
    EXPECT_EQ(opened_from("P1.B M1.B"), a_is("pass") + b_passes);
    EXPECT_EQ(opened_from("P1.A M1.A"),
              "charge-backflow side:P1.A fail error drive-forward overrun-reverse hold "
              "lost-signal\n" +
                  b_passes);
}

TEST(ChargeBackflow, NotAskedWithoutChargeOil) {
    EXPECT_EQ(verdicts_of(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}}), "charge-backflow"),
              a_is("not-applicable") + "charge-backflow side:P1.B not-applicable" + all_running);
}

}  // namespace
}  // namespace loopwright
