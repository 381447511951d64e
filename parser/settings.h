#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/diagnostic.h>
#include <loopwright/parser/kinds/kind.h>
#include <loopwright/parser/reader.h>

/// Figures that a user keeps in a file of their own beside circuits, read with the scan, the units
/// and the messages of the circuit's reader:
///     <thresholds format="1"> <hose-safety burst-ratio="3.5"/> </thresholds>
namespace loopwright {

/// One element of the file: its name and the figures that it may set.
struct SettingGroup {
    std::string_view name = {};
    std::vector<AttributeSpec> settings = {};  ///< quantities
};

struct Setting {
    std::string_view group = {};  ///< of the `SettingGroup`
    std::string_view name = {};   ///< of its setting
    double si = 0.0;
    SourceRef place = {};  ///< the value
};

struct SettingsResult {
    std::vector<Setting> settings = {};  ///< to be used only where there is no error
    Diagnostics diagnostics = {};
    std::shared_ptr<const SourceSet> sources = {};

    bool ok() const;
};

/// Reads such a file with the root element `root`. Each group may stand once. Never throws on bad
/// input.
SettingsResult read_settings(const std::filesystem::path& file, std::string_view root,
                             std::span<const SettingGroup> groups, const ReadLimits& limits = {});

/// Its XML schema (XSD 1.0, no namespace).
std::string settings_schema(std::string_view root, std::span<const SettingGroup> groups);

}  // namespace loopwright
