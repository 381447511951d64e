#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/base/quantity.h>
#include <loopwright/base/source.h>
#include <loopwright/parser/definitions.h>
#include <loopwright/parser/kinds/kind.h>

/// The circuit as read: flat tables that refer to each other by index, in file order, with every
/// `use` expanded. Immutable once the reader has handed it out.
///
/// A component's path is its id, behind the ids of the assemblies around it: `P1`, `U1/P1`.
/// A port's name is the component's path, a point and its letter: `U1/P1.A`.
namespace loopwright {

/// One attribute as given or by default. Which member counts depends on the spec's type.
struct AttributeValue {
    const AttributeSpec* spec = nullptr;
    double si = 0.0;             ///< quantity, count; 1 or 0 for yes and no
    std::string_view text = {};  ///< as written (default text where it is not given)
    bool given = true;           ///< false: the default
    SourceRef place = {};        ///< the attribute; nothing for a default
};

struct Port {
    std::string_view letter = {};
    PortUse use = PortUse::working;
    bool below_level = true;   ///< reservoir ports only
    bool level_given = false;  ///< whether the file says which
    Index component = none;
    SourceRef place = {};
};

struct Passage {
    Index from = none;  ///< port
    Index to = none;    ///< port
    Index component = none;
    PassageClass passage = PassageClass::joined;
    Shift shift = Shift::never;
    bool both_ways = false;
    bool bypass = false;          ///< pressure-opened beside an element of the same component
    Index position = none;        ///< with Shift::position: index into the circuit's positions
    Index pilot = none;           ///< port whose pressure shifts it
    Index spring_chamber = none;  ///< port whose pressure adds to the opening; none: `to`
    double opening = 0.0;         ///< Pa that it takes to open; NaN: it needs one and none is given
};

/// One position of a directional valve.
struct Position {
    std::string_view id = {};
    bool rest = false;
    std::uint16_t in = 0;  ///< bit set over State: the states it is declared to stand in; 0: none
    SourceRef place = {};
};

struct Component {
    const Kind* kind = nullptr;
    std::string_view path = {};
    std::string_view title = {};
    std::string_view designation = {};
    Range ports = {};
    Range passages = {};
    Range attributes = {};  ///< all that are given, in the kind's order
    Range positions = {};
    Index assembly = none;   ///< innermost assembly it stands in
    Index shaft = none;      ///< that it is on; with named ends: that its first end is on
    Index far_shaft = none;  ///< that its second end is on
    SourceRef place = {};
};

enum class LineFunction : std::uint8_t {
    not_declared,
    working,
    charge,
    suction,
    return_,
    drain,
    pilot
};
std::string_view name(LineFunction function);

/// What joins ports: a line, or a hose, which is one that bends.
struct Line {
    std::string_view path = {};
    std::string_view title = {};
    Range joins = {};  ///< into Circuit::line_ports
    LineFunction function = LineFunction::not_declared;
    std::optional<Length> bore = {};
    std::optional<Length> length = {};
    std::optional<Pressure> rating = {};
    bool flexible = false;                        ///< a hose; what follows is given of hoses only
    std::optional<Pressure> burst_pressure = {};  ///< at which a new one bursts
    std::optional<Length> min_bend_radius = {};   ///< inner side of the bend
    Index assembly = none;
    SourceRef place = {};
};

struct Shaft {
    std::string_view path = {};
    std::string_view title = {};
    Range joins = {};  ///< into Circuit::shaft_components, in the order written
    Index assembly = none;
    SourceRef place = {};
};

/// A block or housing with declared ports, whether in place or by `use`.
struct Assembly {
    struct DeclaredPort {
        std::string_view letter = {};
        Index port = none;  ///< the inner port it stands for
    };
    std::string_view path = {};
    std::string_view title = {};
    std::vector<DeclaredPort> ports = {};
    Index parent = none;
    SourceRef place = {};
};

struct CircuitTitle {
    std::string_view title = {};
    std::string_view drawing = {};
    std::string_view revision = {};
    std::string_view date = {};
    std::string_view owner = {};
    std::string_view creator = {};
    std::string_view approver = {};
};

struct Circuit {
    CircuitTitle title = {};
    SourceRef place = {};  ///< the root element
    std::vector<Component> components = {};
    std::vector<Port> ports = {};
    std::vector<Passage> passages = {};
    std::vector<AttributeValue> attributes = {};
    std::vector<Position> positions = {};
    std::vector<Line> lines = {};
    std::vector<Index> line_ports = {};
    std::vector<Shaft> shafts = {};
    std::vector<Index> shaft_components = {};
    std::vector<Assembly> assemblies = {};

    std::optional<Fluid> fluid = {};
    std::vector<Command> commands = {};
    std::vector<Stage> stages = {};
    std::optional<Duty> duty = {};
    std::vector<DutyPoint> points = {};
    std::vector<PointSetting> point_settings = {};
    std::vector<Interlock> interlocks = {};
    std::vector<Remark> remarks = {};
    std::vector<Waiver> waivers = {};
    std::optional<Sheet> sheet = {};
    std::vector<SheetPlace> sheet_places = {};
    std::vector<MeasuredTable> tables = {};  ///< by component
    std::vector<Tolerance> tolerances = {};  ///< by component

    std::shared_ptr<const SourceSet> sources = {};
    /// What the string views point into beside the texts of `sources`: decoded texts, composed
    /// paths.
    std::vector<std::shared_ptr<const void>> storage = {};

    std::span<const Port> ports_of(const Component& component) const {
        return {ports.data() + component.ports.begin, component.ports.size()};
    }
    std::span<const Passage> passages_of(const Component& component) const {
        return {passages.data() + component.passages.begin, component.passages.size()};
    }
    std::span<const Position> positions_of(const Component& component) const {
        return {positions.data() + component.positions.begin, component.positions.size()};
    }
    std::span<const AttributeValue> attributes_of(const Component& component) const {
        return {attributes.data() + component.attributes.begin, component.attributes.size()};
    }
    /// Of fluid, command, stage, duty, point, setting, sheet or place.
    template <class Definition>
    std::span<const AttributeValue> figures_of(const Definition& definition) const {
        return {attributes.data() + definition.attributes.begin, definition.attributes.size()};
    }
    std::span<const Index> ports_of(const Line& line) const {
        return {line_ports.data() + line.joins.begin, line.joins.size()};
    }
    std::span<const Index> components_of(const Shaft& shaft) const {
        return {shaft_components.data() + shaft.joins.begin, shaft.joins.size()};
    }

    /// The attribute of that name, given or by default; null where it is neither (unknown).
    const AttributeValue* attribute(const Component& component, std::string_view name) const;
    /// True where a yes-or-no attribute is yes; false where it is no or unknown.
    bool is_yes(const Component& component, std::string_view name) const;
    /// The word of a choice; empty where unknown.
    std::string_view choice(const Component& component, std::string_view name) const;
    /// The figure in SI; nothing where unknown.
    std::optional<double> figure(const Component& component, std::string_view name) const;

    /// The attribute of a definition, given or by default; null where it is neither.
    template <class Definition>
    const AttributeValue* figure_of(const Definition& definition, std::string_view name) const {
        return find_figure(figures_of(definition), name);
    }
    static const AttributeValue* find_figure(std::span<const AttributeValue> figures,
                                             std::string_view name);

    /// `U1/P1.A`.
    std::string port_name(Index port) const;
};

}  // namespace loopwright
