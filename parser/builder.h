#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/parser/file_store.h>
#include <loopwright/parser/name_table.h>
#include <loopwright/parser/path_arena.h>
#include <loopwright/parser/reader.h>
#include <loopwright/parser/report.h>
#include <loopwright/parser/vocabulary.h>

/// From XML documents to the circuit.
///
/// Page      a file seen through one inclusion: what places in messages refer to
/// Scope     the circuit or one assembly: ids are unique in it, lines join what stands in it
/// Given     the attributes that an element has, by the slots of its vocabulary
/// Pending   what refers to ids; resolved when its scope is complete, inner scopes first
///
/// One walk in document order fills the circuit's tables; at the end of each scope its assembly
/// ports, then its lines, then its shafts are resolved. A mistake is told once, where it stands:
/// what only follows from one (a reference to a part that could not be read) is let pass.
namespace loopwright {

struct Page {
    const CircuitFile* file = nullptr;
    std::uint32_t inclusion = 0;

    const XmlDocument& document() const { return *file->document; }
    SourceRef at(Span span) const { return {inclusion, span}; }
};

/// An attribute's text and where it stands.
struct GivenText {
    std::string_view text = {};
    SourceRef whole = {};  ///< name and value
    SourceRef value = {};  ///< inside the quotes; the whole where there is nothing
    bool plain = true;     ///< a byte of `text` is a byte of the file
};

/// A `set` child of a `use` element.
struct Override {
    std::string_view of = {};  ///< the part's path below the use
    std::string_view attribute = {};
    GivenText value = {};
    SourceRef of_place = {};
    SourceRef attribute_place = {};
    bool met = false;  ///< the part exists
};

/// The overrides of one `use`, sorted by part; `prefix` is the length of the use's path with '/'.
struct OverrideLevel {
    std::size_t prefix = 0;
    std::vector<Override> overrides = {};
};

struct Scope {
    const Page* page = nullptr;
    NameScope names = NameScope::circuit();
    Index assembly = none;
    std::string_view path = {};  ///< the assembly's; empty for the circuit
    std::string_view id = {};    ///< the assembly's
    /// Parts whose id is missing: as many unknown names may mean them.
    std::size_t nameless = 0;
    std::vector<std::string_view> let_pass = {};
    std::size_t first_port = 0;  ///< into the builder's pending tables
    std::size_t first_line = 0;
    std::size_t first_shaft = 0;
};

class Given {
  public:
    explicit Given(std::size_t slots) { std::fill_n(attributes_.begin(), slots, none); }

    bool has(Slot slot) const {
        return slot != no_slot && (attributes_[slot] != none || (overridden_ >> slot & 1U) != 0);
    }
    Index attribute(Slot slot) const { return attributes_[slot]; }
    const Override* override_of(Slot slot) const {
        return (overridden_ >> slot & 1U) != 0 ? overrides_[slot] : nullptr;
    }
    /// Given under a name that is misspelt: not to be judged further.
    bool guessed(Slot slot) const { return (guessed_ >> slot & 1U) != 0; }

    void set(Slot slot, Index attribute) { attributes_[slot] = attribute; }
    void guess(Slot slot, Index attribute) {
        attributes_[slot] = attribute;
        guessed_ |= std::uint64_t{1} << slot;
    }
    void override_with(Slot slot, const Override& value) {
        overrides_[slot] = &value;
        overridden_ |= std::uint64_t{1} << slot;
        guessed_ &= ~(std::uint64_t{1} << slot);
    }

  private:
    // Only the slots that the element has are ever set or read.
    std::array<Index, slot_count> attributes_;
    std::array<const Override*, slot_count> overrides_;
    std::uint64_t overridden_ = 0;
    std::uint64_t guessed_ = 0;
};

class Builder {
  public:
    explicit Builder(const ReadOptions& options);

    /// Builds the circuit of the outermost file. Call once.
    ReadResult build(std::string text, std::string name, std::filesystem::path path,
                     std::filesystem::path folder);
    /// The same for a file that could not be read.
    ReadResult refuse(std::string name, Words words);

