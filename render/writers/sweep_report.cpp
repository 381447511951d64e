#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright {

using namespace hydraulics;

namespace {

using Json = nlohmann::ordered_json;

std::string head_of(const SweepColumn& column) {
    return column.id.empty() ? std::string(column.quantity)
                             : fmt::format("{} {}", column.id, column.quantity);
}

/// Cells of one row by another: the first ones of `axes`, then of `columns`.
template <class Axis, class Column>
void for_each_cell(const Sweep& sweep, const Axis& axis, const Column& column) {
    for (std::size_t i = 0; i < sweep.axes().size(); ++i) axis(i);
    for (std::size_t i = 0; i < sweep.columns().size(); ++i) column(i);
}

}  // namespace

SweepTable::SweepTable(const Sweep& sweep, Format format, std::string_view file)
    : sweep_(sweep), format_(format), file_(file) {
    // A figure with sign, four digits, exponent and unit; rows are written as they come, so that
    // none is asked for its width.
    constexpr std::size_t widest_figure = 12;
    const auto add = [&](std::string head) {
        widths_.push_back(std::max(head.size(), widest_figure));
        heads_.push_back(std::move(head));
    };
    for_each_cell(
        sweep, [&](std::size_t i) { add(sweep.axes()[i].datum); },
        [&](std::size_t i) { add(head_of(sweep.columns()[i])); });
}

std::string SweepTable::head() const {
    std::string out;
    switch (format_) {
        case Format::text:
            for (std::size_t i = 0; i < heads_.size(); ++i)
                out += fmt::format("{}{:>{}}", i == 0 ? "" : "  ", heads_[i], widths_[i]);
            return out + "\n";
        case Format::json: {
            Json axes = Json::array();
            for (const SweepAxis& axis : sweep_.axes())
                axes.push_back({{"datum", axis.datum}, {"unit", si_unit(axis.spec->dimension)}});
            Json columns = Json::array();
            for (const SweepColumn& column : sweep_.columns()) {
                Json json;
                if (!column.id.empty()) json["id"] = column.id;
                json["quantity"] = column.quantity;
                json["unit"] = si_unit(column.dimension);
                columns.push_back(std::move(json));
            }
            const Json json{
                {"format", "loopwright-solve/1"},
                {"tool", {{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}},
                {"file", file_},
                {"sweep", {{"axes", std::move(axes)}, {"columns", std::move(columns)}}}};
            out = json.dump();
            // The rows go in before the closing braces.
            out.resize(out.size() - tail_braces.size());
            return out + ",\"rows\":[";
        }
        case Format::csv:
            for_each_cell(
                sweep_,
                [&](std::size_t i) {
                    const SweepAxis& axis = sweep_.axes()[i];
                    out += fmt::format("{}{} ({})", i == 0 ? "" : ",", axis.datum,
                                       si_unit(axis.spec->dimension));
                },
                [&](std::size_t i) {
                    const SweepColumn& column = sweep_.columns()[i];
                    out += fmt::format(",{} ({})", head_of(column), si_unit(column.dimension));
                });
            return out + "\r\n";
    }
    return out;
}

std::string SweepTable::rows(const SweepRows& rows) const {
    std::string out;
    const auto put = std::back_inserter(out);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const auto axis = [&](std::size_t i) { return sweep_.axis(rows.first + row, i); };
        const auto figure = [&](std::size_t i) { return rows.figure(row, i); };
        switch (format_) {
            case Format::text:
                add_text_row(rows.solved[row] != 0, axis, figure, out);
                break;
            case Format::json:
                out += rows.first + row == 0 ? "[" : ",[";
                for_each_cell(
                    sweep_,
                    [&](std::size_t i) { fmt::format_to(put, "{}{}", i == 0 ? "" : ",", axis(i)); },
                    [&](std::size_t i) {
                        if (const auto one = figure(i))
                            fmt::format_to(put, ",{}", *one);
                        else
                            out += ",null";
                    });
                out += ']';
                break;
            case Format::csv:
                for_each_cell(
                    sweep_,
                    [&](std::size_t i) { fmt::format_to(put, "{}{}", i == 0 ? "" : ",", axis(i)); },
                    [&](std::size_t i) {
                        out += ',';
                        if (const auto one = figure(i)) fmt::format_to(put, "{}", *one);
                    });
                out += "\r\n";
                break;
        }
    }
    return out;
}

template <class Axis, class Figure>
void SweepTable::add_text_row(bool solved, const Axis& axis, const Figure& figure,
                              std::string& out) const {
    std::size_t column = 0;
    const auto cell = [&](std::string_view words) {
        fmt::format_to(std::back_inserter(out), "{}{:>{}}", column == 0 ? "" : "  ", words,
                       widths_[column]);
        ++column;
    };
    for (std::size_t i = 0; i < sweep_.axes().size(); ++i)
        cell(format_quantity(axis(i), sweep_.axes()[i].spec->dimension));
    if (!solved) out += "  no steady state";
    for (std::size_t i = 0; i < sweep_.columns().size() && solved; ++i) {
        const auto one = figure(i);
        cell(one ? format_quantity(*one, sweep_.columns()[i].dimension) : "-");
    }
    out += '\n';
}

std::string SweepTable::tail() const {
    return format_ == Format::json ? fmt::format("]{}\n", tail_braces) : std::string();
}

}  // namespace loopwright
