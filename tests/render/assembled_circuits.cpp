#include <loopwright/tests/render/assembled_circuits.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <random>
#include <set>
#include <sstream>

namespace loopwright::testing {

namespace {

struct PartText {
    std::string id = {};
    std::string text = {};
};
using Ports = std::vector<std::string>;
struct LineText {
    std::string id = {};
    Ports ports = {};
};

/// A drive: its parts, and what joins them.
struct Drive {
    std::vector<PartText> parts = {};
    std::vector<LineText> lines = {};
    std::string shafts = {};  ///< with `@P1` where part P1 stands
    std::string reservoir = {};
};

Ports words(const std::string& text) {
    std::istringstream in(text);
    return {std::istream_iterator<std::string>(in), {}};
}

std::string id_of(const std::string& port) { return port.substr(0, port.find('.')); }

/// One loop with flushing, filter and cooler, a brake on its motor, and test points.
Drive one_loop() {
    return {.parts = {{"E1", "<engine id='E1'/>"},
                      {"P1", "<pump id='P1' flow-directions='2' variable='yes' drain='external'/>"},
                      {"P2", "<pump id='P2'/>"},
                      {"R1", "<relief-valve id='R1'/>"},
                      {"F1", "<filter id='F1'/>"},
                      {"C1", "<check-valve id='C1'/>"},
                      {"C2", "<check-valve id='C2'/>"},
                      {"I1", "<measuring-point id='I1'/>"},
                      {"I2", "<measuring-point id='I2'/>"},
                      {"I3", "<measuring-point id='I3'/>"},
                      {"I4", "<measuring-point id='I4'/>"},
                      {"R2", "<relief-valve id='R2'/>"},
                      {"R3", "<relief-valve id='R3'/>"},
                      {"V1", "<flushing-valve id='V1'/>"},
                      {"R4", "<relief-valve id='R4'/>"},
                      {"M1", "<motor id='M1' drain='external'/>"},
                      {"B1", "<brake id='B1'/>"},
                      {"V3",
                       "<directional-valve id='V3'><port id='P'/><port id='T'/><port id='A'/>"
                       "<position id='0' rest='yes'><path from='A' to='T'/></position>"
                       "<position id='a'><path from='P' to='A'/></position></directional-valve>"},
                      {"K1", "<cooler id='K1'/>"},
                      {"D1", "<load id='D1'/>"}},
            .lines = {{"HA", words("P1.A C1.B I1.P R2.P R3.T V1.A M1.A")},
                      {"HB", words("P1.B C2.B I2.P R3.P R2.T V1.B M1.B")},
                      {"S1", words("T1.S P2.S")},
                      {"G1", words("P2.P R1.P F1.A I3.P")},
                      {"G2", words("F1.B C1.A C2.A V3.P")},
                      {"G3", words("V3.A B1.Z")},
                      {"N1", words("R1.T T1.R")},
                      {"N2", words("V3.T T1.R2")},
                      {"F", words("V1.F R4.P")},
                      {"L1", words("R4.T M1.L P1.L K1.A I4.P")},
                      {"L2", words("K1.B T1.D")}},
            .shafts = "<shaft id='W1' joins='@E1 @P1 @P2'/><shaft id='W2' joins='@M1 @B1 @D1'/>",
            .reservoir =
                "<reservoir id='T1'><port id='S'/><port id='R'/><port id='R2'/>"
                "<port id='D'/></reservoir>"};
}

/// The same loop with two motors, each with its own flushing.
Drive two_motors() {
    Drive drive = one_loop();
    for (const PartText& part : std::vector<PartText>{{"M2", "<motor id='M2' drain='external'/>"},
                                                      {"D2", "<load id='D2'/>"},
                                                      {"V2", "<flushing-valve id='V2'/>"},
                                                      {"R5", "<relief-valve id='R5'/>"}})
        drive.parts.push_back(part);
    const auto join = [&drive](const std::string& line, const std::string& more) {
        for (LineText& text : drive.lines)
            if (text.id == line)
                for (const std::string& port : words(more)) text.ports.push_back(port);
    };
    join("HA", "M2.A V2.A");
    join("HB", "M2.B V2.B");
    join("L1", "M2.L R5.T");
    drive.lines.push_back({"F2", words("V2.F R5.P")});
    drive.shafts += "<shaft id='W3' joins='@M2 @D2'/>";
    return drive;
}

/// A pump with two valves, a cylinder and a motor, and no loop.
Drive open_drive() {
    const std::string valve =
        "<port id='P'/><port id='T'/><port id='A'/><port id='B'/>"
        "<position id='a'><path from='P' to='A'/><path from='B' to='T'/></position>"
        "<position id='0' rest='yes'/>"
        "<position id='b'><path from='P' to='B'/><path from='A' to='T'/></position>";
    return {.parts = {{"E1", "<electric-motor id='E1'/>"},
                      {"P1", "<pump id='P1'/>"},
                      {"R1", "<relief-valve id='R1'/>"},
                      {"C1", "<check-valve id='C1'/>"},
                      {"V1", "<directional-valve id='V1'>" + valve + "</directional-valve>"},
                      {"V2", "<directional-valve id='V2'>" + valve + "</directional-valve>"},
                      {"A1", "<cylinder id='A1'/>"},
                      {"M1", "<motor id='M1'/>"},
                      {"D1", "<load id='D1'/>"},
                      {"F1", "<filter id='F1'/>"}},
            .lines = {{"S1", words("T1.S P1.S")},
                      {"G1", words("P1.P R1.P C1.A")},
                      {"G2", words("C1.B V1.P V2.P")},
                      {"A", words("V1.A A1.A")},
                      {"B", words("V1.B A1.B")},
                      {"HA", words("V2.A M1.A")},
                      {"HB", words("V2.B M1.B")},
                      {"N1", words("V1.T V2.T F1.A")},
                      {"N2", words("F1.B T1.R")},
                      {"N3", words("R1.T T1.D")}},
            .shafts = "<shaft id='W1' joins='@E1 @P1'/><shaft id='W2' joins='@M1 @D1'/>",
            .reservoir =
                "<reservoir id='T1'><port id='S'/><port id='R'/><port id='D'/>"
                "</reservoir>"};
}

using Units = std::vector<std::vector<std::string>>;

/// The drive with its parts in assemblies U1, U2 ...: what lines join inside one and what leaves
/// it is found here.
std::string assembled(const Drive& drive, const Units& units) {
    std::map<std::string, std::size_t> unit;  // part -> number of its assembly
    for (std::size_t u = 0; u < units.size(); ++u)
        for (const std::string& id : units[u]) unit[id] = u + 1;
    std::vector<std::string> inside(units.size() + 1);
    for (const PartText& part : drive.parts) inside[unit[part.id]] += part.text;
    inside[0] += drive.reservoir;
    for (const LineText& line : drive.lines) {
        std::map<std::size_t, Ports> ends;
        for (const std::string& port : line.ports) ends[unit[id_of(port)]].push_back(port);
        const bool alone = ends.size() == 1;
        std::string outer;
        for (const auto& [u, ports] : ends) {
            std::string all;
            for (const std::string& port : ports) all += (all.empty() ? "" : " ") + port;
            if (u == 0) {
                outer += ' ' + all;
                continue;
            }
            if (ports.size() > 1) inside[u] += "<line id='" + line.id + "' joins='" + all + "'/>";
            if (alone) continue;
            inside[u] += "<port id='" + line.id + "' of='" + ports.front() + "'/>";
            outer += " U" + std::to_string(u) + '.' + line.id;
        }
        if (!outer.empty())
            inside[0] += "<line id='" + line.id + "' joins='" + outer.substr(1) + "'/>";
    }
    std::string shafts = drive.shafts;
    for (std::size_t at = shafts.find('@'); at != std::string::npos; at = shafts.find('@')) {
        const std::string id = shafts.substr(at + 1, 2);
        const std::size_t u = unit[id];
        shafts.replace(at, 1, u == 0 ? "" : "U" + std::to_string(u) + '/');
    }
    std::string text = "<circuit format='1'>" + inside[0];
    for (std::size_t u = 1; u < inside.size(); ++u)
        text += "<assembly id='U" + std::to_string(u) + "'>" + inside[u] + "</assembly>";
    return text + shafts + "</circuit>";
}

/// Parts of each unit drawn by lot out of what such a unit may hold.
Units by_lot(const Units& may_hold, unsigned seed) {
    std::mt19937 lot(seed);
    std::set<std::string> taken;
    Units units;
    for (const auto& parts : may_hold) {
        std::vector<std::string> unit;
        for (const std::string& id : parts)
            if (lot() % 4 != 0 && taken.count(id) == 0) unit.push_back(id);
        if (unit.size() < 2) continue;
        taken.insert(unit.begin(), unit.end());
        units.push_back(std::move(unit));
    }
    return units;
}

}  // namespace

std::vector<std::pair<std::string, std::string>> assembled_circuits() {
    const std::vector<std::string> pump = {"P1", "P2", "R1", "C1", "C2", "I3"};
    const std::vector<std::string> motor = {"M1", "V1", "R4", "R2", "R3", "I1", "I2", "I4"};
    std::vector<std::pair<std::string, std::string>> out = {
        {"pump unit, motor with manifold", assembled(one_loop(), {pump, motor})},
        {"pump unit without the charge pump",
         assembled(one_loop(), {{"P1", "C1", "C2", "R2", "R3", "I1", "I2"}})},
        {"block of reliefs, brake block, conditioning",
         assembled(one_loop(), {{"R2", "R3", "I1", "I2"}, {"V3", "B1"}, {"F1", "K1"}})},
        {"two motors with flushing",
         assembled(two_motors(), {pump, {"M1", "V1", "R4"}, {"M2", "V2", "R5"}})},
        {"two motors, one with flushing", assembled(two_motors(), {{"M2", "V2", "R5"}})},
        {"valve block of an open drive", assembled(open_drive(), {{"V1", "V2", "C1", "R1"}})},
        {"power pack and valve block",
         assembled(open_drive(), {{"E1", "P1", "R1", "F1"}, {"V1", "V2", "C1"}})}};
    const Units loop_units = {{"P1", "P2", "R1", "C1", "C2", "I3", "R2", "R3", "F1"},
                              {"M1", "V1", "R4", "R2", "R3", "I1", "I2", "I4", "B1", "V3"},
                              {"F1", "K1"},
                              {"V3", "B1"}};
    Units motors_units = loop_units;
    motors_units.push_back({"M2", "V2", "R5"});
    const Units open_units = {{"E1", "P1", "R1", "F1"}, {"V1", "V2", "C1", "R1"}, {"M1", "D1"}};
    for (unsigned seed = 1; seed <= 12; ++seed) {
        const std::string number = std::to_string(seed);
        out.emplace_back("units of a loop " + number,
                         assembled(one_loop(), by_lot(loop_units, seed)));
        out.emplace_back("units of two motors " + number,
                         assembled(two_motors(), by_lot(motors_units, seed)));
        out.emplace_back("units of an open drive " + number,
                         assembled(open_drive(), by_lot(open_units, seed)));
    }
    return out;
}

}  // namespace loopwright::testing