  private:
    struct PendingPort {  // of an assembly
        std::string_view letter = {};
        GivenText of = {};
        SourceRef place = {};
    };
    struct PendingJoin {  // of a line or a shaft
        Index index = none;
        Index joins = none;  ///< attribute
    };
    /// What a port's name means: the port, and where it was reached through a declared port, that.
    struct Target {
        Index port = none;
        Index assembly = none;
        Index declared = none;
        bool doubtful = false;  ///< perhaps another part is meant
    };
    /// What the builder keeps of an assembly beside the circuit's entry.
    struct AssemblyState {
        std::vector<Index> joined_by = {};  ///< line, by declared port
        bool doubtful = false;              ///< its ports are not all known
    };

    /// An element and its attributes.
    struct Entry {
        const Page& page;
        const ElementWords& words;
        std::uint32_t element;
        Given given;
    };

    ReadResult finish();
    void report_xml(const Page& page);

    // build.cpp: what stands in a circuit or assembly
    void circuit(const Page& page);
    void content(Scope& scope, std::uint32_t element);
    void one_part(Scope& scope, std::uint32_t element);
    void line(Scope& scope, const ElementWords& words, std::uint32_t element);
    void shaft(Scope& scope, const ElementWords& words, std::uint32_t element);
    void assembly(Scope& scope, const ElementWords& words, std::uint32_t element);
    void assembly_port(Scope& scope, std::uint32_t element);
    bool enter_assembly(Scope& scope, std::uint32_t element, std::string_view path,
                        std::string_view title);
    void check_format(const Page& page, const ElementWords& words, const Given& given, bool& known);
    void unknown_element(const Scope& scope, std::uint32_t element);

    // build_attributes.cpp
    Given read_given(const Page& page, const ElementWords& words, std::uint32_t element,
                     bool is_root = false);
    void check_required(const Page& page, const ElementWords& words, const Given& given,
                        std::uint32_t element);
    GivenText text_of(const Page& page, const Given& given, Slot slot) const;
    GivenText text_of(const Page& page, const ScannedAttribute& attribute) const;
    /// Reads a given value over its default; where it is bad (then told), returns false and leaves
    /// the default.
    bool read_given_value(const Page& page, const ElementWords& words, const Given& given,
                          Slot slot, AttributeValue& value);
    /// The value given or by default; the default too where it is bad.
    AttributeValue value_of(const Page& page, const ElementWords& words, const Given& given,
                            Slot slot, bool* bad = nullptr);
    std::string_view take_id(Scope& scope, const ElementWords& words, const Given& given,
                             NameType type, Index index);
    /// `sound`: is told whether the text may be an id (told where it may not and is no guess).
    std::string_view id_text(const Page& page, const ElementWords& words, const Given& given,
                             bool* sound = nullptr);
    void report_duplicate(const GivenText& id, const Name& first);
    std::string_view path_of(const Scope& scope, std::uint32_t element, std::string_view id);
    bool take_text(const Page& page, std::uint32_t element, std::size_t bytes);
    void no_children(const Page& page, std::uint32_t element, std::string_view owner);
    std::string called(const Page& page, const ElementWords& words, const Given& given) const;

    // build_component.cpp, build_ports.cpp
    void component(Scope& scope, const ElementWords& words, std::uint32_t element);
    /// By slot: what an attribute of the part at hand is, given or by default; null if unknown.
    using Values = std::array<const AttributeValue*, slot_count>;
    void kind_ports(const ElementWords& words, Component& component, Index index,
                    const Values& values);
    void check_agreements(const ElementWords& words, const Values& values);
    static std::uint32_t conditions_of(const ElementWords& words, const Values& values);
    void declared_parts(const Page& page, const ElementWords& words, std::uint32_t element,
                        Index component);
    void declared_port(const Page& page, std::uint32_t element, Index component);
    void join_ports(Index component);
    void divide_ports(SourceRef place, Index component);
    void pair_ports(SourceRef place, Index component);
    void positions(const Page& page, std::uint32_t element, Index component, bool doubtful);
    void position(const Page& page, std::uint32_t element, Index component, bool& doubtful);
    void path(const Page& page, std::uint32_t element, Index component, Index position);
    Index path_end(const Page& page, const Given& given, Slot slot, Index component);
    void passages(const Page& page, std::uint32_t element, Index component);
    void passage(const Entry& entry, Index component);
    std::uint16_t states_of(const GivenText& in);
    std::string owner_of(Index component) const;

