#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Assemblies from files of their own: which files are opened. The outermost circuit stands in the
// folder "main" of the temporary one.

namespace loopwright {
namespace {

using testing::TemporaryFolder;
using testing::told;

TEST(UseFileDiagnostics, Sound) {
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
TEST(UseFileDiagnostics, WithoutFile) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1"/>
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="U1.A J1.A"/>
  <shaft id="W1" joins="U1/P1"/>
</circuit>
)"),
              R"(error 2:4-2:7 use 'U1' needs the attribute 'file' or 'name'
  expected: file="a relative path", or the name of a ready assembly
)");
}

TEST(UseFileDiagnostics, WithoutId) {
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

TEST(UseFileDiagnostics, NoSuchFile) {
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

TEST(UseFileDiagnostics, NoFilesName) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file=""/>
</circuit>
)"),
              R"(error 2:16-2:23 '' is no file's name
  expected: a relative path, such as parts/block.xml
)");
}

TEST(UseFileDiagnostics, AbsolutePath) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="/block.xml"/>
</circuit>
)"),
              R"(error 2:22-2:32 '/block.xml' is no relative path
  expected: a relative path, such as parts/block.xml
)");
}

TEST(UseFileDiagnostics, OutOfTheFolder) {
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
TEST(UseFileDiagnostics, OutOfTheFolderAndBack) {
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

TEST(UseFileDiagnostics, OutOfTheFolderByALink) {
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

TEST(UseFileDiagnostics, LinkInsideTheFolder) {
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

TEST(UseFileDiagnostics, LinkToItself) {
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

TEST(UseFileDiagnostics, AFolder) {
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

TEST(UseFileDiagnostics, TheFolderItself) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="."/>
</circuit>
)"),
              R"(error 2:22-2:23 '.' leads out of the circuit's folder
  expected: a file below the folder of the outermost circuit, links resolved
)");
}

TEST(UseFileDiagnostics, UsesTheOutermost) {
    const TemporaryFolder folder;
    EXPECT_EQ(told(folder, R"(<circuit format="1">
  <use id="U1" file="main.xml"/>
</circuit>
)"),
              R"(error 2:22-2:30 'main.xml' uses itself
  expected: an assembly that does not contain itself
)");
}

TEST(UseFileDiagnostics, UsesItself) {
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

TEST(UseFileDiagnostics, UsesItselfThroughAnother) {
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

}  // namespace
}  // namespace loopwright
