#include <loopwright/tests/render/laid_out.h>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <numeric>

#include <loopwright/parser/reader.h>
#include <loopwright/render/render.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/render/assembled_circuits.h>
#include <loopwright/tests/render/turning_circuits.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/generated_circuit.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright::testing {

namespace {

constexpr int quarters = 4;

using Named = std::pair<std::string, std::string>;

std::vector<std::filesystem::path> examples() {
    std::vector<std::filesystem::path> files;
    const std::filesystem::path folder =
        std::filesystem::path(LOOPWRIGHT_SOURCE_FOLDER) / "circuits";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        // A retrofit differs from its machine in one thing; sheet_faults and read_back have them
        // all.
        if (entry.path().filename().string().starts_with("retrofit-")) continue;
        if (entry.path().extension() != ".xml") continue;
        std::ifstream in(entry.path());
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        if (text.find("<circuit") != std::string::npos) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

/// A pump, a motor and what stands between them in an open circuit.
std::string open_drive(const std::string& parts, const std::string& to_motor,
                       const std::string& from_motor) {
    return R"(<circuit format="1"><engine id="E1"/><pump id="P1"/><motor id="M1"/><load id="D1"/>
        <shaft id="W1" joins="E1 P1"/><shaft id="W2" joins="M1 D1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
        <line id="S1" joins="T1.S P1.S"/>)" +
           parts + R"(<line id="HA" joins="M1.A )" + to_motor + R"("/><line id="HB" joins="M1.B )" +
           from_motor + "\"/></circuit>";
}

std::string four_way(const std::string& centre) {
    return open_drive(
        R"(<directional-valve id="V1"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>
           <position id="f"><path from="P" to="A"/><path from="B" to="T"/></position>
           <position id="c" rest="yes">)" +
            centre + R"(</position>
           <position id="r"><path from="P" to="B"/><path from="A" to="T"/></position>
           </directional-valve><relief-valve id="R1"/>
           <line id="G1" joins="P1.P V1.P R1.P"/><line id="N1" joins="V1.T R1.T T1.R"/>)",
        "V1.A", "V1.B");
}

/// The sound drive with one line cut and a part put between.
std::string with_part(const std::string& part, const Edit& line, const std::string& more) {
    return edited(sound_drive(), {line, {"</circuit>", part + more + "</circuit>"}});
}

std::vector<Named> made() {
    const std::string& drive = sound_drive();
    const auto changed = [&](const std::vector<Edit>& edits) { return edited(drive, edits); };
    return {
        {"sound drive", drive},
        {"no parts", R"(<circuit format="1"/>)"},
        {"parts alone", R"(<circuit format="1"><pump id="P1" drain="external"/><cooler id="K1"/>
            <reservoir id="T1"><port id="R"/></reservoir></circuit>)"},
        {"one line", R"(<circuit format="1"><pump id="P1"/>
            <reservoir id="T1"><port id="S"/></reservoir><line id="S" joins="T1.S P1.S"/></circuit>)"},
        {"returns joined",
         changed({{"R1.T T1.R", "R1.T K1.B T1.R"}, {R"(<line id="L2" joins="K1.B T1.D"/>)", ""}})},
        {"two reservoirs",
         changed({{"K1.B T1.D", "K1.B T2.R"},
                  {"</circuit>", R"(<reservoir id="T2"><port id="R"/></reservoir></circuit>)"}})},
        {"two motors", changed({{"M1.A R2.P", "M1.A M2.A R2.P"},
                                {"M1.B R3.P", "M1.B M2.B R3.P"},
                                {"</circuit>",
                                 "<motor id=\"M2\"/><load id=\"D2\"/>"
                                 "<shaft id=\"W3\" joins=\"M2 D2\"/></circuit>"}})},
        {"a shaft that branches", changed({{"M1.A R2.P", "M1.A M2.A R2.P"},
                                           {"M1.B R3.P", "M1.B M2.B R3.P"},
                                           {"joins=\"M1 D1\"", "joins=\"M1 M2 D1\""},
                                           {"</circuit>", "<motor id=\"M2\"/></circuit>"}})},
        {"a cooler in a charge relief's way",
         with_part(R"(<cooler id="X1" bypass="1 bar"/><relief-valve id="X2"/>)",
                   {"F1.B C1.A C2.A", "F1.B C1.A X1.A X2.T"},
                   R"(<line id="Y1" joins="X1.B X2.P C2.A"/>)")},
        {"a relief in the drain",
         with_part("<relief-valve id=\"X1\"/>", {"R4.T M1.L P1.L K1.A", "R4.T K1.A X1.P"},
                   R"(<line id="Y1" joins="X1.T P1.L M1.L"/>)")},
        {"a valve in working line A",
         with_part("<shut-off-valve id=\"X1\"/>", {"P1.A M1.A R2.P", "P1.A X1.A R2.P"},
                   R"(<line id="Y1" joins="X1.B M1.A"/>)")},
        {"a check in the charge line",
         with_part(R"(<check-valve id="X1" opening-pressure="1 bar"/>)",
                   {"P2.P R1.P F1.A", "P2.P R1.P X1.A"}, R"(<line id="Y1" joins="X1.B F1.A"/>)")},
        {"a filter in the suction line",
         with_part("<filter id=\"X1\"/>", {"T1.S P2.S", "T1.S X1.A"},
                   R"(<line id="Y1" joins="X1.B P2.S"/>)")},
        {"closed centre", four_way("")},
        {"open centre",
         four_way(R"(<path from="P" to="T"/><path from="A" to="T"/><path from="B" to="T"/>)")},
        {"straight through",
         open_drive(R"(<orifice id="O1"/><line id="G1" joins="P1.P O1.A"/>)", "O1.B", "T1.R")},
        {"an assembly",
         R"(<circuit format="1"><engine id="E1"/><assembly id="U1"><pump id="P1"
            flow-directions="2" drain="external"/><check-valve id="C1"/><check-valve id="C2"/>
            <line id="A" joins="P1.A C1.B"/><line id="B" joins="P1.B C2.B"/>
            <line id="G" joins="C1.A C2.A"/><port id="A" of="P1.A"/><port id="B" of="P1.B"/>
            <port id="L" of="P1.L"/><port id="G" of="C1.A"/></assembly>
            <motor id="M1"/><pump id="P2"/><shaft id="W1" joins="E1 U1/P1 P2"/>
            <reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
            <line id="HA" joins="U1.A M1.A"/><line id="HB" joins="U1.B M1.B"/>
            <line id="S" joins="T1.S P2.S"/><line id="G" joins="P2.P U1.G"/>
            <line id="L" joins="U1.L T1.R"/></circuit>)"},
        {"three loops", many_loops(45)},
        {"long chains", long_chains(40)},
    };
}

