#include <loopwright/graph/witness.h>

#include <algorithm>
#include <array>
#include <set>

#include <boost/container/small_vector.hpp>

namespace loopwright {

namespace {

/// True where the component itself makes its ports of one joint one: junction, housing, reservoir.
bool joins_its_ports(const Circuit& circuit, const Component& component) {
    const auto passages = circuit.passages_of(component);
    return component.kind->part == Part::reservoir ||
           std::any_of(passages.begin(), passages.end(), [](const Passage& passage) {
               return passage.passage == PassageClass::joined;
           });
}

/// How a port was reached inside a joint: over a line, or through a component (line `none`).
struct Reached {
    Index from = none;
    Index line = none;
};

/// Breadth first over the ports of a joint until `found` holds; steps from there
/// to the target.
template <typename Found>
void add_search_of_joint(const FlowGraph& graph, Index from, Found found,
                         std::vector<Step>& steps) {
    if (found(from)) return;
    const Circuit& circuit = graph.circuit();
    // Mostly the first line leads there.
    for (const Index line : graph.lines_of(from))
        for (const Index port : circuit.ports_of(circuit.lines[line]))
            if (found(port)) {
                steps.push_back({ElementType::line, line, from, port, {}});
                return;
            }
    const auto ports = graph.ports_of(graph.joint_of(from));  // in ascending order
    const auto slot = [&](Index port) {
        return std::lower_bound(ports.begin(), ports.end(), port) - ports.begin();
    };
    boost::container::small_vector<Reached, 24> reached(ports.size());
    boost::container::small_vector<Index, 24> queue{from};
    Index at = none;
    for (std::size_t i = 0; i < queue.size() && at == none; ++i) {
        const Index port = queue[i];
        const auto visit = [&](Index next, Index line) {
            if (at != none) return;
            Reached& there = reached[static_cast<std::size_t>(slot(next))];
            if (next == from || there.from != none) return;
            there = {port, line};
            queue.push_back(next);
            if (found(next)) at = next;
        };
        for (const Index line : graph.lines_of(port))
            for (const Index next : circuit.ports_of(circuit.lines[line])) visit(next, line);
        if (at != none) break;
        const Component& component = circuit.components[circuit.ports[port].component];
        if (!joins_its_ports(circuit, component)) continue;
        for (Index next = component.ports.begin; next < component.ports.end; ++next)
            if (graph.joint_of(next) == graph.joint_of(port)) visit(next, none);
    }
    const auto before = static_cast<std::ptrdiff_t>(steps.size());
    while (at != none && at != from) {
        const Reached& by = reached[static_cast<std::size_t>(slot(at))];
        if (by.line != none)
            steps.push_back({ElementType::line, by.line, by.from, at, {}});
        else
            steps.push_back({ElementType::component, circuit.ports[at].component, by.from, at, {}});
        at = by.from;
    }
    std::reverse(steps.begin() + before, steps.end());
}

bool is_reservoir_port(const Circuit& circuit, Index port) {
    return circuit.components[circuit.ports[port].component].kind->part == Part::reservoir;
}

/// The lines (and junctions) between two ports of one joint.
void append_between(const FlowGraph& graph, Index from, Index to, std::vector<Step>& steps) {
    if (from == to) return;
    // Mostly a line joins them.
    const auto lines = graph.lines_of(to);
    for (const Index line : graph.lines_of(from))
        if (std::find(lines.begin(), lines.end(), line) != lines.end()) {
            steps.push_back({ElementType::line, line, from, to, {}});
            return;
        }
    add_search_of_joint(
        graph, from, [&](Index port) { return port == to; }, steps);
}

}  // namespace

namespace {

std::string_view switched_text(Shift shift) {
    switch (shift) {
        case Shift::hand:
            return "open as drawn";
        case Shift::position:
            return "open in this position";
        case Shift::higher_inlet:
            return "the higher inlet";
        case Shift::pilot_opens:
        case Shift::pilot_unloads:
            return "opened by its pilot";
        default:
            return "shifted to the low side";
    }
}

}  // namespace

std::string_view passing_text(const Edge& edge, bool backward) {
    switch (edge.passage_class) {
        case PassageClass::joined:
            return "joined";
        case PassageClass::one_way:
            return backward ? "against the check" : "free flow";
        case PassageClass::pressure_opened:
            return "once its opening pressure is reached";
        case PassageClass::reduced:
            return "at the reduced pressure";
        case PassageClass::switched:
            return switched_text(edge.shift);
        case PassageClass::metering:
            return "through the restriction";
        case PassageClass::divider:
            return "through the divider";
        case PassageClass::displacement:
            return edge.part == Part::pump || edge.part == Part::hand_pump ? "delivered by the pump"
                                                                           : "through the actuator";
        case PassageClass::leakage:
            return "leakage to the housing";
        case PassageClass::element:
            return "through the element";
    }
    return {};
}

Index entry_port(const FlowGraph& graph, const Region& region, const FlowArc& arc) {
    const Passage& passage = graph.circuit().passages[region.edges[arc.edge].passage];
    return arc.backward != 0 ? passage.to : passage.from;
}

Index exit_port(const FlowGraph& graph, const Region& region, const FlowArc& arc) {
    const Passage& passage = graph.circuit().passages[region.edges[arc.edge].passage];
    return arc.backward != 0 ? passage.from : passage.to;
}

Step step_over(const FlowGraph& graph, const Region& region, const FlowArc& arc,
               std::string_view text) {
    const Edge& edge = region.edges[arc.edge];
    return {ElementType::component, edge.component, entry_port(graph, region, arc),
            exit_port(graph, region, arc),
            text.empty() ? passing_text(edge, arc.backward != 0) : text};
}

Index port_on(const FlowGraph& graph, const Region& region, Index node, Index preferred) {
    const Index joint = region.joints[node];
    if (preferred != none && graph.joint_of(preferred) == joint) return preferred;
    const Circuit& circuit = graph.circuit();
    const auto ports = graph.ports_of(joint);
    for (const Index port : ports) {
        const Part part = graph.part(circuit.ports[port].component);
        if (part == Part::pump || part == Part::actuator) return port;
    }
    return ports.front();
}

namespace {

/// On to the nearest reservoir mark of the joint, and that reservoir; nothing if there is none.
void append_to_reservoir(const FlowGraph& graph, Index from, std::vector<Step>& steps) {
    const Circuit& circuit = graph.circuit();
    const std::size_t before = steps.size();
    add_search_of_joint(
        graph, from, [&](Index port) { return is_reservoir_port(circuit, port); }, steps);
    if (steps.size() == before) return;
    const Index reservoir = circuit.ports[steps.back().to].component;
    steps.push_back({ElementType::component, reservoir, none, none, {}});
}

}  // namespace

Index add_source(const FlowGraph& graph, const Region& region,
                 std::span<const ChargeSource> sources, Index node, std::vector<Step>& steps) {
    const auto source = std::find_if(sources.begin(), sources.end(),
                                     [&](const ChargeSource& one) { return one.outlet == node; });
    if (source == sources.end()) return none;
    if (!source->is_pump()) {
        // The walk itself begins with the reservoir that it leaves.
        if (region.is_reservoir[node] != 0) return none;
        const auto ports = graph.ports_of(region.joints[node]);
        const Index port = *std::find_if(ports.begin(), ports.end(), [&](Index one) {
            return graph.circuit().ports[one].component == source->store;
        });
        steps.push_back({ElementType::component, source->store, none, port, "charge source"});
        return port;
    }
    const Edge& pump = region.edges[source->edge];
    const Passage& passage = graph.circuit().passages[pump.passage];
    const Index outlet = pump.to == source->outlet ? passage.to : passage.from;
    steps.push_back({ElementType::component, pump.component, none, outlet, "charge source"});
    return outlet;
}

void add_walk(const FlowGraph& graph, const Region& region, std::span<const FlowArc> arcs,
              WalkEnds ends, std::vector<Step>& steps) {
    if (arcs.empty()) {
        if (ends.from == none || ends.from == ends.to) return;
        if (ends.to == none)
            append_to_reservoir(graph, ends.from, steps);
        else
            append_between(graph, ends.from, ends.to, steps);
        return;
    }
    Index at = ends.from;
    if (at == none && region.is_reservoir[tail(region, arcs.front())] != 0) {
        // Backwards from the first component to the nearest reservoir mark.
        const auto before = static_cast<std::ptrdiff_t>(steps.size());
        append_to_reservoir(graph, entry_port(graph, region, arcs.front()), steps);
        std::reverse(steps.begin() + before, steps.end());
        std::for_each(steps.begin() + before, steps.end(),
                      [](Step& step) { std::swap(step.from, step.to); });
    }
    for (const FlowArc& arc : arcs) {
        const Index entry = entry_port(graph, region, arc);
        if (at != none && at != entry) append_between(graph, at, entry, steps);
        steps.push_back(step_over(graph, region, arc));
        at = exit_port(graph, region, arc);
    }
    if (ends.to != none) {
        if (at != ends.to) append_between(graph, at, ends.to, steps);
    } else if (region.is_reservoir[arcs.back().to] != 0) {
        append_to_reservoir(graph, at, steps);
    }
}

namespace {

std::string_view blocking_text(const Edge& edge, bool open) {
    switch (edge.passage_class) {
        case PassageClass::one_way:
            return open ? "a check, passed only one way" : "blocks: its free flow is the other way";
        case PassageClass::switched:
            if (edge.shift == Shift::hand) return open ? "can be closed" : "drawn closed";
            return open ? "open here, yet no way on" : "shut in this state";
        case PassageClass::pressure_opened:
            return "opens only under pressure";
        case PassageClass::reduced:
            return "hands on a reduced pressure, no free way";
        case PassageClass::metering:
            return "a restriction";
        case PassageClass::divider:
            return "a divider's leg";
        case PassageClass::displacement:
            return "a machine: no free way through it";
        case PassageClass::element:
            if (!open && edge.shift == Shift::position) return "shut in this state";
            return open ? "no way on behind it" : "blocks: mounted one way";
        case PassageClass::joined:
        case PassageClass::leakage:
            break;
    }
    return {};
}

}  // namespace

void add_frontier(const FlowGraph& graph, const Region& region, const Standing& standing,
                  const Search& search, bool towards, std::vector<Step>& steps) {
    // A component is told once, an operated valve once for each pair of ports.
    std::set<std::array<Index, 3>> shown;
    for (const Index node : search.order) {
        for (const FlowArc& arc : region.arcs_of(node)) {
            const Edge& edge = region.edges[arc.edge];
            if (search.reached(arc.to) || edge.passage_class == PassageClass::leakage) continue;
            const FlowArc flow = towards ? arc : turned_round(region, arc);
            const Step step =
                step_over(graph, region, flow, blocking_text(edge, stands_open(standing, flow)));
            std::array<Index, 3> key = {edge.component, none, none};
            if (edge.shift == Shift::position) key = {edge.component, step.from, step.to};
            if (shown.insert(key).second) steps.push_back(step);
        }
    }
}

}  // namespace loopwright
