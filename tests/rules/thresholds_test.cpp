// The thresholds file: what it may say, and every message with its place. The format is ours.
#include <gtest/gtest.h>

#include <fstream>

#include <fmt/core.h>

#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/thresholds.h>

namespace loopwright {
namespace {

ThresholdsResult read(const std::string& text) {
    const std::filesystem::path file =
        std::filesystem::path(::testing::TempDir()) /
        fmt::format("thresholds-{}.xml",
                    ::testing::UnitTest::GetInstance()->current_test_info()->name());
    std::ofstream(file) << text;
    return read_thresholds(file);
}

/// Its messages, a line each: "line:column-column message | expected | means".
std::string told(const std::string& text) {
    const ThresholdsResult result = read(text);
    EXPECT_EQ(result.ok, result.diagnostics.empty());
    std::string out;
    for (const Diagnostic& one : result.diagnostics) {
        const Place place = result.sources->place(one.place);
        out += fmt::format("{}:{}-{} {} | {}{}{}\n", place.line, place.column, place.end_column,
                           one.message, one.expected, one.suggestion.empty() ? "" : " | ",
                           one.suggestion);
    }
    return out;
}

double burst_ratio(const Thresholds& thresholds) {
    return thresholds.value(find_rule("hose-safety")->info, "burst-ratio");
}

TEST(Thresholds, AreTheRulesOwnUnlessSet) {
    EXPECT_DOUBLE_EQ(burst_ratio({}), 4.0);
    const ThresholdsResult none = read(R"(<thresholds format="1"/>)");
    ASSERT_TRUE(none.ok);
    EXPECT_DOUBLE_EQ(burst_ratio(none.thresholds), 4.0);
    const ThresholdsResult set =
        read(R"(<thresholds format="1"><hose-safety burst-ratio="3.5"/></thresholds>)");
    ASSERT_TRUE(set.ok);
    EXPECT_DOUBLE_EQ(burst_ratio(set.thresholds), 3.5);
    EXPECT_DOUBLE_EQ(
        burst_ratio(
            read(R"(<thresholds format="1"><hose-safety burst-ratio="350 %"/></thresholds>)")
                .thresholds),
        3.5);
}

TEST(Thresholds, InUseAreTold) {
    const ThresholdsResult set =
        read(R"(<thresholds format="1"><hose-safety burst-ratio="3.5"/></thresholds>)");
    const std::vector<ThresholdInUse> all = set.thresholds.in_use(rules());
    ASSERT_FALSE(all.empty());
    int given = 0;
    for (const ThresholdInUse& one : all) given += one.given ? 1 : 0;
    EXPECT_EQ(given, 1);
    const Rule* const other[] = {find_rule("filtration")};
    EXPECT_TRUE(set.thresholds.in_use(other).empty());
}

TEST(Thresholds, EveryMistakeAtOnce) {
    const std::string with_thresholds =
        "charge-flow, charge-displacement, charge-pressure, pressure-limiter, hose-safety, "
        "filter-fineness, flushing-setting, line-velocity or reservoir-size";
    EXPECT_EQ(told(R"(<thresholds format="1" of="me">
  <hose-safty burst-ratio="4"/>
  <hose-safety burst-ration="4" burst-ratio="0.5"/>
  <hose-safety burst-ratio="4 bar"><port/></hose-safety>
  <filtration/>
</thresholds>
)"),
              "1:24-26 unknown attribute 'of' of thresholds | format\n"
              "2:4-14 nothing can be set for 'hose-safty' | " +
                  with_thresholds +
                  " | hose-safety\n"
                  "3:16-28 unknown attribute 'burst-ration' of hose-safety | burst-ratio | "
                  "burst-ratio\n"
                  "3:46-49 burst-ratio is out of range: '0.5' | 1 or more\n"
                  "4:4-15 'hose-safety' stands there twice | one element with all its figures\n"
                  "4:29-34 burst-ratio: 'bar' is the unit of a pressure | a ratio such as 4\n"
                  "4:37-41 'port' cannot stand here | nothing inside hose-safety\n"
                  "5:4-14 nothing can be set for 'filtration' | " +
                  with_thresholds + "\n");
}

TEST(Thresholds, NoSuchFileOrFormat) {
    EXPECT_EQ(told(R"(<circuit format="1"/>)"),
              "1:2-9 the root element is 'circuit' | 'thresholds' | thresholds\n");
    EXPECT_EQ(told("<thresholds/>"),
              "1:2-12 thresholds needs the attribute 'format' | format=\"1\"\n");
    EXPECT_EQ(told(R"(<thresholds format="2"><what/></thresholds>)"),
              "1:21-22 format '2' is not known | format=\"1\" | 1\n");
    const ThresholdsResult none = read_thresholds("/no/such/file.xml");
    EXPECT_FALSE(none.ok);
    ASSERT_EQ(none.diagnostics.size(), 1U);
    EXPECT_EQ(none.diagnostics[0].message,
              "'/no/such/file.xml' cannot be read: there is no such file");
    EXPECT_FALSE(read("<thresholds format='1'").ok);
}

TEST(Thresholds, OfEachRuleHaveTheirWords) {
    for (const Rule* rule : rules())
        for (const Threshold& threshold : rule->info.thresholds) {
            EXPECT_FALSE(threshold.doc.empty()) << rule->info.id;
            EXPECT_FALSE(threshold.source.work.empty()) << rule->info.id;
            EXPECT_LE(threshold.least, threshold.value) << rule->info.id;
            EXPECT_GE(threshold.most, threshold.value) << rule->info.id;
        }
}

}  // namespace
}  // namespace loopwright
