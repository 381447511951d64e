#pragma once

#include <deque>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <loopwright/parser/reader.h>
#include <loopwright/parser/report.h>
#include <loopwright/parser/xml_reader.h>

namespace loopwright {

/// One file of a circuit, read once however often it is used.
struct CircuitFile {
    std::uint32_t index = 0;  ///< in the SourceSet
    std::size_t bytes = 0;
    std::filesystem::path path = {};    ///< links resolved; empty for text without a file
    std::filesystem::path folder = {};  ///< where its own `use` elements look; may be empty
    std::optional<XmlDocument> document = {};
    std::optional<ScanTrouble> trouble = {};  ///< exactly one of the two is there
};

/// Reads a whole regular file of at most `most` bytes. Nothing: the message of `words` is the
/// reason ("there is no such file"). Waits for nothing: pipes and devices are refused, not opened.
std::optional<std::string> read_regular_file(const std::filesystem::path& path, std::size_t most,
                                             Words& words);

/// The files of one circuit. Opens only regular files that, with all links resolved, stand below
/// the folder of the outermost one.
class FileStore {
  public:
    FileStore(SourceSet& sources, const ReadOptions& options)
        : sources_(sources), limits_(options.limits), folders_(options.assembly_folders) {}

    /// The outermost file's text. `path` is empty where the text comes from none, `folder` where it
    /// has none.
    const CircuitFile& add_outermost(std::string text, std::string name, std::filesystem::path path,
                                     std::filesystem::path folder);

    /// The file that `name` in a `use` element of `user` means; null: `words` say why not.
    const CircuitFile* open(std::string_view name, const CircuitFile& user, Words& words);

    /// The ready assembly of that name: from the first folder of `ReadOptions` that holds it, else
    /// one of those that come with the program; null: `words` say why not.
    const CircuitFile* open_ready(std::string_view name, Words& words);

    /// What the views into documents point to beside the texts of the source set.
    std::vector<std::shared_ptr<const char[]>> texts() const;

  private:
    const CircuitFile* find(std::string_view name, const CircuitFile& user, Words& words);
    const CircuitFile& add(std::string text, std::string name, std::filesystem::path path,
                           std::filesystem::path folder);

    SourceSet& sources_;
    ReadLimits limits_;
    std::vector<std::filesystem::path> folders_;
    std::map<std::string, const CircuitFile*, std::less<>> ready_ = {};
    std::filesystem::path root_ = {};
    std::deque<CircuitFile> files_ = {};
    /// What came of each name in each file, so that the system is asked once.
    struct Opened {
        const CircuitFile* file = nullptr;
        Words words = {};
    };
    std::map<std::uint32_t, std::map<std::string, Opened, std::less<>>> opened_ = {};
};

}  // namespace loopwright
