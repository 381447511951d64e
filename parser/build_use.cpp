#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>

// Assemblies from files of their own, and the attributes that a use overrides in them.

namespace loopwright {

void Builder::use(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Page& page = *scope.page;
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    const auto index = static_cast<Index>(circuit_.assemblies.size());
    Scope inner;
    inner.id = take_id(scope, words, given, NameType::assembly, index);
    inner.path = path_of(scope, element, inner.id);
    const std::string_view title =
        given.has(words.title) ? text_of(page, given, words.title).text : std::string_view();
    OverrideLevel level = read_overrides(page, element);
    if (stopped_ || !enter_assembly(scope, element, inner.path, title)) {
        return;
    }
    // Until the file is read to its end, its ports are not known.
    assemblies_[index].doubtful = true;
    const Slot file_slot = vocabulary_.slot(words, "file");
    const Slot name_slot = vocabulary_.slot(words, "name");
    if (given.has(file_slot) == given.has(name_slot)) {
        report_.error(page.at(page.document().element(element).name()), [&] {
            return Words{fmt::format("{} {}", called(page, words, given),
                                     given.has(file_slot) ? "has a file and a name"
                                                          : "needs the attribute 'file' or 'name'"),
                         "file=\"a relative path\", or the name of a ready assembly",
                         {}};
        });
        return;
    }
    const bool ready = given.has(name_slot);
    const Slot slot = ready ? name_slot : file_slot;
    if (given.guessed(slot)) {
        return;
    }
    const GivenText name = text_of(page, given, slot);
    Words trouble;
    const CircuitFile* const file =
        ready ? files_.open_ready(name.text, trouble) : files_.open(name.text, *page.file, trouble);
    if (file == nullptr) {
        report_.error(name.value, [&] { return std::move(trouble); });
        return;
    }
    if (std::find(open_.begin(), open_.end(), file) != open_.end()) {
        report_.error(name.value, [&] {
            return Words{fmt::format("'{}' uses itself{}", clipped(name.text),
                                     file == open_.back() ? "" : ", through the files it uses"),
                         "an assembly that does not contain itself",
                         {}};
        });
        return;
    }
    const SourceRef place = page.at(page.document().element(element).tag());
    const Page inside{file, sources_->add_inclusion(file->index, place)};
    report_.add_inclusion(file->index);
    if (file->trouble) {
        report_xml(inside);
        return;
    }
    if (!take_text(page, element, file->bytes)) {
        return;
    }
    used_root(inside, inner, index, level);
}

void Builder::used_root(const Page& page, Scope& inner, Index index, OverrideLevel& level) {
    const ScannedElement& root = page.document().element(0);
    const std::string_view name = page.document().name(root);
    if (name != "assembly") {
        report_.error(page.at(root.name()), [&] {
            return Words{fmt::format("the root element is '{}'", clipped(name)),
                         "'assembly', which is what 'use' brings in", "assembly"};
        });
        return;
    }
    const ElementWords& words = vocabulary_.assembly_root();
    const Given given = read_given(page, words, 0, true);
    check_required(page, words, given, 0);
    bool known = false;
    check_format(page, words, given, known);
    if (!known) {
        return;
    }
    if (circuit_.assemblies[index].title.empty() && given.has(words.title)) {
        circuit_.assemblies[index].title = text_of(page, given, words.title).text;
    }
    inner.page = &page;
    inner.assembly = index;
    inner.names = NameScope::assembly(index);
    level.prefix = inner.path.size() + 1;
    assemblies_[index].doubtful = false;
    open_.push_back(page.file);
    overrides_.push_back(std::move(level));
    ++nesting_;
    content(inner, 0);
    --nesting_;
    if (!stopped_) {
        report_unmet(inner, overrides_.back());
    }
    overrides_.pop_back();
    open_.pop_back();
}

OverrideLevel Builder::read_overrides(const Page& page, std::uint32_t element) {
    OverrideLevel level;
    const XmlDocument& document = page.document();
    const ElementWords& words = vocabulary_.set();
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        const std::string_view name = document.name(document.element(child));
        if (name != "set") {
            report_.error(page.at(document.element(child).name()), [&] {
                return Words{fmt::format("'{}' cannot stand in 'use'", clipped(name)), "set",
                             std::string(nearest_word(name, {"set"}))};
            });
            continue;
        }
        const Given given = read_given(page, words, child);
        check_required(page, words, given, child);
        no_children(page, child, words.name);
        const auto text = [&](std::string_view attribute, GivenText& target) {
            const Slot slot = vocabulary_.slot(words, attribute);
            if (!given.has(slot) || given.guessed(slot)) {
                return false;
            }
            target = text_of(page, given, slot);
            return true;
        };
        GivenText of;
        GivenText attribute;
        Override one;
        if (text("of", of) && text("attribute", attribute) && text("value", one.value)) {
            one.of = of.text;
            one.attribute = attribute.text;
            one.of_place = of.value;
            one.attribute_place = attribute.value;
            level.overrides.push_back(one);
        }
    }
    const auto key = [](const Override& one) { return std::pair(one.of, one.attribute); };
    std::stable_sort(level.overrides.begin(), level.overrides.end(),
                     [&key](const Override& a, const Override& b) { return key(a) < key(b); });
    for (std::size_t i = 1; i < level.overrides.size(); ++i) {
        const Override& one = level.overrides[i];
        if (key(level.overrides[i - 1]) == key(one)) {
            report_.error(one.attribute_place, [&] {
                return Words{fmt::format("'{}' of '{}' is set twice", clipped(one.attribute),
                                         clipped(one.of)),
                             "each attribute of a part set once in a use",
                             {}};
            });
        }
    }
    return level;
}

