#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/source.h>

namespace loopwright {
namespace {

std::string_view nearest(std::string_view text, const std::vector<std::string_view>& known) {
    return nearest_name(text, known);
}

TEST(NearestName, OneChange) {
    EXPECT_EQ(nearest("rekief-valve", {"check-valve", "relief-valve"}), "relief-valve");
    EXPECT_EQ(nearest("filtr", {"filter", "cooler"}), "filter");   // one missing
    EXPECT_EQ(nearest("pumpp", {"pump", "engine"}), "pump");       // one too many
    EXPECT_EQ(nearest("fitler", {"filter", "cooler"}), "filter");  // two swapped
    EXPECT_EQ(nearest("motro", {"motor", "pump"}), "motor");       // two swapped at the end
    EXPECT_EQ(nearest("pump", {"motor", "pump"}), "pump");         // none
}

// At most a third of the length of what was written, rounded down.
TEST(NearestName, NoFurtherThanAThird) {
    EXPECT_EQ(nearest("ab", {"abc", "a", "ba"}), "");  // 2 letters: none may differ
    EXPECT_EQ(nearest("ab", {"abc", "ab"}), "ab");
    EXPECT_EQ(nearest("abd", {"abc"}), "abc");           // 3: one
    EXPECT_EQ(nearest("adde", {"abce"}), "");            // 4: two differ
    EXPECT_EQ(nearest("abcxy", {"abcde"}), "");          // 5: two differ
    EXPECT_EQ(nearest("abcdxy", {"abcdef"}), "abcdef");  // 6: two may
    EXPECT_EQ(nearest("abcxyz", {"abcdef"}), "");
    EXPECT_EQ(nearest("orifice", {"engine", "load"}), "");
}

TEST(NearestName, TheNearerAndOfEqualsTheFirst) {
    EXPECT_EQ(nearest("abcdefgh", {"abcdefxy", "abcdefgx"}), "abcdefgx");
    EXPECT_EQ(nearest("abcdefgh", {"abcdefgx", "abcdefxy"}), "abcdefgx");
    EXPECT_EQ(nearest("bore", {"more", "core"}), "more");
    EXPECT_EQ(nearest("bore", {"core", "more"}), "core");
    EXPECT_EQ(nearest("bore", {"more", "bore", "core"}), "bore");
}

TEST(NearestName, NothingToChooseFrom) {
    EXPECT_EQ(nearest("pump", {}), "");
    EXPECT_EQ(nearest("", {"pump", "a"}), "");
    EXPECT_EQ(nearest("pump", {""}), "");
    EXPECT_EQ(nearest("", {""}), "");
}

/// Optimal string alignment by its recursive definition (Boytsov, 2011, section 2.2), no tables.
std::size_t distance(std::string_view a, std::string_view b) {
    if (a.empty() || b.empty()) return a.size() + b.size();
    const std::string_view c = a.substr(0, a.size() - 1);
    const std::string_view d = b.substr(0, b.size() - 1);
    if (a.back() == b.back()) return distance(c, d);
    std::size_t least = 1 + std::min({distance(c, b), distance(a, d), distance(c, d)});
    if (!c.empty() && !d.empty() && a.back() == d.back() && c.back() == b.back()) {
        least = std::min(least, 1 + distance(c.substr(0, c.size() - 1), d.substr(0, d.size() - 1)));
    }
    return least;
}

std::string_view nearest_by_definition(std::string_view text,
                                       const std::vector<std::string_view>& known) {
    std::string_view best;
    std::size_t least = text.size() / 3 + 1;
    for (const std::string_view name : known) {
        if (const std::size_t found = distance(text, name); !name.empty() && found < least) {
            least = found;
            best = name;
        }
    }
    return best;
}

TEST(ProofNearestName, AgreesWithTheDefinition) {
    std::mt19937 random(7);
    const auto word = [&random](std::size_t longest) {
        std::string text(3 + random() % (longest - 2), ' ');
        for (char& c : text) c = static_cast<char>('a' + random() % 3);
        return text;
    };
    int found = 0;
    for (int i = 0; i < 3000; ++i) {
        const std::vector<std::string> words{word(8), word(8), word(8), word(8)};
        const std::vector<std::string_view> known(words.begin(), words.end());
        const std::string text = word(8);
        const std::string_view expected = nearest_by_definition(text, known);
        EXPECT_EQ(nearest_name(text, known), expected) << text;
        found += expected.empty() ? 0 : 1;
    }
    EXPECT_GT(found, 500);
    EXPECT_LT(found, 2900);
}

}  // namespace
}  // namespace loopwright
