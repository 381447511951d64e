// One-way filters and the flow through them.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const std::string moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
const Edit one_way{R"(<filter id="F1")", R"(<filter id="F1" one-way="yes")"};

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "filter-reversal"); }

/// A filter in the working line at port A of the pump, the make-up check and the rest behind it.
Circuit in_the_loop(const std::string& filter) {
    return with({{"joins=\"P1.A M1.A", "joins=\"F9.B M1.A"},
                 added(filter + R"(<line id="HP" joins="P1.A F9.A"/>)")});
}

TEST(FilterReversal, InTheChargeLine) {
    const Circuit circuit = with({one_way});
    // In neutral and in hold nothing takes the oil: no verdict.
    EXPECT_EQ(verdict(circuit), "filter-reversal F1 pass" + moving);
    EXPECT_EQ(witness_of(circuit, "filter-reversal", "F1").substr(0, 22), "path: P2.P>G1 F1.A>B G");
}

TEST(FilterReversal, TurnedRound) {
    const Circuit circuit = with({one_way,
                                  {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.B\""},
                                  {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.A C1.A C2.A\""}});
    EXPECT_EQ(verdict(circuit), "filter-reversal F1 fail error" + moving);
    EXPECT_EQ(witness_of(circuit, "filter-reversal", "F1").substr(0, 22), "path: P2.P>G1 F1.B>A G");
}

TEST(FilterReversal, InALineThatReverses) {
    const Circuit circuit = in_the_loop(R"(<filter id="F9" one-way="yes"/>)");
    EXPECT_EQ(verdict(circuit), "filter-reversal F9 fail error drive-reverse overrun-reverse\n");
    EXPECT_EQ(verdict(in_the_loop(R"(<filter id="F9"/>)")),
              "filter-reversal circuit not-applicable\n");
}

TEST(FilterReversal, InASuctionLine) {
    const auto suction = [](const std::string& in, const std::string& out) {
        return with({{R"(<line id="S1" joins="T1.S P2.S"/>)",
                      R"(<filter id="F9" one-way="yes"/><line id="S1" joins="T1.S F9.)" + in +
                          R"("/><line id="S2" joins="P2.S F9.)" + out + R"("/>)"}});
    };
    EXPECT_EQ(verdict(suction("A", "B")), std::string("filter-reversal F9 pass") + all_running);
    const Circuit turned = suction("B", "A");
    EXPECT_EQ(verdict(turned), std::string("filter-reversal F9 fail error") + all_running);
    EXPECT_EQ(witness_of(turned, "filter-reversal", "F9"), "path: T1 S1 F9.B>A S2>P2.S");
}

}  // namespace
}  // namespace loopwright
