#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Mistakes in a file that is used: places lead through the use.

namespace loopwright {
namespace {

using testing::TemporaryFolder;
using testing::told;

TEST(UsedFileDiagnostics, RelativeToTheFileThatUses) {
    const TemporaryFolder folder;
    folder.write("main/parts/a.xml", R"(<assembly format="1">
  <use id="U2" file="b.xml"/>
  <use id="U3" file="../block.xml"/>
  <use id="U4" file="../../b.xml"/>
</assembly>
)");
    folder.write("main/parts/b.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="parts/a.xml"/>
</circuit>
)"),
              R"(error 4:22-4:33 '../../b.xml' leads out of the circuit's folder
  expected: a file below the folder of the outermost circuit, links resolved
  in parts/a.xml, through 2:3-2:36
)");
}

// The first place in that file; the other mistakes of the circuit are told as well.
TEST(UsedFileDiagnostics, MalformedFile) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1">
  <load id="D1" id="D2"/>
  <load id=D3/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
  <load id="D1" colour="red"/>
</circuit>
)"),
              R"(error 3:17-3:23 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
error 2:17-2:19 the attribute 'id' is there twice
  expected: each attribute once in an element
  in block.xml, through 2:3-2:34
)");
}

TEST(UsedFileDiagnostics, CircuitInPlaceOfAnAssembly) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<circuit format="1"/>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
</circuit>
)"),
              R"(error 1:2-1:9 the root element is 'circuit'
  expected: 'assembly', which is what 'use' brings in
  means: assembly
  in block.xml, through 2:3-2:34
)");
}

TEST(UsedFileDiagnostics, AssemblyWithoutFormat) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly>
  <load id="D1"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
</circuit>
)"),
              R"(error 1:2-1:10 this assembly needs the attribute 'format'
  expected: format="1"
  in block.xml, through 2:3-2:34
)");
}

TEST(UsedFileDiagnostics, AssemblyOfAnotherFormat) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="2">
  <pipe/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
  <line id="H1" joins="U1.A"/>
</circuit>
)"),
              R"(error 1:19-1:20 format '2' is not known
  expected: format="1"
  means: 1
  in block.xml, through 2:3-2:34
)");
}

TEST(UsedFileDiagnostics, IdAtTheRootOfAnAssembly) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly id="U1" format="1"/>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
</circuit>
)"),
              R"(error 1:11-1:13 unknown attribute 'id' of assembly
  expected: format or title
  in block.xml, through 2:3-2:34
)");
}

TEST(UsedFileDiagnostics, PlacesLeadThroughTheUse) {
    const TemporaryFolder folder;
    folder.write("main/a.xml", R"(<assembly format="1">
  <use id="U2" file="b.xml"/>
</assembly>
)");
    folder.write("main/b.xml", R"(<assembly format="1">
  <load id="D1" colour="red"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="a.xml"/>
</circuit>
)"),
              R"(error 2:17-2:23 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
  in b.xml, through 2:3-2:30, through 2:3-2:30
)");
}

// For its first use.
TEST(UsedFileDiagnostics, AFileUsedTwiceIsToldOnce) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1">
  <load id="D1" colour="red"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
  <use id="U2" file="block.xml"/>
</circuit>
)"),
              R"(error 2:17-2:23 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
  in block.xml, through 2:3-2:34
)");
}

}  // namespace
}  // namespace loopwright
