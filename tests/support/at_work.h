#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <loopwright/rules/check.h>
#include <loopwright/tests/support/judged.h>

/// Circuits with a duty, for the rules about figures at work.
namespace loopwright::testing {

/// The sound drive (judged.h) with a duty of one point, "work", and every figure that the rules at
/// work ask for; the ids are the same. Without losses, so that its flows and torques are those of
/// the displacements: 71 cm3/rev at 2400 rpm into 80 cm3/rev, under 200 N.m.
const std::string& drive_at_work();

/// The drive at work with edits.
Circuit at_work(const std::vector<Edit>& edits);

/// All verdicts of one rule on the drive at work with edits, as verdicts_of (judged.h) lists them.
std::string judged_at_work(const std::vector<Edit>& edits, std::string_view rule);

/// The figures of the rule's verdict on that subject, SI. Fails the running test where there are
/// none.
Figures figures_at_work(const std::vector<Edit>& edits, std::string_view rule,
                        std::string_view subject);

}  // namespace loopwright::testing
