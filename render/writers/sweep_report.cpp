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

}  // namespace

std::string sweep_text(const Sweep& sweep) {
    std::vector<std::vector<std::string>> rows(1);
    for (const SweepAxis& axis : sweep.axes) rows[0].push_back(axis.datum);
    for (const SweepColumn& column : sweep.columns) rows[0].push_back(head_of(column));
    for (const SweepRow& row : sweep.rows) {
        std::vector<std::string>& cells = rows.emplace_back();
        for (std::size_t i = 0; i < row.axes.size(); ++i)
            cells.push_back(format_quantity(row.axes[i], sweep.axes[i].spec->dimension));
        if (!row.solved) cells.emplace_back("no steady state");
        for (std::size_t i = 0; i < row.figures.size() && row.solved; ++i)
            cells.push_back(row.figures[i]
                                ? format_quantity(*row.figures[i], sweep.columns[i].dimension)
                                : "-");
    }
    std::vector<std::size_t> widths(rows[0].size(), 0);
    for (const auto& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            if (row.size() == rows[0].size()) widths[i] = std::max(widths[i], row[i].size());
    std::string out;
    for (const auto& row : rows) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i)
            line += fmt::format("{}{:>{}}", i == 0 ? "" : "  ", row[i], widths[i]);
        out += line + "\n";
    }
    return out;
}

std::string sweep_json(std::string_view file, const Sweep& sweep) {
    Json axes = Json::array();
    for (const SweepAxis& axis : sweep.axes)
        axes.push_back({{"datum", axis.datum}, {"unit", si_unit(axis.spec->dimension)}});
    Json columns = Json::array();
    for (const SweepColumn& column : sweep.columns) {
        Json json;
        if (!column.id.empty()) json["id"] = column.id;
        json["quantity"] = column.quantity;
        json["unit"] = si_unit(column.dimension);
        columns.push_back(std::move(json));
    }
    Json rows = Json::array();
    for (const SweepRow& row : sweep.rows) {
        Json cells = Json::array();
        for (const double axis : row.axes) cells.push_back(axis);
        for (const auto& figure : row.figures)
            cells.push_back(figure ? Json(*figure) : Json(nullptr));
        rows.push_back(std::move(cells));
    }
    const Json json{
        {"format", "loopwright-solve/1"},
        {"tool", {{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}},
        {"file", file},
        {"sweep",
         {{"axes", std::move(axes)}, {"columns", std::move(columns)}, {"rows", std::move(rows)}}}};
    return json.dump() + "\n";
}

std::string sweep_csv(const Sweep& sweep) {
    std::string out;
    const auto cell = [&](std::string_view text) {
        if (!out.empty() && out.back() != '\n') out += ',';
        out += text;
    };
    for (const SweepAxis& axis : sweep.axes)
        cell(fmt::format("{} ({})", axis.datum, si_unit(axis.spec->dimension)));
    for (const SweepColumn& column : sweep.columns)
        cell(fmt::format("{} ({})", head_of(column), si_unit(column.dimension)));
    out += "\r\n";
    for (const SweepRow& row : sweep.rows) {
        for (const double axis : row.axes) cell(fmt::format("{}", axis));
        for (const auto& figure : row.figures) {
            out += ',';
            if (figure) out += fmt::format("{}", *figure);
        }
        out += "\r\n";
    }
    return out;
}

}  // namespace loopwright
