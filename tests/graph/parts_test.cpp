// The two graph algorithms behind the loop finder, on graphs whose answer is plain.
#include <gtest/gtest.h>

#include <loopwright/graph/parts.h>

namespace loopwright {
namespace {

using Pairs = std::vector<std::pair<Index, Index>>;

TEST(Parts, AStrongPartNeedsAWayBack) {
    PartFinder finder;
    const Pairs arcs{{0, 1}, {1, 2}, {2, 0}, {2, 3}};
    const std::vector<Index> part = finder.strong(4, arcs);
    EXPECT_EQ(part[0], part[1]);
    EXPECT_EQ(part[1], part[2]);
    EXPECT_NE(part[2], part[3]);
}

TEST(Parts, TwoRingsThatShareAVertexAreTwoBiconnectedParts) {
    PartFinder finder;
    const Pairs edges{{0, 1}, {1, 2}, {2, 0}, {2, 3}, {3, 4}, {4, 2}};
    const std::vector<Index> part = finder.biconnected(5, edges);
    EXPECT_EQ(part[0], part[1]);
    EXPECT_EQ(part[1], part[2]);
    EXPECT_EQ(part[3], part[4]);
    EXPECT_EQ(part[4], part[5]);
    EXPECT_NE(part[0], part[3]);
}

TEST(Parts, ParallelEdgesSplitByVerticesAreOnePart) {
    // Pump and motor on the same two lines: vertices 0 and 1, edges split by 2 and 3.
    PartFinder finder;
    const Pairs edges{{0, 2}, {2, 1}, {0, 3}, {3, 1}};
    const std::vector<Index> part = finder.biconnected(4, edges);
    for (const Index p : part) EXPECT_EQ(p, part[0]);
}

TEST(Parts, ABridgeIsAPartOfItsOwn) {
    PartFinder finder;
    const Pairs edges{{0, 1}, {1, 2}};
    const std::vector<Index> part = finder.biconnected(3, edges);
    EXPECT_NE(part[0], part[1]);
}

TEST(Parts, ScratchOfALargerGraphDoesNotShowInASmallerOne) {
    PartFinder finder;
    finder.biconnected(6, Pairs{{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 5}, {5, 0}});
    const std::vector<Index> part = finder.biconnected(3, Pairs{{0, 1}, {1, 2}, {2, 0}});
    ASSERT_EQ(part.size(), 3U);
    EXPECT_EQ(part[0], part[1]);
    EXPECT_EQ(part[1], part[2]);
    EXPECT_TRUE(finder.strong(0, {}).empty());
}

}  // namespace
}  // namespace loopwright
