// The example circuits against their pages: what circuits/<machine>/README.md says is found in each
// file, and nothing else. The pages' tables are repeated here by hand.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include <gtest/gtest.h>

#include <loopwright/parser/reader.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::all_running;
using testing::described;
using testing::findings_of;
using testing::running_and_towing;
using testing::structure_text;
using testing::verdicts_of;
using testing::witness_of;

std::filesystem::path circuits() {
    return std::filesystem::path(LOOPWRIGHT_SOURCE_FOLDER) / "circuits";
}

Circuit example(const std::string& file) {
    ReadResult result = read_circuit(circuits() / file);
    EXPECT_TRUE(result.circuit.has_value()) << file;
    EXPECT_EQ(described(result), "") << file;
    return result.circuit ? std::move(*result.circuit) : Circuit{};
}

/// What is found in each file; a sound one has an empty text.
const std::map<std::string, std::string>& findings() {
    static const std::string a_low = " neutral drive-reverse overrun-forward hold lost-signal\n";
    // The roller's manual gives no sizes.
    static const std::string no_sizes =
        "charge-displacement loop:U1/P1 inconclusive neutral drive-forward drive-reverse "
        "overrun-forward overrun-reverse hold lost-signal needs U1/P2.displacement needs "
        "U1/P1.displacement\n";
    static const std::map<std::string, std::string> found{
        {"ice-resurfacer/ice-resurfacer.xml", ""},
        {"ice-resurfacer/retrofit-make-up-check-turned.xml",
         "charge-supply side:P1.A fail error" + a_low + "make-up-check side:P1.A fail error" +
             a_low},
        {"ice-resurfacer/retrofit-filter-on-a-branch.xml",
         std::string("filtration loop:P1 fail error") + all_running},
        {"roller/roller.xml", no_sizes},
        {"roller/retrofit-drain-shut-off.xml",
         std::string("charge-relief loop:U1/P1 fail error") + all_running + no_sizes +
             "case-drain-path U1/P1 fail error" + running_and_towing +
             "case-drain-path U2/M1 fail error" + running_and_towing},
        {"roller/retrofit-relief-one-side.xml",
         no_sizes + "crossport-relief side:U1/P1.B fail error" + all_running}};
    return found;
}

TEST(Examples, FindWhatTheirPagesSay) {
    for (const auto& [file, found] : findings())
        EXPECT_EQ(findings_of(example(file)), found) << file;
}

// No circuit stands among the examples that is not judged here, and each retrofit is in its page.
TEST(Examples, AllAreListedHereAndOnTheirPages) {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(circuits())) {
        if (entry.path().extension() != ".xml") continue;
        // What comes with the program has its test in tests/app/new_test.py.
        const std::string folder = entry.path().parent_path().filename().string();
        if (folder == "starting" || folder == "assemblies") continue;
        ++count;
        const std::string file = std::filesystem::relative(entry.path(), circuits()).string();
        EXPECT_EQ(findings().count(file), 1U) << file;
        std::ifstream in(entry.path().parent_path() / "README.md");
        const std::string page{std::istreambuf_iterator<char>(in), {}};
        EXPECT_NE(page.find('`' + entry.path().filename().string() + '`'), std::string::npos)
            << file;
    }
    EXPECT_EQ(count, findings().size());
}

TEST(Examples, EveryRuleHasASubjectInTheSoundOnes) {
    const char* const rules[] = {"lost-loop",        "charge-supply", "make-up-check",
                                 "crossport-relief", "filtration",    "case-drain-path"};
    for (const char* const file : {"ice-resurfacer/ice-resurfacer.xml", "roller/roller.xml"}) {
        const Circuit circuit = example(file);
        for (const char* const rule : rules)
            EXPECT_NE(verdicts_of(circuit, rule).find(" pass "), std::string::npos)
                << file << ' ' << rule;
    }
}

TEST(Examples, TheirLoopsAndSides) {
    EXPECT_EQ(structure_text(example("ice-resurfacer/ice-resurfacer.xml")),
              "loop:P1 P1 : M1\n  side:P1.A main\n  side:P1.B main\nopen:P2 P2 :\n");
    EXPECT_EQ(structure_text(example("roller/roller.xml")),
              "loop:U1/P1 U1/P1 : U2/M1\n  side:U1/P1.A main\n  side:U1/P1.B main\n"
              "open:U1/P2 U1/P2 :\n");
}

// As the manual has it: the flushed oil enters the motor's case, flows on through the pump's case,
// then the cooler, then the tank (TM 5-3895-348-14&P, paragraphs 7-105 to 7-118).
TEST(Examples, RollersMotorDrainsThroughThePumpsCase) {
    const std::string way = witness_of(example("roller/roller.xml"), "case-drain-path", "U2/M1");
    EXPECT_NE(way.find("U2/M1.L1>L2 L1 U1/P1.L1>L2 L2 K1.A>B L3 T1"), std::string::npos) << way;
}

TEST(Examples, TurnedCheckAndUnfilteredWayAreInTheWitness) {
    const std::string turned = witness_of(
        example("ice-resurfacer/retrofit-make-up-check-turned.xml"), "make-up-check", "side:P1.A");
    EXPECT_NE(turned.find(" C1.B>A"), std::string::npos) << turned;
    // Where the oil enters the loop the way ends.
    EXPECT_EQ(witness_of(example("ice-resurfacer/retrofit-filter-on-a-branch.xml"), "filtration",
                         "loop:P1"),
              "path: T1 S1 P2.S>P G1 C2.A>B HB>P1.B");
    const std::string drain =
        witness_of(example("roller/retrofit-drain-shut-off.xml"), "case-drain-path", "U2/M1");
    EXPECT_NE(drain.find(" B1.A>B"), std::string::npos) << drain;
}

}  // namespace
}  // namespace loopwright
