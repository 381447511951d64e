#include <ctime>
#include <filesystem>
#include <string>
#include <string_view>

#include <sys/stat.h>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// The limits of the input, each at its edge and one past, and input that is made to be slow.

namespace loopwright {
namespace {

using testing::described;
using testing::TemporaryFolder;

std::string repeated(std::string_view text, std::size_t count) {
    std::string all;
    for (std::size_t i = 0; i < count; ++i) {
        all += text;
    }
    return all;
}

std::string circuit(std::string_view parts) {
    return fmt::format("<circuit format=\"1\">{}</circuit>", parts);
}

std::string loads(std::size_t count) {
    std::string all;
    for (std::size_t i = 0; i < count; ++i) {
        all += fmt::format("<load id=\"D{}\"/>", i);
    }
    return all;
}

ReadResult read(std::string text, const ReadLimits& limits = {}) {
    return read_circuit_text(std::move(text), "test.xml", {}, {limits});
}

// The folder's own path taken out of a text.
std::string without(const TemporaryFolder& folder, std::string text) {
    const std::string path = folder.path().string() + "/";
    for (std::size_t at = text.find(path); at != std::string::npos; at = text.find(path, at)) {
        text.erase(at, path.size());
    }
    return text;
}

// Bad input is told in under a second; the tests leave a slow or sanitized build ten. Counted is
// the processor's time, so that a busy machine is no failure; what waits for ever meets CTest's
// limit.
class Stopwatch {
  public:
    ~Stopwatch() { EXPECT_LT(std::clock() - start_, 10 * CLOCKS_PER_SEC); }

