// Two motors in series. What is expected follows by hand from the design's words.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::expect_at_frontier;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const std::string moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";

/// M1 and M2 in series, with more parts; `tee` is joined with the line between them.
Circuit in_series(const std::string& displacement, const std::string& tee,
                  const std::string& parts) {
    const auto charged = [&](const std::string& port) {
        return parts.find("id=\"" + port.substr(0, 2) + '"') == std::string::npos ? "" : ' ' + port;
    };
    return with({{"joins=\"P1.B M1.B", "joins=\"P1.B M2.B"},
                 {"joins=\"F1.B C1.A C2.A\"",
                  "joins=\"F1.B C1.A C2.A" + charged("C9.A") + charged("R9.T") + '"'},
                 added("<motor id=\"M2\" " + displacement + R"(/><load id="D2"/>
                     <shaft id="W3" joins="M2 D2"/><line id="HC" joins="M1.B M2.A )" +
                       tee + "\"/>" + parts)});
}
const std::string check = R"(<check-valve id="C9"/>)";
const std::string relief = R"(<relief-valve id="R9" setting="300 bar"/>)";

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "intermediate-side"); }

TEST(IntermediateSide, FedAndLimited) {
    const Circuit circuit = in_series("", "C9.B R9.P", check + relief);
    EXPECT_EQ(verdict(circuit), "intermediate-side side:M1.B pass" + moving);
    EXPECT_EQ(witness_of(circuit, "intermediate-side", "side:M1.B"), "path: M1.B>HC R9.P>T");
}

TEST(IntermediateSide, NotFed) {
    EXPECT_EQ(verdict(in_series("", "R9.P", relief)),
              "intermediate-side side:M1.B fail error" + moving);
}

TEST(IntermediateSide, NotLimited) {
    const Circuit circuit = in_series("", "C9.B", check);
    EXPECT_EQ(verdict(circuit), "intermediate-side side:M1.B fail error" + moving);
    expect_at_frontier(witness_of(circuit, "intermediate-side", "side:M1.B"), "M1.B>A");
}

TEST(IntermediateSide, BehindAValveThatSomebodyCanShut) {
    const auto valve = [](const std::string& locked) {
        return in_series("", "C9.B H9.A",
                         check + relief + "<shut-off-valve id=\"H9\" " + locked +
                             R"(/><line id="G7" joins="H9.B R9.P"/>)");
    };
    EXPECT_EQ(verdict(valve("")), "intermediate-side side:M1.B fail error" + moving);
    EXPECT_EQ(verdict(valve(R"(locked="yes")")), "intermediate-side side:M1.B pass" + moving);
}

// M1 has 80 cm3/rev.
TEST(IntermediateSide, MotorsOfOneSizeOnSeparateWheels) {
    EXPECT_EQ(verdict(in_series(R"(displacement="80 cm3/rev")", "", "")),
              "intermediate-side side:M1.B fail warning" + moving);
    EXPECT_EQ(verdict(in_series(R"(displacement="90 cm3/rev")", "", "")),
              "intermediate-side side:M1.B fail error" + moving);
}

TEST(IntermediateSide, NothingToAskOfOneMotor) {
    EXPECT_EQ(verdict(with({})), "intermediate-side circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
