// Errors planted in rules about what hangs on no state: they see a circuit that is not the one
// read.
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/oracle/planted_errors.h>

namespace loopwright {
namespace {

/// Judges what hangs on no state on a circuit that is changed.
template <typename Change>
void conclude_on_changed(const FlowGraph& graph, const Structure& structure, std::string_view rule,
                         Docket& docket, Change change) {
    Circuit changed = graph.circuit();
    change(changed);
    find_rule(rule)->conclude(FlowGraph(changed), structure, docket);
}

/// Any bypass will do.
void filter_in_drain(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "filter-in-drain", docket, [](Circuit& circuit) {
        for (AttributeValue& value : circuit.attributes)
            if (value.spec->name == "bypass") value.si = 0.0;
    });
}

/// A port whose level is not given, or is above, is taken for one below.
void take_all_below(Circuit& circuit) {
    for (Port& port : circuit.ports) port.below_level = port.level_given = true;
}

void case_drain_return(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "case-drain-return", docket, take_all_below);
}

void return_below_level(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "return-below-level", docket, take_all_below);
}

/// That a valve is locked is not looked at.
void suction_shut_off(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "suction-shut-off", docket, [](Circuit& circuit) {
        for (AttributeValue& value : circuit.attributes)
            if (value.spec->name == "locked") value.si = 0.0;
    });
}

/// The sense of passages is forgotten.
void reservoir_balance(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "reservoir-balance", docket, [](Circuit& circuit) {
        for (Passage& passage : circuit.passages) passage.both_ways = true;
    });
}

/// The sense of checks is forgotten.
void trapped_volume(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "trapped-volume", docket, [](Circuit& circuit) {
        for (Passage& passage : circuit.passages)
            if (passage.passage == PassageClass::one_way) passage.both_ways = true;
    });
}

/// A check limits a pressure as a relief valve does.
void pressure_intensification(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "pressure-intensification", docket, [](Circuit& circuit) {
        for (Passage& passage : circuit.passages)
            if (passage.passage == PassageClass::one_way)
                passage.passage = PassageClass::pressure_opened;
    });
}

/// Any brake holds a load.
void load_holding(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "load-holding", docket, [](Circuit& circuit) {
        for (AttributeValue& value : circuit.attributes) {
            if (value.spec->name == "applied") value.text = "spring";
            if (value.spec->name == "use") value.text = "both";
        }
    });
}

/// A housing's ports are taken for ports like any other.
void drop_housings(Circuit& circuit) {
    for (Port& port : circuit.ports)
        if (port.use == PortUse::drain) port.use = PortUse::working;
}

void unconnected_port(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "unconnected-port", docket, drop_housings);
}

void line_function(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "line-function", docket, drop_housings);
}

/// What only a shaft joins is taken for joined to nothing.
void isolated_part(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "isolated-part", docket, [](Circuit& circuit) {
        for (Component& component : circuit.components)
            component.shaft = component.far_shaft = none;
    });
}

/// Prime mover and pump are looked at from one side, as if their shaft ends did not face each
/// other.
void reversed_rotation(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "reversed-rotation", docket, [](Circuit& circuit) {
        for (const Component& component : circuit.components) {
            if (component.kind->part != Part::prime_mover) continue;
            for (Index i = component.attributes.begin; i < component.attributes.end; ++i) {
                AttributeValue& value = circuit.attributes[i];
                if (value.spec->name == "rotation")
                    value.text = value.text == "clockwise" ? "counter-clockwise" : "clockwise";
            }
        }
    });
}

// A line each, so that one more changes one line.
// clang-format off
constexpr Planted planted[] = {
    {"pressure-intensification", nullptr, pressure_intensification},
    {"trapped-volume", nullptr, trapped_volume},
    {"filter-in-drain", nullptr, filter_in_drain},
    {"case-drain-return", nullptr, case_drain_return},
    {"suction-shut-off", nullptr, suction_shut_off},
    {"reservoir-balance", nullptr, reservoir_balance},
    {"return-below-level", nullptr, return_below_level},
    {"load-holding", nullptr, load_holding},
    {"unconnected-port", nullptr, unconnected_port},
    {"isolated-part", nullptr, isolated_part},
    {"line-function", nullptr, line_function},
    {"reversed-rotation", nullptr, reversed_rotation},
};
// clang-format on

}  // namespace

std::span<const Planted> planted_in_the_circuit() { return planted; }

}  // namespace loopwright
