#include <loopwright/parser/name_table.h>

#include <bit>
#include <utility>

#include <loopwright/parser/short_text.h>

namespace loopwright {

void NameTable::reserve(std::size_t names) {
    names_.reserve(names);
    std::size_t entries = 64;
    while (entries * 3 < names * 4) {
        entries *= 2;
    }
    if (entries > entries_.size()) {
        rehash(entries);
    }
}

std::size_t NameTable::first_entry(std::uint64_t hash) const {
    return hash >> (64 - std::bit_width(entries_.size() - 1));
}

std::size_t NameTable::find_entry(std::uint64_t hash, std::uint32_t scope,
                                  std::string_view id) const {
    std::size_t at = first_entry(hash);
    for (; entries_[at].name != none; at = (at + 1) & (entries_.size() - 1)) {
        const Entry& entry = entries_[at];
        if (entry.tag == static_cast<std::uint32_t>(hash)) {
            const Named& named = names_[entry.name];
            if (named.scope == scope && same_text(named.id, id)) {
                break;
            }
        }
    }
    return at;
}

void NameTable::rehash(std::size_t entries) {
    entries_.assign(entries, {});
    for (Index name = 0; name < names_.size(); ++name) {
        const std::uint64_t hash = hash_text(names_[name].id, names_[name].scope);
        std::size_t at = first_entry(hash);
        while (entries_[at].name != none) {
            at = (at + 1) & (entries - 1);
        }
        entries_[at] = {static_cast<std::uint32_t>(hash), name};
    }
}

Name* NameTable::add(NameScope scope, std::string_view id, Name name) {
    if ((names_.size() + 1) * 4 > entries_.size() * 3) {
        rehash(entries_.empty() ? 64 : entries_.size() * 2);
    }
    const std::uint64_t hash = hash_text(id, scope.number());
    Entry& entry = entries_[find_entry(hash, scope.number(), id)];
    if (entry.name != none) {
        return &names_[entry.name].name;
    }
    entry = {static_cast<std::uint32_t>(hash), static_cast<Index>(names_.size())};
    Named& named = names_.emplace_back();
    named.id = id;
    named.scope = scope.number();
    named.usable = name.type != NameType::unusable;
    named.name = name;
    return nullptr;
}

const Name* NameTable::find(NameScope scope, std::string_view id) const {
    if (entries_.empty()) {
        return nullptr;
    }
    const std::uint64_t hash = hash_text(id, scope.number());
    const Entry& entry = entries_[find_entry(hash, scope.number(), id)];
    return entry.name == none ? nullptr : &names_[entry.name].name;
}

std::vector<std::string_view> NameTable::ids(NameScope scope) const {
    std::vector<std::string_view> list;
    for (const Named& named : names_) {
        if (named.scope == scope.number() && named.usable) {
            list.push_back(named.id);
        }
    }
    return list;
}

}  // namespace loopwright
