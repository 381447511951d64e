// Pipes of small circuits: what lines, junctions and housings join, reservoirs' ports kept apart.
#include <algorithm>
#include <string>

#include <gtest/gtest.h>

#include <loopwright/graph/pipes.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright {
namespace {

using testing::circuit_with;

Index port_named(const Circuit& circuit, const std::string& name) {
    for (Index port = 0; port < circuit.ports.size(); ++port)
        if (circuit.port_name(port) == name) return port;
    ADD_FAILURE() << "no port " << name;
    return 0;
}

bool one_pipe(const Circuit& circuit, const std::string& a, const std::string& b) {
    const Pipes pipes(circuit);
    return pipes.of(port_named(circuit, a)) == pipes.of(port_named(circuit, b));
}

TEST(Pipes, LinesAndWhatIsJoinedForGoodMakeOne) {
    const Circuit circuit = circuit_with(R"(
        <motor id="M1" drain="external" case-ports="2"/><cooler id="K1"/>
        <junction id="J1"><port id="a"/><port id="b"/></junction>
        <line id="L1" joins="M1.L2 J1.a"/><hose id="L2" joins="J1.b K1.A"/>)");
    EXPECT_TRUE(one_pipe(circuit, "M1.L1", "K1.A"));
    EXPECT_FALSE(one_pipe(circuit, "K1.A", "K1.B"));
    EXPECT_FALSE(one_pipe(circuit, "M1.L1", "M1.A"));
}

TEST(Pipes, EndAtAReservoir) {
    const Circuit circuit = circuit_with(R"(
        <reservoir id="T1"><port id="a"/><port id="b"/></reservoir><cooler id="K1"/>
        <line id="L1" joins="T1.a K1.A"/><line id="L2" joins="T1.b K1.B"/>)");
    EXPECT_FALSE(one_pipe(circuit, "T1.a", "T1.b"));
    EXPECT_TRUE(one_pipe(circuit, "T1.b", "K1.B"));
}

TEST(Pipes, EachPortIsInOneInFileOrder) {
    const Circuit circuit = circuit_with(R"(
        <cooler id="K1"/><cooler id="K2"/><line id="L1" joins="K2.A K1.B"/>)");
    const Pipes pipes(circuit);
    ASSERT_EQ(pipes.count(), 3U);
    std::size_t ports = 0;
    for (Index pipe = 0; pipe < pipes.count(); ++pipe) {
        const auto of_pipe = pipes.ports_of(pipe);
        EXPECT_TRUE(std::is_sorted(of_pipe.begin(), of_pipe.end()));
        for (const Index port : of_pipe) EXPECT_EQ(pipes.of(port), pipe);
        ports += of_pipe.size();
    }
    EXPECT_EQ(ports, circuit.ports.size());
}

}  // namespace
}  // namespace loopwright
