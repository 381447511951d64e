#include <loopwright/graph/drives.h>

#include <loopwright/graph/disjoint_sets.h>

namespace loopwright {

bool passes_torque(const Circuit& circuit, const Component& component) {
    return component.kind->part != Part::clutch || circuit.is_yes(component, "engaged");
}

namespace {

void add_mover(const Circuit& circuit, const Component& mover, Drive& drive) {
    const bool variable = circuit.is_yes(mover, "variable-speed");
    const bool reversing = circuit.is_yes(mover, "reversing");
    drive.variable_speed = variable && (drive.variable_speed || !drive.turned);
    drive.reversing = reversing && (drive.reversing || !drive.turned);
    drive.turned = true;
}

void add_load(const Circuit& circuit, const Component& load, Drive& drive) {
    const bool drives = circuit.is_yes(load, "overrunning");
    const std::string_view sense = circuit.choice(load, "overrunning-sense");
    drive.pulls_forward = drives && sense == "forward" && (drive.pulls_forward || !drive.loaded);
    drive.pulls_back = drives && sense == "reverse" && (drive.pulls_back || !drive.loaded);
    drive.loaded = true;
    drive.overrunning = drive.overrunning || drives;
    drive.vehicle = drive.vehicle || circuit.is_yes(load, "vehicle");
}

}  // namespace

Drives::Drives(const Circuit& circuit) : drive_of_(circuit.components.size(), none) {
    const auto shaft_count = static_cast<Index>(circuit.shafts.size());
    DisjointSets sets(shaft_count);
    for (Index shaft = 0; shaft < shaft_count; ++shaft)
        for (const Index c : circuit.components_of(circuit.shafts[shaft])) {
            const Component& component = circuit.components[c];
            if (component.far_shaft != none && component.shaft != none &&
                passes_torque(circuit, component))
                sets.join(component.shaft, component.far_shaft);
        }
    std::vector<Index> drive_of_set(shaft_count, none);
    std::vector<Index> drive_of_shaft(shaft_count, none);
    for (Index shaft = 0; shaft < shaft_count; ++shaft) {
        Index& drive = drive_of_set[sets.find(shaft)];
        if (drive == none) {
            drive = static_cast<Index>(drives_.size());
            drives_.emplace_back();
        }
        drive_of_shaft[shaft] = drive;
        for (const Index c : circuit.components_of(circuit.shafts[shaft])) {
            const Component& component = circuit.components[c];
            if (drive_of_[c] == none || component.shaft == shaft) drive_of_[c] = drive;
            if (component.kind->part == Part::prime_mover)
                add_mover(circuit, component, drives_[drive]);
            if (component.kind->part == Part::load) add_load(circuit, component, drives_[drive]);
        }
    }
    list_members(circuit, drive_of_shaft);
}

void Drives::list_members(const Circuit& circuit, const std::vector<Index>& drive_of_shaft) {
    offsets_.assign(drives_.size() + 1, 0);
    for (Index shaft = 0; shaft < circuit.shafts.size(); ++shaft)
        offsets_[drive_of_shaft[shaft] + 1] += circuit.shafts[shaft].joins.size();
    for (std::size_t d = 1; d < offsets_.size(); ++d) offsets_[d] += offsets_[d - 1];
    members_.resize(offsets_.back());
    std::vector<Index> cursor(offsets_.begin(), offsets_.end() - 1);
    for (Index shaft = 0; shaft < circuit.shafts.size(); ++shaft)
        for (const Index c : circuit.components_of(circuit.shafts[shaft]))
            members_[cursor[drive_of_shaft[shaft]]++] = c;
}

}  // namespace loopwright
