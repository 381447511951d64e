#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/short_text.h>

// Attributes and ids of one element.

namespace loopwright {
namespace {

// What editors put at a root so that they find the schema.
bool is_schema_hint(std::string_view attribute) {
    return attribute == "xmlns:xsi" || attribute == "xsi:noNamespaceSchemaLocation";
}

}  // namespace

Given Builder::read_given(const Page& page, const ElementWords& words, std::uint32_t element,
                          bool is_root) {
    const XmlDocument& document = page.document();
    const ScannedElement& scanned = document.element(element);
    Given given(words.attributes.size());
    bool unknown = false;
    const Index end = scanned.attributes + scanned.attribute_count;
    // People write the attributes of a kind in the same order each time.
    std::array<Slot, remembered>& before = last_slots_[words.index];
    for (Index i = scanned.attributes; i < end; ++i) {
        Slot& guess = before[std::min<std::size_t>(i - scanned.attributes, remembered - 1)];
        guess = vocabulary_.slot(words, document.name(document.attribute(i)), guess);
        if (guess != no_slot) {
            given.set(guess, i);
        } else {
            unknown = true;
        }
    }
    if (!unknown) {
        return given;
    }
    const std::vector<std::string_view>& names = words.names;
    for (Index i = scanned.attributes; i < end; ++i) {
        const ScannedAttribute& attribute = document.attribute(i);
        const std::string_view name = document.name(attribute);
        if (vocabulary_.slot(words, name) != no_slot || (is_root && is_schema_hint(name))) {
            continue;
        }
        const std::string_view near =
            report_.may_compare(names.size()) ? nearest_word(name, names) : std::string_view();
        if (!near.empty()) {
            const Slot slot = vocabulary_.slot(words, near);
            if (!given.has(slot)) {
                given.guess(slot, i);
            }
        }
        report_.error(page.at(attribute.name()), [&] {
            return Words{fmt::format("unknown attribute '{}' of {}", clipped(name), words.name),
                         list_of(names), std::string(near)};
        });
    }
    return given;
}

void Builder::check_required(const Page& page, const ElementWords& words, const Given& given,
                             std::uint32_t element) {
    for (const Slot slot : words.required) {
        if (given.has(slot)) {
            continue;
        }
        const AttributeSpec& spec = *words.attributes[slot];
        report_.error(page.at(page.document().element(element).name()), [&] {
            return Words{
                fmt::format("{} needs the attribute '{}'", called(page, words, given), spec.name),
                taken_by(spec),
                {}};
        });
    }
}

std::string Builder::called(const Page& page, const ElementWords& words, const Given& given) const {
    const std::string_view id =
        given.has(words.id) ? text_of(page, given, words.id).text : std::string_view();
    return id.empty() ? fmt::format("this {}", words.name)
                      : fmt::format("{} '{}'", words.name, clipped(id));
}

GivenText Builder::text_of(const Page& page, const ScannedAttribute& attribute) const {
    GivenText text;
    text.text = page.document().value(attribute);
    text.whole = page.at(attribute.whole());
    text.value =
        attribute.value_begin == attribute.value_end ? text.whole : page.at(attribute.value());
    text.plain = attribute.plain;
    return text;
}

GivenText Builder::text_of(const Page& page, const Given& given, Slot slot) const {
    if (const Override* override = given.override_of(slot); override != nullptr) {
        return override->value;
    }
    return text_of(page, page.document().attribute(given.attribute(slot)));
}

bool Builder::read_given_value(const Page& page, const ElementWords& words, const Given& given,
                               Slot slot, AttributeValue& value) {
    if (given.guessed(slot)) {
        return false;
    }
    const AttributeSpec& spec = *words.attributes[slot];
    const Override* const override = given.override_of(slot);
    const ScannedAttribute* const attribute =
        override == nullptr ? &page.document().attribute(given.attribute(slot)) : nullptr;
    const std::string_view text =
        override == nullptr ? page.document().value(*attribute) : override->value.text;
    // Circuits repeat their figures; what was read a moment ago need not be read again.
    AttributeValue& last = last_values_[words.first_slot + slot];
    const bool repeated = last.spec != nullptr && same_text(last.text, text);
    if (repeated) {
        value.si = last.si;
        value.text = text;
    } else if (!read_value(spec, text, value, trouble_)) {
        report_.error(text_of(page, given, slot).value, [&] { return trouble_; });
        return false;
    }
    value.spec = &spec;
    value.given = true;
    value.place = override == nullptr ? page.at(attribute->whole()) : override->value.whole;
    if (!repeated) {
        last = value;
    }
    return true;
}

AttributeValue Builder::value_of(const Page& page, const ElementWords& words, const Given& given,
                                 Slot slot, bool* bad) {
    AttributeValue value = words.defaults[slot];
    if (given.has(slot) && !read_given_value(page, words, given, slot, value) && bad != nullptr) {
        *bad = true;
    }
    return value;
}

std::string_view Builder::id_text(const Page& page, const ElementWords& words, const Given& given,
                                  bool* sound) {
    if (!given.has(words.id)) {
        return {};
    }
    const ScannedAttribute& attribute = page.document().attribute(given.attribute(words.id));
    const std::string_view id = page.document().value(attribute);
    const bool position = words.role == ElementRole::position;
    const bool is_sound = position ? is_position_id(id) : is_id(id);
    if (sound != nullptr) {
        *sound = is_sound;
    }
    if (!is_sound && !given.guessed(words.id)) {
        report_.error(text_of(page, attribute).value, [&] {
            return Words{fmt::format("'{}' is no id", clipped(id)),
                         position ? "a letter or digit, then letters, digits, '-' and '_'"
                                  : "a letter, then letters, digits, '-' and '_'",
                         {}};
        });
    }
    return id;
}

std::string_view Builder::take_id(Scope& scope, const ElementWords& words, const Given& given,
                                  NameType type, Index index) {
    const Page& page = *scope.page;
    bool sound = false;
    const std::string_view id = id_text(page, words, given, &sound);
    if (id.empty()) {
        ++scope.nameless;
        return id;
    }
    if (!sound) {
        ++scope.nameless;  // lines may write it as it is meant
    }
    if (Name* first = names_.add(scope.names, id, {type, false, index}); first != nullptr) {
        first->doubtful = true;
        ++scope.nameless;  // one of the two is meant to have another
        if (first->type != NameType::unusable) {
            report_duplicate(text_of(page, given, words.id), *first);
        }
    }
    return id;
}

void Builder::report_duplicate(const GivenText& id, const Name& first) {
    report_.error(id.value, [&] {
        return Words{
            fmt::format("the id '{}' is there twice", clipped(id.text)),
            fmt::format("an id of its own; '{}' is {} in line {} of the file", clipped(id.text),
                        kind_of(first), sources_->place(place_of(first)).line),
            {}};
    });
}

std::string_view Builder::path_of(const Scope& scope, std::uint32_t element, std::string_view id) {
    if (scope.path.empty()) {
        return id;
    }
    const std::size_t size = scope.path.size() + 1 + id.size();
    if (!take_text(*scope.page, element, size)) {
        return id;
    }
    return paths_.join(scope.path, id);
}

bool Builder::take_text(const Page& page, std::uint32_t element, std::size_t bytes) {
    if (bytes > text_left_) {
        report_.error(page.at(page.document().element(element).name()), [] {
            return Words{"the circuit is too large here",
                         "less text brought in by uses, and shorter ids of assemblies",
                         {}};
        });
        stopped_ = true;
        return false;
    }
    text_left_ -= bytes;
    return true;
}

void Builder::no_children(const Page& page, std::uint32_t element, std::string_view owner) {
    const XmlDocument& document = page.document();
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        report_.error(page.at(document.element(child).name()), [&] {
            return Words{fmt::format("'{}' cannot stand in '{}'",
                                     clipped(document.name(document.element(child))), owner),
                         fmt::format("no element inside '{}'", owner),
                         {}};
        });
    }
}

}  // namespace loopwright
