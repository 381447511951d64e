#include <loopwright/rules/way_losses.h>

#include <algorithm>
#include <cstdint>
#include <string>

namespace loopwright {

namespace {

/// Less is rounding.
constexpr double flows_from = 1e-9;  // m3/s

bool has_attribute(const Component& component, std::string_view name) {
    const auto& specs = component.kind->attributes;
    return std::any_of(specs.begin(), specs.end(),
                       [&](const AttributeSpec& spec) { return spec.name == name; });
}

}  // namespace

struct WayLosses::Search {
    double sense = 1.0;  ///< 1 with the oil, -1 against it
    Docket& docket;
    std::vector<std::uint8_t> reached;
    std::vector<Index> queue = {};
    std::vector<std::string_view> missing = {};

    void reach(Index port) {
        if (reached[port] != 0) return;
        reached[port] = 1;
        queue.push_back(port);
    }
    void lack(std::string_view path, std::string_view datum) {
        const std::string_view name = docket.text(path, ".", datum);
        if (std::find(missing.begin(), missing.end(), name) == missing.end())
            missing.push_back(name);
    }
    /// Of a flow that is not known it cannot be said that there is none.
    bool goes_on(std::optional<double> flow) const { return !flow || sense * *flow > flows_from; }
};

WayLosses::WayLosses(const AtWork& at)
    : at_(at),
      flow_of_line_(at.circuit().lines.size()),
      flow_of_passage_(at.circuit().passages.size()) {
    for (const hydraulics::LinePoint& line : at.point.lines) flow_of_line_[line.line] = line.flow;
    for (const hydraulics::PassagePoint& passage : at.point.passages)
        flow_of_passage_[passage.passage] = passage.flow;
}

std::vector<std::string_view> WayLosses::missing(std::span<const Index> ports, Way way,
                                                 Docket& docket) {
    const Circuit& circuit = at_.circuit();
    Search search{.sense = way == Way::to_reservoir ? 1.0 : -1.0,
                  .docket = docket,
                  .reached = std::vector<std::uint8_t>(circuit.ports.size(), 0)};
    for (const Index port : ports) search.reach(port);
    for (std::size_t i = 0; i < search.queue.size(); ++i) {
        const Index port = search.queue[i];
        const Component& component = circuit.components[circuit.ports[port].component];
        if (component.kind->part == Part::reservoir) continue;
        for (const Index line : at_.graph.lines_of(port)) over_line(search, port, line);
        for (Index p = component.passages.begin; p < component.passages.end; ++p)
            over_passage(search, port, p);
    }
    return std::move(search.missing);
}

void WayLosses::over_line(Search& search, Index port, Index l) const {
    const Line& line = at_.circuit().lines[l];
    const auto ports = at_.circuit().ports_of(line);
    if (ports.size() < 2) return;
    // Its length lies between its first two ports; all others are at the first.
    const Index far = ports[1];
    for (const Index other : ports) {
        if (other == port) continue;
        if (port != far && other != far) {
            search.reach(other);
            continue;
        }
        std::optional<double> flow = flow_of_line_[l];
        if (flow && port == far) flow = -*flow;
        if (!search.goes_on(flow)) continue;
        if (!line.bore) search.lack(line.path, "bore");
        if (!line.length) search.lack(line.path, "length");
        search.reach(other);
    }
}

void WayLosses::over_passage(Search& search, Index port, Index p) const {
    const Passage& passage = at_.circuit().passages[p];
    if (passage.from != port && passage.to != port) return;
    if (passage.passage == PassageClass::displacement || passage.passage == PassageClass::leakage)
        return;
    std::optional<double> flow = flow_of_passage_[p];
    const bool element = passage.passage == PassageClass::element;
    // What has a law of its own and no flow is shut.
    if (!flow && passage.passage != PassageClass::joined && !element) return;
    if (flow && passage.to == port) flow = -*flow;
    if (!search.goes_on(flow)) return;
    const Component& component = at_.circuit().components[passage.component];
    if (element)
        for (const std::string_view datum : {"flow", "pressure-drop", "viscosity"})
            if (has_attribute(component, datum) && !at_.circuit().figure(component, datum))
                search.lack(component.path, datum);
    search.reach(passage.from == port ? passage.to : passage.from);
}

}  // namespace loopwright
