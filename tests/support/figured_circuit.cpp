#include <loopwright/tests/support/figured_circuit.h>

#include <string_view>

namespace loopwright::testing {

namespace {

/// '#' stands for the drive's number.
constexpr std::string_view drive = R"(
  <engine id="E#" power="55 kW" speed="2400 rpm"/>
  <pump id="P#" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic"
        drain="external" case-ports="2" slip-coefficient="1.5e-8" drag-coefficient="1.68e5"
        friction-coefficient="0.045"/>
  <pump id="Q#" displacement="18 cm3/rev" slip-coefficient="4e-8" drag-coefficient="1e5"
        friction-coefficient="0.1"/>
  <shaft id="W#" joins="E# P# Q#"/>
  <motor id="M#" displacement="80 cm3/rev" design="bent-axis" drain="external" case-ports="2"
         slip-coefficient="1.5e-8" drag-coefficient="1.2e5" friction-coefficient="0.03"/>
  <load id="D#" torque="100 N.m"/>
  <shaft id="X#" joins="M# D#"/>
  <reservoir id="T#" volume="60 L"><port id="S"/><port id="R"/><port id="D"/></reservoir>
  <line id="S#" joins="T#.S Q#.S" bore="38 mm" length="0.8 m"/>
  <relief-valve id="R#" setting="24 bar" full-flow-pressure="27 bar" full-flow="40 L/min"/>
  <filter id="F#" flow="40 L/min" pressure-drop="0.6 bar" viscosity="30 mm2/s"/>
  <check-valve id="C#"/>
  <check-valve id="B#"/>
  <line id="G#a" joins="Q#.P F#.A R#.P" bore="16 mm" length="0.4 m"/>
  <line id="G#b" joins="F#.B C#.A B#.A" bore="16 mm" length="0.6 m"/>
  <line id="G#c" joins="R#.T T#.R" bore="16 mm" length="0.6 m"/>
  <relief-valve id="H#" setting="380 bar"/>
  <relief-valve id="J#" setting="380 bar"/>
  <line id="A#" joins="P#.A M#.A H#.P J#.T C#.B V#.A" bore="25 mm" length="2.4 m"/>
  <line id="B#l" joins="P#.B M#.B J#.P H#.T B#.B V#.B" bore="25 mm" length="2.4 m"/>
  <flushing-valve id="V#"/>
  <relief-valve id="K#" setting="18 bar" full-flow-pressure="24 bar" full-flow="30 L/min"/>
  <line id="L#a" joins="V#.F K#.P" bore="10 mm" length="0.1 m"/>
  <line id="L#b" joins="K#.T M#.L1" bore="16 mm" length="0.2 m"/>
  <line id="L#c" joins="M#.L2 P#.L1" bore="20 mm" length="2.2 m"/>
  <cooler id="Y#" flow="30 L/min" pressure-drop="0.8 bar" viscosity="30 mm2/s" bypass="1.5 bar"/>
  <line id="L#d" joins="P#.L2 Y#.A" bore="20 mm" length="0.9 m"/>
  <line id="L#e" joins="Y#.B T#.D" bore="20 mm" length="0.7 m"/>
  <command id="Z#" given-by="pedal"> <stage of="P#" from="0 %" to="100 %"/> </command>
)";

/// The text with a number in place of each '#'.
std::string numbered(std::string_view text, unsigned number) {
    std::string out;
    for (const char c : text)
        if (c == '#')
            out += std::to_string(number);
        else
            out += c;
    return out;
}

}  // namespace

std::string figured_drives(unsigned drives) {
    std::string xml = R"(<circuit format="1" title="ice resurfacer">
  <fluid grade="VG 46" viscosity-index="105" density="870 kg/m3"/>)";
    std::string settings;
    for (unsigned i = 1; i <= drives; ++i) {
        xml += numbered(drive, i);
        settings += numbered(
            R"(<set of="Z#" travel="100 %"/> <set of="E#" speed="2400 rpm"/>
    <set of="D#" torque="100 N.m"/> )",
            i);
    }
    return xml + R"(  <duty> <point id="sweep" oil="50 degC">)" + settings +
           "</point> </duty>\n</circuit>\n";
}

}  // namespace loopwright::testing
