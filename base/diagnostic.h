#pragma once

#include <string>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/base/source.h>

namespace loopwright {

/// Trouble in an input file. A circuit with an error among its diagnostics is unusable; warnings
/// can stand beside a usable one.
struct Diagnostic {
    Level level = Level::error;
    std::string message = {};     ///< what is wrong, one sentence without a full stop
    std::string expected = {};    ///< what would be right; may be empty
    std::string suggestion = {};  ///< the likely meaning ("did you mean"); may be empty
    SourceRef place = {};
};

using Diagnostics = std::vector<Diagnostic>;

}  // namespace loopwright
