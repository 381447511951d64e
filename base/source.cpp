#include <loopwright/base/source.h>

#include <algorithm>
#include <cstring>
#include <limits>
#include <stdexcept>

#include <fmt/core.h>

#include <loopwright/base/utf8.h>

namespace loopwright {
namespace {

constexpr std::uint32_t mark_distance = 1024;
constexpr std::size_t quoted_characters = 100;
constexpr std::size_t shown_before_span = 40;

bool is_ascii(std::string_view text) {
    std::size_t i = 0;
    for (; i + sizeof(std::uint64_t) <= text.size(); i += sizeof(std::uint64_t)) {
        std::uint64_t word = 0;
        std::memcpy(&word, text.data() + i, sizeof word);
        if ((word & 0x8080808080808080ULL) != 0) {
            return false;
        }
    }
    return std::all_of(text.begin() + static_cast<std::ptrdiff_t>(i), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x80U; });
}

std::string_view without_mark(std::string_view line) {
    return line.starts_with(utf8::byte_order_mark) ? line.substr(utf8::byte_order_mark.size())
                                                   : line;
}

// Still one character for each column.
std::string harmless(std::string_view line) {
    std::string text;
    while (!line.empty()) {
        const utf8::Character one = utf8::first(line);
        if (one.code == '\t') {
            text += ' ';
        } else if (!one.valid || utf8::is_control(one.code)) {
            text += "\xEF\xBF\xBD";  // U+FFFD
        } else {
            text += line.substr(0, one.length);
        }
        line.remove_prefix(one.length);
    }
    return text;
}

// Where the character of that number begins, counted from 0, in the line from `start` to `stop`.
std::uint32_t offset_of(const SourceFile& file, std::uint32_t start, std::uint32_t stop,
                        std::size_t character) {
    while (start < stop) {
        const std::uint32_t middle = start + (stop - start) / 2;
        if (file.place({middle, middle}).column <= character) {
            start = middle + 1;
        } else {
            stop = middle;
        }
    }
    return start;
}

}  // namespace

SourceFile::SourceFile(std::string name, std::string text, std::string path)
    : name_(std::move(name)), text_(std::move(text)), path_(std::move(path)) {
    if (text_.size() > std::numeric_limits<std::uint32_t>::max()) {
        throw std::logic_error("a source file of 4 GiB or more");
    }
}

const SourceFile::Lines& SourceFile::lines() const {
    std::call_once(lines_.found, [this] {
        lines_.starts = find_line_starts(text_);
        if (!is_ascii(text_)) {
            lines_.marks = count_characters(text_);
        }
    });
    return lines_;
}

std::vector<std::uint32_t> SourceFile::find_line_starts(const std::string& text) {
    std::vector<std::uint32_t> starts{0};
    const char* const begin = text.data();
    const char* const end = begin + text.size();
    const auto find = [end](const char* from, char c) {
        const void* const found = std::memchr(from, c, static_cast<std::size_t>(end - from));
        return found == nullptr ? end : static_cast<const char*>(found);
    };
    const char* cr = find(begin, '\r');
    for (const char* at = begin; at != end;) {
        const char* const lf = find(at, '\n');
        for (; cr < lf; cr = find(cr + 1, '\r')) {
            if (cr + 1 != lf) {
                starts.push_back(static_cast<std::uint32_t>(cr + 1 - begin));
            } else if (lf == end) {  // the file's last byte
                starts.push_back(static_cast<std::uint32_t>(text.size()));
            }
        }
        if (lf == end) {
            break;
        }
        at = lf + 1;
        starts.push_back(static_cast<std::uint32_t>(at - begin));
    }
    return starts;
}

std::vector<SourceFile::Mark> SourceFile::count_characters(std::string_view text) {
    std::vector<Mark> marks;
    std::uint32_t characters = 0;
    std::uint32_t next_mark = 0;
    for (std::size_t at = 0; at < text.size(); ++characters) {
        if (at >= next_mark) {
            marks.push_back({static_cast<std::uint32_t>(at), characters});
            next_mark = static_cast<std::uint32_t>(at) + mark_distance;
        }
        const auto byte = static_cast<unsigned char>(text[at]);
        at += byte < 0x80U ? 1 : utf8::first(text.substr(at)).length;
    }
    return marks;
}

std::uint32_t SourceFile::line_index(std::uint32_t offset) const {
    const std::vector<std::uint32_t>& starts = lines().starts;
    const auto behind = std::upper_bound(starts.begin(), starts.end(), offset);
    return static_cast<std::uint32_t>(behind - starts.begin()) - 1;
}

