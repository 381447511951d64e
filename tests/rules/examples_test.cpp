// What was found in the example circuits and by which way. The findings themselves are held against
// the circuits' pages by tests/app/examples_test.py.
#include <filesystem>
#include <string>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <loopwright/parser/reader.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::described;
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

TEST(Examples, TheNeedsOfALoopAreProvedInTheSoundOnes) {
    const char* const rules[] = {"lost-loop",        "charge-supply", "make-up-check",
                                 "crossport-relief", "filtration",    "case-drain-path"};
    for (const auto& folder : std::filesystem::directory_iterator(circuits())) {
        const std::string name = folder.path().filename().string();
        const std::string file = fmt::format("{}/{}.xml", name, name);
        if (!std::filesystem::exists(circuits() / file)) continue;
        const Circuit circuit = example(file);
        for (const char* const rule : rules)
            EXPECT_NE(verdicts_of(circuit, rule).find(" pass "), std::string::npos)
                << name << ' ' << rule;
    }
}

TEST(Examples, TheirLoopsAndSides) {
    EXPECT_EQ(structure_text(example("ice-resurfacer/ice-resurfacer.xml")),
              "loop:P1 P1 : M1\n  side:P1.A main\n  side:P1.B main\nopen:P2 P2 :\n");
    EXPECT_EQ(structure_text(example("roller/roller.xml")),
              "loop:U1/P1 U1/P1 : U2/M1\n  side:U1/P1.A main\n  side:U1/P1.B main\n"
              "open:U1/P2 U1/P2 :\n");
    // Behind the divider each motor's line is a branch.
    EXPECT_EQ(structure_text(example("street-sweeper/street-sweeper.xml")),
              "loop:P1 P1 : M1 M2\n  side:P1.A main\n  side:P1.B main\n  side:M1.A branch\n"
              "  side:M2.A branch\nopen:P2 P2 :\n");
    EXPECT_EQ(structure_text(example("quay-carrier/quay-carrier.xml")),
              "loop:P1 P1 : M1\n  side:P1.A main\n  side:P1.B main\n"
              "loop:P2 P2 : M2\n  side:P2.A main\n  side:P2.B main\nopen:P3 P3 :\n");
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
