#include <loopwright/hydraulics/heat.h>

namespace loopwright::hydraulics {

Power lost_power(Flow flow, Pressure drop) { return Power(flow.si() * drop.si()); }

TemperatureDifference temperature_rise(Pressure drop, Density density, SpecificHeat heat) {
    return TemperatureDifference(drop.si() / (density.si() * heat.si()));
}

ThermalConductance wall_conductance(Area area, HeatTransfer transfer) {
    return ThermalConductance(area.si() * transfer.si());
}

ThermalConductance cooler_conductance(Power capacity, TemperatureDifference difference) {
    return ThermalConductance(capacity.si() / difference.si());
}

ThermalConductance stream_conductance(Flow flow, Density density, SpecificHeat heat) {
    return ThermalConductance(flow.si() * density.si() * heat.si());
}

Power heat_through(ThermalConductance conductance, Temperature oil, Temperature surroundings) {
    return Power(conductance.si() * (oil - surroundings).si());
}

Power heat_carried(Flow flow, Density density, SpecificHeat heat, Temperature out,
                   Temperature back) {
    return heat_through(stream_conductance(flow, density, heat), out, back);
}

Temperature balance_temperature(Power taken_up, ThermalConductance conductance,
                                Temperature surroundings) {
    return Temperature(surroundings.si() + taken_up.si() / conductance.si());
}

}  // namespace loopwright::hydraulics