LaidOut laid_out_from(std::string name, Circuit circuit) {
    LaidOut one{.name = std::move(name), .circuit = std::move(circuit)};
    one.structure = check(one.circuit, rules()).structure;
    one.layout = lay_out(one.circuit, one.structure);
    one.symbols = drawn_symbols(one.circuit, one.layout);
    return one;
}

}  // namespace

const std::vector<LaidOut>& laid_out() {
    static const std::vector<LaidOut> all = [] {
        std::vector<LaidOut> out;
        for (const std::filesystem::path& file : examples()) {
            ReadResult read = read_circuit(file);
            EXPECT_TRUE(read.circuit.has_value()) << file;
            if (!read.circuit) continue;
            out.push_back(laid_out_from(file.filename().string(), std::move(*read.circuit)));
            Circuit hoses = std::move(*read_circuit(file).circuit);
            for (Line& line : hoses.lines) line.flexible = true;
            out.push_back(laid_out_from(file.filename().string() + ", of hoses", std::move(hoses)));
        }
        for (const auto& circuits : {made(), turning_circuits(), assembled_circuits()})
            for (const auto& [name, xml] : circuits)
                out.push_back(laid_out_from(name, circuit_from(xml)));
        return out;
    }();
    return all;
}

std::vector<PortPlace> port_places(const LaidOut& one) {
    std::vector<PortPlace> out;
    for (const DrawnSymbol& symbol : one.symbols)
        for (const PortAnchor& anchor : symbol.shape.ports)
            out.push_back(
                {anchor.port,
                 symbol.placed.port != none,
                 {symbol.placed.at.x + static_cast<int>(std::lround(anchor.at.x * quarters)),
                  symbol.placed.at.y + static_cast<int>(std::lround(anchor.at.y * quarters))}});
    return out;
}

std::vector<Index> joined_ports(const Circuit& circuit) {
    std::vector<Index> first(circuit.ports.size());
    std::iota(first.begin(), first.end(), Index{0});
    const auto join = [&](Index a, Index b) {
        const auto [to, from] = std::minmax(first[a], first[b]);
        std::replace(first.begin(), first.end(), Index{from}, Index{to});
    };
    for (const Line& line : circuit.lines)
        for (const Index port : circuit.ports_of(line)) join(circuit.ports_of(line).front(), port);
    for (const Component& component : circuit.components)
        if (component.kind->name == "junction")
            for (Index p = component.ports.begin; p < component.ports.end; ++p)
                join(component.ports.begin, p);
    return first;
}

Box body_of(const DrawnSymbol& symbol) {
    const Box& body = symbol.shape.body;
    const GridPoint at = symbol.placed.at;
    return {at.x + body.left * quarters, at.y + body.top * quarters, at.x + body.right * quarters,
            at.y + body.bottom * quarters};
}

Box box_of(GridPoint from, GridPoint to) {
    return {
        static_cast<double>(std::min(from.x, to.x)), static_cast<double>(std::min(from.y, to.y)),
        static_cast<double>(std::max(from.x, to.x)), static_cast<double>(std::max(from.y, to.y))};
}

bool overlap(const Box& a, const Box& b) {
    constexpr double touch = 1e-6;
    return a.left < b.right - touch && b.left < a.right - touch && a.top < b.bottom - touch &&
           b.top < a.bottom - touch;
}

Index group_of(const LaidOut& one, const std::vector<Index>& joined, Index line) {
    return joined[one.circuit.ports_of(one.circuit.lines[line]).front()];
}

Ends ends_of(const LaidOut& one) {
    const std::vector<Index> joined = joined_ports(one.circuit);
    Ends ends;
    for (const Wire& wire : one.layout.wires)
        for (const GridPoint& at : {wire.from, wire.to})
            ++ends[{at.x, at.y}][group_of(one, joined, wire.line)];
    for (const PortPlace& place : port_places(one)) ++ends[place.at][joined[place.port]];
    return ends;
}

}  // namespace loopwright::testing
