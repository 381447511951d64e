#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include <loopwright/base/source.h>
#include <loopwright/render/writers/json_parts.h>

/// The files that a SARIF log speaks of; for its writer alone, not installed.
namespace loopwright::sarif {

using json::Json;

/// The base of relative paths: the folder in which the program was run. The log does not say where
/// that is, so that it is the same on every machine.
inline constexpr std::string_view base_id = "%SRCROOT%";

/// A path as a URI reference (RFC 3986): what is no unreserved character is percent-encoded byte by
/// byte, "." segments are left out.
std::string uri_of(std::string_view path);

/// A run's artifacts in the order of their first mention (SARIF 2.1.0, 3.24).
class Artifacts {
  public:
    /// `folder`: the working folder, absolute, links resolved.
    void work_in(std::string_view folder) { folder_ = folder; }

    /// Notes the files of a circuit; gives the `artifactLocation` (3.4) of each, by its index in
    /// `sources`. The first, the outermost, is what was to be checked.
    std::vector<Json> enter(const SourceSet& sources);
    /// Notes a file of figures by the name that the user gave it.
    void enter_thresholds(std::string_view name);
    /// Says of the outermost file of the circuit that was entered last what its circuit is.
    void describe(Json circuit);

    /// For `run.artifacts`.
    const std::vector<Json>& list() const { return artifacts_; }

  private:
    /// "uri" and "uriBaseId". `outwards`: relative even where it leads out of the working folder.
    Json location(std::string_view path, bool outwards) const;
    /// The `artifactLocation` of a file that is noted already, or is now.
    Json noted(Json location, std::string_view name, std::string_view text, std::string_view role);

    std::string folder_ = {};
    std::map<std::string, std::size_t, std::less<>> known_ = {};
    std::vector<Json> artifacts_;
    std::size_t last_ = 0;
};

}  // namespace loopwright::sarif
