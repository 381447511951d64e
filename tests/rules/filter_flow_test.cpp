// The charge pump's 18 cm3/rev at 2400 rpm are 43.2 L/min.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr const char* rated =
    R"(clogging-indicator="visual" flow="60 L/min" pressure-drop="0.5 bar" viscosity="30 mm2/s")";

std::string rated_at(const std::string& figures) {
    return judged_at_work({{rated, R"(clogging-indicator="visual")" + figures}}, "filter-flow");
}

TEST(FilterFlow, AgainstTheRatedFlow) {
    EXPECT_EQ(judged_at_work({}, "filter-flow"), "filter-flow F1 pass at work\n");
    EXPECT_NEAR(figures_at_work({}, "filter-flow", "F1").measured.si, 43.2e-3 / 60.0, 1e-10);
    EXPECT_EQ(rated_at(R"( flow="43 L/min" pressure-drop="0.5 bar" viscosity="30 mm2/s")"),
              "filter-flow F1 fail warning at work\n");
}

// At 20 degC VG 46 has some 120 mm2/s: the clean element, with a loss in proportion, loses 43.2/60
// of 120/30 of half a bar, some 1.4 bar.
TEST(FilterFlow, ColdOilOpensTheBypass) {
    const Edit cold{R"(oil="50 degC")", R"(oil="20 degC")"};
    const Edit bypass{rated, std::string(R"(bypass="1 bar" )") + rated};
    EXPECT_EQ(judged_at_work({bypass}, "filter-flow"), "filter-flow F1 pass at work\n");
    EXPECT_EQ(judged_at_work({bypass, cold}, "filter-flow"),
              "filter-flow F1 fail warning at work\n");
    EXPECT_EQ(judged_at_work({cold}, "filter-flow"), "filter-flow F1 pass at work\n");
}

TEST(FilterFlow, Missing) {
    EXPECT_EQ(rated_at(R"( pressure-drop="0.5 bar" viscosity="30 mm2/s")"),
              "filter-flow F1 inconclusive at work needs F1.flow\n");
    EXPECT_EQ(rated_at(R"( bypass="3 bar" flow="60 L/min")"),
              "filter-flow F1 inconclusive at work needs F1.pressure-drop\n");
}

}  // namespace
}  // namespace loopwright
