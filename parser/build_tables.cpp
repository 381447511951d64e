#include <loopwright/parser/builder.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include <fmt/core.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/each_inner.h>

// Measured data and tolerances inside a part.

namespace loopwright {
namespace {

/// What can be measured on a kind of part. Of the results, those of a group exclude one another;
/// the first axis must be there.
struct Measured {
    std::array<std::string_view, 3> axes = {};
    std::array<std::array<std::string_view, 2>, 2> results = {};
};
constexpr Measured of_machine{
    {"pressure", "speed", "stroke"},
    {{{"flow", "volumetric-efficiency"}, {"torque", "mechanical-efficiency"}}}};
constexpr Measured of_prime_mover{{"speed"}, {{{"torque"}}}};
constexpr Measured of_resistance{{"flow", "viscosity"}, {{{"drop"}}}};

const Measured* measured_on(const Kind& kind) {
    switch (kind.part) {
        case Part::pump:
        case Part::actuator:
        case Part::pump_motor:
            return &of_machine;
        case Part::prime_mover:
            return &of_prime_mover;
        case Part::plumbing:
        case Part::filter:
        case Part::cooler:
        case Part::device:
            return &of_resistance;
        default:
            return nullptr;
    }
}

std::vector<std::string_view> words_of(const Measured& measured) {
    std::vector<std::string_view> words;
    const auto add = [&words](std::string_view word) {
        if (!word.empty()) {
            words.push_back(word);
        }
    };
    for (const std::string_view axis : measured.axes) {
        add(axis);
    }
    for (const auto& group : measured.results) {
        for (const std::string_view result : group) {
            add(result);
        }
    }
    return words;
}

bool is_axis(const Measured& measured, std::string_view name) {
    return std::find(measured.axes.begin(), measured.axes.end(), name) != measured.axes.end();
}

}  // namespace

void Builder::inner_part(const Page& page, const ElementWords& words, std::uint32_t element,
                         Index component) {
    if (words.name == "table") {
        table(page, element, component);
    } else {
        tolerance(enter(page, words, element), component);
    }
}

void Builder::table(const Page& page, std::uint32_t element, Index component) {
    const ElementWords& words = *vocabulary_.definition("table", "component");
    check_required(page, words, read_given(page, words, element), element);
    MeasuredTable table;
    table.component = component;
    table.place = page.at(page.document().element(element).tag());
    std::vector<SourceRef> places;
    const SourceRef name = page.at(page.document().element(element).name());
    if (read_rows(page, element, table, places) && check_columns(name, component, table) &&
        sort_rows(name, table, places)) {
        circuit_.tables.push_back(std::move(table));
    }
}

// True: all rows could be read and have the same columns, in the order of the specs.
bool Builder::read_rows(const Page& page, std::uint32_t element, MeasuredTable& table,
                        std::vector<SourceRef>& places) {
    bool sound = true;
    bool first = true;
    each_inner(
        page, element, "table", "table", [&](const ElementWords& words, std::uint32_t child) {
            const Entry entry = enter(page, words, child);
            no_children(page, child, words.name);
            std::vector<const AttributeSpec*> columns;
            const auto slots = static_cast<Slot>(words.attributes.size());
            for (Slot slot = 0; slot < slots; ++slot) {
                if (!entry.given.has(slot)) {
                    continue;
                }
                bool bad = false;
                table.figures.push_back(value_of(page, words, entry.given, slot, &bad).si);
                sound = sound && !bad;
                columns.push_back(words.attributes[slot]);
            }
            places.push_back(tag_of(entry));
            if (first) {
                table.columns = columns;
                first = false;
            } else if (columns != table.columns) {
                sound = false;
                report_.error(places.back(), [&] {
                    std::vector<std::string_view> known;
                    for (const AttributeSpec* spec : table.columns) {
                        known.push_back(spec->name);
                    }
                    return Words{
                        "the row has other columns than the first", list_of(known, "and"), {}};
                });
            }
        });
    if (first) {
        report_.error(page.at(page.document().element(element).name()), [&] {
            return Words{"the table has no rows", "a 'row' element for each measurement", {}};
        });
    }
    return sound && !first;
}

// Axes and results that the kind of part has; axes stand first in the specs for each of them, but
// for flow, which is a machine's result.
bool Builder::check_columns(SourceRef place, Index component, MeasuredTable& table) {
    const Kind& kind = *circuit_.components[component].kind;
    const Measured* const measured = measured_on(kind);
    const auto refuse = [&](std::string message, std::string expected) {
        report_.error(place, [&] { return Words{std::move(message), std::move(expected), {}}; });
        return false;
    };
    if (measured == nullptr) {
        return refuse(fmt::format("{} takes no table", owner_of(component)),
                      "a table in a pump, motor, prime mover, valve, filter or cooler");
    }
    const std::vector<std::string_view> known = words_of(*measured);
    const auto has = [&](std::string_view name) {
        return !name.empty() &&
               std::any_of(table.columns.begin(), table.columns.end(),
                           [name](const AttributeSpec* spec) { return spec->name == name; });
    };
    for (const AttributeSpec* const spec : table.columns) {
        if (std::find(known.begin(), known.end(), spec->name) == known.end()) {
            return refuse(fmt::format("{} is nothing that is measured on {}", spec->name,
                                      owner_of(component)),
                          list_of(known, "and"));
        }
    }
    if (!has(measured->axes.front())) {
        return refuse(fmt::format("the table does not say over which {}", measured->axes.front()),
                      fmt::format("{} in each row", measured->axes.front()));
    }
    bool any = false;
    std::vector<std::string_view> results;
    for (const auto& [one, other] : measured->results) {
        if (has(one) && has(other)) {
            return refuse(fmt::format("the table gives {} and {}, which say the same", one, other),
                          fmt::format("one of the two"));
        }
        any = any || has(one) || has(other);
        for (const std::string_view result : {one, other}) {
            if (!result.empty()) {
                results.push_back(result);
            }
        }
    }
    if (!any) {
        return refuse("the table gives no result", list_of(results));
    }
    for (std::size_t i = 0; i < table.figures.size(); ++i) {
        const std::string_view name = table.columns[i % table.columns.size()]->name;
        if (name.ends_with("-efficiency") && table.figures[i] <= 0.0) {
            return refuse(fmt::format("the table gives a {} of nothing", name), "more than 0 %");
        }
    }
    // Axes first, each row likewise.
    std::vector<std::size_t> order(table.columns.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_partition(order.begin(), order.end(), [&](std::size_t column) {
        return is_axis(*measured, table.columns[column]->name);
    });
    const std::size_t width = order.size();
    std::vector<double> row(width);
    std::vector<const AttributeSpec*> columns(width);
    for (std::size_t i = 0; i < width; ++i) {
        columns[i] = table.columns[order[i]];
        table.axes += is_axis(*measured, columns[i]->name) ? 1U : 0U;
    }
    table.columns = std::move(columns);
    for (std::size_t at = 0; at < table.figures.size(); at += width) {
        for (std::size_t i = 0; i < width; ++i) {
            row[i] = table.figures[at + order[i]];
        }
        std::copy(row.begin(), row.end(), table.figures.begin() + static_cast<std::ptrdiff_t>(at));
    }
    return true;
}

bool Builder::sort_rows(SourceRef place, MeasuredTable& table,
                        const std::vector<SourceRef>& places) {
    const std::size_t width = table.columns.size();
    const std::size_t rows = places.size();
    const auto axis = [&](std::size_t row, std::size_t i) {
        return table.figures[row * width + i];
    };
    std::vector<std::size_t> order(rows);
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto compare = [&](std::size_t a, std::size_t b) {
        for (std::size_t i = 0; i < table.axes; ++i) {
            if (axis(a, i) != axis(b, i)) {
                return axis(a, i) < axis(b, i) ? -1 : 1;
            }
        }
        return 0;
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return compare(a, b) < 0; });
    bool sound = true;
    for (std::size_t i = 1; i < rows; ++i) {
        if (compare(order[i - 1], order[i]) == 0) {
            sound = false;
            report_.error(places[order[i]], [] {
                return Words{"the row measures at the same place as another",
                             "each combination of the axes once",
                             {}};
            });
        }
    }
    if (!sound) {
        return false;
    }
    // The rows must be all combinations of the values that each axis has.
    std::vector<std::vector<double>> values(table.axes);
    for (std::size_t i = 0; i < table.axes; ++i) {
        for (std::size_t row = 0; row < rows; ++row) {
            values[i].push_back(axis(row, i));
        }
        std::sort(values[i].begin(), values[i].end());
        values[i].erase(std::unique(values[i].begin(), values[i].end()), values[i].end());
    }
    std::vector<std::size_t> at(table.axes, 0);
    for (std::size_t row = 0; row <= rows; ++row) {
        bool here = row < rows;
        for (std::size_t i = 0; here && i < table.axes; ++i) {
            here = axis(order[row], i) == values[i][at[i]];
        }
        if (!here) {
            report_.error(place, [&] {
                std::string gap;
                for (std::size_t i = 0; i < table.axes; ++i) {
                    gap +=
                        fmt::format("{}{} {}", i == 0 ? "" : ", ", table.columns[i]->name,
                                    format_quantity(values[i][at[i]], table.columns[i]->dimension));
                }
                return Words{fmt::format("the table has no row for {}", gap),
                             "a row for each combination of the axes' values",
                             {}};
            });
            return false;
        }
        std::size_t i = table.axes;
        while (i > 0 && ++at[i - 1] == values[i - 1].size()) {
            at[--i] = 0;
        }
        if (i == 0) {
            break;
        }
    }
    std::vector<double> sorted;
    sorted.reserve(table.figures.size());
    for (const std::size_t row : order) {
        const auto begin = table.figures.begin() + static_cast<std::ptrdiff_t>(row * width);
        sorted.insert(sorted.end(), begin, begin + static_cast<std::ptrdiff_t>(width));
    }
    table.figures = std::move(sorted);
    return true;
}

void Builder::tolerance(const Entry& entry, Index component) {
    no_children(entry.page, entry.element, entry.words.name);
    const auto of = text_at(entry, "of");
    const auto value = text_at(entry, "value");
    if (!of || !value) {
        return;
    }
    const Component& part = circuit_.components[component];
    std::vector<std::string_view> known;
    const AttributeSpec* spec = nullptr;
    for (const AttributeSpec& one : part.kind->attributes) {
        if (one.type == AttributeType::quantity) {
            known.push_back(one.name);
            spec = one.name == of->text ? &one : spec;
        }
    }
    const auto refuse = [&](const GivenText& text, Words words) {
        report_.error(text.value, [&] { return std::move(words); });
    };
    if (spec == nullptr) {
        refuse(*of, {fmt::format("'{}' is no figure of {}", clipped(of->text), owner_of(component)),
                     known.empty() ? "a part with figures" : list_of(known),
                     std::string(nearest_word(of->text, known))});
        return;
    }
    for (auto other = circuit_.tolerances.rbegin();
         other != circuit_.tolerances.rend() && other->component == component; ++other) {
        if (other->spec == spec) {
            refuse(*of, {fmt::format("'{}' has a tolerance already", spec->name),
                         "one tolerance for each attribute",
                         {}});
            return;
        }
    }
    Tolerance tolerance{component, spec, 0.0, tag_of(entry)};
    const Dimension dimension = spec->dimension == Dimension::temperature
                                    ? Dimension::temperature_difference
                                    : spec->dimension;
    // Of a ratio that is itself written in %, points of it are meant, as of an efficiency.
    const AttributeValue* const given = circuit_.attribute(part, spec->name);
    const bool in_points =
        (spec->dimension == Dimension::ratio || spec->dimension == Dimension::grade) &&
        (given == nullptr || given->text.find('%') != std::string_view::npos);
    const bool share = value->text.find('%') != std::string_view::npos && !in_points;
    ParsedQuantity parsed = parse_quantity(value->text, share ? Dimension::ratio : dimension);
    if (!parsed.ok()) {
        refuse(*value, {std::move(parsed.message), std::move(parsed.expected),
                        std::move(parsed.suggestion)});
        return;
    }
    tolerance.si = parsed.si;
    if (share) {
        if (given == nullptr) {
            refuse(*of, {fmt::format("{} has no {} that a share could be taken of",
                                     owner_of(component), spec->name),
                         fmt::format("the attribute {}", spec->name),
                         {}});
            return;
        }
        tolerance.si *= std::abs(given->si);
    }
    if (tolerance.si < 0.0) {
        refuse(*value, {fmt::format("a tolerance counts either way: '{}'", clipped(value->text)),
                        "a figure without a sign",
                        {}});
        return;
    }
    circuit_.tolerances.push_back(tolerance);
}

}  // namespace loopwright
