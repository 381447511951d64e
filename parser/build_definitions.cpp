#include <loopwright/parser/builder.h>

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/each_inner.h>

// Fluid, commands, remarks, waivers and sheet hints.

namespace loopwright {
namespace {

constexpr double viscosity_band = 0.1;  // either way of a grade's number: ISO 3448:1992, 3
constexpr double mm2_per_s = 1e-6;

}  // namespace

Builder::Entry Builder::enter(const Page& page, const ElementWords& words, std::uint32_t element) {
    Entry entry{page, words, element, read_given(page, words, element)};
    check_required(page, words, entry.given, element);
    return entry;
}

std::optional<GivenText> Builder::text_at(const Entry& entry, std::string_view attribute) const {
    const Slot slot = vocabulary_.slot(entry.words, attribute);
    if (!entry.given.has(slot) || entry.given.guessed(slot)) {
        return std::nullopt;
    }
    return text_of(entry.page, entry.given, slot);
}

SourceRef Builder::tag_of(const Entry& entry) const {
    return entry.page.at(entry.page.document().element(entry.element).tag());
}

Range Builder::keep_figures(const Entry& entry) {
    Range kept;
    kept.begin = static_cast<Index>(circuit_.attributes.size());
    const auto slots = static_cast<Slot>(entry.words.attributes.size());
    for (Slot slot = 0; slot < slots; ++slot) {
        const AttributeValue value = value_of(entry.page, entry.words, entry.given, slot);
        if (value.spec != nullptr) {
            circuit_.attributes.push_back(value);
        }
    }
    kept.end = static_cast<Index>(circuit_.attributes.size());
    return kept;
}

const AttributeValue* Builder::figure_in(Range figures, std::string_view attribute) const {
    return Circuit::find_figure({circuit_.attributes.data() + figures.begin, figures.size()},
                                attribute);
}

void Builder::define(Scope& scope) {
    const XmlDocument& document = scope.page->document();
    const auto words_of = [&](std::uint32_t element) -> const ElementWords& {
        return *vocabulary_.element(document.name(document.element(element)));
    };
    // Commands first: the rest may name them.
    std::stable_partition(
        pending_definitions_.begin(), pending_definitions_.end(),
        [&](std::uint32_t element) { return words_of(element).name == "command"; });
    for (const std::uint32_t element : pending_definitions_) {
        define_one(scope, words_of(element), element);
    }
}

void Builder::define_one(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Entry entry = enter(*scope.page, words, element);
    if (words.name == "fluid") {
        fluid(entry);
    } else if (words.name == "command") {
        command(scope, entry);
    } else if (words.name == "duty") {
        duty(scope, entry);
    } else if (words.name == "interlock") {
        interlock(scope, entry);
    } else if (words.name == "remark") {
        remark(scope, entry);
    } else if (words.name == "waiver") {
        waiver(scope, entry);
    } else {
        sheet(scope, entry);
    }
}

bool Builder::comes_twice(const Entry& entry, bool there) {
    if (there) {
        report_.error(entry.page.at(entry.page.document().element(entry.element).name()), [&] {
            return Words{fmt::format("a second '{}'", entry.words.name),
                         fmt::format("one '{}' in a circuit", entry.words.name),
                         {}};
        });
    }
    return there;
}

void Builder::fluid(const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    if (comes_twice(entry, circuit_.fluid.has_value())) {
        return;
    }
    circuit_.fluid = Fluid{keep_figures(entry), tag_of(entry)};
    const Range figures = circuit_.fluid->attributes;
    const AttributeValue* const grade = figure_in(figures, "grade");
    const AttributeValue* const at_40 = figure_in(figures, "viscosity-40");
    const AttributeValue* const at_100 = figure_in(figures, "viscosity-100");
    if (grade != nullptr && at_40 != nullptr) {
        const double number = std::stod(std::string(grade->text.substr(3))) * mm2_per_s;
        if (std::abs(at_40->si - number) > viscosity_band * number * (1.0 + 1e-9)) {
            report_.warning(at_40->place, [&] {
                return Words{fmt::format("{} at 40 degC is no {}", clipped(at_40->text),
                                         clipped(grade->text)),
                             fmt::format("{} to {} (ISO 3448)",
                                         format_quantity(number * (1.0 - viscosity_band),
                                                         Dimension::kinematic_viscosity),
                                         format_quantity(number * (1.0 + viscosity_band),
                                                         Dimension::kinematic_viscosity)),
                             {}};
            });
        }
    }
    if (at_40 != nullptr && at_100 != nullptr && at_100->si >= at_40->si) {
        report_.error(at_100->place, [&] {
            return Words{"the oil is no thinner at 100 degC than at 40 degC",
                         fmt::format("less than {}", clipped(at_40->text)),
                         {}};
        });
    }
}

void Builder::command(Scope& scope, const Entry& entry) {
    const auto index = static_cast<Index>(circuit_.commands.size());
    circuit_.commands.emplace_back();
    circuit_.commands.back().place = tag_of(entry);
    Command command;
    command.id = take_id(scope, entry.words, entry.given, NameType::command, index);
    command.place = tag_of(entry);
    if (const auto title = text_at(entry, "title")) {
        command.title = title->text;
    }
    command.attributes = keep_figures(entry);
    command.stages.begin = static_cast<Index>(circuit_.stages.size());
    bool none_there = true;
    each_inner(entry.page, entry.element, "command", "command",
               [&](const ElementWords& words, std::uint32_t child) {
                   none_there = false;
                   stage(scope, enter(entry.page, words, child));
               });
    command.stages.end = static_cast<Index>(circuit_.stages.size());
    circuit_.commands[index] = command;
    if (none_there) {
        report_.error(entry.page.at(entry.page.document().element(entry.element).name()), [&] {
            return Words{
                fmt::format("{} has no stages", called(entry.page, entry.words, entry.given)),
                R"(a 'stage' for each, such as <stage of="P1" from="0 %" to="33 %"/>)",
                {}};
        });
    }
}

void Builder::stage(Scope& scope, const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    Stage stage;
    stage.place = tag_of(entry);
    stage.attributes = keep_figures(entry);
    const AttributeValue* const from = figure_in(stage.attributes, "from");
    const AttributeValue* const to = figure_in(stage.attributes, "to");
    if (from != nullptr && to != nullptr && from->si >= to->si) {
        report_.error(to->place, [&] {
            return Words{fmt::format("the stage ends at {}, but begins at {}", clipped(to->text),
                                     clipped(from->text)),
                         fmt::format("more than {}", clipped(from->text)),
                         {}};
        });
    }
    const auto of = text_at(entry, "of");
    if (!of) {
        return;
    }
    const Component* const part = named_part(
        scope, *of, of->text, "the id of a pump, motor or prime mover of {}", stage.part);
    if (part == nullptr) {
        return;
    }
    const Part kind = part->kind->part;
    if (kind != Part::pump && kind != Part::pump_motor && kind != Part::prime_mover &&
        !(kind == Part::actuator && part->kind->turns)) {
        report_.error(of->value, [&] {
            return Words{fmt::format("'{}' is {}; it follows no command", clipped(of->text),
                                     kind_of({NameType::component, false, stage.part})),
                         "a pump, motor or prime mover",
                         {}};
        });
        return;
    }
    circuit_.stages.push_back(stage);
}

void Builder::remark(Scope& scope, const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    Remark remark;
    remark.place = tag_of(entry);
    static_cast<void>(keep_figures(entry));  // for the date's sake
    for (const auto& [attribute, field] :
         {std::pair("text", &remark.text), std::pair("by", &remark.by),
          std::pair("date", &remark.date)}) {
        if (const auto text = text_at(entry, attribute)) {
            *field = text->text;
        }
    }
    const auto subject = text_at(entry, "subject");
    if (subject && read_subject(scope, *subject, remark.subject)) {
        circuit_.remarks.push_back(remark);
    }
}

void Builder::waiver(Scope& scope, const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    Waiver waiver;
    waiver.place = tag_of(entry);
    const Range figures = keep_figures(entry);
    for (const auto& field :
         {std::pair("rule", &waiver.rule), std::pair("reason", &waiver.reason),
          std::pair("by", &waiver.by), std::pair("until", &waiver.until_text)}) {
        const std::string_view attribute = field.first;
        const auto text = text_at(entry, attribute);
        if (!text) {
            continue;
        }
        *field.second = text->text;
        if (text->text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
            report_.error(text->value, [&] {
                return Words{
                    fmt::format("the waiver's {} is empty", attribute),
                    taken_by(*entry.words.attributes[vocabulary_.slot(entry.words, attribute)]),
                    {}};
            });
        }
    }
    if (const AttributeValue* const until = figure_in(figures, "until"); until != nullptr) {
        waiver.until = std::chrono::sys_days(std::chrono::days(std::lround(until->si)));
    }
    if (const auto rule = text_at(entry, "rule"); rule && !rules_.empty()) {
        if (std::find(rules_.begin(), rules_.end(), rule->text) == rules_.end()) {
            report_.error(rule->value, [&] {
                return Words{fmt::format("there is no rule '{}'", clipped(rule->text)),
                             "the id of a rule, listed by 'loopwright rules'",
                             std::string(nearest_word(rule->text, rules_))};
            });
        }
    }
    const auto subject = text_at(entry, "subject");
    if (subject && read_subject(scope, *subject, waiver.subject)) {
        circuit_.waivers.push_back(waiver);
    }
}

void Builder::sheet(Scope& scope, const Entry& entry) {
    const bool twice = comes_twice(entry, circuit_.sheet.has_value());
    Sheet sheet;
    sheet.place = tag_of(entry);
    sheet.attributes = keep_figures(entry);
    sheet.places.begin = static_cast<Index>(circuit_.sheet_places.size());
    each_inner(entry.page, entry.element, "sheet", "sheet",
               [&](const ElementWords& words, std::uint32_t child) {
                   sheet_place(scope, enter(entry.page, words, child));
               });
    sheet.places.end = static_cast<Index>(circuit_.sheet_places.size());
    if (!twice) {
        circuit_.sheet = sheet;
    }
    // Each component once: neighbours in the order of components tell.
    std::vector<const SheetPlace*> places;
    for (const SheetPlace& place : circuit_.sheet_places) {
        places.push_back(&place);
    }
    std::stable_sort(places.begin(), places.end(), [](const SheetPlace* a, const SheetPlace* b) {
        return a->component < b->component;
    });
    for (std::size_t i = 1; i < places.size(); ++i) {
        if (places[i]->component == places[i - 1]->component) {
            report_.error(places[i]->place, [&] {
                const Component& part = circuit_.components[places[i]->component];
                return Words{fmt::format("'{}' is placed twice", clipped(part.path)),
                             "one 'place' for each component",
                             {}};
            });
        }
    }
}

void Builder::sheet_place(Scope& scope, const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    SheetPlace place;
    place.place = tag_of(entry);
    place.attributes = keep_figures(entry);
    const auto of = text_at(entry, "of");
    if (of && named_part(scope, *of, of->text, "the id of a component of {}", place.component) !=
                  nullptr) {
        circuit_.sheet_places.push_back(place);
    }
}

}  // namespace loopwright
