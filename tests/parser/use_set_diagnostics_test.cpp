#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// What a use may override in the assembly that it brings in.

namespace loopwright {
namespace {

using testing::TemporaryFolder;
using testing::told;

TEST(UseSetDiagnostics, ChildOfAUse) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><port id="A"/><sett of="C1" attribute="opening-pressure" value="1 bar"/></use>
</circuit>
)"),
              R"(error 2:34-2:38 'port' cannot stand in 'use'
  expected: set
error 2:48-2:52 'sett' cannot stand in 'use'
  expected: set
  means: set
)");
}

TEST(UseSetDiagnostics, SetOfNothing) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set of="C11" attribute="opening-pressure" value="1 bar"/><set of="C1/X" attribute="title" value="x"/></use>
</circuit>
)"),
              R"(error 2:42-2:45 the assembly has no 'C11'
  expected: the id of a component or a line in it
  means: C1
error 2:100-2:104 the assembly has no 'C1/X'
  expected: the id of a component or a line in it
)");
}

TEST(UseSetDiagnostics, SetOfNoAttribute) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set of="C1" attribute="opening-presure" value="1 bar"/></use>
</circuit>
)"),
              R"(error 2:57-2:72 unknown attribute 'opening-presure' of check-valve
  expected: opening-pressure, pilot, pilot-ratio, title or designation
  means: opening-pressure
)");
}

TEST(UseSetDiagnostics, SetOfAnId) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set of="C1" attribute="id" value="C2"/></use>
</circuit>
)"),
              R"(error 2:57-2:59 'id' cannot be set by a use
  expected: opening-pressure, pilot, pilot-ratio, title or designation
)");
}

TEST(UseSetDiagnostics, SetToABadValue) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set of="C1" attribute="opening-pressure" value="1 mm"/></use>
</circuit>
)"),
              R"(error 2:82-2:86 opening-pressure: 'mm' is the unit of a length
  expected: a pressure such as 24 bar
)");
}

TEST(UseSetDiagnostics, SetTwice) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set of="C1" attribute="title" value="a"/><set of="C1" attribute="title" value="b"/></use>
</circuit>
)"),
              R"(error 2:99-2:104 'title' of 'C1' is set twice
  expected: each attribute of a part set once in a use
)");
}

TEST(UseSetDiagnostics, SetWithoutAttributes) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"><set/></use>
</circuit>
)"),
              R"(error 2:34-2:37 this set needs the attribute 'of'
  expected: the id of a part of the assembly
error 2:34-2:37 this set needs the attribute 'attribute'
  expected: the name of one of that part's attributes
error 2:34-2:37 this set needs the attribute 'value'
  expected: what that attribute takes
)");
}

TEST(UseSetDiagnostics, SetOfAnAssembly) {
    const TemporaryFolder folder;
    folder.write("main/a.xml", R"(<assembly format="1">
  <use id="U2" file="block.xml"/>
</assembly>
)");
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="a.xml"><set of="U2" attribute="title" value="x"/></use>
</circuit>
)"),
              R"(error 2:38-2:40 'U2' is an assembly
  expected: a component or a line of the assembly
)");
}

// Told where it breaks, through the use that sets it.
TEST(UseSetDiagnostics, ASetThatBreaksTheAssembly) {
    const TemporaryFolder folder;
    folder.write("main/p.xml", R"(<assembly format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1.P"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="p.xml"/>
  <use id="U2" file="p.xml"><set of="P1" attribute="flow-directions" value="2"/></use>
</circuit>
)"),
              R"(error 3:24-3:28 pump 'P1' has no port 'P'
  expected: P1.A or P1.B; P is there with flow-directions="1"
  in p.xml, through 3:3-3:29
)");
}

// The file alone lacks a displacement.
TEST(UseSetDiagnostics, ASetThatSupplies) {
    const TemporaryFolder folder;
    folder.write("main/p.xml", R"(<assembly format="1">
  <pump id="P1"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="p.xml"><set of="P1" attribute="displacement" value="28 cm3/rev"/></use>
  <use id="U2" file="p.xml"/>
</circuit>
)"),
              "");
}

}  // namespace
}  // namespace loopwright
