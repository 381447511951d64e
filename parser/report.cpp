#include <loopwright/parser/report.h>

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include <fmt/core.h>

namespace loopwright {
namespace {

bool before(const Diagnostic& a, const Diagnostic& b) {
    const auto key = [](const Diagnostic& d) {
        return std::tuple(d.place.span.begin, d.place.span.end, d.place.inclusion);
    };
    return key(a) < key(b);
}

std::uint64_t key_of(SourceRef place) {
    return (std::uint64_t{place.span.begin} << 32) | place.span.end;
}

bool equal_without_case(std::string_view a, std::string_view b) {
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&lower](char x, char y) { return lower(x) == lower(y); });
}

}  // namespace

std::string_view nearest_word(std::string_view text, const std::vector<std::string_view>& known) {
    if (text.size() > 64) {
        return {};
    }
    const auto same = std::find_if(known.begin(), known.end(), [text](std::string_view word) {
        return equal_without_case(word, text);
    });
    return same != known.end() ? *same : nearest_name(text, known);
}

void Report::add_inclusion(std::uint32_t file) {
    if (file == files_.size()) {
        files_.emplace_back();
        files_.back().first_inclusion = static_cast<std::uint32_t>(file_of_.size());
    }
    file_of_.push_back(file);
}

bool Report::may_compare(std::size_t names) {
    if (names > comparisons_left_) {
        return false;
    }
    comparisons_left_ -= names;
    return true;
}

bool Report::wanted(FileMessages& file, Level level, SourceRef place) {
    const bool first_use = place.inclusion == file.first_inclusion;
    if (!first_use && file.spans.count(key_of(place)) != 0) {
        return false;
    }
    if (!file.full || place.span.begin < file.bound) {
        return true;
    }
    // What a later use repeats may be among those counted.
    if (first_use) {
        ++file.counted;
        file.worst_counted = std::max(file.worst_counted, level);
    }
    return false;
}

void Report::keep(FileMessages& file, Diagnostic diagnostic) const {
    file.spans.insert(key_of(diagnostic.place));
    file.kept.push_back(std::move(diagnostic));
    if (file.kept.size() >= 2 * most_ + 2) {
        cut(file, most_);
    }
}

void Report::cut(FileMessages& file, std::size_t most) {
    std::stable_sort(file.kept.begin(), file.kept.end(), before);
    if (file.kept.size() <= most) {
        return;
    }
    file.full = true;
    for (std::size_t i = most; i < file.kept.size(); ++i) {
        file.worst_counted = std::max(file.worst_counted, file.kept[i].level);
    }
    file.counted += file.kept.size() - most;
    file.kept.erase(file.kept.begin() + static_cast<std::ptrdiff_t>(most), file.kept.end());
    file.bound = file.kept.empty() ? 0 : file.kept.back().place.span.begin;
}

Diagnostics Report::finish() {
    Diagnostics all;
    for (FileMessages& file : files_) {
        cut(file, most_);
        const SourceRef last = file.kept.empty() ? SourceRef{} : file.kept.back().place;
        std::move(file.kept.begin(), file.kept.end(), std::back_inserter(all));
        if (file.counted > 0) {
            all.push_back({file.worst_counted,
                           fmt::format("{} more {} in this file", file.counted,
                                       file.counted == 1 ? "message" : "messages"),
                           "the messages above put right first",
                           {},
                           last});
        }
    }
    return all;
}

}  // namespace loopwright