void Builder::apply_overrides(const ElementWords& words, std::string_view path, Given& given) {
    // The outermost use has the last word.
    for (std::size_t i = overrides_.size(); i-- > 0;) {
        OverrideLevel& level = overrides_[i];
        if (level.overrides.empty() || path.size() < level.prefix) {
            continue;
        }
        const std::string_view part = path.substr(level.prefix);
        auto one =
            std::lower_bound(level.overrides.begin(), level.overrides.end(), part,
                             [](const Override& a, std::string_view of) { return a.of < of; });
        for (; one != level.overrides.end() && one->of == part; ++one) {
            one->met = true;
            const Slot slot = vocabulary_.slot(words, one->attribute);
            if (slot != no_slot && slot != words.id && slot != line_joins(words)) {
                given.override_with(slot, *one);
                continue;
            }
            report_.error(one->attribute_place, [&] {
                std::vector<std::string_view> known;
                for (const std::string_view name : words.names) {
                    const Slot other = vocabulary_.slot(words, name);
                    if (other != words.id && other != line_joins(words)) {
                        known.push_back(name);
                    }
                }
                return Words{slot == no_slot ? fmt::format("unknown attribute '{}' of {}",
                                                           clipped(one->attribute), words.name)
                                             : fmt::format("'{}' cannot be set by a use",
                                                           clipped(one->attribute)),
                             list_of(known),
                             slot == no_slot ? std::string(nearest_word(one->attribute, known))
                                             : std::string()};
            });
        }
    }
}

Slot Builder::line_joins(const ElementWords& words) const {
    return words.role == ElementRole::hose   ? hose_slots_.joins
           : words.role == ElementRole::line ? line_slots_.joins
                                             : no_slot;
}

void Builder::report_unmet(Scope& inner, const OverrideLevel& level) {
    for (const Override& one : level.overrides) {
        if (one.met) {
            continue;
        }
        const Name* const name = find_path(inner, one.of);
        if (name == nullptr ? inner.nameless > 0 : name->type == NameType::unusable) {
            continue;
        }
        report_.error(one.of_place, [&] {
            if (name != nullptr) {
                return Words{fmt::format("'{}' is {}", clipped(one.of), kind_of(*name)),
                             "a component or a line of the assembly",
                             {}};
            }
            return Words{fmt::format("the assembly has no '{}'", clipped(one.of)),
                         "the id of a component or a line in it", near_id(inner.names, one.of)};
        });
    }
}

}  // namespace loopwright
