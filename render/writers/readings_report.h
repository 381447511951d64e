#pragma once

#include <string>
#include <string_view>

#include <loopwright/hydraulics/readings.h>
#include <loopwright/parser/circuit.h>

/// What `readings` prints of a circuit.
namespace loopwright {

/// A sheet to be printed and filled in at the machine; fits 100 columns.
std::string readings_text(const Circuit& circuit, const hydraulics::Readings& all);

/// "loopwright-readings/1", and its schema.
std::string_view readings_schema();
std::string readings_json(std::string_view file, const Circuit& circuit,
                          const hydraulics::Readings& all);

/// RFC 4180: a row for each place in each state; figures in SI and as people read them, and an
/// empty column for the measured value.
std::string readings_csv(const Circuit& circuit, const hydraulics::Readings& all);

}  // namespace loopwright