std::uint32_t SourceFile::characters_before(std::uint32_t offset) const {
    const std::vector<Mark>& marks = lines().marks;
    if (marks.empty()) {
        return offset;
    }
    const auto behind =
        std::upper_bound(marks.begin(), marks.end(), offset,
                         [](std::uint32_t value, const Mark& mark) { return value < mark.offset; });
    const Mark& mark = *(behind - 1);
    std::uint32_t characters = mark.characters;
    const std::string_view all = text_;
    for (std::size_t at = mark.offset; at < offset;) {
        at += utf8::first(all.substr(at)).length;
        // An offset inside a character counts as that character's own.
        characters += at <= offset ? 1 : 0;
    }
    return characters;
}

std::uint32_t SourceFile::column(std::uint32_t offset) const {
    std::uint32_t start = lines().starts[line_index(offset)];
    if (start == 0 && text().starts_with(utf8::byte_order_mark)) {
        start = static_cast<std::uint32_t>(utf8::byte_order_mark.size());
        offset = std::max(offset, start);
    }
    return characters_before(offset) - characters_before(start) + 1;
}

Place SourceFile::place(Span span) const {
    const auto size = static_cast<std::uint32_t>(text_.size());
    const std::uint32_t begin = std::min(span.begin, size);
    const std::uint32_t end = std::clamp(span.end, begin, size);
    Place place;
    place.file = name_;
    place.line = line_index(begin) + 1;
    place.column = column(begin);
    place.end_line = line_index(end) + 1;
    place.end_column = column(end);
    return place;
}

std::string_view SourceFile::line_at(std::uint32_t offset) const {
    const std::uint32_t index =
        line_index(std::min(offset, static_cast<std::uint32_t>(text_.size())));
    const std::vector<std::uint32_t>& starts = lines().starts;
    const std::uint32_t begin = starts[index];
    const std::size_t end = index + 1 < starts.size() ? starts[index + 1] : text_.size();
    std::string_view line = text().substr(begin, end - begin);
    if (line.ends_with('\n')) {
        line.remove_suffix(1);
    }
    if (line.ends_with('\r')) {
        line.remove_suffix(1);
    }
    return line;
}

std::uint32_t SourceSet::add_file(std::string name, std::string text, std::string path) {
    files_.emplace_back(std::move(name), std::move(text), std::move(path));
    return static_cast<std::uint32_t>(files_.size() - 1);
}

std::uint32_t SourceSet::add_inclusion(std::uint32_t file) {
    inclusions_.push_back({file, true, {}});
    return static_cast<std::uint32_t>(inclusions_.size() - 1);
}

std::uint32_t SourceSet::add_inclusion(std::uint32_t file, SourceRef use) {
    inclusions_.push_back({file, false, use});
    return static_cast<std::uint32_t>(inclusions_.size() - 1);
}

const SourceFile& SourceSet::file_of(SourceRef ref) const { return files_.at(file_index(ref)); }

std::optional<SourceRef> SourceSet::use_of(SourceRef ref) const {
    const Inclusion& inclusion = inclusions_.at(ref.inclusion);
    return inclusion.outermost ? std::nullopt : std::optional(inclusion.use);
}

Place SourceSet::place(SourceRef ref) const {
    Place place = file_of(ref).place(ref.span);
    for (std::optional<SourceRef> use = use_of(ref); use; use = use_of(*use))
        place.within.push_back(file_of(*use).place(use->span));
    return place;
}

// A line may be as long as the file and be quoted for each of its mistakes: only the part that is
// shown is looked at.
std::string SourceSet::quote(SourceRef ref) const {
    const SourceFile& file = file_of(ref);
    const Place place = file.place(ref.span);
    std::string_view line = without_mark(file.line_at(ref.span.begin));
    const auto start = static_cast<std::uint32_t>(line.data() - file.text().data());
    const auto stop = start + static_cast<std::uint32_t>(line.size());
    const std::size_t size = file.place({stop, stop}).column - 1;
    std::size_t begin = std::min<std::size_t>(place.column - 1, size);
    std::size_t end = place.end_line == place.line ? place.end_column - 1 : size;
    end = std::clamp(end, begin, size);
    std::size_t cut = 0;
    std::size_t last = size;
    if (size > quoted_characters) {
        cut = begin > shown_before_span ? begin - shown_before_span : 0;
        last = std::min(size, cut + quoted_characters);
        end = std::min(end, last);
        const std::uint32_t first = offset_of(file, start, stop, cut);
        line = file.text().substr(first, offset_of(file, start, stop, last) - first);
    }
    std::string text = harmless(line);
    begin -= cut;
    end -= cut;
    if (cut > 0) {
        text.insert(0, "...");
        begin += 3;
        end += 3;
    }
    if (last < size) {
        text += "...";
    }
    const std::string number = fmt::format("{:>6}", place.line);
    return fmt::format("{} | {}\n{} | {}^{}", number, text, std::string(number.size(), ' '),
                       std::string(begin, ' '),
                       std::string(end > begin ? end - begin - 1 : 0, '~'));
}

}  // namespace loopwright
