#pragma once

#include <span>
#include <string>
#include <string_view>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/circuit.h>

/// What `solve` prints of a circuit's duty points.
namespace loopwright {

/// For people, a data sheet for each point; fits 100 columns.
std::string solve_text(const Circuit& circuit, std::span<const hydraulics::OperatingPoint> points);

/// "loopwright-solve/1", and its schema.
std::string_view solve_schema();
std::string solve_json(std::string_view file, const Circuit& circuit,
                       std::span<const hydraulics::OperatingPoint> points);

/// RFC 4180: a row for each figure of each point: point, what, id, quantity, value (SI), unit.
std::string solve_csv(const Circuit& circuit, std::span<const hydraulics::OperatingPoint> points);

}  // namespace loopwright
