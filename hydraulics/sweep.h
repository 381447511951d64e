#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>

namespace loopwright::hydraulics {

/// A datum that is gone through in equal steps: of the duty point ("travel", "torque"), or of a
/// part ("M1.min-displacement").
struct SweepAxis {
    std::string datum = {};
    const AttributeSpec* spec = nullptr;
    Index component = none;  ///< none: of the point
    double from = 0.0;       ///< SI
    double to = 0.0;         ///< SI
    int count = 2;           ///< 1 to most_steps

    static constexpr int most_steps = 100'000;
    double at(int step) const { return count < 2 ? from : from + (to - from) * step / (count - 1); }
};

/// "travel=0%..100%:41"; nothing and why in `trouble` where it is none, or names nothing.
std::optional<SweepAxis> read_axis(const Circuit& circuit, std::string_view text,
                                   std::string& trouble);

struct SweepColumn {
    std::string id = {};             ///< component; empty: of the whole
    std::string_view quantity = {};  ///< "speed"
    Dimension dimension = Dimension::ratio;
};

/// Rows of a sweep that follow one another.
struct SweepRows {
    std::size_t first = 0;  ///< row
    std::size_t columns = 0;
    std::vector<std::uint8_t> solved = {};  ///< by row
    std::vector<double> figures = {};       ///< row by row, SI; no number where there is none

    std::size_t size() const { return solved.size(); }
    /// Those that follow.
    void append(const SweepRows& rows);
    /// `row`: from `first` on.
    std::optional<double> figure(std::size_t row, std::size_t column) const;
};

/// A duty point of a circuit with each combination of the axes' data in place of its own, the first
/// axis slowest.
class Sweep {
  public:
    /// Keeps a reference to the circuit. `point`: its id; empty: the first one, of at least one.
    Sweep(const Circuit& circuit, std::string_view point, std::vector<SweepAxis> axes);

    const std::vector<SweepAxis>& axes() const { return axes_; }
    /// Of each machine speed, torque, pressure at its higher port, flow and power; of a load with
    /// wheels the speed along the road and the tractive effort; of the whole power in and out and
    /// the efficiency, and the oil's temperature where its heat is balanced.
    const std::vector<SweepColumn>& columns() const { return columns_; }
    std::size_t size() const;                              ///< rows
    double axis(std::size_t row, std::size_t axis) const;  ///< SI

    /// Works out all rows on all cores; the result does not hang on how many there are. `tell` is
    /// called with each piece by whoever worked it out, `take` then in the order of the rows, one
    /// at a time. Only few pieces are held at any time.
    using Tell = std::function<std::string(const SweepRows&)>;
    using Take = std::function<void(const SweepRows&, std::string_view told)>;
    void run(const Tell& tell, const Take& take) const;

  private:
    const Circuit& circuit_;
    Index point_ = 0;
    std::vector<SweepAxis> axes_;
    std::vector<SweepColumn> columns_;
};

/// A duty point of the circuit as it is, with a sweep's columns.
struct DutyRow {
    std::string_view id = {};
    std::vector<std::optional<double>> axes = {};  ///< its own data, SI
    SweepRows rows = {};                           ///< one
};
std::vector<DutyRow> duty_rows(const Circuit& circuit, const Sweep& sweep);

}  // namespace loopwright::hydraulics
