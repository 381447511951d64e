#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>
#include <loopwright/parser/kinds/definitions.h>
#include <loopwright/parser/kinds/kind.h>
#include <loopwright/parser/short_text.h>

/// What a circuit file may say, made ready for the reader: elements and attributes by their names,
/// and each kind's ports and passages with the conditions they hang on.
namespace loopwright {

/// What the reader does with an element.
enum class ElementRole : std::uint8_t {
    component,
    line,
    hose,  ///< a line that bends
    shaft,
    assembly,
    use,
    circuit,
    port,
    position,
    path,
    set,
    definition,  ///< one of parser/kinds/definitions.h
};

/// An attribute's place in the list of its element; `no_slot`: the element has none of that name.
using Slot = std::uint8_t;
inline constexpr Slot no_slot = 0xFF;
inline constexpr std::size_t slot_count = 64;  ///< no element has more attributes

/// A condition of the kind table: the attribute must be one of the values.
struct Condition {
    Slot slot = no_slot;
    std::vector<std::string_view> words = {};
};

/// A passage of a kind with everything looked up. Ports are indices into the kind's ports.
struct PassagePlan {
    static constexpr std::uint32_t no_port = 0xFF;
    static constexpr std::uint32_t no_position = 0xFF;
    const PassageSpec* spec = nullptr;
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    std::uint32_t pilot = no_port;
    std::uint32_t spring_chamber = no_port;
    std::uint32_t position = no_position;  ///< into the kind's positions
    Slot opening = no_slot;
    std::uint32_t needs = 0;  ///< bits of the element's conditions that must hold
    bool bypass = false;
};

/// Two attributes of one part that must agree.
struct Agreement {
    Slot slot = no_slot;
    Slot other = no_slot;
    std::string_view needs =
        {};  ///< the word that `other` must be; empty: `slot` is at most `other`
};

struct ElementWords {
    std::string_view name = {};
    ElementRole role = ElementRole::component;
    const Kind* kind = nullptr;               ///< with role component only
    const ElementSpec* definition = nullptr;  ///< with role definition only
    std::uint32_t index = 0;                  ///< among the vocabulary's elements
    std::uint32_t first_slot = 0;             ///< of all slots of all elements

    std::vector<const AttributeSpec*> attributes = {};  ///< by slot; a kind's own come first
    std::vector<std::string_view> names = {};           ///< theirs
    std::vector<AttributeValue> defaults = {};  ///< by slot; `spec` null where there is none
    Slot figures = 0;  ///< how many slots, from 0, go into the circuit's table of attributes

    std::vector<Slot> required = {};
    Slot id = no_slot;
    Slot title = no_slot;
    Slot designation = no_slot;

    std::vector<Agreement> agreements = {};
    std::vector<Condition> conditions = {};
    std::vector<std::uint32_t> port_needs = {};      ///< bits, by port of the kind
    std::vector<std::uint32_t> position_needs = {};  ///< bits, by position of the kind
    std::vector<PassagePlan> passages = {};

    /// Whether it joins ports.
    bool is_line() const { return role == ElementRole::line || role == ElementRole::hose; }
    /// Whether ports or passages hang on the attribute.
    bool decides(Slot slot) const;
};

/// Of the kind table alone, so all reads share one.
class Vocabulary {
  public:
    /// Built when first asked for.
    static const Vocabulary& shared();
    Vocabulary(const Vocabulary&) = delete;
    Vocabulary& operator=(const Vocabulary&) = delete;

    /// The element of that name that may stand in a circuit or assembly (or is `circuit`), or null.
    const ElementWords* element(std::string_view name) const;
    /// The element of a kind of the table, or null.
    const ElementWords* element_of(const Kind& kind) const;
    /// Elements that stand inside others; `port` as a reservoir, any other component and an
    /// assembly have it.
    const ElementWords& reservoir_port() const { return elements_[reservoir_port_]; }
    const ElementWords& plain_port() const { return elements_[plain_port_]; }
    const ElementWords& assembly_port() const { return elements_[assembly_port_]; }
    const ElementWords& position() const { return elements_[position_]; }
    const ElementWords& path() const { return elements_[path_]; }
    const ElementWords& set() const { return elements_[set_]; }
    /// The root of a file that `use` brings in.
    const ElementWords& assembly_root() const { return elements_[assembly_root_]; }

    /// A definition of that name that stands in that element (`ElementSpec::in`), or null.
    const ElementWords* definition(std::string_view name, std::string_view in) const;

    /// How many elements there are; each has an index below it.
    std::size_t size() const { return elements_.size(); }
    /// How many slots all elements have together.
    std::size_t slots() const { return slots_; }

    /// The slot of an attribute's name, or `no_slot`.
    Slot slot(const ElementWords& element, std::string_view name) const;
    /// The same, quicker where `guess` is right already.
    Slot slot(const ElementWords& element, std::string_view name, Slot guess) const {
        return guess < element.names.size() && same_text(element.names[guess], name)
                   ? guess
                   : slot(element, name);
    }

    /// Names of the elements that may stand in a circuit or assembly, kinds first.
    std::vector<std::string_view> content_names(bool in_assembly) const;

  private:
    struct Entry {
        std::uint32_t tag = 0;
        std::uint16_t element = 0;
        Slot slot = no_slot;
        bool used = false;
    };
    static constexpr std::size_t entry_count = 4096;
    static constexpr std::uint64_t element_seed = 0xFFFF;

    Vocabulary();
    void add_kind(const Kind& kind);
    void add_own_elements();
    std::uint32_t add(std::string_view name, ElementRole role,
                      std::vector<const AttributeSpec*> attributes);
    void insert(std::uint64_t hash, std::uint32_t element, Slot slot);
    static std::size_t first_entry(const Kind& kind);
    static std::uint32_t condition_bits(ElementWords& words, const When& when);

    std::vector<ElementWords> elements_ = {};
    std::array<Entry, entry_count> entries_ = {};
    std::size_t entries_used_ = 0;
    /// By address: a kind is asked for with each attribute of a component.
    static constexpr std::size_t kind_entry_count = 512;
    std::array<const ElementWords*, kind_entry_count> kind_entries_ = {};
    std::uint32_t slots_ = 0;
    std::uint32_t reservoir_port_ = 0;
    std::uint32_t plain_port_ = 0;
    std::uint32_t assembly_port_ = 0;
    std::uint32_t position_ = 0;
    std::uint32_t path_ = 0;
    std::uint32_t set_ = 0;
    std::uint32_t assembly_root_ = 0;
    std::uint32_t first_definition_ = 0;  ///< the others follow
};

}  // namespace loopwright
