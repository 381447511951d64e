#include <loopwright/hydraulics/readings.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/graph/situation.h>
#include <loopwright/hydraulics/point_worker.h>

namespace loopwright::hydraulics {

std::string_view name(Measured measured) {
    switch (measured) {
        case Measured::pressure:
            return "pressure";
        case Measured::temperature:
            return "temperature";
        case Measured::flow:
            return "flow";
        case Measured::speed:
            return "speed";
        case Measured::level:
            return "level";
        case Measured::contamination:
            return "contamination";
    }
    return {};
}

Dimension dimension_of(Measured measured) {
    switch (measured) {
        case Measured::pressure:
            return Dimension::pressure;
        case Measured::temperature:
            return Dimension::temperature;
        case Measured::flow:
            return Dimension::flow;
        case Measured::speed:
            return Dimension::speed;
        case Measured::level:
        case Measured::contamination:
            break;
    }
    return Dimension::ratio;
}

namespace {

/// What a kind measures; nothing where it is no instrument that reads.
std::optional<Measured> measured_by(const Circuit& circuit, const Component& component) {
    const std::string_view kind = component.kind->name;
    if (kind == "gauge" || kind == "measuring-point") return Measured::pressure;
    if (kind == "flow-meter") return Measured::flow;
    if (kind == "tachometer") return Measured::speed;
    if (kind == "thermometer") return Measured::temperature;
    if (kind != "sensor") return std::nullopt;
    const std::string_view word = circuit.choice(component, "measures");
    for (const Measured one :
         {Measured::temperature, Measured::flow, Measured::level, Measured::contamination})
        if (word == name(one)) return one;
    return Measured::pressure;
}

Reading unknown(std::string why) { return {.unknown = std::move(why)}; }

/// Reads a solved point at the measuring places.
class Instruments {
  public:
    explicit Instruments(const FlowGraph& graph)
        : graph_(graph), circuit_(graph.circuit()), structure_(structure_of(circuit_)) {
        for (Index c = 0; c < circuit_.components.size(); ++c) {
            const Component& component = circuit_.components[c];
            const auto measured = measured_by(circuit_, component);
            if (!measured) continue;
            MeasuringPlace place{.component = c,
                                 .measured = *measured,
                                 .range = circuit_.figure(component, "range")};
            if (component.kind->turns && component.shaft != none)
                place.where = circuit_.shafts[component.shaft].path;
            if (const Index line = line_of(component); line != none)
                place.where = circuit_.lines[line].path;
            places_.push_back(std::move(place));
        }
    }

    const std::vector<MeasuringPlace>& places() const { return places_; }

    std::vector<Reading> read(const OperatingPoint& point, const PointStanding& standing) const {
        std::vector<Reading> readings;
        for (const MeasuringPlace& place : places_) {
            Reading reading = place.where.empty() ? unknown("it is joined to nothing")
                                                  : read(point, standing, place);
            reading.above_range = reading.si && place.range && std::abs(*reading.si) > *place.range;
            readings.push_back(std::move(reading));
        }
        return readings;
    }

  private:
    Index line_of(const Component& component) const {
        for (Index port = component.ports.begin; port < component.ports.end; ++port)
            if (!graph_.lines_of(port).empty()) return graph_.lines_of(port).front();
        return none;
    }

    Reading read(const OperatingPoint& point, const PointStanding& standing,
                 const MeasuringPlace& place) const {
        const Component& component = circuit_.components[place.component];
        const Index port = component.ports.begin;
        switch (place.measured) {
            case Measured::pressure:
                return {.si = point.pressures[port]};
            case Measured::temperature:
                return temperature(point, standing, port);
            case Measured::flow:
                return component.passages.size() > 0 ? metered(point, component)
                                                     : line_flow(point, port);
            case Measured::speed:
                return speed(point, place.component);
            case Measured::level:
                return unknown("levels are not computed");
            case Measured::contamination:
                break;
        }
        const AttributeValue* const code =
            circuit_.fluid ? circuit_.figure_of(*circuit_.fluid, "cleanliness") : nullptr;
        if (code == nullptr) return unknown("not given: fluid.cleanliness");
        return {.code = code->text};
    }

    Reading speed(const OperatingPoint& point, Index component) const {
        for (const ShaftPoint& shaft : point.shafts)
            if (std::find(shaft.joins.begin(), shaft.joins.end(), component) != shaft.joins.end())
                return {.si = shaft.speed};
        return unknown("the speed of its shaft is not computed");
    }

    Reading metered(const OperatingPoint& point, const Component& component) const {
        for (const PassagePoint& passage : point.passages)
            if (passage.passage >= component.passages.begin &&
                passage.passage < component.passages.end)
                return {.si = passage.flow};
        return unknown("more than one way leads past it");
    }

    bool is_instrument(Index port) const {
        return circuit_.components[circuit_.ports[port].component].kind->part == Part::instrument;
    }

