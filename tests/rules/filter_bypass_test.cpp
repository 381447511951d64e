// What is expected follows by hand from the rule's words: a filter that clogs unseen.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

TEST(FilterBypass, AnIndicatorShowsIt) {
    const Circuit circuit = with({});
    EXPECT_EQ(verdicts_of(circuit, "filter-bypass"), "filter-bypass F1 pass\n");
    EXPECT_EQ(witness_of(circuit, "filter-bypass", "F1"), "set: F1");
}

TEST(FilterBypass, ClogsUnseenWithBypassOrWithout) {
    const char* const failed = "filter-bypass F1 fail warning\n";
    EXPECT_EQ(verdicts_of(with({{R"( clogging-indicator="visual")", ""}}), "filter-bypass"),
              failed);
    EXPECT_EQ(verdicts_of(with({{"\"visual\"", "\"none\""}}), "filter-bypass"), failed);
    EXPECT_EQ(verdicts_of(with({{R"(clogging-indicator="visual")", R"(bypass="2 bar")"}}),
                          "filter-bypass"),
              failed);
}

TEST(FilterBypass, NothingToAskOfAStrainer) {
    EXPECT_EQ(
        verdicts_of(with({{R"(<filter id="F1" fineness="10 um" clogging-indicator="visual"/>)",
                           R"(<strainer id="F1"/>)"}}),
                    "filter-bypass"),
        "filter-bypass circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
