#include <algorithm>
#include <vector>

#include <loopwright/base/source.h>

namespace loopwright {
namespace {

/// Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours. Gives
/// `limit` + 1 as soon as it is clear that there are more.
std::size_t distance(std::string_view a, std::string_view b, std::size_t limit,
                     std::vector<std::size_t>& rows) {
    const std::size_t width = b.size() + 1;
    rows.assign(3 * width, 0);
    std::size_t* before = rows.data();
    std::size_t* last = before + width;
    std::size_t* row = last + width;
    for (std::size_t j = 0; j < width; ++j) {
        last[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        std::size_t least = i;
        for (std::size_t j = 1; j < width; ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], before[j - 2] + 1);
            }
            least = std::min(least, row[j]);
        }
        if (least > limit) {
            return limit + 1;
        }
        std::swap(before, last);
        std::swap(last, row);
    }
    return last[b.size()];
}

}  // namespace

std::string_view nearest_name(std::string_view text, const std::vector<std::string_view>& known) {
    std::string_view nearest;
    std::size_t limit = text.size() / 3;
    std::vector<std::size_t> rows;
    for (const std::string_view name : known) {
        const std::size_t difference =
            name.size() > text.size() ? name.size() - text.size() : text.size() - name.size();
        if (name.empty() || difference > limit) {
            continue;
        }
        const std::size_t found = distance(text, name, limit, rows);
        if (found <= limit) {
            nearest = name;
            if (found == 0) {
                break;
            }
            limit = found - 1;  // only a nearer one is taken, so the first of equals stays
        }
    }
    return nearest;
}

}  // namespace loopwright
