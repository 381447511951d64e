#include <algorithm>
#include <stdexcept>

#include <loopwright/rules/docket.h>

namespace loopwright {

std::vector<Index>& SubjectTable::slots_of(ElementType type) {
    switch (type) {
        case ElementType::circuit:
            return of_circuit_;
        case ElementType::side:
        case ElementType::port:
            return by_port_;
        case ElementType::line:
            return by_line_;
        case ElementType::shaft:
            throw std::logic_error("no rule judges shafts");
        case ElementType::loop:
        case ElementType::component:
        case ElementType::waiver:
            break;
    }
    return by_component_;
}

Index& SubjectTable::slot_of(Key key) {
    const ElementType type = type_of(key);
    std::vector<Index>& slots = slots_of(type);
    if (slots.empty())
        slots.assign(type == ElementType::circuit ? 1
                     : type == ElementType::side || type == ElementType::port
                         ? circuit_->ports.size()
                     : type == ElementType::line ? circuit_->lines.size()
                                                 : circuit_->components.size(),
                     none);
    return slots[type == ElementType::circuit ? 0 : static_cast<Index>(key)];
}

void SubjectTable::make_slots() {
    if (has_slots_) return;
    has_slots_ = true;
    for (std::size_t at = 0; at < keys_.size(); ++at) slot_of(keys_[at]) = static_cast<Index>(at);
}

Index SubjectTable::find_behind(std::size_t first, ElementType type, Index index) {
    const Key key = key_of(type, index);
    const auto begin = keys_.begin() + static_cast<std::ptrdiff_t>(first);
    if (in_order_) {
        if (keys_.empty() || keys_.back() < key) return none;
        const auto at = std::lower_bound(begin, keys_.end(), key);
        return at == keys_.end() || *at != key ? none : static_cast<Index>(at - keys_.begin());
    }
    constexpr std::ptrdiff_t few = 32;
    if (keys_.end() - begin <= few) {
        const auto at = std::find(begin, keys_.end(), key);
        return at == keys_.end() ? none : static_cast<Index>(at - keys_.begin());
    }
    make_slots();
    // A part in two regions has its slot where the one before put it.
    const Index at = slot_of(key);
    return at != none && at < first ? none : at;
}

void SubjectTable::add(ElementType type, Index index) {
    const Key key = key_of(type, index);
    if (has_slots_) slot_of(key) = static_cast<Index>(keys_.size());
    in_order_ = in_order_ && (keys_.empty() || keys_.back() < key);
    keys_.push_back(key);
}

}  // namespace loopwright
