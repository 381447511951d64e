#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include <loopwright/base/dimension.h>

/// The language of the circuit description: what a kind of component is. Constant data only; the
/// reader, the schema, the documentation and the symbol sheet are all driven by it.
///
/// Port      where a line can join, named by the trade's letter
/// Passage   a way for oil between two ports of one component, with its class
/// Attribute a figure or word that the file gives
namespace loopwright {

/// How oil can pass; the words are those of the design's "Terms".
enum class PassageClass : std::uint8_t {
    joined,           ///< the same node
    one_way,          ///< a check: from -> to
    pressure_opened,  ///< relief, sequence, bypass: from -> to once the pressure is there
    reduced,          ///< reducing valve: from -> to, up to its setting
    switched,         ///< open or shut as a position says
    metering,         ///< orifice, throttle
    divider,          ///< a flow divider's leg: carries its share of the full flow, either way
    displacement,     ///< through the working chambers of a pump or an actuator
    leakage,          ///< inside a machine, from a working port to the housing or the lower port
    element,          ///< a filter's or a cooler's element
};

/// What moves a switched passage.
enum class Shift : std::uint8_t {
    never,     ///< not a switched passage
    position,  ///< the positions that the file declares (directional valve) or the kind has
    hand,      ///< by hand, as drawn
    pressure,  ///< by the pressures of the state (flushing valve): open while `from` is the low
               ///< side
    pressure_centred,  ///< by the same, open while neither side is higher
    higher_inlet,      ///< shuttle valve: open while `from` is the higher inlet
    pilot_opens,       ///< open while the pilot's node is high in the state
    pilot_shuts,       ///< open until the pilot's node is high in the state
    pilot_unloads,     ///< open while the pilot's node is at or above the setting
};

/// The part a component plays, read by graph and rules in place of its kind.
enum class Part : std::uint8_t {
    plumbing,  ///< junctions, valves and all that has no part of its own
    reservoir,
    prime_mover,
    pump,
    actuator,    ///< motor, cylinder, ...
    pump_motor,  ///< a pump where a prime mover turns it, else an actuator (`FlowGraph::part`)
    hand_pump,
    load,
    filter,
    cooler,
    brake,
    clutch,
    gearbox,
    accumulator,
    instrument,
    device,  ///< what the description has no word for
};

enum class PortUse : std::uint8_t { working, suction, drain, pilot, outlet };

/// A port or passage that is there only where an attribute has a value; an empty attribute name
/// means always.
struct When {
    std::string_view attribute = {};
    std::string_view is = {};  ///< the value, or several with | between them: "2|3"
};

struct PortSpec {
    std::string_view letter = {};
    PortUse use = PortUse::working;
    When when = {};
    When also = {};  ///< both must hold
    std::string_view doc = {};
};

enum class AttributeType : std::uint8_t {
    quantity,  ///< number and unit of `dimension`
    count,     ///< whole number
    yes_no,
    choice,  ///< one of `choices`
    date,    ///< year-month-day; in SI: days since 1970-01-01
    text,
};

struct AttributeSpec {
    std::string_view name = {};
    AttributeType type = AttributeType::text;
    Dimension dimension = Dimension::ratio;
    double least = 0.0;          ///< SI; a value below is out of range
    bool least_included = true;  ///< whether `least` itself is allowed
    double most = 1e300;         ///< SI
    std::span<const std::string_view> choices = {};
    std::string_view default_text = {};  ///< as a file would write it; empty: unknown if not given
    std::string_view default_source = {};  ///< where the default comes from
    bool required = false;
    std::string_view doc = {};
    std::string_view example = {};  ///< empty: that of the dimension
};

struct PassageSpec {
    std::string_view from = {};  ///< port letter
    std::string_view to = {};
    PassageClass passage = PassageClass::joined;
    bool both_ways = false;
    Shift shift = Shift::never;
    std::string_view opening = {};  ///< attribute with the pressure that it takes to open
    std::string_view pilot = {};    ///< letter of the port whose pressure shifts it
    /// Letter of the port whose pressure stands in the spring chamber and adds to `opening`; empty,
    /// or where that port is not joined: the outlet `to`.
    std::string_view spring_chamber = {};
    bool needs_opening = false;      ///< the passage exists only where that attribute is given
    std::string_view position = {};  ///< with Shift::position: the kind's position that opens it
    When when = {};
    When also = {};
};

/// A position of a valve whose kind fixes them.
struct PositionSpec {
    std::string_view id = {};
    bool rest = false;  ///< more than one where nothing but the oil moves it: each is asked always
    When when = {};
};

/// What may stand inside the element.
enum class Children : std::uint8_t {
    no,
    ports,  ///< `port` elements (reservoir, junction)
    legs,   ///< `port` elements, each a leg from the kind's first port (flow divider)
    pairs,  ///< `port` elements, the first joined with the second, the third with the fourth, ...
    ports_and_positions,  ///< `port` and `position` elements (directional valve)
    ports_and_passages,   ///< `port` and `passage` elements (device)
};

struct FailureMode {
    std::string_view id = {};
    std::string_view doc = {};
};

struct Kind {
    std::string_view name = {};   ///< the element's name
    std::string_view title = {};  ///< for people, singular
    std::string_view doc = {};    ///< one or two sentences
    Part part = Part::plumbing;
    bool turns = false;        ///< has a shaft end, or a rod
    bool for_towing = false;   ///< opened by hand to move the machine with the prime mover stopped
    bool breathes = false;     ///< lets air into the reservoir that it sits on, and out of it
    bool shows_level = false;  ///< tells the oil level of the reservoir that it is joined to
    /// Names of its two shaft ends, joined as `id.end`; empty: it has one, joined by its id.
    std::span<const std::string_view> ends = {};
    Children children = Children::no;
    std::span<const PortSpec> ports = {};
    std::span<const AttributeSpec> attributes = {};
    std::span<const PositionSpec> positions = {};  ///< where the kind fixes them
    std::span<const PassageSpec> passages = {};
    std::span<const FailureMode> failures = {};
};

std::string_view name(PassageClass passage);

}  // namespace loopwright