    /// Of a line with two ends beside its instruments.
    Reading line_flow(const OperatingPoint& point, Index port) const {
        const Index line = graph_.lines_of(port).front();
        for (const LinePoint& one : point.lines) {
            if (one.line != line) continue;
            const auto ports = circuit_.ports_of(circuit_.lines[line]);
            std::optional<double> flow;
            int ends = 0;
            for (std::size_t k = 0; k < ports.size(); ++k) {
                if (is_instrument(ports[k])) continue;
                ++ends;
                flow = one.given[k];
            }
            if (ends == 2 && flow) return {.si = std::abs(*flow)};
        }
        return unknown("more than two ways meet there");
    }

    Reading temperature(const OperatingPoint& point, const PointStanding& standing,
                        Index port) const {
        for (const PointLoop& loop : standing.loops) {
            if (std::none_of(loop.ports.begin(), loop.ports.end(), [&](Index one) {
                    return graph_.joint_of(one) == graph_.joint_of(port);
                }))
                continue;
            for (const LoopHeat& heat : point.loops)
                if (heat.first_pump == loop.first_pump && heat.temperature)
                    return {.si = *heat.temperature};
            return unknown("its loop exchanges no oil and is warmed on and on");
        }
        if (has_reservoir_oil(port)) return {.si = *point.oil};
        return unknown("only the reservoir's and the loops' temperatures are computed");
    }

    /// Oil as the reservoir has it: in it, on its way to a pump, in the charge line.
    bool has_reservoir_oil(Index port) const {
        const Index line = graph_.lines_of(port).front();
        const auto& charge = structure_.charge_lines;
        if (std::find(charge.begin(), charge.end(), line) != charge.end()) return true;
        bool only_reservoir = false;
        for (const Index one : circuit_.ports_of(circuit_.lines[line])) {
            if (circuit_.ports[one].use == PortUse::suction) return true;
            if (is_instrument(one)) continue;
            only_reservoir = graph_.part(circuit_.ports[one].component) == Part::reservoir;
            if (!only_reservoir) return false;
        }
        return only_reservoir;
    }

    const FlowGraph& graph_;
    const Circuit& circuit_;
    Structure structure_;
    std::vector<MeasuringPlace> places_ = {};
};

ReadingsAt read_at(const FlowGraph& graph, const Instruments& instruments,
                   const PointFigures& figures, const PointStanding& standing,
                   std::vector<Assumption>* assumptions) {
    const OperatingPoint point = work_out(graph, figures, standing, false);
    ReadingsAt at{.oil = point.oil, .problem = point.problem};
    at.no_solution = !point.problem.empty() && point.missing.empty();
    if (assumptions != nullptr)
        for (const Assumption& one : point.assumptions)
            if (std::none_of(assumptions->begin(), assumptions->end(),
                             [&](const Assumption& known) { return known.of == one.of; }))
                assumptions->push_back(one);
    at.readings = point.problem.empty()
                      ? instruments.read(point, standing)
                      : std::vector<Reading>(instruments.places().size(), unknown(point.problem));
    return at;
}

}  // namespace

Readings readings(const Circuit& circuit) {
    const FlowGraph graph(circuit);
    const Instruments instruments(graph);
    std::vector<PointFigures> points;
    if (circuit.points.empty()) points.emplace_back(circuit, none);
    for (Index i = 0; i < circuit.points.size(); ++i) points.emplace_back(circuit, i);
    part_motions(graph, points);
    const std::optional<PointFigures> start = PointFigures::cold_start(circuit);
    const std::optional<double> cold = start ? start->figure("oil") : std::nullopt;
    points.push_back(PointFigures::neutral(circuit, cold.value_or(usual_oil)));
    const std::vector<PointStanding> standing = standings(graph, points);

    Readings all{.places = instruments.places(), .states = {}, .assumptions = {}};
    const auto cold_at = [&](PointFigures figures, std::size_t i) {
        if (cold) {
            figures.set_oil(*cold);
            return read_at(graph, instruments, figures, standing[i], nullptr);
        }
        ReadingsAt at{.problem = "not given: duty.cold-start"};
        at.readings.assign(all.places.size(), unknown(at.problem));
        return at;
    };
    StateReadings neutral{.id = "neutral", .is_duty_point = false};
    std::optional<double> hottest;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const PointFigures& figures = points[i];
        StateReadings one{.id = figures.id(), .state = figures.state()};
        one.hot = read_at(graph, instruments, figures, standing[i], &all.assumptions);
        one.cold = cold_at(figures, i);
        if (one.hot.oil) hottest = std::max(hottest.value_or(0.0), *one.hot.oil);
        all.states.push_back(std::move(one));
    }
    PointFigures hot = points.back();
    hot.set_oil(hottest.value_or(usual_oil));
    neutral.hot = read_at(graph, instruments, hot, standing.back(), nullptr);
    neutral.cold = cold_at(points.back(), points.size() - 1);
    all.states.insert(all.states.begin(), std::move(neutral));
    return all;
}

}  // namespace loopwright::hydraulics