    // build_use.cpp
    void used_root(const Page& page, Scope& inner, Index index, OverrideLevel& level);
    Slot line_joins(const ElementWords& words) const;
    void use(Scope& scope, const ElementWords& words, std::uint32_t element);
    OverrideLevel read_overrides(const Page& page, std::uint32_t element);
    void apply_overrides(const ElementWords& words, std::string_view path, Given& given);
    void report_unmet(Scope& inner, const OverrideLevel& level);

    // resolve.cpp, explain.cpp
    void finish_scope(Scope& scope);
    void resolve_port(Scope& scope, const PendingPort& pending);
    void resolve_line(Scope& scope, const PendingJoin& pending);
    void resolve_shaft(Scope& scope, const PendingJoin& pending);
    void join(Scope& scope, Index line, std::string_view token, SourceRef place);
    void join_shaft(Scope& scope, Index shaft, std::string_view token, SourceRef place);
    bool find_port(const Scope& scope, std::string_view token, Target& target) const;
    /// Good until the next is added.
    Port& add_port(Index component, std::string_view letter, SourceRef place);
    Index port_of(Index component, std::string_view letter) const;
    void explain_port(Scope& scope, std::string_view token, SourceRef place);
    void explain_missing(Scope& scope, std::string_view id, SourceRef place, std::string_view after,
                         std::string_view expected);
    std::string condition_of(const Name& name, std::string_view letter) const;
    std::string scope_name(const Scope& scope) const;
    void explain_letter(const Name& name, std::string_view token, SourceRef place);
    void explain_inner(Scope& scope, std::string_view token, SourceRef place);
    void explain_joined(Index line, Index first, std::string_view token, SourceRef place);
    void explain_shaft(Scope& scope, std::string_view token, SourceRef place);
    /// Of an id behind the ids of the assemblies around it.
    void explain_path(Scope& scope, std::string_view token, SourceRef place,
                      std::string_view expected);
    /// `first`: the shaft that the part, or that end of it, is on; none: its other end is on this.
    void explain_turning(Index shaft, Index first, std::string_view token, SourceRef place);
    void explain_end(const Name& name, std::string_view token, SourceRef place);
    /// Of a component or an assembly; the first `most` of its letters.
    std::vector<std::string_view> letters_of(const Name& name, std::size_t most) const;
    std::size_t letter_count(const Name& name) const;
    std::string_view near_letter(const Name& name, std::string_view letter);
    std::string ports_of(const Name& name, std::string_view path) const;
    std::string kind_of(const Name& name) const;
    SourceRef place_of(const Name& name) const;
    static SourceRef part_of(const GivenText& text, std::size_t begin, std::size_t end);
    std::string near_id(NameScope scope, std::string_view id);
    const Name* find_path(const Scope& scope, std::string_view path) const;

    bool limit_reached(const Page& page, Span span, std::size_t count, std::string_view what);

    ReadLimits limits_;
    std::vector<std::string_view> rules_;  ///< that a waiver may name; empty: any
    std::shared_ptr<SourceSet> sources_;
    Report report_;
    const Vocabulary& vocabulary_ = Vocabulary::shared();
    FileStore files_;
    NameTable names_;
    PathArena paths_;
    Circuit circuit_;

    // build_definitions.cpp: what a circuit says beside its parts, once all parts are known
    /// Reads and checks the attributes.
    Entry enter(const Page& page, const ElementWords& words, std::uint32_t element);
    /// The text of an attribute; none where it is not given or only guessed.
    std::optional<GivenText> text_at(const Entry& entry, std::string_view attribute) const;
    SourceRef tag_of(const Entry& entry) const;
    /// Puts the attributes, given and by default, into the circuit's table.
    Range keep_figures(const Entry& entry);
    /// The value of one of them; null where it is neither given nor there by default, or bad.
    const AttributeValue* figure_in(Range figures, std::string_view attribute) const;
    /// Calls `take(words, child)` for each child that may stand there; tells of the others.
    template <class Take>
    void each_inner(const Page& page, std::uint32_t element, std::string_view owner,
                    std::string_view in, Take&& take);
    void define(Scope& scope);
    void define_one(Scope& scope, const ElementWords& words, std::uint32_t element);
    bool comes_twice(const Entry& entry, bool there);
    void fluid(const Entry& entry);
    void command(Scope& scope, const Entry& entry);
    void stage(Scope& scope, const Entry& entry);
    void remark(Scope& scope, const Entry& entry);
    void waiver(Scope& scope, const Entry& entry);
    void sheet(Scope& scope, const Entry& entry);
    void sheet_place(Scope& scope, const Entry& entry);

