#pragma once

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/oil.h>

/// Heat flows in W. Temperatures in K; a difference is linear in each temperature, so the slopes
/// are the conductances.
namespace loopwright::hydraulics {

/// Power that a flow loses over a pressure drop, all of it into the oil.
Power lost_power(Flow flow, Pressure drop);

/// Rise of the oil's temperature by a pressure drop, the oil taking all of the loss with it.
TemperatureDifference temperature_rise(Pressure drop, Density density, SpecificHeat heat);

/// Conductance of a reservoir's walls.
ThermalConductance wall_conductance(Area area, HeatTransfer transfer);

/// Of a cooler: capacity over the difference of temperatures at which it holds, which is above 0.
ThermalConductance cooler_conductance(Power capacity, TemperatureDifference difference);

/// Of a stream that takes heat up and carries it out: power over the rise of its temperature.
ThermalConductance stream_conductance(Flow flow, Density density, SpecificHeat heat);

/// Heat given to the surroundings; negative where these are the hotter.
Power heat_through(ThermalConductance conductance, Temperature oil, Temperature surroundings);

/// Heat that a stream carries out at one temperature and brings back at another.
Power heat_carried(Flow flow, Density density, SpecificHeat heat, Temperature out,
                   Temperature back);

/// Temperature at which what the oil takes up goes out again; the conductance above 0.
Temperature balance_temperature(Power taken_up, ThermalConductance conductance,
                                Temperature surroundings);

}  // namespace loopwright::hydraulics
