#include <loopwright/tests/support/reversing_drive.h>

namespace loopwright::testing {

const std::string& reversing_drive() {
    static const std::string xml = R"(<circuit format="1" title="Drive reversed by a valve">
<engine id="E1"/>
<pump id="P1" displacement="45 cm3/rev" closed-loop="yes" drain="external" case-pressure="3 bar"/>
<pump id="P2" displacement="14 cm3/rev"/>
<motor id="M1" displacement="50 cm3/rev" drain="external" case-pressure="3 bar"/>
<load id="D1"/>
<shaft id="W1" joins="E1 P1 P2"/>
<shaft id="W2" joins="M1 D1"/>
<directional-valve id="V3">
<port id="P"/><port id="T"/><port id="A"/><port id="B"/>
<position id="n" rest="yes"><path from="P" to="T"/></position>
<position id="f" in="drive-forward overrun-forward"><path from="P" to="A"/><path from="B" to="T"/></position>
<position id="r" in="drive-reverse overrun-reverse"><path from="P" to="B"/><path from="A" to="T"/></position>
</directional-valve>
<check-valve id="C3"/>
<check-valve id="C4"/>
<relief-valve id="R1" setting="20 bar"/>
<relief-valve id="R2" setting="250 bar"/>
<relief-valve id="R3" setting="250 bar"/>
<filter id="F1" fineness="10 um"/>
<reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<line id="S1" joins="T1.S P2.S"/>
<line id="G1" joins="P2.P R1.P F1.A"/>
<line id="G2" joins="F1.B C3.A C4.A"/>
<line id="G3" joins="R1.T T1.R"/>
<line id="L1" joins="P1.L M1.L T1.D"/>
<line id="HP" joins="P1.P V3.P"/>
<line id="HT" joins="P1.S V3.T"/>
<line id="HA" joins="V3.A M1.A R2.P R3.T C3.B"/>
<line id="HB" joins="V3.B M1.B R3.P R2.T C4.B"/>
</circuit>
)";
    return xml;
}

}  // namespace loopwright::testing
