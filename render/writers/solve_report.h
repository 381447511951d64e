#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <loopwright/hydraulics/duty_heat.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/hydraulics/sweep.h>
#include <loopwright/parser/circuit.h>

/// What `solve` prints of a circuit's duty points.
namespace loopwright {

/// For people, a data sheet for each point; fits 100 columns. `duty`: the oil over all of them.
std::string solve_text(const Circuit& circuit, std::span<const hydraulics::OperatingPoint> points,
                       const std::optional<hydraulics::DutyHeat>& duty = {});

/// "loopwright-solve/1", and its schema.
std::string_view solve_schema();
std::string solve_json(std::string_view file, const Circuit& circuit,
                       std::span<const hydraulics::OperatingPoint> points,
                       const std::optional<hydraulics::DutyHeat>& duty = {});

/// RFC 4180: a row for each figure of each point: point, what, id, quantity, value (SI), unit.
std::string solve_csv(const Circuit& circuit, std::span<const hydraulics::OperatingPoint> points);

/// A table of a sweep's rows: for people, as "loopwright-solve/1" with `sweep` in place of points,
/// and as RFC 4180 (a column for each figure, in the units of its head).
std::string sweep_text(const hydraulics::Sweep& sweep);
std::string sweep_json(std::string_view file, const hydraulics::Sweep& sweep);
std::string sweep_csv(const hydraulics::Sweep& sweep);

}  // namespace loopwright
