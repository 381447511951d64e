#include <loopwright/hydraulics/sweep.h>

#include <algorithm>
#include <atomic>
#include <charconv>
#include <map>
#include <thread>

#include <fmt/format.h>

#include <loopwright/base/source.h>
#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/point_worker.h>
#include <loopwright/parser/kinds/definitions.h>

namespace loopwright::hydraulics {

namespace {

const AttributeSpec* quantity_named(std::span<const AttributeSpec> specs, std::string_view name) {
    const auto found = std::find_if(specs.begin(), specs.end(), [&](const AttributeSpec& spec) {
        return spec.name == name && spec.type == AttributeType::quantity;
    });
    return found == specs.end() ? nullptr : &*found;
}

std::string perhaps(std::span<const AttributeSpec> specs, std::string_view name) {
    std::vector<std::string_view> known;
    for (const AttributeSpec& spec : specs)
        if (spec.type == AttributeType::quantity) known.push_back(spec.name);
    const std::string_view near = nearest_name(name, known);
    return near.empty() ? "" : fmt::format("; perhaps '{}'", near);
}

/// What the text before '=' names.
bool find_datum(const Circuit& circuit, SweepAxis& axis, std::string& trouble) {
    const std::size_t dot = axis.datum.rfind('.');
    if (dot == std::string::npos) {
        const auto specs = find_definition("point", "duty")->attributes;
        axis.spec = quantity_named(specs, axis.datum);
        if (axis.spec == nullptr)
            trouble = fmt::format("a duty point has no figure '{}'{}", axis.datum,
                                  perhaps(specs, axis.datum));
        return axis.spec != nullptr;
    }
    const std::string_view part = std::string_view(axis.datum).substr(0, dot);
    const std::string_view name = std::string_view(axis.datum).substr(dot + 1);
    std::vector<std::string_view> known;
    for (Index c = 0; c < circuit.components.size(); ++c) {
        known.push_back(circuit.components[c].path);
        if (circuit.components[c].path == part) axis.component = c;
    }
    if (axis.component == none) {
        const std::string_view near = nearest_name(part, known);
        trouble = fmt::format("no component '{}'{}", part,
                              near.empty() ? "" : fmt::format("; perhaps '{}'", near));
        return false;
    }
    const auto specs = circuit.components[axis.component].kind->attributes;
    axis.spec = quantity_named(specs, name);
    if (axis.spec == nullptr)
        trouble = fmt::format("{} has no figure '{}'{}", part, name, perhaps(specs, name));
    return axis.spec != nullptr;
}

bool read_end(const SweepAxis& axis, std::string_view text, double& si, std::string& trouble) {
    const ParsedQuantity parsed = parse_quantity(text, axis.spec->dimension);
    if (!parsed.ok()) {
        trouble = fmt::format("{}; expected {}", parsed.message, parsed.expected);
        return false;
    }
    si = parsed.si;
    const bool low = axis.spec->least_included ? si < axis.spec->least : si <= axis.spec->least;
    if (!low && si <= axis.spec->most) return true;
    trouble = fmt::format("{} is outside what {} can be", text, axis.datum);
    return false;
}

/// Puts a figure in place of what a range of attributes has.
void set_figure(Circuit& circuit, Range& range, const AttributeSpec* spec, double si) {
    for (Index i = range.begin; i < range.end; ++i)
        if (circuit.attributes[i].spec == spec) {
            circuit.attributes[i].si = si;
            return;
        }
    const auto begin = static_cast<Index>(circuit.attributes.size());
    for (Index i = range.begin; i < range.end; ++i) {
        const AttributeValue one = circuit.attributes[i];
        circuit.attributes.push_back(one);
    }
    circuit.attributes.push_back({.spec = spec, .si = si});
    range = {begin, static_cast<Index>(circuit.attributes.size())};
}

/// A circuit of its own, whose data are changed from row to row.
class Bench {
  public:
    Bench(const Circuit& circuit, Index point, std::span<const SweepAxis> axes)
        : circuit_(circuit), graph_(circuit_), point_(point), axes_(axes) {
        // Room for each axis once, so that the rows only write figures.
        for (std::size_t i = 0; i < axes.size(); ++i) set(i, axes[i].from);
    }

    OperatingPoint work(std::span<const double> values) {
        for (std::size_t i = 0; i < axes_.size(); ++i) set(i, values[i]);
        PointFigures figures(circuit_, point_);
        if (figures.goes_both_ways()) {
            if (!motions_) motions_.emplace(graph_);
            figures.part(*motions_);
        }
        const std::vector<State> alike = figures.alike();
        auto known = standing_.find(alike);
        if (known == standing_.end())
            known = standing_.emplace(alike, standings(graph_, {&figures, 1}).front()).first;
        return work_out(graph_, figures, known->second, false);
    }

  private:
    void set(std::size_t axis, double si) {
        const SweepAxis& one = axes_[axis];
        if (one.component == none) {
            set_figure(circuit_, circuit_.points[point_].attributes, one.spec, si);
            return;
        }
        Component& component = circuit_.components[one.component];
        set_figure(circuit_, component.attributes, one.spec, si);
        // What a passage opens at was read off it.
        for (Index p = component.passages.begin; p < component.passages.end; ++p) {
            Passage& passage = circuit_.passages[p];
            for (const PassageSpec& spec : component.kind->passages)
                if (spec.opening == one.spec->name && spec.passage == passage.passage &&
                    spec.from == circuit_.ports[passage.from].letter &&
                    spec.to == circuit_.ports[passage.to].letter)
                    passage.opening = si;
        }
    }

