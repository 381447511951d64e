#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

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

/// A table of a sweep's rows, piece by piece: for people, as "loopwright-solve/1" with `sweep` in
/// place of points, and as RFC 4180 (a column for each figure, in the units of its head).
class SweepTable {
  public:
    enum class Format : std::uint8_t { text, json, csv };

    /// Keeps references to the sweep and the file's name.
    SweepTable(const hydraulics::Sweep& sweep, Format format, std::string_view file);

    std::string head() const;
    /// May be called from several threads at once.
    std::string rows(const hydraulics::SweepRows& rows) const;
    std::string tail() const;

  private:
    static constexpr std::string_view tail_braces = "}}";

    template <class Axis, class Figure>
    void add_text_row(bool solved, const Axis& axis, const Figure& figure, std::string& out) const;

    const hydraulics::Sweep& sweep_;
    Format format_;
    std::string_view file_;
    std::vector<std::string> heads_ = {};
    std::vector<std::size_t> widths_ = {};
};

}  // namespace loopwright
