#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include <loopwright/parser/reader.h>

// libFuzzer target: any bytes give either a circuit whose tables agree with each other or at least
// one error, and every message can be placed and quoted.
//
// The XML library is not instrumented; what is fuzzed is the scan and the building of circuits. The
// example circuits are a good corpus.

namespace {

using namespace loopwright;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

void check_messages(const ReadResult& result) {
    bool error = false;
    for (const Diagnostic& diagnostic : result.diagnostics) {
        error = error || diagnostic.level == Level::error;
        const Place place = result.sources->place(diagnostic.place);
        require(place.line > 0 && place.column > 0);
        require(place.end_line > place.line ||
                (place.end_line == place.line && place.end_column >= place.column));
        require(!result.sources->quote(diagnostic.place).empty());
        require(!diagnostic.message.empty() && diagnostic.message.size() < 1000);
        // What the scan takes, the XML library takes.
        require(!diagnostic.message.starts_with("the XML is malformed"));
    }
    require(error != result.circuit.has_value());
}

template <class Table>
void check_range(Range range, const Table& table) {
    require(range.begin <= range.end && range.end <= table.size());
}

void check_circuit(const Circuit& circuit) {
    for (const Component& component : circuit.components) {
        require(component.kind != nullptr && !component.path.empty());
        check_range(component.ports, circuit.ports);
        check_range(component.passages, circuit.passages);
        check_range(component.attributes, circuit.attributes);
        check_range(component.positions, circuit.positions);
        require(component.assembly == none || component.assembly < circuit.assemblies.size());
        for (const Index shaft : {component.shaft, component.far_shaft})
            require(shaft == none || shaft < circuit.shafts.size());
        require(component.far_shaft == none || !component.kind->ends.empty());
        for (const AttributeValue& value : circuit.attributes_of(component)) {
            require(value.spec != nullptr);
        }
    }
    for (Index port = 0; port < circuit.ports.size(); ++port) {
        const Index owner = circuit.ports[port].component;
        require(owner < circuit.components.size());
        const Range range = circuit.components[owner].ports;
        require(range.begin <= port && port < range.end);
    }
    for (const Passage& passage : circuit.passages) {
        require(passage.from < circuit.ports.size() && passage.to < circuit.ports.size());
        require(circuit.ports[passage.from].component == passage.component);
        require(circuit.ports[passage.to].component == passage.component);
        require((passage.position != none) == (passage.shift == Shift::position));
    }
    for (const Line& line : circuit.lines) {
        check_range(line.joins, circuit.line_ports);
        require(line.joins.size() > 0);
    }
    for (const Index port : circuit.line_ports) {
        require(port < circuit.ports.size());
    }
    for (const Index component : circuit.shaft_components) {
        require(component < circuit.components.size());
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const ReadResult result =
        read_circuit_text(std::string(reinterpret_cast<const char*>(data), size), "fuzz.xml");
    check_messages(result);
    if (result.circuit) {
        check_circuit(*result.circuit);
    }
    return 0;
}
