// Circuits that differ from the sound drive in one thing. The offset of 2 bar is common practice;
// one government manual (US Army TM 5-3895-382-24, p. 11-9) has 11 bar on one roller.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

constexpr const char* moving = " drive-forward drive-reverse overrun-forward overrun-reverse";

std::string set_to(const std::string& flushing, const std::string& charge) {
    return verdicts_of(with({{R"(id="R4" setting="18 bar")", R"(id="R4")" + flushing},
                             {R"(id="R1" setting="24 bar")", R"(id="R1")" + charge}}),
                       "flushing-setting");
}

TEST(FlushingSetting, SixBarBelow) {
    EXPECT_EQ(verdicts_of(with({}), "flushing-setting"),
              std::string("flushing-setting R4 pass") + moving + "\n");
    EXPECT_EQ(witness_of(with({}), "flushing-setting", "R4"), "set: R4 R1");
}

// The roller's figures: 1725 and 2825 kPa.
TEST(FlushingSetting, AsOnTheRoller) {
    EXPECT_EQ(set_to(R"( setting="1725 kPa")", R"( setting="2825 kPa")"),
              std::string("flushing-setting R4 pass") + moving + "\n");
}

TEST(FlushingSetting, TooLittleAndNotBelow) {
    EXPECT_EQ(set_to(R"( setting="22 bar")", R"( setting="24 bar")"),
              std::string("flushing-setting R4 pass") + moving + "\n");
    EXPECT_EQ(set_to(R"( setting="23 bar")", R"( setting="24 bar")"),
              std::string("flushing-setting R4 fail warning") + moving + "\n");
    EXPECT_EQ(set_to(R"( setting="24 bar")", R"( setting="24 bar")"),
              std::string("flushing-setting R4 fail error") + moving + "\n");
}

TEST(FlushingSetting, MissingSettings) {
    EXPECT_EQ(set_to("", R"( setting="24 bar")"),
              std::string("flushing-setting R4 inconclusive") + moving + " needs R4.setting\n");
    EXPECT_EQ(set_to(R"( setting="18 bar")", ""),
              std::string("flushing-setting R4 inconclusive") + moving + " needs R1.setting\n");
}

TEST(FlushingSetting, NothingToAskWithoutAFlushingValve) {
    EXPECT_EQ(verdicts_of(with({{R"(<flushing-valve id="V1"/>)", ""},
                                {" V1.A", ""},
                                {" V1.B", ""},
                                {R"(<line id="FL" joins="V1.F R4.P"/>)", ""}}),
                          "flushing-setting"),
              "flushing-setting circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
