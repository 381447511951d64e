#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include <loopwright/parser/circuit.h>

namespace loopwright {

/// What an id stands for.
enum class NameType : std::uint8_t {
    component,
    line,
    shaft,
    assembly,
    port,      ///< one that the file declares
    position,  ///< of a valve
    command,
    point,    ///< of the duty
    unusable  ///< something that could not be read; whatever refers to it is let pass
};

/// What an id means; type `unusable` and index `none` where it means nothing known.
struct Name {
    NameType type = NameType::unusable;
    bool doubtful = false;  ///< the id is there twice: what refers to it may mean either
    Index index = none;     ///< in the table of its type
};

/// Where an id is unique: the circuit, an assembly, or the ports or positions of one part.
class NameScope {
  public:
    static constexpr NameScope circuit() { return {0, none}; }
    static constexpr NameScope assembly(Index index) { return {0, index}; }
    static constexpr NameScope ports(Index component) { return {1, component}; }
    static constexpr NameScope positions(Index component) { return {2, component}; }
    static constexpr NameScope assembly_ports(Index assembly) { return {3, assembly}; }

    /// The points of the duty.
    static constexpr NameScope points() { return {4, 0}; }

    /// Different for different scopes; indices stay below 2^29.
    std::uint32_t number() const { return number_; }

  private:
    constexpr NameScope(std::uint32_t space, Index index) : number_((index << 3) | space) {}

    std::uint32_t number_;
};

/// All ids of a read by the scope they are unique in: one open-addressing table for the whole
/// circuit. Its entries are small and lie about at random; the ids, which lie as in the file, are
/// mostly at hand when a line next to them asks.
class NameTable {
  public:
    void reserve(std::size_t names);
    std::size_t size() const { return names_.size(); }

    /// Adds a name; if the scope has that id already, changes nothing and returns the first, good
    /// until the next is added.
    Name* add(NameScope scope, std::string_view id, Name name);

    /// Null if the scope has no such id. Good until the next name is added.
    const Name* find(NameScope scope, std::string_view id) const;

    /// Every id of a scope in the order added, without the unusable; walks through all names.
    std::vector<std::string_view> ids(NameScope scope) const;

  private:
    struct Entry {
        std::uint32_t tag = 0;  ///< the hash's lower half; its upper half says where to begin
        Index name = none;      ///< into `names_`; none: the entry is free
    };
    struct Named {
        std::string_view id = {};
        std::uint32_t scope = 0;
        bool usable = true;
        Name name = {};
    };
    std::size_t find_entry(std::uint64_t hash, std::uint32_t scope, std::string_view id) const;
    std::size_t first_entry(std::uint64_t hash) const;
    void rehash(std::size_t entries);

    std::vector<Named> names_ = {};
    std::vector<Entry> entries_ = {};  ///< a power of two of them
};

}  // namespace loopwright
