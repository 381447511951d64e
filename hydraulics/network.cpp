#include <loopwright/hydraulics/network.h>

namespace loopwright::hydraulics {

std::vector<Index> shape_of(const Network& network) {
    std::vector<Index> shape;
    shape.reserve(network.nodes.size() + 8 * network.branches.size() + 128);
    const auto count = [&](const auto& table) {
        shape.push_back(static_cast<Index>(table.size()));
    };
    count(network.nodes);
    for (const Node& one : network.nodes) shape.push_back(one.pressure ? 1 : 0);
    count(network.shafts);
    for (const Shaft& one : network.shafts)
        shape.insert(shape.end(), {(one.speed ? 1U : 0U) + (one.straight ? 2U : 0U), one.mover});
    count(network.branches);
    for (const Branch& one : network.branches)
        shape.insert(shape.end(), {static_cast<Index>(one.kind), one.from, one.to,
                                   one.spring.chamber, one.spring.pilot, one.leg.divider});
    count(network.dividers);
    for (const Divider& one : network.dividers) shape.push_back(one.node);
    count(network.machines);
    for (const NetworkMachine& one : network.machines)
        shape.insert(shape.end(), {one.a, one.b, one.housing, one.shaft, one.sensed, one.mover,
                                   one.control.acts() ? 1U : 0U});
    count(network.movers);
    for (const NetworkMover& one : network.movers)
        shape.insert(shape.end(), {one.shaft, one.spared ? 1U : 0U});
    count(network.cylinders);
    for (const NetworkCylinder& one : network.cylinders)
        shape.insert(shape.end(), {one.a, one.b, one.shaft});
    count(network.gears);
    for (const NetworkGear& one : network.gears) shape.insert(shape.end(), {one.in, one.out});
    count(network.loads);
    for (const NetworkLoad& one : network.loads)
        shape.insert(shape.end(), {one.shaft, one.brake_node});
    return shape;
}

}  // namespace loopwright::hydraulics
