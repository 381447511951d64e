#include <loopwright/parser/name_table.h>

#include <bit>
#include <utility>

#include <loopwright/parser/short_text.h>

namespace loopwright {
namespace {

constexpr std::size_t short_id = 7;

}  // namespace

// The id itself with its length in the top byte, or for a longer one a hash whose top byte no
// length has. Only the latter needs a look at the id's text.
std::uint64_t NameTable::key_of(std::string_view id) {
    return id.size() <= short_id ? packed(id) | (std::uint64_t{id.size()} << 56)
                                 : hash_text(id, 0) | (std::uint64_t{0xFF} << 56);
}

void NameTable::reserve(std::size_t names) {
    ids_.reserve(names);
    names_.reserve(names);
    std::size_t entries = 64;
    while (entries * 3 < names * 4) {
        entries *= 2;
    }
    if (entries > entries_.size()) {
        rehash(entries);
    }
}

std::size_t NameTable::first_entry(std::uint64_t key, std::uint32_t scope) const {
    // Two rounds, and the top bits: each then hangs on every byte of the key.
    std::uint64_t hash = (key ^ (std::uint64_t{scope} << 24)) * 0x9E3779B97F4A7C15U;
    hash = (hash ^ (hash >> 29)) * 0xBF58476D1CE4E5B9U;
    return hash >> (64 - std::bit_width(entries_.size() - 1));
}

std::size_t NameTable::find_entry(std::uint64_t key, std::uint32_t scope,
                                  std::string_view id) const {
    std::size_t at = first_entry(key, scope);
    for (; entries_[at].name != none; at = (at + 1) & (entries_.size() - 1)) {
        const Entry& entry = entries_[at];
        if (entry.key == key && entry.scope == scope &&
            (id.size() <= short_id || ids_[entry.name].text == id)) {
            break;
        }
    }
    return at;
}

void NameTable::rehash(std::size_t entries) {
    const std::vector<Entry> old = std::exchange(entries_, std::vector<Entry>(entries));
    for (const Entry& entry : old) {
        if (entry.name != none) {
            std::size_t at = first_entry(entry.key, entry.scope);
            while (entries_[at].name != none) {
                at = (at + 1) & (entries - 1);
            }
            entries_[at] = entry;
        }
    }
}

Name* NameTable::add(NameScope scope, std::string_view id, Name name) {
    if ((ids_.size() + 1) * 4 > entries_.size() * 3) {
        rehash(entries_.empty() ? 64 : entries_.size() * 2);
    }
    const std::uint64_t key = key_of(id);
    Entry& entry = entries_[find_entry(key, scope.number(), id)];
    if (entry.name != none) {
        return &names_[entry.name];
    }
    entry = {key, scope.number(), static_cast<Index>(names_.size())};
    names_.push_back(name);
    ids_.push_back({id, scope.number(), name.type != NameType::unusable});
    return nullptr;
}

const Name* NameTable::find(NameScope scope, std::string_view id) const {
    if (entries_.empty()) {
        return nullptr;
    }
    const Entry& entry = entries_[find_entry(key_of(id), scope.number(), id)];
    return entry.name == none ? nullptr : &names_[entry.name];
}

std::vector<std::string_view> NameTable::ids(NameScope scope) const {
    std::vector<std::string_view> list;
    for (const Id& id : ids_) {
        if (id.scope == scope.number() && id.usable) {
            list.push_back(id.text);
        }
    }
    return list;
}

}  // namespace loopwright
