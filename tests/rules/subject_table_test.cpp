#include <gtest/gtest.h>

#include <loopwright/rules/docket.h>

namespace loopwright {
namespace {

// What a region before has said of a part is not behind the region's first, however many subjects
// there are.
TEST(SubjectTable, FindsBehindAPlaceOnlyWhatStandsThere) {
    for (const Index count : {4U, 400U}) {
        Circuit circuit;
        circuit.components.resize(count);
        SubjectTable subjects(circuit);
        for (Index i = count; i-- > 1;) subjects.add(ElementType::component, i);
        EXPECT_EQ(subjects.find(ElementType::component, count - 1), 0U);
        EXPECT_EQ(subjects.find_behind(1, ElementType::component, count - 1), none);
        EXPECT_EQ(subjects.find_behind(1, ElementType::component, 1), count - 2);
        EXPECT_EQ(subjects.find_behind(1, ElementType::component, 0), none);
        subjects.add(ElementType::component, count - 1);
        EXPECT_EQ(subjects.find_behind(1, ElementType::component, count - 1), count - 1);
    }
}

}  // namespace
}  // namespace loopwright
