#include <loopwright/render/finish_layout.h>

#include <algorithm>

#include <loopwright/render/frames.h>
#include <loopwright/render/hoses.h>
#include <loopwright/render/labels.h>

namespace loopwright {

namespace {

constexpr int quarters = 4;

GridPoint grid(Cell cell) { return {cell.x * quarters, cell.y * quarters}; }

Index line_at(const std::vector<Run>& runs, const std::vector<Index>& lines, Cell at) {
    for (std::size_t r = 0; r < runs.size(); ++r)
        if (runs[r].from == at || runs[r].to == at) return lines[r];
    return lines.empty() ? none : lines.front();
}

}  // namespace

Layout finish_layout(const Circuit& circuit, const Sketch& sketch, const Roles& roles,
                     const std::vector<RoutedNet>& nets, const std::vector<RoutedShaft>& shafts) {
    Layout layout;
    Bending bending;
    for (const SketchPart& part : sketch.parts)
        layout.placed.push_back({part.component, part.port, grid(part.at), part.attitude});
    for (std::size_t n = 0; n < nets.size(); ++n) {
        const std::vector<Index> lines = lines_of_runs(circuit, sketch, sketch.nets[n], nets[n]);
        for (std::size_t r = 0; r < nets[n].runs.size(); ++r) {
            if (circuit.lines[lines[r]].flexible)
                (between_first_two(circuit, sketch, sketch.nets[n], nets[n], r, lines[r])
                     ? bending.best
                     : bending.other)
                    .push_back(layout.wires.size());
            layout.wires.push_back(
                {lines[r], grid(nets[n].runs[r].from), grid(nets[n].runs[r].to)});
        }
        for (const Cell& joint : nets[n].joints)
            layout.joints.push_back({line_at(nets[n].runs, lines, joint), grid(joint)});
    }
    for (const RoutedShaft& shaft : shafts)
        for (const Run& run : shaft.runs)
            layout.shafts.push_back({shaft.shaft, grid(run.from), grid(run.to)});
    place_frames(circuit, sketch, layout);
    place_hoses(circuit, bending, layout);
    place_labels(circuit, sketch, roles, layout);
    return layout;
}

}  // namespace loopwright
