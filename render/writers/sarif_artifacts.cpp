#include <loopwright/render/writers/sarif_artifacts.h>

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/base/utf8.h>

namespace loopwright::sarif {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view standard_input = "-";

bool is_unreserved(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '.' || c == '_' || c == '~';
}

bool leads_out(const fs::path& relative) { return relative.empty() || *relative.begin() == ".."; }

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        const utf8::Character character = utf8::first(text);
        if (!character.valid) return false;
        text.remove_prefix(character.length);
    }
    return true;
}

}  // namespace

std::string uri_of(std::string_view path) {
    std::string uri = path.starts_with('/') ? "/" : "";
    while (!path.empty()) {
        const std::size_t end = std::min(path.find('/'), path.size());
        const std::string_view segment = path.substr(0, end);
        path.remove_prefix(std::min(end + 1, path.size()));
        if (segment.empty() || segment == ".") continue;
        if (!uri.empty() && uri.back() != '/') uri += '/';
        for (const char c : segment)
            uri += is_unreserved(c) ? std::string(1, c)
                                    : fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return uri.empty() ? "./" : uri;
}

Json Artifacts::location(std::string_view path, bool outwards) const {
    fs::path shown(path);
    if (shown.is_absolute()) {
        const fs::path relative = shown.lexically_relative(folder_);
        if (leads_out(relative) && !outwards) return {{"uri", "file://" + uri_of(path)}};
        shown = relative;
    }
    return {{"uri", uri_of(shown.string())}, {"uriBaseId", base_id}};
}

Json Artifacts::noted(Json location, std::string_view name, std::string_view text,
                      std::string_view role) {
    const bool is_file = !location.empty();
    // A URI never begins like that.
    const std::string key = is_file ? location["uri"].get<std::string>() : fmt::format(" {}", name);
    const auto [entry, added] = known_.emplace(key, artifacts_.size());
    if (added) artifacts_.push_back(Json::object());
    Json& artifact = artifacts_[entry->second];
    if (added && is_file) {
        artifact["location"] = location;
    } else if (added) {
        artifact["description"]["text"] =
            name == standard_input ? "standard input"
                                   : fmt::format("{}, which comes with loopwright", name);
        // What nobody could look up otherwise.
        if (is_utf8(text)) artifact["contents"]["text"] = text;
    }
    if (!text.empty()) {
        artifact["length"] = text.size();
        artifact["mimeType"] = "application/xml";
    }
    if (!role.empty()) {
        Json& roles = artifact["roles"];
        if (std::find(roles.begin(), roles.end(), role) == roles.end()) roles.push_back(role);
    }
    location["index"] = entry->second;
    return location;
}

std::vector<Json> Artifacts::enter(const SourceSet& sources) {
    std::vector<Json> locations;
    const SourceFile& outermost = sources.file(0);
    const bool relative = !fs::path(outermost.name()).is_absolute();
    for (std::uint32_t i = 0; i < sources.file_count(); ++i) {
        const SourceFile& file = sources.file(i);
        Json location = Json::object();
        // The outermost by its given name, which there is even where nothing could be read.
        if (i == 0 && (!file.path().empty() || file.name() != standard_input))
            location = this->location(file.name(), false);
        else if (!file.path().empty())
            location = this->location(file.path(), relative);
        locations.push_back(
            noted(std::move(location), file.name(), file.text(), i == 0 ? "analysisTarget" : ""));
    }
    last_ = locations.front()["index"].get<std::size_t>();
    return locations;
}

void Artifacts::enter_thresholds(std::string_view name) {
    noted(location(name, false), name, {}, "userSpecifiedConfiguration");
}

void Artifacts::describe(Json circuit) { artifacts_[last_]["properties"] = std::move(circuit); }

}  // namespace loopwright::sarif
