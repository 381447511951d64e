#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/operating_point.h>

/// What instruments should show: what a commissioning engineer holds against the machine.
namespace loopwright::hydraulics {

enum class Measured : std::uint8_t { pressure, temperature, flow, speed, level, contamination };
std::string_view name(Measured measured);
Dimension dimension_of(Measured measured);

/// A gauge, a sensor, a measuring point, a flow meter, a tachometer or a thermometer.
struct MeasuringPlace {
    Index component = none;
    Measured measured = Measured::pressure;
    std::string where = {};            ///< line or shaft that it is on; empty: on none
    std::optional<double> range = {};  ///< the highest that it shows
};

struct Reading {
    /// Over the atmosphere, of a flow from A to B of a meter, without a sign of a sensor.
    std::optional<double> si = {};
    std::string_view code = {};  ///< of contamination: no worse than that
    std::string unknown = {};    ///< why there is neither; a datum that is not given by name
    bool above_range = false;
};

/// All readings of one state at one temperature of the reservoir's oil.
struct ReadingsAt {
    std::optional<double> oil = {};      ///< K
    std::string problem = {};            ///< why none can be told
    bool no_solution = false;            ///< and it is no datum that is wanting
    std::vector<Reading> readings = {};  ///< one a place
};

struct StateReadings {
    std::string_view id = {};  ///< of the duty point; "neutral": rated speed, nothing commanded
    bool is_duty_point = true;
    State state = State::neutral;
    ReadingsAt cold = {};  ///< the oil as at a cold start
    ReadingsAt hot = {};   ///< as at the point; in neutral as hot as at the hottest point
};

struct Readings {
    std::vector<MeasuringPlace> places = {};   ///< in file order
    std::vector<StateReadings> states = {};    ///< neutral, then the duty points in file order
    std::vector<Assumption> assumptions = {};  ///< of the hot ones, each once
};

/// Steady states, the oil in the reservoir at one temperature; a loop's own as computed for it.
/// That of oil on its way out of housings is not computed, and "cannot tell". A circuit without
/// duty: at rated speed and full travel.
Readings readings(const Circuit& circuit);

}  // namespace loopwright::hydraulics
