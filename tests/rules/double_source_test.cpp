// Two pumps into one line. The second one, P3, has an engine of its own.
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

std::string verdict(const Circuit& circuit) { return verdicts_of(circuit, "double-source"); }

/// P3, turned by `shaft`, and what leads from its outlet; `tee` is joined with P2's outlet.
Circuit second(const std::string& shaft, const std::string& tee, const std::string& parts) {
    return with({{"joins=\"T1.S P2.S\"", "joins=\"T1.S P2.S P3.S\""},
                 {"joins=\"E1 P1 P2\"", "joins=\"E1 P1 P2 " + shaft + "\""},
                 {"joins=\"P2.P R1.P F1.A\"", "joins=\"P2.P R1.P F1.A " + tee + "\""},
                 added(R"(<pump id="P3"/>)" + parts)});
}
const std::string own_engine = R"(<engine id="E2"/><shaft id="W3" joins="E2 P3"/>)";
const std::string none_of_it = "double-source circuit pass\n";

TEST(DoubleSource, IntoOneLine) {
    const Circuit circuit = second("", "P3.P", own_engine);
    EXPECT_EQ(verdict(circuit), std::string("double-source G1 fail warning") + all_running);
    EXPECT_EQ(witness_of(circuit, "double-source", "G1"), "path: P2>P G1 P3.P");
}

TEST(DoubleSource, OnOneShaft) { EXPECT_EQ(verdict(second("P3", "P3.P", "")), none_of_it); }

TEST(DoubleSource, ACheckParts) {
    EXPECT_EQ(verdict(second("", "C9.B", own_engine + R"(<check-valve id="C9"/>
                  <line id="G5" joins="P3.P C9.A"/>)")),
              none_of_it);
    const Circuit restricted = second("", "O9.B", own_engine + R"(<orifice id="O9" bore="3 mm"/>
                  <line id="G5" joins="P3.P O9.A"/>)");
    EXPECT_EQ(verdict(restricted), std::string("double-source G5 fail warning") + all_running);
    EXPECT_EQ(witness_of(restricted, "double-source", "G5"), "path: P2>P G1 O9.B>A G5 P3.P");
}

TEST(DoubleSource, AsAValveStands) {
    const auto valve = [](const std::string& position) {
        return second("", "H9.B",
                      own_engine + R"(<shut-off-valve id="H9" position=")" + position +
                          R"("/><line id="G5" joins="P3.P H9.A"/>)");
    };
    EXPECT_EQ(verdict(valve("open")), std::string("double-source G5 fail warning") + all_running);
    EXPECT_EQ(verdict(valve("closed")), none_of_it);
}

TEST(DoubleSource, NothingToAskOfOnePump) {
    EXPECT_EQ(verdict(with({})), "double-source circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
