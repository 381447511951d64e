#pragma once

#include <span>
#include <string_view>

/// Circuit files that come with the program, part of it: nobody has to find a folder for them.
namespace loopwright {

struct ReadyText {
    std::string_view name = {};  ///< the file's name without its ending
    std::string_view text = {};
};

/// Assemblies for `<use name="...">` (circuits/assemblies), sorted by name.
std::span<const ReadyText> ready_assemblies();

/// Whole circuits to begin with (circuits/starting), sorted by name.
std::span<const ReadyText> starting_circuits();

}  // namespace loopwright
