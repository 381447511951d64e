#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

#include <loopwright/base/dimension.h>

namespace loopwright {

/// How bad a failed need is (the words of OASIS SARIF 2.1.0): danger or destruction; a weakness;
/// worth knowing.
enum class Level : std::uint8_t { note, warning, error };

/// What became of one need on one subject. `inconclusive`: a datum is missing and is named.
enum class Outcome : std::uint8_t { not_applicable, pass, inconclusive, fail };

/// The states a drive is judged in; `running` are all but the last two.
enum class State : std::uint8_t {
    neutral,
    drive_forward,
    drive_reverse,
    overrun_forward,
    overrun_reverse,
    hold,
    lost_signal,
    stopped,
    towing,
};
inline constexpr std::size_t state_count = 9;

/// What a finding can be about or lead through.
enum class ElementType : std::uint8_t { circuit, loop, side, component, line, shaft, port, waiver };

/// Kebab-case words, the same in JSON, options and on the drawing.
std::string_view name(Level level);
std::string_view name(Outcome outcome);
std::string_view name(State state);
std::string_view name(ElementType type);
/// The state of that name, if there is one.
std::optional<State> state_named(std::string_view text);

/// Index of something in its table of the circuit.
using Index = std::uint32_t;
inline constexpr Index none = std::numeric_limits<Index>::max();

/// What a verdict is about. `index` leads into the circuit's table for components, lines, shafts
/// and ports, for a loop to its first pump, for a side to the port it is named after; `id` is its
/// name in every output (`P1`, `U1/C2`, `loop:P1`, `side:P1.A`, `circuit`).
struct Subject {
    ElementType type = ElementType::circuit;
    Index index = none;
    std::string_view id = {};

    friend bool operator==(const Subject&, const Subject&) = default;
};

/// One element of a witness: a component passed from one of its ports to another, or a line
/// likewise; ports are indices into the circuit's ports, `none` where the walk starts or ends in
/// the element. `text` says what happens there ("free flow", "opens at its setting") and points
/// to a constant.
struct Step {
    ElementType type = ElementType::component;
    Index index = none;
    Index from = none;
    Index to = none;
    std::string_view text = {};
};

enum class WitnessShape : std::uint8_t {
    path,      ///< an ordered walk
    frontier,  ///< where a search ended; the walk to it comes first if there is one
    cut,       ///< elements that together separate
    set,       ///< elements without order
};
std::string_view name(WitnessShape shape);

struct Witness {
    WitnessShape shape = WitnessShape::path;
    std::span<const Step> steps = {};
};

/// Where an operated valve stands: its component and the position's name.
using ValvePosition = std::pair<Index, std::string_view>;

/// A state in which a verdict holds. `positions` is given only where not all positions of that
/// state share the outcome.
struct StateUse {
    State state = State::neutral;
    std::span<const ValvePosition> positions = {};
};

/// A value with its dimension, SI.
struct Measure {
    double si = 0.0;
    Dimension dimension = Dimension::ratio;
};

/// What a numeric need comes to: `margin` is how far the measured value is on the good side.
struct Figures {
    Measure measured = {};
    std::optional<Measure> required = {};
    std::optional<Measure> margin = {};
};

/// Where a requirement comes from. `work` is "common practice, no source" where there is none.
struct Citation {
    std::string_view work = {};
    std::string_view place = {};
};

/// A figure that a rule holds things against. A user may set another in a thresholds file.
struct Threshold {
    std::string_view name = {};  ///< kebab-case
    Dimension dimension = Dimension::ratio;
    double value = 0.0;  ///< SI
    double least = 0.0;  ///< SI; what a user may set is in this range
    double most = 1e300;
    std::string_view doc = {};
    std::string_view example = {};  ///< as a file would write it; empty: that of the dimension
    Citation source = {};
};

/// The words and facts of a rule, constant data that every output reads.
struct RuleInfo {
    std::string_view id = {};        ///< kebab-case, the file's and the test folder's name
    std::string_view family = {};    ///< heading of the catalogue
    std::string_view question = {};  ///< one sentence ending in a question mark
    std::string_view why = {};       ///< what breaks and whom it can hurt
    std::string_view decided = {};   ///< how it is decided
    std::string_view data = {};      ///< the data it reads
    std::string_view subject = {};   ///< what it is asked of, "each main side, branch and section"
    std::string_view states = {};    ///< "running, where low or neutral"
    Level level = Level::error;      ///< the highest that a fail can have
    std::string_view remedy = {};
    std::span<const Citation> sources = {};
    std::span<const Threshold> thresholds = {};
    /// Rules whose finding on the same drive explains one of this rule; the first that has one.
    std::span<const std::string_view> follows = {};
};

/// A threshold as a run holds things against it.
struct ThresholdInUse {
    const RuleInfo* rule = nullptr;
    const Threshold* threshold = nullptr;
    double si = 0.0;
    bool given = false;  ///< set by the user
};

/// Why a finding is accepted, by whom, and to the end of which day ("2027-06-30"; may be empty).
struct Waived {
    std::string_view reason = {};
    std::string_view by = {};
    std::string_view until = {};
    Index waiver = none;  ///< in the circuit's table
};

/// The finding that another one follows from.
struct Cause {
    const RuleInfo* rule = nullptr;
    Subject subject = {};
};

/// The verdict of one rule on one subject: the worst state decides, `states` lists all that share
/// the outcome, the witness is that of the first. Texts and lists are views of what the result of
/// the check keeps (positions' names of the circuit's own text).
struct Verdict {
    const RuleInfo* rule = nullptr;
    Subject subject = {};
    Outcome outcome = Outcome::not_applicable;
    Level level = Level::error;  ///< meaningful with `fail` only
    std::span<const StateUse> states = {};
    std::string_view point = {};  ///< of a need at work: id of the duty point that decides
    std::string_view message = {};
    Witness witness = {};
    const Figures* figures = nullptr;                ///< where the need is a numeric one
    std::span<const std::string_view> missing = {};  ///< data named as "P1.case-pressure"
    const Waived* waived = nullptr;                  ///< where the finding is accepted
    const Cause* follows = nullptr;                  ///< where another finding explains this one
};

}  // namespace loopwright
