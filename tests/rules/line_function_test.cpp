// The sound drive with declared functions. What is expected follows by hand from the design's
// words: a line whose declared function its joins contradict.
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

/// A line of the sound drive declared so.
Circuit declared(const std::string& line, const std::string& function,
                 std::vector<Edit> more = {}) {
    const std::string id = "<line id=\"" + line + "\"";
    more.push_back({id, id + " function=\"" + function + "\""});
    return with(more);
}
std::string rule(const std::string& line, const std::string& function,
                 std::vector<Edit> more = {}) {
    return verdicts_of(declared(line, function, std::move(more)), "line-function");
}
std::string fails(const std::string& line) { return "line-function " + line + " fail warning\n"; }
const std::string passes = "line-function circuit pass\n";

TEST(LineFunction, AsDeclared) {
    for (const auto& [line, function] : {std::pair{"S1", "suction"},
                                         {"G1", "charge"},
                                         {"G2", "charge"},
                                         {"G3", "return"},
                                         {"HA", "working"},
                                         {"HB", "working"},
                                         {"L1", "drain"},
                                         {"L2", "return"}})
        EXPECT_EQ(rule(line, function), passes) << line;
}

TEST(LineFunction, Suction) {
    EXPECT_EQ(rule("G1", "suction"), fails("G1"));
    EXPECT_EQ(rule("HA", "suction"), fails("HA"));
    EXPECT_EQ(rule("L1", "suction"), fails("L1"));
}

// A pipe ends at the reservoir: what else is led there is none of it.
TEST(LineFunction, APipeEndsAtTheReservoir) {
    EXPECT_EQ(rule("S1", "suction",
                   {{"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"},
                    {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"},
                    added(R"(<line id="L9" joins="M1.L T1.E"/>)")}),
              passes);
}

TEST(LineFunction, DrainAndReturn) {
    EXPECT_EQ(rule("G1", "return"), fails("G1"));
    EXPECT_EQ(rule("HB", "drain"), fails("HB"));
    EXPECT_EQ(witness_of(declared("HB", "drain"), "line-function", "HB").substr(0, 7), "set: HB");
}

TEST(LineFunction, Charge) {
    EXPECT_EQ(rule("HA", "charge"), fails("HA"));
    EXPECT_EQ(rule("G3", "charge"), fails("G3"));
    EXPECT_EQ(rule("L1", "charge"), fails("L1"));
}

TEST(LineFunction, Working) {
    EXPECT_EQ(rule("L2", "working"), fails("L2"));
    EXPECT_EQ(rule("L1", "working"), fails("L1"));
}

TEST(LineFunction, Pilot) {
    EXPECT_EQ(rule("S1", "pilot"), fails("S1"));
    EXPECT_EQ(rule("G2", "pilot"), passes);
}

TEST(LineFunction, NotAskedWhereNoneIsDeclared) {
    EXPECT_EQ(verdicts_of(with({}), "line-function"), "line-function circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
