// Circuits that differ from the sound drive in a filter behind its cooler. Its two housings drain
// by one line and bear 3 bar each.
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

const Edit behind_cooler{"joins=\"K1.B T1.D\"", "joins=\"K1.B F2.A\""};
const Edit pump_bears{R"(flow-directions="2" drain="external" case-pressure="3 bar")",
                      R"(flow-directions="2" drain="external" case-pressure="2 bar")"};
const Edit pump_untold{R"(flow-directions="2" drain="external" case-pressure="3 bar")",
                       R"(flow-directions="2" drain="external")"};
const Edit motor_untold{R"(displacement="80 cm3/rev" drain="external" case-pressure="3 bar")",
                        R"(displacement="80 cm3/rev" drain="external")"};

Edit filter(const std::string& data) {
    return added("<filter id=\"F2\" " + data + R"(/><line id="L3" joins="F2.B T1.D"/>)");
}

std::string judged(std::vector<Edit> edits) {
    edits.push_back(behind_cooler);
    return verdicts_of(with(edits), "filter-in-drain");
}

TEST(FilterInDrain, TheBypassOpensBelowWhatTheHousingsBear) {
    EXPECT_EQ(judged({filter(R"(bypass="2.5 bar")")}), "filter-in-drain F2 pass\n");
    EXPECT_EQ(judged({filter(R"(bypass="3 bar")")}), "filter-in-drain F2 pass\n");
    EXPECT_EQ(
        witness_of(with({behind_cooler, filter(R"(bypass="2.5 bar")")}), "filter-in-drain", "F2"),
        "path: P1>L L1 K1.A>B L2 F2.A>B");
}

TEST(FilterInDrain, NoBypassOrOneThatOpensTooLate) {
    EXPECT_EQ(judged({filter("")}), "filter-in-drain F2 fail warning\n");
    EXPECT_EQ(judged({filter(R"(bypass="3.5 bar")")}), "filter-in-drain F2 fail warning\n");
    // The weakest housing counts.
    EXPECT_EQ(judged({filter(R"(bypass="2.5 bar")"), pump_bears}),
              "filter-in-drain F2 fail warning\n");
}

TEST(FilterInDrain, WhatAHousingBearsIsMissing) {
    EXPECT_EQ(judged({filter(R"(bypass="2.5 bar")"), motor_untold}),
              "filter-in-drain F2 inconclusive needs M1.case-pressure\n");
    EXPECT_EQ(judged({filter(R"(bypass="2.5 bar")"), pump_untold, motor_untold}),
              "filter-in-drain F2 inconclusive needs P1.case-pressure needs M1.case-pressure\n");
    // The one that is known is enough to fail.
    EXPECT_EQ(judged({filter(R"(bypass="2.5 bar")"), pump_bears, motor_untold}),
              "filter-in-drain F2 fail warning\n");
    EXPECT_EQ(judged({filter(""), motor_untold}), "filter-in-drain F2 fail warning\n");
}

TEST(FilterInDrain, ReservoirsEndTheWay) {
    // The charge filter is fed from the reservoir that the housings drain to.
    EXPECT_EQ(verdicts_of(with({}), "filter-in-drain"), "filter-in-drain circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