  private:
    std::clock_t start_ = std::clock();
};

TEST(Limits, DefaultsAreThoseOfTheFormat) {
    const ReadLimits limits;
    EXPECT_EQ(limits.file_bytes, 16U * 1024 * 1024);
    EXPECT_EQ(limits.files, 64U);
    EXPECT_EQ(limits.depth, 64U);
    EXPECT_EQ(limits.components, 100'000U);
    EXPECT_EQ(limits.positions, 100U);
    EXPECT_EQ(limits.messages, 200U);
}

TEST(Limits, BytesOfAText) {
    const std::string text = circuit("");
    ReadLimits limits;
    limits.file_bytes = text.size();
    EXPECT_TRUE(read(text, {limits}).circuit);
    limits.file_bytes = text.size() - 1;
    EXPECT_EQ(described(read(text, {limits})),
              "error 1:1-1:1 'test.xml' cannot be read: it has 30 bytes\n"
              "  expected: at most 29 bytes\n");
}

TEST(Limits, BytesOfAFile) {
    const TemporaryFolder folder;
    ReadLimits limits;
    const std::filesystem::path file = folder.write("a.xml", circuit(""));
    limits.file_bytes = 30;
    EXPECT_TRUE(read_circuit(file, {limits}).circuit);
    limits.file_bytes = 29;
    EXPECT_EQ(without(folder, described(read_circuit(file, {limits}))),
              "error 1:1-1:1 'a.xml' cannot be read: it has 30 bytes\n"
              "  expected: at most 29 bytes\n");
}

TEST(Limits, BytesOfAUsedFile) {
    const TemporaryFolder folder;
    folder.write("b.xml", "<assembly format=\"1\">" + repeated(" ", 100) + "</assembly>");
    const std::filesystem::path file =
        folder.write("a.xml", circuit("<use id='U1' file='b.xml'/>"));
    ReadLimits limits;
    limits.file_bytes = 132;
    EXPECT_TRUE(read_circuit(file, {limits}).circuit);
    limits.file_bytes = 131;
    EXPECT_EQ(described(read_circuit(file, {limits})),
              "error 1:40-1:45 'b.xml' cannot be read: it has 132 bytes\n"
              "  expected: at most 131 bytes\n");
}

TEST(Limits, Files) {
    const TemporaryFolder folder;
    std::string uses;
    for (int i = 1; i < 64; ++i) {
        folder.write(fmt::format("b{}.xml", i), R"(<assembly format="1"/>)");
        uses += fmt::format(R"(<use id="U{0}" file="b{0}.xml"/>)", i);
    }
    EXPECT_TRUE(read_circuit(folder.write("a.xml", circuit(uses))).circuit);
    folder.write("b64.xml", "<assembly format=\"1\"/>");
    const std::string text = circuit(uses + "\n<use id=\"U64\" file=\"b64.xml\"/>");
    EXPECT_EQ(described(read_circuit(folder.write("a.xml", text))),
              "error 2:21-2:28 'b64.xml' is one file too many\n"
              "  expected: at most 64 files\n");
}

TEST(Limits, Components) {
    ReadLimits limits;
    limits.components = 3;
    EXPECT_TRUE(read(circuit(loads(3)), {limits}).circuit);
    EXPECT_EQ(described(read(circuit(loads(4)), {limits})),
              "error 1:67-1:71 a circuit of more than 3 components\n"
              "  expected: at most 3, every use expanded\n");
}

TEST(Limits, PositionsOfAValve) {
    const auto valve = [](int more) {
        std::string all = R"(<position id="0" rest="yes"/>)";
        for (int i = 1; i <= more; ++i) all += fmt::format("<position id=\"{}\"/>", i);
        return circuit(R"(<directional-valve id="V"><port id="P"/>)" + all +
                       "</directional-valve>");
    };
    EXPECT_TRUE(read(valve(99)).circuit);
    EXPECT_EQ(described(read(valve(100))),
              "error 1:22-1:39 directional-valve 'V' has 101 positions\n"
              "  expected: at most 100\n");
}

TEST(Limits, AHundredThousandComponents) {
    const Stopwatch stopwatch;
    EXPECT_TRUE(read(circuit(loads(100'000))).circuit);
    EXPECT_EQ(read(circuit(loads(100'001))).diagnostics.size(), 1U);
}

TEST(Limits, Assemblies) {
    ReadLimits limits;
    limits.components = 2;
    EXPECT_TRUE(read(circuit("<assembly id='A'/><assembly id='B'/>"), {limits}).circuit);
    EXPECT_EQ(described(read(circuit("<assembly id='A'/><assembly id='B'/><assembly id='C'/>"),
                             {limits})),
              "error 1:58-1:66 a circuit of more than 2 assemblies\n"
              "  expected: at most 2, every use expanded\n");
}

// Files that use the next one twice: each level doubles the parts of the one below.
TEST(Limits, UsesThatDouble) {
    const Stopwatch stopwatch;
    for (const std::string_view part : {"<load id='D'/>", "", "<line id='H' joins=''/>"}) {
        const TemporaryFolder folder;
        for (int i = 0; i < 40; ++i) {
            folder.write(fmt::format("b{}.xml", i),
                         fmt::format("<assembly format='1'>{0}<use id='A' file='b{1}.xml'/>"
                                     "<use id='B' file='b{1}.xml'/></assembly>",
                                     part, i + 1));
        }
        folder.write("b40.xml", "<assembly format='1'/>");
        const ReadResult result =
            read_circuit(folder.write("a.xml", circuit("<use id='U' file='b0.xml'/>")));
        EXPECT_FALSE(result.circuit);
        EXPECT_LE(result.diagnostics.size(), 42U);
    }
}

// One large file used many times, with no component in it.
TEST(Limits, TextThatUsesBringIn) {
    const Stopwatch stopwatch;
    const TemporaryFolder folder;
    folder.write("b.xml", "<assembly format='1'><!-- " + repeated("x", 1000) + " --></assembly>");
    ReadLimits limits;
    limits.file_bytes = 1100;
    std::string uses;
    for (int i = 0; i < 4; ++i) {
        uses += fmt::format("<use id='U{}' file='b.xml'/>", i);
    }
    EXPECT_TRUE(read_circuit(folder.write("a.xml", circuit(uses)), {limits}).circuit);
    const std::string text = circuit(uses + "\n<use id='U4' file='b.xml'/>");
    EXPECT_EQ(described(read_circuit(folder.write("a.xml", text), {limits})),
              "error 2:2-2:5 the circuit is too large here\n"
              "  expected: less text brought in by uses, and shorter ids of assemblies\n");
}

// Each of many parts would carry the whole long path.
TEST(Limits, PathsThatGrow) {
    const Stopwatch stopwatch;
    const std::string text = circuit("<assembly id='A" + repeated("a", 1'000'000) + "'>" +
                                     loads(50'000) + "</assembly>");
    EXPECT_EQ(described(read(text)),
              "error 1:1001101-1:1001105 the circuit is too large here\n"
              "  expected: less text brought in by uses, and shorter ids of assemblies\n");
}

TEST(Limits, DepthOfAssemblies) {
    const TemporaryFolder folder;
    const std::string use = "<use id='U' file='b.xml'/>";
    folder.write("b.xml", "<assembly format='1'><assembly id='V'/></assembly>");
    ReadLimits limits;
    limits.depth = 3;
    const auto within = [&](std::string_view part) {
        return folder.write("a.xml", circuit(fmt::format("<assembly id='A'>{}</assembly>", part)));
    };
    EXPECT_TRUE(read_circuit(within(use), {limits}).circuit);
    folder.write("b.xml", "<assembly format='1'><use id='V' file='c.xml'/></assembly>");
    folder.write("c.xml", "<assembly format='1'><assembly id='W'/></assembly>");
    EXPECT_EQ(described(read_circuit(within(use), {limits})),
              "error 1:23-1:31 assemblies are nested deeper than 3\n"
              "  expected: at most 3 one inside the other, every use expanded\n"
              "  in c.xml, through 1:22-1:48, through 1:38-1:64\n");
}

TEST(Limits, Depth) {
    // The root is one level, and so is the innermost element.
    const auto text = [](std::size_t assemblies) {
        return circuit(repeated("<assembly id='A'>", assemblies) +
                       repeated("</assembly>", assemblies));
    };
    EXPECT_TRUE(read(text(63)).circuit);
    EXPECT_EQ(described(read(text(64))),
              "error 1:1093-1:1101 elements are nested deeper than 64\n"
              "  expected: at most 64 elements one inside the other\n");
}

TEST(Limits, Messages) {
    const auto text = [](std::size_t mistakes) { return circuit(repeated("\n<a/>", mistakes)); };
    EXPECT_EQ(read(text(200)).diagnostics.size(), 200U);
    const ReadResult result = read(text(201));
    ASSERT_EQ(result.diagnostics.size(), 201U);
    EXPECT_EQ(described(result.diagnostics[200], *result.sources),
              "error 201:2-201:3 1 more message in this file\n"
              "  expected: the messages above put right first");
    EXPECT_EQ(read(text(5000)).diagnostics.back().message, "4800 more messages in this file");
}

// The messages kept are those that stand first, whatever the order in which they were found: lines
// are looked at last.
TEST(Limits, MessagesKeptStandFirst) {
    ReadLimits limits;
    limits.messages = 2;
    const ReadResult result =
        read(circuit("<line id='H1' joins='X.A Y.A'/>\n<a/>\n<b/>\n<c/>\n<d/>\n<e/>\n<f/>\n<g/>"),
             {limits});
    ASSERT_EQ(result.diagnostics.size(), 3U);
    EXPECT_EQ(result.diagnostics[0].message, "there is no 'X'");
    EXPECT_EQ(result.diagnostics[1].message, "there is no 'Y'");
    EXPECT_EQ(result.diagnostics[2].message, "7 more messages in this file");
}

// Messages are counted by file, and a file's mistakes once however often it is used.
TEST(Limits, MessagesOfEachFile) {
    const TemporaryFolder folder;
    folder.write("b.xml", "<assembly format='1'>" + repeated("<a/>", 300) + "</assembly>");
    const std::string uses = "<use id='U1' file='b.xml'/><use id='U2' file='b.xml'/>";
    const ReadResult result =
        read_circuit(folder.write("a.xml", circuit(uses + repeated("<a/>", 250))));
    ASSERT_EQ(result.diagnostics.size(), 402U);
    EXPECT_EQ(result.diagnostics[200].message, "50 more messages in this file");
    EXPECT_EQ(result.diagnostics[401].message, "100 more messages in this file");
}

TEST(Limits, AMillionMistakes) {
    const Stopwatch stopwatch;
    const ReadResult result = read(circuit(repeated("<x/>", 1'000'000)));
    EXPECT_EQ(result.diagnostics.back().message, "999800 more messages in this file");
}

// Every mistake asks for the nearest of many names.
TEST(Limits, ManyUnknownNamesAmongManyKnown) {
    const Stopwatch stopwatch;
    std::string text = loads(50'000);
    for (int i = 0; i < 20'000; ++i) {
        text += fmt::format("<line id='H{0}' joins='X{0}.A'/>", i);
    }
    EXPECT_EQ(read(circuit(text)).diagnostics.back().message, "19800 more messages in this file");
}

TEST(Limits, ManyPortsOfOneJunction) {
    const Stopwatch stopwatch;
    std::string ports;
    std::string lines;
    for (int i = 0; i < 50'000; ++i) {
        ports += fmt::format("<port id='a{}'/>", i);
        lines += fmt::format("<line id='H{0}' joins='J1.a{0}'/>", i);
    }
    const ReadResult result = read(circuit("<junction id='J1'>" + ports + "</junction>" + lines));
    EXPECT_TRUE(result.circuit) << described(result);
}

TEST(Limits, ManyUnknownPortsAmongManyKnown) {
    const Stopwatch stopwatch;
    std::string ports;
    std::string joins;
    std::string paths;
    for (int i = 0; i < 100'000; ++i) {
        ports += fmt::format("<port id='a{}'/>", i);
        joins += fmt::format(" J1.b{0} V1.b{0}", i);
        paths += fmt::format("<path from='c{}' to='a0'/>", i);
    }
    const ReadResult result = read(circuit(fmt::format(
        "<junction id='J1'>{0}</junction><directional-valve id='V1'>{0}<position id='r' "
        "rest='yes'>{1}</position></directional-valve><line id='H1' joins='{2}'/>",
        ports, paths, joins)));
    ASSERT_EQ(result.diagnostics.size(), 201U);
    const std::string& list = result.diagnostics.front().expected;
    EXPECT_TRUE(list.starts_with("a0, a1, a2") && list.ends_with("a39, ...")) << list;
}

TEST(Limits, ManyPortsOfOneAssembly) {
    const Stopwatch stopwatch;
    std::string inner;
    std::string ports;
    std::string joins;
    for (int i = 0; i < 30'000; ++i) {
        inner += fmt::format("<port id='a{}'/>", i);
        ports += fmt::format("<port id='b{0}' of='J1.a{0}'/>", i);
        joins += fmt::format(" U1.b{}", i);
    }
    const ReadResult result =
        read(circuit(fmt::format("<assembly id='U1'><junction id='J1'>{}</junction>{}</assembly>"
                                 "<line id='H1' joins='{}'/>",
                                 inner, ports, joins)));
    EXPECT_TRUE(result.circuit) << described(result);
}

TEST(Limits, LongNames) {
    const Stopwatch stopwatch;
    const std::string name = repeated("x", 2'000'000);
    EXPECT_FALSE(read(circuit("<" + name + "/>")).circuit);
    EXPECT_FALSE(read(circuit("<load " + name + "=''/>")).circuit);
    EXPECT_FALSE(read(circuit("<load id='D1' " + name + "='" + name + "'/>")).circuit);
    EXPECT_TRUE(read(circuit("<load id='" + name + "'/>")).circuit);
    EXPECT_FALSE(
        read(circuit("<load id='D1'/><line id='H1' joins='" + name + "." + name + "'/>")).circuit);
    EXPECT_FALSE(
        read(circuit("<shaft id='W1' joins='" + repeated("a/", 1'000'000) + "'/>")).circuit);
    EXPECT_FALSE(
        read(circuit("<orifice id='Z1' bore='" + repeated("9", 2'000'000) + "'/>")).circuit);
}

TEST(Limits, FilesThatAreNotThereOrNoneAtAll) {
    const TemporaryFolder folder;
    EXPECT_EQ(without(folder, described(read_circuit(folder.path() / "none.xml"))),
              "error 1:1-1:1 'none.xml' cannot be read: there is no such file\n"
              "  expected: the name of a circuit file\n");
    EXPECT_EQ(described(read_circuit("")),
              "error 1:1-1:1 '' cannot be read: there is no such file\n"
              "  expected: the name of a circuit file\n");
    EXPECT_EQ(described(read_circuit(".")),
              "error 1:1-1:1 '.' cannot be read: it is a folder\n"
              "  expected: the name of a circuit file\n");
}

// Neither is waited for.
TEST(Limits, PipesAndDevices) {
    const TemporaryFolder folder;
    const std::filesystem::path pipe = folder.path() / "pipe.xml";
    ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
    EXPECT_EQ(without(folder, described(read_circuit(pipe))),
              "error 1:1-1:1 'pipe.xml' cannot be read: it is no regular file\n"
              "  expected: a regular file\n");
    EXPECT_EQ(
        described(read_circuit(folder.write("a.xml", circuit("<use id='U1' file='pipe.xml'/>")))),
        "error 1:40-1:48 'pipe.xml' cannot be read: it is no regular file\n"
        "  expected: a regular file\n");
}

TEST(Limits, UseNeedsAFolder) {
    EXPECT_EQ(described(read(circuit("<use id='U1' file='b.xml'/>"))),
              "error 1:40-1:45 'b.xml' cannot be looked for: this circuit comes from no folder\n"
              "  expected: a circuit that is read from a file\n");
    const TemporaryFolder folder;
    folder.write("b.xml", "<assembly format='1'/>");
    EXPECT_TRUE(
        read_circuit_text(circuit("<use id='U1' file='b.xml'/>"), "-", folder.path()).circuit);
}

}  // namespace
}  // namespace loopwright