    Circuit circuit_;
    FlowGraph graph_;
    Index point_;
    std::span<const SweepAxis> axes_;
    std::optional<Motions> motions_;  // where commands go both ways
    std::map<std::vector<State>, PointStanding> standing_;
};

std::vector<SweepColumn> columns_of(const Circuit& circuit, const OperatingPoint& point) {
    std::vector<SweepColumn> columns;
    for (const MachinePoint& one : point.machines) {
        const std::string id(circuit.components[one.component].path);
        columns.push_back({id, one.straight ? "velocity" : "speed",
                           one.straight ? Dimension::velocity : Dimension::speed});
        columns.push_back({id, one.straight ? "force" : "torque",
                           one.straight ? Dimension::force : Dimension::torque});
        columns.push_back({id, "pressure", Dimension::pressure});
        columns.push_back({id, "flow", Dimension::flow});
        columns.push_back({id, "power", Dimension::power});
    }
    columns.push_back({"", "power in", Dimension::power});
    columns.push_back({"", "power out", Dimension::power});
    columns.push_back({"", "efficiency", Dimension::ratio});
    return columns;
}

std::vector<std::optional<double>> figures_of(const OperatingPoint& point) {
    std::vector<std::optional<double>> figures;
    for (const MachinePoint& one : point.machines) {
        figures.emplace_back(one.speed);
        figures.emplace_back(one.torque);
        figures.emplace_back(std::max(one.pressure_a, one.pressure_b));
        figures.emplace_back(one.flow);
        figures.emplace_back(one.shaft_power);
    }
    double in = 0.0;
    double out = 0.0;
    for (const ShaftPoint& shaft : point.shafts) (shaft.driven ? in : out) += shaft.power;
    figures.emplace_back(in);
    figures.emplace_back(out);
    // Driven by its load, it gives power to the prime mover.
    const bool overruns = out < 0.0;
    const double given = overruns ? -out : in;
    const double taken = overruns ? -in : out;
    figures.emplace_back(given > 0.0 && taken >= 0.0 ? std::optional(taken / given) : std::nullopt);
    return figures;
}

}  // namespace

std::optional<SweepAxis> read_axis(const Circuit& circuit, std::string_view text,
                                   std::string& trouble) {
    const std::size_t equals = text.find('=');
    const std::size_t dots = text.find("..", equals == std::string_view::npos ? 0 : equals);
    const std::size_t colon = text.rfind(':');
    if (equals == std::string_view::npos || dots == std::string_view::npos ||
        colon == std::string_view::npos || colon < dots) {
        trouble = fmt::format("'{}' is not DATUM=FROM..TO:COUNT, such as travel=0%..100%:41", text);
        return std::nullopt;
    }
    SweepAxis axis{.datum = std::string(text.substr(0, equals))};
    const std::string_view count = text.substr(colon + 1);
    const auto [end, error] = std::from_chars(count.begin(), count.end(), axis.count);
    if (error != std::errc() || end != count.end() || axis.count < 1 ||
        axis.count > SweepAxis::most_steps) {
        trouble =
            fmt::format("'{}' is not a whole number from 1 to {}", count, SweepAxis::most_steps);
        return std::nullopt;
    }
    if (!find_datum(circuit, axis, trouble) ||
        !read_end(axis, text.substr(equals + 1, dots - equals - 1), axis.from, trouble) ||
        !read_end(axis, text.substr(dots + 2, colon - dots - 2), axis.to, trouble))
        return std::nullopt;
    return axis;
}

Sweep sweep(const Circuit& circuit, std::string_view point, std::vector<SweepAxis> axes,
            const std::function<void(std::size_t)>& told) {
    Index chosen = 0;
    for (Index i = 0; i < circuit.points.size(); ++i)
        if (circuit.points[i].id == point) chosen = i;
    Sweep result;
    std::size_t count = 1;
    for (const SweepAxis& axis : axes) count *= static_cast<std::size_t>(axis.count);
    result.rows.resize(count);
    const std::size_t outer = axes.empty() ? 1 : static_cast<std::size_t>(axes.front().count);
    const std::size_t inner = count / outer;
    std::atomic<std::size_t> next = 0;
    std::atomic<std::size_t> done = 0;
    // The point's own names are kept by no row, so that circuits may come and go.
    const auto work = [&] {
        Bench bench(circuit, chosen, axes);
        for (std::size_t o = next++; o < outer; o = next++)
            for (std::size_t i = 0; i < inner; ++i) {
                SweepRow& row = result.rows[o * inner + i];
                row.axes.resize(axes.size());
                std::size_t rest = o * inner + i;
                for (std::size_t a = axes.size(); a-- > 0;) {
                    const auto steps = static_cast<std::size_t>(axes[a].count);
                    row.axes[a] = axes[a].at(static_cast<int>(rest % steps));
                    rest /= steps;
                }
                const OperatingPoint found = bench.work(row.axes);
                row.solved = found.solved && found.problem.empty();
                if (row.solved) row.figures = figures_of(found);
                if (told) told(++done);
            }
    };
    {
        const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < std::min(cores, outer); ++i) others.emplace_back(work);
        work();
    }
    Bench bench(circuit, chosen, axes);
    for (const SweepRow& row : result.rows)
        if (row.solved && result.columns.empty())
            result.columns = columns_of(circuit, bench.work(row.axes));
    for (SweepRow& row : result.rows) row.figures.resize(result.columns.size());
    result.axes = std::move(axes);
    return result;
}

}  // namespace loopwright::hydraulics
