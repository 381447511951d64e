#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/operating_point.h>

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

/// Each combination of the axes, the first slowest.
struct SweepRow {
    std::vector<double> axes = {};  ///< SI
    bool solved = false;
    std::vector<std::optional<double>> figures = {};  ///< by column, SI
};

struct Sweep {
    std::vector<SweepAxis> axes = {};
    std::vector<SweepColumn> columns = {};
    std::vector<SweepRow> rows = {};
};

/// A duty point of the circuit with the axes' data in place of its own. Rows of the first axis are
/// worked out side by side, on all cores; the result does not hang on how many there are. `point`:
/// its id; empty: the first one. `told`: called after each row with how many are done, from any of
/// the threads.
Sweep sweep(const Circuit& circuit, std::string_view point, std::vector<SweepAxis> axes,
            const std::function<void(std::size_t)>& told = {});

}  // namespace loopwright::hydraulics
