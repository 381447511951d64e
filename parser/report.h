#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include <loopwright/base/diagnostic.h>

namespace loopwright {

/// The words of a diagnostic, as `Diagnostic` explains them.
struct Words {
    std::string message = {};
    std::string expected = {};
    std::string suggestion = {};
};

/// The known word that `text` most likely means: the one that differs in case alone, else
/// `nearest_name`; empty if none is close.
std::string_view nearest_word(std::string_view text, const std::vector<std::string_view>& known);

/// Gathers the diagnostics of a read: a few a file, those that stand first; the rest is counted.
/// Of a file that is used more than once, each place is told once, for the first use.
class Report {
  public:
    /// `most`: how many messages a file may have.
    explicit Report(std::size_t most) : most_(most) {}

    /// Tells the report which file an inclusion shows. Inclusions come in the order of their index.
    void add_inclusion(std::uint32_t file);

    /// Adds a message whose words `make()` gives. It is not called where the message would only be
    /// counted, so that a file with a million mistakes costs no million texts.
    template <class Make>
    void error(SourceRef place, Make&& make) {
        add(Level::error, place, make);
    }
    template <class Make>
    void warning(SourceRef place, Make&& make) {
        add(Level::warning, place, make);
    }

    bool has_errors() const { return errors_; }

    /// Whether that many more names may be compared with something; a read may do so some millions
    /// of times, then its messages go without a likely meaning.
    bool may_compare(std::size_t names);

    /// All messages by file and place. Where some were only counted, the last message of the file
    /// says how many.
    Diagnostics finish();

  private:
    struct FileMessages {
        Diagnostics kept = {};
        std::size_t counted = 0;
        Level worst_counted = Level::note;
        std::uint32_t first_inclusion = 0;
        bool full = false;
        std::uint32_t bound = 0;  ///< when full, only what begins before this byte is taken
        std::unordered_set<std::uint64_t> spans = {};  ///< of all messages ever kept
    };

    template <class Make>
    void add(Level level, SourceRef place, Make& make) {
        errors_ = errors_ || level == Level::error;
        FileMessages& file = files_[file_of_[place.inclusion]];
        if (!wanted(file, level, place)) {
            return;
        }
        Words words = make();
        keep(file, Diagnostic{level, std::move(words.message), std::move(words.expected),
                              std::move(words.suggestion), place});
    }
    static bool wanted(FileMessages& file, Level level, SourceRef place);
    void keep(FileMessages& file, Diagnostic diagnostic) const;
    static void cut(FileMessages& file, std::size_t most);

    std::size_t most_;
    std::size_t comparisons_left_ = 4'000'000;
    bool errors_ = false;
    std::vector<FileMessages> files_ = {};
    std::vector<std::uint32_t> file_of_ = {};
};

}  // namespace loopwright
