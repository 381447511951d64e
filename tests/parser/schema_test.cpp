#include <fstream>
#include <iterator>
#include <string>

#include <gtest/gtest.h>

#include <loopwright/parser/reader.h>

namespace loopwright {
namespace {

// Editors are pointed at the file in the tree, so it must be what the kind table gives.
TEST(Schema, TheFileInTheTreeIsWhatTheKindTableGives) {
    std::ifstream file(LOOPWRIGHT_SOURCE_FOLDER "/parser/circuit.xsd", std::ios::binary);
    ASSERT_TRUE(file.is_open());
    const std::string there{std::istreambuf_iterator<char>(file), {}};
    // Not EXPECT_EQ: it would print both, some hundred lines each.
    EXPECT_TRUE(there == circuit_schema())
        << "parser/circuit.xsd is stale; refresh it with: loopwright schema circuit > "
           "parser/circuit.xsd";
}

}  // namespace
}  // namespace loopwright
