#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/base/source.h>
#include <loopwright/parser/kinds/kind.h>

/// What a circuit says beside its parts, as read (parser/kinds/definitions.h has the language).
/// Figures stand in the circuit's table of attributes, given ones and defaults.
namespace loopwright {

/// A run of consecutive entries of a table.
struct Range {
    Index begin = 0;
    Index end = 0;

    Index size() const { return end - begin; }
};

struct Fluid {
    Range attributes = {};
    SourceRef place = {};
};

/// A part that follows a command from `from` to `to` of its travel.
struct Stage {
    Index part = none;  ///< component: pump, motor or prime mover
    Range attributes = {};
    SourceRef place = {};
};

struct Command {
    std::string_view id = {};
    std::string_view title = {};
    Range attributes = {};
    Range stages = {};  ///< into Circuit::stages
    SourceRef place = {};
};

/// Figures of one part or command at a duty point; exactly one of the two indices is set.
struct PointSetting {
    Index component = none;
    Index command = none;
    Index position = none;  ///< into Circuit::positions, of a directional valve
    Range attributes = {};
    SourceRef place = {};
};

/// An operating point. Figures that the point itself carries belong to the only command, load or
/// prime mover of the circuit: the reader makes sure that there is but one.
struct DutyPoint {
    std::string_view id = {};
    std::string_view title = {};
    std::optional<State> state = {};
    Range attributes = {};
    Range settings = {};  ///< into Circuit::point_settings
    SourceRef place = {};
};

struct Duty {
    Range attributes = {};
    Range points = {};  ///< into Circuit::points
    SourceRef place = {};
};

/// When an interlock acts.
enum class Trigger : std::uint8_t {
    closed,       ///< a hand valve whose position a switch reports
    open,         ///< likewise
    below,        ///< a sensor or switch reads less than the figure
    above,        ///< likewise more
    position,     ///< a directional valve stands in it
    turns,        ///< a prime mover
    stands,       ///< a prime mover
    neutral,      ///< a command
    off_neutral,  ///< a command
    clogged,      ///< a filter with an electrical indicator
};
/// What it prevents.
enum class Prevented : std::uint8_t {
    start,     ///< of a prime mover
    position,  ///< that a directional valve goes there
    move,      ///< that a command takes effect
};
std::string_view name(Trigger condition);
std::string_view name(Prevented prevented);

struct Interlock {
    Trigger when = Trigger::closed;
    Index watched = none;  ///< component; of neutral and off_neutral: command
    Index watched_position = none;
    std::optional<double> level = {};  ///< SI, of below and above; nothing: its own setting
    Prevented prevents = Prevented::start;
    Index held = none;  ///< component; of `move`: command
    Index held_position = none;
    std::string_view when_text = {};
    std::string_view prevents_text = {};
    SourceRef place = {};
};

struct Remark {
    Subject subject = {};
    std::string_view text = {};
    std::string_view by = {};
    std::string_view date = {};
    SourceRef place = {};
};

/// An accepted finding. `subject.index` is none where the subject is a loop or a side.
struct Waiver {
    std::string_view rule = {};
    Subject subject = {};
    std::string_view reason = {};
    std::string_view by = {};
    std::optional<std::chrono::sys_days> until = {};
    std::string_view until_text = {};
    SourceRef place = {};
};

/// Where a component's symbol is wished for.
struct SheetPlace {
    Index component = none;
    Range attributes = {};
    SourceRef place = {};
};

struct Sheet {
    Range attributes = {};
    Range places = {};  ///< into Circuit::sheet_places
    SourceRef place = {};
};

/// Measured data of a component: a full grid of `axes` axes, rows sorted by them, the first axis
/// slowest. `figures` has a row after the other, in SI, a column for each spec.
struct MeasuredTable {
    Index component = none;
    std::vector<const AttributeSpec*> columns = {};  ///< axes first
    std::size_t axes = 0;
    std::vector<double> figures = {};
    SourceRef place = {};
};

/// How far a component's attribute may be off, either way, in SI.
struct Tolerance {
    Index component = none;
    const AttributeSpec* spec = nullptr;
    double si = 0.0;
    SourceRef place = {};
};

}  // namespace loopwright
