#include <loopwright/render/sheet_lists.h>

#include <stdexcept>

#include <loopwright/render/annotate.h>
#include <loopwright/render/point_values.h>

namespace loopwright {

std::vector<PanelList> lists_of(const Circuit& circuit, const Layout& layout, const Told& told) {
    std::vector<PanelList> lists;
    if (told.point != nullptr) lists.push_back(point_list(circuit, *told.point, told.apart));
    lists.push_back(findings_list(circuit, told.findings, told.verdicts));
    lists.push_back(parts_list(circuit));
    if (!circuit.remarks.empty()) lists.push_back(remarks_list(circuit));
    lists.push_back(legend(circuit, {.frames = !layout.frames.empty(),
                                     .findings = !told.findings.empty(),
                                     .values = told.point != nullptr}));
    lists.push_back(cautions());
    return lists;
}

Layout with_room_for(const Circuit& circuit, const Layout& layout, const Told& told) {
    const std::vector<PanelList> lists = lists_of(circuit, layout, told);
    const SheetSize& own = *find_sheet(layout.sheet);
    if (arrange_panels(ink_of(circuit, layout), {}, own, title_block(circuit, own), lists))
        return layout;
    Layout moved = layout;
    for (const SheetSize& size : sheet_sizes())
        if (size.width * size.height >= own.width * own.height &&
            place_on_sheet(circuit, moved, size, lists))
            return moved;
    throw std::length_error("the lists of the drawing are longer than a sheet A0 holds");
}

}  // namespace loopwright