    // build_duty.cpp
    void duty(Scope& scope, const Entry& entry);
    void point(Scope& scope, const Entry& entry, double& shares);
    void point_setting(Scope& scope, const Entry& entry, std::size_t first);
    void check_point_owners(const Entry& entry);
    void check_load_once(Range attributes);
    void check_set_once(const DutyPoint& point);
    void check_owner(const Entry& entry, std::string_view attribute, std::string_view owner,
                     const std::vector<std::string_view>& owners);

    // build_interlock.cpp
    void interlock(Scope& scope, const Entry& entry);
    bool read_condition(Scope& scope, const GivenText& when, Interlock& interlock);
    bool read_level(const GivenText& when, const Component& instrument, std::string_view quantity,
                    Interlock& interlock);
    bool read_prevented(Scope& scope, const GivenText& prevents, Interlock& interlock);

    // references.cpp: ids in definitions
    /// What a path means; null where it means nothing (then told) or is not to be judged.
    const Name* named(Scope& scope, const GivenText& text, std::string_view path,
                      std::string_view expected);
    /// Likewise, a component only.
    const Component* named_part(Scope& scope, const GivenText& text, std::string_view path,
                                std::string_view expected, Index& index);
    bool read_subject(Scope& scope, const GivenText& text, Subject& subject);
    Index named_position(const GivenText& text, Index component, std::string_view position);

    // build_tables.cpp: measured data and tolerances of a part
    void inner_part(const Page& page, const ElementWords& words, std::uint32_t element,
                    Index component);
    void table(const Page& page, std::uint32_t element, Index component);
    bool read_rows(const Page& page, std::uint32_t element, MeasuredTable& table,
                   std::vector<SourceRef>& places);
    bool check_columns(SourceRef place, Index component, MeasuredTable& table);
    bool sort_rows(SourceRef place, MeasuredTable& table, const std::vector<SourceRef>& places);
    void tolerance(const Entry& entry, Index component);

    std::vector<std::uint32_t> pending_definitions_;  ///< elements of the outermost file
    std::vector<Index> loads_;                        ///< components
    std::vector<Index> prime_movers_;                 ///< components
    std::vector<PendingPort> pending_ports_;
    std::vector<PendingJoin> pending_lines_;
    std::vector<PendingJoin> pending_shafts_;
    /// The letters of all ports, packed; of a longer one, the first eight bytes.
    std::vector<std::uint64_t> letters_;
    std::vector<Index> first_port_;   ///< by component
    std::vector<Index> joined_by_;    ///< line, by port, from the port's own scope
    std::vector<Index> declared_in_;  ///< assembly, by port: the outermost that declares it
    std::vector<bool> doubtful_;      ///< by component: its ports are not all known
    std::vector<AssemblyState> assemblies_;
    std::vector<OverrideLevel> overrides_;  ///< of the uses around, outermost first
    std::vector<const CircuitFile*> open_;  ///< the files around, outermost first
    Name unreadable_ = {};                  ///< what may be in a file that failed
    /// By element and slot: the last sound value, since circuits repeat theirs.
    std::vector<AttributeValue> last_values_;
    static constexpr std::size_t remembered = 8;
    /// By element: the slots of its first attributes when it was last read.
    std::vector<std::array<Slot, remembered>> last_slots_;
    Words trouble_;  ///< of the value last read, kept for its storage
    std::size_t nesting_ = 0;
    std::size_t text_left_ = 0;  ///< bytes that uses may still bring in
    bool stopped_ = false;       ///< by a limit: nothing further is read

    struct LineSlots {
        Slot joins = no_slot;
        Slot function = no_slot;
        Slot bore = no_slot;
        Slot length = no_slot;
        Slot rating = no_slot;
        Slot burst_pressure = no_slot;
        Slot min_bend_radius = no_slot;
    };
    LineSlots slots_of_line(const ElementWords& words) const;
    LineSlots line_slots_;
    LineSlots hose_slots_;
};

}  // namespace loopwright
