#include <loopwright/render/symbols/variants.h>

namespace loopwright {

namespace {

constexpr SymbolVariant variants[] = {
    {"local mark, line below the level",
     R"(<reservoir id="T"><port id="R" level="below"/></reservoir>)", true},
    {"local mark, line above the level",
     R"(<reservoir id="T"><port id="R" level="above"/></reservoir>)", true},
    {"local mark, sealed",
     R"(<reservoir id="T" pressure="0.5 bar"><port id="R" level="below"/></reservoir>)", true},
    {"lines below and above the level",
     R"(<reservoir id="T"><port id="S" level="below"/><port id="R" level="below"/>
        <port id="D" level="above"/></reservoir>)"},
    {"", R"(<junction id="J"><port id="a"/><port id="b"/><port id="c"/></junction>)"},
    {"", R"(<engine id="E"/>)"},
    {"", R"(<electric-motor id="E"/>)"},
    {"", R"(<load id="D"/>)"},
    {"spring-applied", R"(<brake id="B"/>)"},
    {"pressure-applied", R"(<brake id="B" applied="pressure"/>)"},
    {"engaged", R"(<clutch id="G"/>)"},
    {"parted, hydraulic", R"(<clutch id="G" engaged="no" actuation="hydraulic"/>)"},
    {"engaged, electric", R"(<clutch id="G" actuation="electric"/>)"},
    {"", R"(<gearbox id="G" ratio="3.5"/>)"},
    {"", R"(<check-valve id="C"/>)"},
    {"with spring", R"(<check-valve id="C" opening-pressure="0.5 bar"/>)"},
    {"open", R"(<shut-off-valve id="H"/>)"},
    {"closed", R"(<shut-off-valve id="H" position="closed"/>)"},
    {"", R"(<orifice id="O"/>)"},

    {"fixed, one flow direction", R"(<pump id="P"/>)"},
    {"variable, one flow direction, drain", R"(<pump id="P" variable="yes" drain="external"/>)"},
    {"fixed, two flow directions", R"(<pump id="P" flow-directions="2"/>)"},
    {"variable, over centre, drain",
     R"(<pump id="P" flow-directions="2" variable="yes" drain="external"/>)"},
    {"over centre, hydraulic control, two case ports",
     R"(<pump id="P" flow-directions="2" variable="yes" drain="external" case-ports="2"
        control="hydraulic"/>)"},
    {"over centre, electric control, three case ports",
     R"(<pump id="P" flow-directions="2" variable="yes" drain="external" case-ports="3"
        control="electric"/>)"},
    {"variable, manual control", R"(<pump id="P" variable="yes" control="manual"/>)"},
    {"over centre, hydraulic pilots X1 and X2",
     R"(<pump id="P" flow-directions="2" variable="yes" control="hydraulic" pilot-ports="2"
        drain="external" case-ports="2"/>)"},
    {"pressure-compensated", R"(<pump id="P" variable="yes" control="pressure-compensated"/>)"},
    {"load-sensing", R"(<pump id="P" variable="yes" control="load-sensing" pilot-ports="1"/>)"},

    {"fixed, one flow direction", R"(<motor id="M" flow-directions="1"/>)"},
    {"fixed, two flow directions", R"(<motor id="M"/>)"},
    {"fixed, two flow directions, drain", R"(<motor id="M" drain="external"/>)"},
    {"variable, two case ports",
     R"(<motor id="M" variable="yes" drain="external" case-ports="2"/>)"},
    {"variable, hydraulic control, three case ports",
     R"(<motor id="M" variable="yes" drain="external" case-ports="3" control="hydraulic"/>)"},
    {"variable, hydraulic pilot X",
     R"(<motor id="M" variable="yes" drain="external" control="hydraulic" pilot-ports="1"/>)"},

    {"fixed, one flow direction", R"(<pump-motor id="U" flow-directions="1"/>)"},
    {"variable, two flow directions, drain",
     R"(<pump-motor id="U" variable="yes" drain="external"/>)"},
    {"", R"(<hand-pump id="P"/>)"},
    {"", R"(<semi-rotary-actuator id="A"/>)"},
    {"double-acting", R"(<cylinder id="A"/>)"},
    {"single-acting", R"(<cylinder id="A" action="single"/>)"},
    {"single-acting, spring return", R"(<cylinder id="A" action="single" spring-return="yes"/>)"},
    {"two rods", R"(<cylinder id="A" rods="2"/>)"},
    {"cushioned at both ends", R"(<cylinder id="A" cushion="both"/>)"},
    {"cushioned at the cap end", R"(<cylinder id="A" cushion="cap"/>)"},

    {"adjustable", R"(<relief-valve id="R"/>)"},
    {"fixed setting", R"(<relief-valve id="R" adjustable="no"/>)"},
    {"pilot-operated, adjustable", R"(<relief-valve id="R" operation="pilot"/>)"},
    {"pilot-operated, fixed setting",
     R"(<relief-valve id="R" operation="pilot" adjustable="no"/>)"},

    {"", R"(<filter id="F"/>)"},
    {"with bypass", R"(<filter id="F" bypass="2 bar"/>)"},
    {"visual clogging indicator", R"(<filter id="F" clogging-indicator="visual"/>)"},
    {"bypass, electrical clogging indicator",
     R"(<filter id="F" bypass="2 bar" clogging-indicator="electrical"/>)"},
    {"element one way", R"(<filter id="F" one-way="yes"/>)"},
    {"one way, bypass, indicator",
     R"(<filter id="F" one-way="yes" bypass="2 bar" clogging-indicator="visual"/>)"},
    {"", R"(<cooler id="K"/>)"},
    {"with bypass", R"(<cooler id="K" bypass="1.5 bar"/>)"},

    {"closed centre", R"(<flushing-valve id="V"/>)"},
    {"open centre", R"(<flushing-valve id="V" centre="open"/>)"},

    {"2/2, solenoid",
     R"(<directional-valve id="V"><port id="A"/><port id="P"/>
        <position id="shut" rest="yes"/>
        <position id="open"><path from="P" to="A"/></position></directional-valve>)"},
    {"2/2, lever, detent, throttled",
     R"(<directional-valve id="V" actuation="lever" detent="yes"><port id="A"/><port id="B"/>
        <position id="free"><path from="A" to="B"/></position>
        <position id="slow" rest="yes"><path from="A" to="B" throttled="yes"/></position>
        </directional-valve>)"},
    {"3/2, pilot",
     R"(<directional-valve id="V" actuation="pilot"><port id="A"/><port id="P"/><port id="T"/>
        <position id="off" rest="yes"><path from="A" to="T"/></position>
        <position id="on"><path from="P" to="A"/></position></directional-valve>)"},
    {"4/2, solenoid, detent",
     R"(<directional-valve id="V" detent="yes"><port id="A"/><port id="B"/><port id="P"/>
        <port id="T"/>
        <position id="b" rest="yes"><path from="P" to="B"/><path from="A" to="T"/></position>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        </directional-valve>)"},
    {"4/3, solenoid, closed centre",
     R"(<directional-valve id="V"><port id="A"/><port id="B"/><port id="P"/><port id="T"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"/>
        <position id="b"><path from="P" to="B"/><path from="A" to="T"/></position>
        </directional-valve>)"},
    {"4/3, lever, tandem centre",
     R"(<directional-valve id="V" actuation="lever"><port id="A"/><port id="B"/><port id="P"/>
        <port id="T"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"><path from="P" to="T"/></position>
        <position id="b"><path from="P" to="B"/><path from="A" to="T"/></position>
        </directional-valve>)"},
    {"4/3, pedal, open centre",
     R"(<directional-valve id="V" actuation="pedal"><port id="A"/><port id="B"/><port id="P"/>
        <port id="T"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"><path from="P" to="T"/><path from="A" to="T"/>
          <path from="B" to="T"/></position>
        <position id="b"><path from="P" to="B"/><path from="A" to="T"/></position>
        </directional-valve>)"},
    {"4/3, pilot, throttled float centre",
     R"(<directional-valve id="V" actuation="pilot"><port id="A"/><port id="B"/><port id="P"/>
        <port id="T"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"><path from="A" to="T" throttled="yes"/>
          <path from="B" to="T" throttled="yes"/></position>
        <position id="b"><path from="P" to="B" throttled="yes"/><path from="A" to="T"/></position>
        </directional-valve>)"},
    {"4/4, lever, detent",
     R"(<directional-valve id="V" actuation="lever" detent="yes"><port id="A"/><port id="B"/>
        <port id="P"/><port id="T"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"><path from="P" to="T"/></position>
        <position id="b"><path from="P" to="B"/><path from="A" to="T"/></position>
        <position id="float"><path from="A" to="B"/></position>
        </directional-valve>)"},
    {"6/3, solenoid",
     R"(<directional-valve id="V"><port id="A"/><port id="B"/><port id="C"/><port id="P"/>
        <port id="T"/><port id="R"/>
        <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
        <position id="rest" rest="yes"><path from="R" to="C"/></position>
        <position id="b"><path from="P" to="B"/><path from="A" to="T"/></position>
        </directional-valve>)"},
    {"pilot-to-open check", R"(<check-valve id="C" pilot="opens" opening-pressure="1 bar"/>)"},
    {"pilot-to-close check", R"(<check-valve id="C" pilot="shuts"/>)"},
    {"shuttle", R"(<shuttle-valve id="C"/>)"},
    {"relief, drained outside", R"(<relief-valve id="R" setting="50 bar" drain="external"/>)"},
    {"relief with make-up check",
     R"(<relief-valve id="R" setting="350 bar" operation="pilot" make-up-check="yes"/>)"},
    {"bypass valve", R"(<bypass-valve id="V"/>)"},
    {"reducing, two ports", R"(<reducing-valve id="V"/>)"},
    {"reducing, three ports", R"(<reducing-valve id="V" relieving="yes"/>)"},
    {"sequence", R"(<sequence-valve id="V" setting="80 bar"/>)"},
    {"sequence, piloted, check", R"(<sequence-valve id="V" pilot="external" check="yes"/>)"},
    {"counterbalance, piloted", R"(<counterbalance-valve id="V" setting="250 bar"/>)"},
    {"counterbalance, drained", R"(<counterbalance-valve id="V" drain="external"/>)"},
    {"counterbalance, by the load",
     R"(<counterbalance-valve id="V" pilot="internal" check-opening-pressure="0.5 bar"/>)"},
    {"unloading", R"(<unloading-valve id="V" setting="120 bar"/>)"},
    {"priority", R"(<priority-valve id="V"/>)"},
    {"priority, load-sensing", R"(<priority-valve id="V" load-sensing="yes"/>)"},
    {"pilot control, lever, two", R"(<pilot-control-valve id="V" outlets="2"/>)"},
    {"pilot control, pedal", R"(<pilot-control-valve id="V" actuation="pedal"/>)"},
    {"throttle", R"(<throttle id="V"/>)"},
    {"throttle, fixed", R"(<throttle id="V" adjustable="no"/>)"},
    {"throttle with check", R"(<throttle-check id="V" check-opening-pressure="0.5 bar"/>)"},
    {"flow control", R"(<flow-control id="V" flow="20 L/min"/>)"},
    {"flow control with check", R"(<flow-control id="V" check="yes" adjustable="no"/>)"},
    {"divider, spool", R"(<flow-divider id="V"><port id="A"/><port id="B"/></flow-divider>)"},
    {"divider, rotary, three legs",
     R"(<flow-divider id="V" design="rotary"><port id="A"/><port id="B"/><port id="C"/></flow-divider>)"},
    {"strainer", R"(<strainer id="X"/>)"},
    {"strainer with bypass", R"(<strainer id="X" bypass="0.2 bar"/>)"},
    {"heater", R"(<heater id="X"/>)"},
    {"thermostatic bypass", R"(<thermostatic-bypass id="X"/>)"},
    {"accumulator, gas", R"(<accumulator id="X"/>)"},
    {"accumulator, bladder", R"(<accumulator id="X" separator="bladder"/>)"},
    {"accumulator, diaphragm", R"(<accumulator id="X" separator="diaphragm"/>)"},
    {"accumulator, piston", R"(<accumulator id="X" separator="piston"/>)"},
    {"accumulator, spring", R"(<accumulator id="X" charge="spring"/>)"},
    {"gauge", R"(<gauge id="X"/>)"},
    {"thermometer", R"(<thermometer id="X"/>)"},
    {"level indicator", R"(<level-indicator id="X"/>)"},
    {"level indicator, switched", R"(<level-indicator id="X" switched="yes"/>)"},
    {"flow meter", R"(<flow-meter id="X"/>)"},
    {"pressure switch", R"(<pressure-switch id="X"/>)"},
    {"pressure sensor", R"(<sensor id="X"/>)"},
    {"temperature sensor", R"(<sensor id="X" measures="temperature"/>)"},
    {"breather", R"(<breather id="X"/>)"},
    {"breather that holds pressure", R"(<breather id="X" opening-pressure="0.35 bar"/>)"},
    {"tachometer", R"(<tachometer id="X"/>)"},
    {"measuring point", R"(<measuring-point id="X"/>)"},
    {"plug", R"(<plug id="X"/>)"},
    {"coupling, joined", R"(<quick-coupling id="X"/>)"},
    {"coupling, parted", R"(<quick-coupling id="X" joined="no"/>)"},
    {"coupling, one valve, parted", R"(<quick-coupling id="X" joined="no" valves="one"/>)"},
    {"coupling, no valves", R"(<quick-coupling id="X" valves="none"/>)"},
    {"device",
     R"(<device id="X"><port id="A"/><port id="B"/><passage from="A" to="B" class="joined"/></device>)"},
    {"device, inside unknown",
     R"(<device id="X" inside="unknown"><port id="A"/><port id="B"/><port id="C"/></device>)"},
    {"rotary joint, two ways",
     R"(<rotary-joint id="X"><port id="A"/><port id="B"/><port id="C"/><port id="D"/></rotary-joint>)"},
};

}  // namespace

std::span<const SymbolVariant> symbol_variants() { return variants; }

}  // namespace loopwright
