#include <loopwright/hydraulics/link_flows.h>

#include <algorithm>

namespace loopwright::hydraulics {

namespace {

/// Ports as vertices, links as edges; the ports of a reservoir hang on one vertex behind them.
class Links {
  public:
    Links(const Circuit& circuit, const Model& model)
        : model_(model), ground_(circuit.ports.size()), first_(circuit.ports.size() + 2, 0) {
        for (const Link& link : model.links) add(link.from, link.to);
        for (const Component& component : circuit.components)
            if (component.kind->part == Part::reservoir)
                for (Index port = component.ports.begin; port < component.ports.end; ++port)
                    add(port, static_cast<Index>(ground_));
        for (const auto& [from, to] : edges_) {
            ++first_[from + 1];
            ++first_[to + 1];
        }
        for (std::size_t i = 1; i < first_.size(); ++i) first_[i] += first_[i - 1];
        edges_of_.resize(2 * edges_.size());
        std::vector<Index> cursor(first_.begin(), first_.end() - 1);
        for (Index e = 0; e < edges_.size(); ++e) {
            edges_of_[cursor[edges_[e].first]++] = e;
            edges_of_[cursor[edges_[e].second]++] = e;
        }
    }

    /// `put_in`: what flows into the links at each port from what stands there.
    std::vector<std::optional<double>> flows(std::vector<double> put_in) {
        put_in.push_back(0.0);  // of the ground, where the rest goes
        std::vector<std::optional<double>> flow(edges_.size());
        number_.assign(ground_ + 1, none);
        lowest_.assign(ground_ + 1, none);
        visit(static_cast<Index>(ground_), put_in, flow);
        for (Index port = 0; port < ground_; ++port)
            if (number_[port] == none) visit(port, put_in, flow);
        flow.resize(model_.links.size());
        return flow;
    }

  private:
    void add(Index from, Index to) { edges_.emplace_back(from, to); }

    struct Frame {
        Index vertex = none;
        Index by = none;  // edge
        Index next = none;
    };

    /// Depth first; an edge that no other way goes round carries what its far side puts in.
    void visit(Index root, std::vector<double>& put_in, std::vector<std::optional<double>>& flow) {
        std::vector<Frame> frames{{root, none, first_[root]}};
        number_[root] = lowest_[root] = count_++;
        while (!frames.empty()) {
            Frame& frame = frames.back();
            if (frame.next < first_[frame.vertex + 1]) {
                const Index edge = edges_of_[frame.next++];
                if (edge == frame.by) continue;
                const auto& [from, to] = edges_[edge];
                const Index other = from == frame.vertex ? to : from;
                if (number_[other] != none) {
                    lowest_[frame.vertex] = std::min(lowest_[frame.vertex], number_[other]);
                    continue;
                }
                number_[other] = lowest_[other] = count_++;
                frames.push_back({other, edge, first_[other]});
                continue;
            }
            const Frame done = frame;
            frames.pop_back();
            if (frames.empty()) return;
            const Index parent = frames.back().vertex;
            lowest_[parent] = std::min(lowest_[parent], lowest_[done.vertex]);
            put_in[parent] += put_in[done.vertex];
            if (lowest_[done.vertex] > number_[parent])
                flow[done.by] = edges_[done.by].first == done.vertex ? put_in[done.vertex]
                                                                     : -put_in[done.vertex];
        }
    }

    const Model& model_;
    std::size_t ground_;
    std::vector<std::pair<Index, Index>> edges_;
    std::vector<Index> first_;
    std::vector<Index> edges_of_;
    std::vector<Index> number_;
    std::vector<Index> lowest_;
    Index count_ = 0;
};

}  // namespace

std::vector<std::optional<double>> link_flows(const Circuit& circuit, const Model& model,
                                              const SteadyState& state) {
    std::vector<double> put_in(circuit.ports.size(), 0.0);
    for (std::size_t i = 0; i < model.branches.size(); ++i) {
        put_in[model.branches[i].from] -= state.flows[i];
        put_in[model.branches[i].to] += state.flows[i];
    }
    for (std::size_t i = 0; i < model.machines.size(); ++i) {
        const MachineOwner& owner = model.machines[i];
        const MachineLaw law = law_of(model.network.machines[i], state.machines[i]);
        put_in[owner.a] += law.flow_a.value;
        put_in[owner.b] += law.flow_b.value;
        put_in[owner.housing] += law.flow_case.value;
    }
    for (std::size_t i = 0; i < model.cylinders.size(); ++i) {
        const NetworkCylinder& one = model.network.cylinders[i];
        const CylinderLaw law =
            cylinder_law(one.cylinder, {.pressure_a = state.pressures[one.a],
                                        .pressure_b = one.b == none ? 0.0 : state.pressures[one.b],
                                        .rod_velocity = state.speeds[one.shaft]});
        put_in[model.cylinders[i].a] += law.flow_a.value;
        if (one.b != none) put_in[model.cylinders[i].b] += law.flow_b.value;
    }
    return Links(circuit, model).flows(std::move(put_in));
}

}  // namespace loopwright::hydraulics
