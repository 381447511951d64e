#include <loopwright/tests/support/at_work.h>

#include <gtest/gtest.h>

#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {

const std::string& drive_at_work() {
    static const std::string xml = R"(<circuit format="1" title="Drive at work">
<fluid grade="VG 46" viscosity-index="100" density="870 kg/m3"/>
<engine id="E1" power="55 kW" speed="2400 rpm" max-torque="240 N.m"/>
<pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic" drain="external" case-pressure="3 bar" low-side-pressure="12 bar" control-pressure="15 bar" max-speed="3300 rpm" max-torque="500 N.m" through-drive-torque="200 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC"/>
<pump id="P2" displacement="18 cm3/rev" inlet-pressure="0.8 bar abs" max-speed="3300 rpm" max-torque="100 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC"/>
<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar" low-side-pressure="10 bar" max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0" drag-coefficient="0" friction-coefficient="0" min-viscosity="10 mm2/s" max-viscosity="500 mm2/s" start-viscosity="1500 mm2/s" max-temperature="95 degC"/>
<load id="D1"/>
<shaft id="W1" joins="E1 P1 P2"/>
<shaft id="W2" joins="M1 D1"/>
<check-valve id="C1"/>
<check-valve id="C2"/>
<relief-valve id="R1" setting="24 bar"/>
<relief-valve id="R2" setting="380 bar" full-flow-pressure="410 bar" full-flow="200 L/min"/>
<relief-valve id="R3" setting="380 bar" full-flow-pressure="410 bar" full-flow="200 L/min"/>
<flushing-valve id="V1"/>
<relief-valve id="R4" setting="18 bar"/>
<filter id="F1" fineness="10 um" clogging-indicator="visual" flow="60 L/min" pressure-drop="0.5 bar" viscosity="30 mm2/s"/>
<cooler id="K1" capacity="12 kW" temperature-difference="30 K" bypass="1.5 bar" flow="60 L/min" pressure-drop="0.5 bar" viscosity="30 mm2/s"/>
<reservoir id="T1" cooling-area="1 m2" max-temperature="80 degC" breather="yes" level-indicator="yes"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<line id="S1" joins="T1.S P2.S" function="suction" bore="38 mm" length="0.8 m"/>
<line id="G1" joins="P2.P R1.P F1.A" bore="16 mm"/>
<line id="G2" joins="F1.B C1.A C2.A" bore="16 mm"/>
<line id="G3" joins="R1.T T1.R" bore="20 mm"/>
<line id="HA" joins="P1.A M1.A R2.P R3.T C1.B V1.A" function="working" bore="25 mm" length="1 m"/>
<line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B" function="working" bore="25 mm" length="1 m"/>
<line id="FL" joins="V1.F R4.P" bore="16 mm"/>
<line id="L1" joins="M1.L K1.A P1.L R4.T" function="drain" bore="20 mm" length="2 m"/>
<line id="L2" joins="K1.B T1.D" function="drain" bore="20 mm" length="1 m"/>
<command id="Z1"><stage of="P1" from="0 %" to="100 %"/></command>
<duty altitude="500 m" ambient="25 degC" cold-start="0 degC">
<point id="work" speed="2400 rpm" travel="100 %" torque="200 N.m" oil="50 degC" share="100 %"/>
</duty>
</circuit>
)";
    return xml;
}

Circuit at_work(const std::vector<Edit>& edits) {
    return circuit_from(edited(drive_at_work(), edits));
}

std::string judged_at_work(const std::vector<Edit>& edits, std::string_view rule) {
    return verdicts_of(at_work(edits), rule);
}

Figures figures_at_work(const std::vector<Edit>& edits, std::string_view rule,
                        std::string_view subject) {
    const Circuit circuit = at_work(edits);
    const Rule* const only[] = {find_rule(rule)};
    const CheckResult result = check(circuit, only);
    for (const Verdict& verdict : result.verdicts)
        if (verdict.subject.id == subject && verdict.figures != nullptr) return *verdict.figures;
    ADD_FAILURE() << "no figures of " << rule << " for " << subject;
    return {};
}

}  // namespace loopwright::testing
