#pragma once

#include <span>
#include <vector>

#include <loopwright/rules/at_work.h>

namespace loopwright {

/// A loop, and the balance of the first pump that charges it at a duty point.
struct ChargedLoop {
    const LoopInfo* loop = nullptr;
    const hydraulics::ChargeBalance* balance = nullptr;
};

/// The loops that pumps charge at the point, in file order.
std::vector<ChargedLoop> charged_loops(const AtWork& at);

/// The loops of a point that stands; of one that is torn (`AtWork::is_torn`) those whose charge
/// line is drawn empty: what is said of them there can only be bad.
std::vector<ChargedLoop> known_charged_loops(const AtWork& at);

/// At the outlet of the pump that charges, Pa; vacuum where it is drawn empty.
double charge_line_pressure(const AtWork& at, const ChargedLoop& charged);

/// What the pumps of its charge line give together, m3/s.
double charge_given(const hydraulics::ChargeBalance& balance);

/// Of its pump and the loop's machines those whose leakage is not known: without it the charge line
/// looks better fed than it is.
std::vector<std::string_view> unknown_leakage(const AtWork& at, Docket& docket,
                                              const ChargedLoop& charged);

/// For a witness: what charges and what is charged.
std::vector<Step> steps_of(const ChargedLoop& charged);

}  // namespace loopwright
