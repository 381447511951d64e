#include <loopwright/hydraulics/model.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/hydraulics/assumed.h>
#include <loopwright/hydraulics/model_builder.h>

namespace loopwright::hydraulics {

namespace {

bool is_pipe(const Line& line) { return line.bore && line.length; }

bool has_attribute(const Component& component, std::string_view name) {
    const auto& specs = component.kind->attributes;
    return std::any_of(specs.begin(), specs.end(),
                       [&](const AttributeSpec& spec) { return spec.name == name; });
}

}  // namespace

ModelBuilder::ModelBuilder(const FlowGraph& graph, const PointFigures& point,
                           std::span<const std::uint8_t> open, const Oil& oil)
    : graph_(graph), circuit_(graph.circuit()), point_(point), open_(open) {
    model_.network.oil = oil;
}

Model ModelBuilder::build() {
    find_nodes();
    add_pipes();
    for (Index p = 0; p < circuit_.passages.size(); ++p) add_passage(p);
    build_shafts();
    return std::move(model_);
}

void ModelBuilder::miss(const Component& component, std::string_view datum) {
    std::string name = fmt::format("{}.{}", component.path, datum);
    if (std::find(model_.missing.begin(), model_.missing.end(), name) == model_.missing.end())
        model_.missing.push_back(std::move(name));
}

void ModelBuilder::assume(std::string of, std::string text, std::string_view source) {
    model_.assumptions.push_back({std::move(of), std::move(text), std::string(source)});
}

std::optional<double> ModelBuilder::need(const Component& component, std::string_view datum) {
    const std::optional<double> figure = circuit_.figure(component, datum);
    if (!figure) miss(component, datum);
    return figure;
}

/// Whether a passage joins its ports without a loss that is known.
bool ModelBuilder::is_link(Index p) const {
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    switch (passage.passage) {
        case PassageClass::joined:
            return component.kind->part != Part::reservoir;
        case PassageClass::switched:
            // What a spring decides has a law of its own.
            return open_[p] != 0 && !measures(component, "drop") &&
                   passage.shift != Shift::pilot_unloads &&
                   !(has_attribute(component, "setting") && passage.shift == Shift::pilot_opens);
        case PassageClass::element:
            return !has_element_data(component) && !measures(component, "drop") && stands_open(p);
        default:
            return false;
    }
}

bool ModelBuilder::has_element_data(const Component& component) const {
    return circuit_.figure(component, "flow") && circuit_.figure(component, "pressure-drop") &&
           circuit_.figure(component, "viscosity");
}

/// Of a thermostat the way that its oil's temperature opens; of all others every one.
bool ModelBuilder::stands_open(Index p) const {
    const Component& component = circuit_.components[circuit_.passages[p].component];
    if (!has_attribute(component, "opens-at")) return true;
    const std::optional<double> opens = circuit_.figure(component, "opens-at");
    const std::optional<double> oil = point_.figure("oil");
    if (!opens || !oil) return true;
    const bool to_cooler = circuit_.ports[circuit_.passages[p].to].letter == "B";
    return to_cooler == (*oil >= *opens);
}

void ModelBuilder::find_nodes() {
    DisjointSets sets(circuit_.ports.size());
    for (Index l = 0; l < circuit_.lines.size(); ++l) {
        const Line& line = circuit_.lines[l];
        const auto ports = circuit_.ports_of(line);
        for (std::size_t i = 1; i < ports.size(); ++i) {
            if (i == 1 && is_pipe(line)) continue;
            sets.join(ports.front(), ports[i]);
            model_.links.push_back({.from = ports.front(), .to = ports[i], .line = l});
        }
    }
    for (Index p = 0; p < circuit_.passages.size(); ++p) {
        if (!is_link(p)) continue;
        const Passage& passage = circuit_.passages[p];
        sets.join(passage.from, passage.to);
        model_.links.push_back({.from = passage.from, .to = passage.to, .passage = p});
        const Component& component = circuit_.components[passage.component];
        if (passage.passage == PassageClass::element && has_attribute(component, "pressure-drop"))
            assume(fmt::format("{}.pressure-drop", component.path), "no loss",
                   "not given at a flow and viscosity");
    }
    for (const Component& component : circuit_.components)
        if (component.kind->part == Part::reservoir)
            for (Index port = component.ports.begin; port < component.ports.end; ++port)
                sets.join(component.ports.begin, port);
    // A joint that nothing but instruments stands on is a node as well: it has a pressure.
    std::vector<Index> node_of_set(circuit_.ports.size(), none);
    model_.node_of_port.assign(circuit_.ports.size(), none);
    for (Index port = 0; port < circuit_.ports.size(); ++port) {
        Index& node = node_of_set[sets.find(port)];
        if (node == none) {
            node = static_cast<Index>(model_.network.nodes.size());
            model_.network.nodes.emplace_back();
            model_.node_names.push_back(circuit_.port_name(port));
        }
        model_.node_of_port[port] = node;
    }
    for (const Component& component : circuit_.components) {
        if (component.kind->part != Part::reservoir || component.ports.size() == 0) continue;
        Node& node = model_.network.nodes[node_at(component.ports.begin)];
        node.pressure = circuit_.figure(component, "pressure").value_or(0.0);
        model_.node_names[node_at(component.ports.begin)] = component.path;
    }
}

Branch& ModelBuilder::add_branch(Branch::Kind kind, BranchOwner owner) {
    model_.branches.push_back(owner);
    Branch& branch = model_.network.branches.emplace_back();
    branch.kind = kind;
    branch.from = node_at(owner.from);
    branch.to = node_at(owner.to);
    return branch;
}

void ModelBuilder::add_pipes() {
    for (Index l = 0; l < circuit_.lines.size(); ++l) {
        const Line& line = circuit_.lines[l];
        const auto ports = circuit_.ports_of(line);
        if (!is_pipe(line) || ports.size() < 2) continue;
        Branch& branch =
            add_branch(Branch::Kind::resistance, {.line = l, .from = ports[0], .to = ports[1]});
        branch.resistance.law = Resistance::Law::pipe;
        branch.resistance.pipe = {.bore = *line.bore,
                                  .length = *line.length,
                                  .roughness = line.flexible ? assumed::hose_roughness.figure
                                                             : assumed::tube_roughness.figure};
    }
}

void ModelBuilder::add_spring(Index p, const SpringValve& valve, Index pilot_port) {
    const Passage& passage = circuit_.passages[p];
    Branch& branch =
        add_branch(Branch::Kind::spring, {.passage = p, .from = passage.from, .to = passage.to});
    branch.spring.valve = valve;
    const bool drained =
        passage.spring_chamber != none && !graph_.lines_of(passage.spring_chamber).empty();
    branch.spring.chamber = node_at(drained ? passage.spring_chamber : passage.to);
    if (pilot_port != none) branch.spring.pilot = node_at(pilot_port);
}

void ModelBuilder::add_passage(Index p) {
    if (is_link(p)) return;
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    const bool opens_under_pressure = passage.passage == PassageClass::one_way ||
                                      passage.passage == PassageClass::pressure_opened;
    if (opens_under_pressure && !passage.bypass && measures(component, "drop"))
        assume(fmt::format("{}: table", component.path), "not used",
               "what its pressure opens goes by its setting");
    switch (passage.passage) {
        case PassageClass::one_way:
            if ((open_[p] & open_forward) == 0 && passage.pilot != none) return;
            add_spring(p,
                       check_valve(Pressure(std::isnan(passage.opening) ? 0.0 : passage.opening)),
                       none);
            return;
        case PassageClass::pressure_opened:
            add_pressure_opened(p);
            return;
        case PassageClass::switched:
            if (passage.shift == Shift::pilot_unloads ||
                (passage.shift == Shift::pilot_opens && has_attribute(component, "setting") &&
                 !has_attribute(component, "pilot-ratio"))) {
                if (const auto setting = need(component, "setting"))
                    add_spring(p, unloading_valve(Pressure(*setting)), passage.pilot);
            } else if (open_[p] != 0 && measures(component, "drop")) {
                add_measured(p);
            }
            return;
        case PassageClass::reduced:
            add_reduced(p);
            return;
        case PassageClass::metering:
            add_metering(p);
            return;
        case PassageClass::divider:
            add_leg(p);
            return;
        case PassageClass::element: {
            if (!stands_open(p)) return;
            if (measures(component, "drop")) {
                add_measured(p);
                return;
            }
            Branch& branch = add_branch(Branch::Kind::resistance,
                                        {.passage = p, .from = passage.from, .to = passage.to});
            branch.resistance.law = Resistance::Law::element;
            branch.resistance.element = {
                .flow = Flow(*circuit_.figure(component, "flow")),
                .drop = Pressure(*circuit_.figure(component, "pressure-drop")),
                .viscosity = KinematicViscosity(*circuit_.figure(component, "viscosity"))};
            return;
        }
        case PassageClass::joined:
        case PassageClass::displacement:
        case PassageClass::leakage:
            return;
    }
}

void ModelBuilder::add_pressure_opened(Index p) {
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    if (component.kind->part == Part::device) {
        miss(component, "law of its passages");
        return;
    }
    if (std::isnan(passage.opening)) {
        miss(component, passage.bypass ? "bypass" : "setting");
        return;
    }
    const Pressure setting(passage.opening);
    if (!passage.bypass && has_attribute(component, "pilot-ratio")) {
        const bool piloted = circuit_.choice(component, "pilot") == "external";
        const Index pilot = port_named(circuit_, component, "X");
        const std::optional<double> ratio =
            piloted ? need(component, "pilot-ratio") : std::optional<double>(0.0);
        if (ratio) add_spring(p, counterbalance_valve(setting, *ratio), piloted ? pilot : none);
        return;
    }
    if (has_attribute(component, "priority-flow")) {
        // What its spring holds stands over the priority port, or over the one that senses a load.
        add_spring(p, relief_valve(setting), none);
        const bool senses = circuit_.is_yes(component, "load-sensing");
        model_.network.branches.back().spring.chamber =
            node_at(port_named(circuit_, component, senses ? "LS" : "CF"));
        return;
    }
    if (!passage.bypass && has_attribute(component, "relieving")) {
        add_spring(p, relief_valve(setting + assumed::relieving_overlap.figure), none);
        assume(fmt::format("{}: relieving above its setting", component.path), "1 bar",
               assumed::relieving_overlap.source);
        return;
    }
    const auto full =
        passage.bypass ? std::nullopt : circuit_.figure(component, "full-flow-pressure");
    const auto flow = passage.bypass ? std::nullopt : circuit_.figure(component, "full-flow");
    add_spring(p,
               full && flow && *full > passage.opening
                   ? relief_valve(setting, Pressure(*full), Flow(*flow))
                   : relief_valve(setting),
               none);
}

void ModelBuilder::add_reduced(Index p) {
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    if (component.kind->part == Part::device) {
        miss(component, "law of its passages");
        return;
    }
    if (has_attribute(component, "priority-flow")) {
        const auto flow = need(component, "priority-flow");
        const auto spring = need(component, "setting");
        if (!flow || !spring) return;
        Branch& branch = add_branch(Branch::Kind::control,
                                    {.passage = p, .from = passage.from, .to = passage.to});
        branch.control = {.flow = Flow(*flow), .least_drop = Pressure(*spring)};
        return;
    }
    if (open_[p] == 0) return;
    if (std::isnan(passage.opening) || passage.opening == 0.0) {
        // A pedal or lever valve: what it hands on goes with its travel, and moves no oil.
        const auto most = circuit_.figure(component, "max-pressure");
        if (most)
            add_spring(p, reducing_valve(Pressure(*most)), none);
        else
            miss(component, has_attribute(component, "setting") ? "setting" : "max-pressure");
        return;
    }
    add_spring(p, reducing_valve(Pressure(passage.opening)), none);
    Branch& branch = model_.network.branches.back();
    const bool drained =
        passage.spring_chamber != none && !graph_.lines_of(passage.spring_chamber).empty();
    if (!drained) branch.spring.chamber = none;  // it stands at the atmosphere's pressure
}

void ModelBuilder::add_metering(Index p) {
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    if (open_[p] == 0 && passage.shift != Shift::never) return;
    if (passage.both_ways && measures(component, "drop")) {
        add_measured(p);
        return;
    }
    if (component.kind->part == Part::device || passage.shift != Shift::never) {
        miss(component, "law of its passages");
        return;
    }
    const auto bore = circuit_.figure(component, "bore");
    const auto length = circuit_.figure(component, "length");
    const auto flow = circuit_.figure(component, "flow");
    const auto drop = circuit_.figure(component, "pressure-drop");
    const BranchOwner owner{.passage = p, .from = passage.from, .to = passage.to};
    if (!passage.both_ways) {  // a flow control with a compensator
        if (!flow || !drop || *drop == 0.0) {
            if (!flow) miss(component, "flow");
            if (!drop || *drop == 0.0) miss(component, "pressure-drop");
            return;
        }
        add_branch(Branch::Kind::control, owner).control = {.flow = Flow(*flow),
                                                            .least_drop = Pressure(*drop)};
        return;
    }
    if (bore && length) {
        Resistance& one = add_branch(Branch::Kind::resistance, owner).resistance;
        one.law = Resistance::Law::pipe;
        one.pipe = {.bore = Length(*bore),
                    .length = Length(*length),
                    .roughness = assumed::tube_roughness.figure,
                    .minor_losses = assumed::throttle_minor_losses.figure.si()};
        assume(fmt::format("{}: losses at its ends", component.path), "1.5",
               assumed::throttle_minor_losses.source);
        return;
    }
    if (!bore && !(flow && drop)) {
        miss(component, "bore");
        return;
    }
    Resistance& one = add_branch(Branch::Kind::resistance, owner).resistance;
    one.law = Resistance::Law::orifice;
    one.orifice = flow && drop
                      ? Orifice::rated(Flow(*flow), Pressure(*drop), model_.network.oil.density)
                      : Orifice::of(Length(*bore), assumed::discharge_coefficient.figure.si());
    if (!(flow && drop))
        assume(fmt::format("{}: discharge coefficient", component.path), "0.61",
               assumed::discharge_coefficient.source);
}

void ModelBuilder::add_leg(Index p) {
    const Passage& passage = circuit_.passages[p];
    const Component& component = circuit_.components[passage.component];
    const auto known = std::find(divider_of_.begin(), divider_of_.end(), passage.component);
    const auto divider = static_cast<Index>(known - divider_of_.begin());
    if (known == divider_of_.end()) {
        divider_of_.push_back(passage.component);
        model_.network.dividers.push_back(
            {.rotary = circuit_.choice(component, "design") == "rotary",
             .node = node_at(passage.from)});
        assume(fmt::format("{}: shares", component.path), "equal", "no other is given");
    }
    Branch& branch =
        add_branch(Branch::Kind::leg, {.passage = p, .from = passage.from, .to = passage.to});
    branch.leg = {.divider = divider, .share = 1.0 / (component.ports.size() - 1)};
}

Model model_of(const FlowGraph& graph, const PointFigures& point,
               std::span<const std::uint8_t> open, const Oil& oil) {
    return ModelBuilder(graph, point, open, oil).build();
}

void renew_shafts(Model& model, const FlowGraph& graph, const PointFigures& point) {
    ModelBuilder(graph, point, {}, model.network.oil).renew_shafts(model);
}

}  // namespace loopwright::hydraulics
