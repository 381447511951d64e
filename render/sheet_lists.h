#pragma once

#include <span>
#include <string>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/render/layout.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

/// What the sheet tells besides the circuit itself.
struct Told {
    std::vector<const Verdict*> findings = {};  ///< those of the verdicts that get marks
    std::span<const Verdict> verdicts = {};
    const hydraulics::OperatingPoint* point = nullptr;
    std::vector<std::string> apart = {};  ///< figures of the point without room at their place
};

std::vector<PanelList> lists_of(const Circuit& circuit, const Layout& layout, const Told& told);

/// The layout where it stands, or on a larger sheet if the lists do not fit on its own. Throws
/// std::length_error where none holds them.
Layout with_room_for(const Circuit& circuit, const Layout& layout, const Told& told);

}  // namespace loopwright
