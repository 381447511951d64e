#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Assemblies from files of their own: which files are opened, what a use may override, and places
// that lead through the use.

namespace loopwright {
namespace {

using testing::TemporaryFolder;

// The outermost circuit stands in the folder "main" of the temporary one.
std::string told(const TemporaryFolder& folder, std::string_view text) {
    return testing::described(read_circuit(folder.write("main/main.xml", text)));
}

TEST(UseDiagnostics, Sound) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="U1.A J1.A"/>
</circuit>
)"),
              "");
}

// What the use would bring is let pass.
TEST(UseDiagnostics, WithoutFile) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1"/>
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="U1.A J1.A"/>
  <shaft id="W1" joins="U1/P1"/>
</circuit>
)"),
              R"(error 2:4-2:7 use 'U1' needs the attribute 'file'
  expected: a relative path, such as parts/block.xml
)");
}

TEST(UseDiagnostics, WithoutId) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use file="block.xml"/>
</circuit>
)"),
              R"(error 2:4-2:7 this use needs the attribute 'id'
  expected: a letter, then letters, digits, '-' and '_'
)");
}

TEST(UseDiagnostics, NoSuchFile) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="parts/block.xml"/>
  <line id="H1" joins="U1.A"/>
  <shaft id="W1" joins="U1/P1"/>
</circuit>
)"),
              R"(error 2:22-2:37 'parts/block.xml' cannot be read: there is no such file
  expected: an assembly's file, its path relative to the file that uses it
)");
}

TEST(UseDiagnostics, NoFilesName) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file=""/>
</circuit>
)"),
              R"(error 2:16-2:23 '' is no file's name
  expected: a relative path, such as parts/block.xml
)");
}

TEST(UseDiagnostics, AbsolutePath) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="/block.xml"/>
</circuit>
)"),
              R"(error 2:22-2:32 '/block.xml' is no relative path
  expected: a relative path, such as parts/block.xml
)");
}

TEST(UseDiagnostics, OutOfTheFolder) {
    const TemporaryFolder folder;
    folder.write("other/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="../other/block.xml"/>
</circuit>
)"),
              R"(error 2:22-2:40 '../other/block.xml' leads out of the circuit's folder
  expected: a file below the folder of the outermost circuit, links resolved
)");
}

// Through the name of the folder itself: what counts is where the path ends.
TEST(UseDiagnostics, OutOfTheFolderAndBack) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="../main/block.xml"/>
</circuit>
)"),
              "");
}

TEST(UseDiagnostics, OutOfTheFolderByALink) {
    const TemporaryFolder folder;
    folder.write("other/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    folder.link("main/block.xml", "other/block.xml");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
</circuit>
)"),
              R"(error 2:22-2:31 'block.xml' leads out of the circuit's folder
  expected: a file below the folder of the outermost circuit, links resolved
)");
}

TEST(UseDiagnostics, LinkInsideTheFolder) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    folder.link("main/link.xml", "main/block.xml");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="link.xml"/>
</circuit>
)"),
              "");
}

TEST(UseDiagnostics, LinkToItself) {
    const TemporaryFolder folder;
    folder.link("main/loop.xml", "main/loop.xml");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="loop.xml"/>
</circuit>
)"),
              R"(error 2:22-2:30 'loop.xml' cannot be read: its links lead in a circle
  expected: an assembly's file, its path relative to the file that uses it
)");
}

TEST(UseDiagnostics, AFolder) {
    const TemporaryFolder folder;
    folder.write("main/parts/block.xml", R"(<assembly format="1" title="check block">
  <check-valve id="C1"/>
  <port id="A" of="C1.A"/>
  <port id="B" of="C1.B"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="parts"/>
</circuit>
)"),
              R"(error 2:22-2:27 'parts' cannot be read: it is a folder
  expected: the name of a circuit file
)");
}

TEST(UseDiagnostics, TheFolderItself) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="."/>
</circuit>
)"),
              R"(error 2:22-2:23 '.' leads out of the circuit's folder
  expected: a file below the folder of the outermost circuit, links resolved
)");
}

TEST(UseDiagnostics, UsesTheOutermost) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="main.xml"/>
</circuit>
)"),
              R"(error 2:22-2:30 'main.xml' uses itself
  expected: an assembly that does not contain itself
)");
}

TEST(UseDiagnostics, UsesItself) {
    const TemporaryFolder folder;
    folder.write("main/block.xml", R"(<assembly format="1">
  <use id="U2" file="block.xml"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="block.xml"/>
</circuit>
)"),
              R"(error 2:22-2:31 'block.xml' uses itself
  expected: an assembly that does not contain itself
  in block.xml, through 2:3-2:34
)");
}

TEST(UseDiagnostics, UsesItselfThroughAnother) {
    const TemporaryFolder folder;
    folder.write("main/a.xml", R"(<assembly format="1">
  <use id="U2" file="b.xml"/>
</assembly>
)");
    folder.write("main/b.xml", R"(<assembly format="1">
  <use id="U3" file="a.xml"/>
</assembly>
)");
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="a.xml"/>
</circuit>
)"),
              R"(error 2:22-2:27 'a.xml' uses itself, through the files it uses
  expected: an assembly that does not contain itself
  in b.xml, through 2:3-2:30, through 2:3-2:30
)");
}

TEST(UseDiagnostics, RelativeToTheFileThatUses) {
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
TEST(UseDiagnostics, MalformedFile) {
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
  expected: torque, overrunning, id, title or designation
error 2:17-2:19 the attribute 'id' is there twice
  expected: each attribute once in an element
  in block.xml, through 2:3-2:34
)");
}

TEST(UseDiagnostics, CircuitInPlaceOfAnAssembly) {
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

TEST(UseDiagnostics, AssemblyWithoutFormat) {
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

TEST(UseDiagnostics, AssemblyOfAnotherFormat) {
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

TEST(UseDiagnostics, IdAtTheRootOfAnAssembly) {
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

TEST(UseDiagnostics, PlacesLeadThroughTheUse) {
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
  expected: torque, overrunning, id, title or designation
  in b.xml, through 2:3-2:30, through 2:3-2:30
)");
}

// For its first use.
TEST(UseDiagnostics, AFileUsedTwiceIsToldOnce) {
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
  expected: torque, overrunning, id, title or designation
  in block.xml, through 2:3-2:34
)");
}

TEST(UseDiagnostics, ChildOfAUse) {
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

TEST(UseDiagnostics, SetOfNothing) {
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

TEST(UseDiagnostics, SetOfNoAttribute) {
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
  expected: opening-pressure, title or designation
  means: opening-pressure
)");
}

TEST(UseDiagnostics, SetOfAnId) {
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
  expected: opening-pressure, title or designation
)");
}

TEST(UseDiagnostics, SetToABadValue) {
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

TEST(UseDiagnostics, SetTwice) {
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

TEST(UseDiagnostics, SetWithoutAttributes) {
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

TEST(UseDiagnostics, SetOfAnAssembly) {
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
TEST(UseDiagnostics, ASetThatBreaksTheAssembly) {
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
TEST(UseDiagnostics, ASetThatSupplies) {
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
