#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright {

/// A piece of a file's text: byte offsets, end excluded.
struct Span {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
};

/// Where something stands: a span of one of the files of a `SourceSet`, seen through the `use`
/// elements that brought the file in. Two words wide, so that everything can carry one.
struct SourceRef {
    std::uint32_t inclusion = 0;  ///< index of the inclusion in its SourceSet; 0: outermost file
    Span span = {};
};

/// A place as people and editors count it: lines and columns from 1, columns in Unicode
/// characters, the end behind the last character. A line ends with LF, CR LF or a CR alone (XML
/// 1.0, section 2.11); a byte order mark takes no column.
struct Place {
    std::string file = {};
    std::uint32_t line = 1;
    std::uint32_t column = 1;
    std::uint32_t end_line = 1;
    std::uint32_t end_column = 1;
    std::vector<Place> within = {};  ///< the `use` elements, innermost first
};

/// One file's bytes, kept as read, and where its lines start.
class SourceFile {
  public:
    /// `name` is the file as the user gave it; `text` may hold anything (bad UTF-8 counts one
    /// column a byte); `path` is where it was read from, links resolved, empty for what comes from
    /// no file.
    SourceFile(std::string name, std::string text, std::string path = {});

    const std::string& name() const { return name_; }
    const std::string& path() const { return path_; }
    std::string_view text() const { return text_; }
    /// The same, with the NUL behind it that a string has.
    const std::string& text_string() const { return text_; }

    /// Line and columns of a span. Offsets behind the end are taken as the end.
    Place place(Span span) const;

    /// The whole line (without its end) that holds `offset`.
    std::string_view line_at(std::uint32_t offset) const;

  private:
    /// How many characters stand before a byte, noted here and there so that counting is short
    /// even in a file of a single line.
    struct Mark {
        std::uint32_t offset = 0;
        std::uint32_t characters = 0;
    };
    static std::vector<std::uint32_t> find_line_starts(const std::string& text);
    static std::vector<Mark> count_characters(std::string_view text);
    /// Found when a place is first asked for: a circuit without a finding never asks.
    struct Lines {
        std::once_flag found = {};
        std::vector<std::uint32_t> starts = {};
        std::vector<Mark> marks = {};  ///< empty where every character is one byte
    };

    std::uint32_t line_index(std::uint32_t offset) const;
    std::uint32_t column(std::uint32_t offset) const;
    std::uint32_t characters_before(std::uint32_t offset) const;
    const Lines& lines() const;

    std::string name_;
    std::string text_;
    std::string path_;
    mutable Lines lines_;
};

/// All files of one circuit, and through which `use` each was reached. The same file used twice
/// is one SourceFile with two inclusions.
class SourceSet {
  public:
    std::uint32_t add_file(std::string name, std::string text, std::string path = {});
    /// `use` is where the `use` element stands; the outermost file has none (inclusion 0).
    std::uint32_t add_inclusion(std::uint32_t file);
    std::uint32_t add_inclusion(std::uint32_t file, SourceRef use);

    std::size_t file_count() const { return files_.size(); }
    const SourceFile& file(std::uint32_t index) const { return files_.at(index); }
    const SourceFile& file_of(SourceRef ref) const;
    std::uint32_t file_index(SourceRef ref) const { return inclusions_.at(ref.inclusion).file; }
    /// Where the `use` element stands that brought a place's file in; nothing in the outermost.
    std::optional<SourceRef> use_of(SourceRef ref) const;

    Place place(SourceRef ref) const;

    /// The quoted source line with the span underlined, two lines with a gutter,
    /// without a line end behind the second:
    ///     12 |   <check-valve id="C1" opening="x"/>
    ///        |                        ^~~~~~~
    /// Without a line feed at the end. Of a long line a part round the span is shown; what could
    /// steer a terminal is replaced, each character by one.
    std::string quote(SourceRef ref) const;
    /// Whether the place's file holds anything.
    bool has_text(SourceRef ref) const { return !file_of(ref).text().empty(); }

  private:
    struct Inclusion {
        std::uint32_t file = 0;
        bool outermost = true;
        SourceRef use = {};
    };
    std::deque<SourceFile> files_;  // texts stay where they are while files are added
    std::vector<Inclusion> inclusions_;
};

/// The known name that `text` most likely means, or empty if none is close (Levenshtein distance
/// with transpositions, at most a third of the length).
std::string_view nearest_name(std::string_view text, const std::vector<std::string_view>& known);

}  // namespace loopwright
