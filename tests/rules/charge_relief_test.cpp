// Circuits that differ from the sound drive in the relief valve of its charge line.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::expect_at_frontier;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "charge-relief"); }

const std::string pass = std::string("charge-relief loop:P1 pass") + all_running;
const std::string fail = std::string("charge-relief loop:P1 fail error") + all_running;

/// The relief behind a part at the pump's outlet.
Circuit behind(const std::string& part) {
    return with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P F1.A H1.A\""},
                 added(part + R"(<line id="G5" joins="H1.B R1.P"/>)")});
}

TEST(ChargeRelief, AtThePumpsOutlet) {
    EXPECT_EQ(verdict(with({})), pass);
    EXPECT_EQ(witness_of(with({}), "charge-relief", "loop:P1"), "path: P2>P G1 R1.P>T G3 T1");
}

TEST(ChargeRelief, None) {
    const Circuit circuit = with({{"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P F1.A\""},
                                  {R"(<relief-valve id="R1" setting="24 bar"/>)", ""},
                                  {R"(<line id="G3" joins="R1.T T1.R"/>)", ""},
                                  {R"(<port id="R"/>)", ""}});
    // The pump is blocked too, in neutral; that follows.
    EXPECT_EQ(findings_of(circuit), fail);
    expect_at_frontier(witness_of(circuit, "charge-relief", "loop:P1"), "F1.A>B");
}

TEST(ChargeRelief, BehindWhatCanClose) {
    const Circuit circuit = behind(R"(<shut-off-valve id="H1"/>)");
    EXPECT_EQ(verdict(circuit), fail);
    expect_at_frontier(witness_of(circuit, "charge-relief", "loop:P1"), "H1.A>B");
    EXPECT_EQ(verdict(behind(R"(<shut-off-valve id="H1" locked="yes"/>)")), pass);
    EXPECT_EQ(verdict(behind(R"(<check-valve id="H1"/>)")), fail);
    EXPECT_EQ(verdict(behind(R"(<cooler id="H1"/>)")), pass);
}

TEST(ChargeRelief, BehindAFilter) {
    EXPECT_EQ(verdict(behind(R"(<filter id="H1" clogging-indicator="visual"/>)")), fail);
    const Circuit bypassed = behind(R"(<filter id="H1" bypass="3 bar"/>)");
    EXPECT_EQ(verdict(bypassed), pass);
    EXPECT_EQ(witness_of(bypassed, "charge-relief", "loop:P1"),
              "path: P2>P G1 H1.A>B G5 R1.P>T G3 T1");
}

TEST(ChargeRelief, ItsOutletIsFree) {
    const auto into = [](const std::string& port, const std::string& parts) {
        return with({{R"(<line id="G3" joins="R1.T T1.R"/>)",
                      parts + R"(<line id="G3" joins="R1.T )" + port + R"("/>)"}});
    };
    EXPECT_EQ(verdict(with({{R"(<line id="G3" joins="R1.T T1.R"/>)", ""},
                            {"joins=\"R4.T M1.L", "joins=\"R1.T R4.T M1.L"}})),
              pass);
    EXPECT_EQ(verdict(into("C9.A", R"(<check-valve id="C9" opening-pressure="1 bar"/>
                  <line id="G5" joins="C9.B T1.R"/>)")),
              pass);
    EXPECT_EQ(
        verdict(into("H1.A", R"(<shut-off-valve id="H1"/><line id="G5" joins="H1.B T1.R"/>)")),
        fail);
    EXPECT_EQ(verdict(with({{R"(<line id="G3" joins="R1.T T1.R"/>)", ""},
                            {"joins=\"P1.A M1.A", "joins=\"R1.T P1.A M1.A"}})),
              fail);
}

TEST(ChargeRelief, EachSourceIsLimited) {
    const auto second = [](const std::string& relief) {
        return with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P4\""},
                     {"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A C9.B\""},
                     {"joins=\"T1.S P2.S\"", "joins=\"T1.S P2.S P4.S\""},
                     added(R"(<pump id="P4"/><filter id="F9"/><check-valve id="C9"/>
                         <line id="G5" joins="P4.P F9.A)" +
                           relief + R"("/><line id="G6" joins="F9.B C9.A"/>)")});
    };
    EXPECT_EQ(verdict(second("")), fail);
    EXPECT_EQ(verdict(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 P4\""},
                            {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.A P4.P\""},
                            {"joins=\"T1.S P2.S\"", "joins=\"T1.S P2.S P4.S\""},
                            added(R"(<pump id="P4"/>)")})),
              pass);
}

TEST(ChargeRelief, NotAskedWhereNothingFeeds) {
    EXPECT_EQ(verdict(with({{"joins=\"E1 P1 P2\"", "joins=\"E1 P1\""}})),
              std::string("charge-relief loop:P1 not-applicable") + all_running);
}

}  // namespace
}  // namespace loopwright
