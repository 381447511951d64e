#include <loopwright/rules/combinations.h>

#include <algorithm>

namespace loopwright {

void Combinations::note(std::uint32_t combination, bool shares) {
    if (combination >= marks_.size()) marks_.resize(combination + 1, Mark::not_asked);
    marks_[combination] = std::max(marks_[combination], shares ? Mark::shares : Mark::asked);
}

void Combinations::forget_shares() {
    std::replace(marks_.begin(), marks_.end(), Mark::shares, Mark::asked);
}

bool Combinations::all_share() const {
    return std::find(marks_.begin(), marks_.end(), Mark::asked) == marks_.end();
}

/// Goes from the last valve, whose position counts slowest, to the first.
class Combinations::Tree {
  public:
    Tree(std::span<const Index> sizes, const std::function<void(std::span<const Setting>)>& tell,
         bool in_full)
        : sizes_(sizes), tell_(tell), in_full_(in_full) {}

    /// `marks`: of all combinations of the first `valves` valves.
    void branch(std::span<const Mark> marks, std::size_t valves) {
        if (std::find(marks.begin(), marks.end(), Mark::shares) == marks.end()) return;
        if (in_full_ ? valves == 0
                     : std::find(marks.begin(), marks.end(), Mark::asked) == marks.end()) {
            const std::vector<Setting> in_order(settings_.rbegin(), settings_.rend());
            tell_(in_order);
            return;
        }
        const auto valve = static_cast<Index>(valves - 1);
        const std::size_t size = marks.size() / sizes_[valve];
        if (std::vector<Mark> merged; !in_full_ && merge(marks, size, merged)) {
            branch(merged, valve);
            return;
        }
        for (Index position = 0; position < sizes_[valve]; ++position) {
            settings_.push_back({valve, position});
            branch(marks.subspan(position * size, size), valve);
            settings_.pop_back();
        }
    }

  private:
    /// One for all positions of a valve; false where something hangs on it.
    static bool merge(std::span<const Mark> marks, std::size_t size, std::vector<Mark>& merged) {
        merged.assign(marks.begin(), marks.begin() + static_cast<std::ptrdiff_t>(size));
        for (std::size_t i = size; i < marks.size(); ++i) {
            Mark& mark = merged[i % size];
            if (mark == Mark::not_asked)
                mark = marks[i];
            else if (marks[i] != Mark::not_asked && marks[i] != mark)
                return false;
        }
        return true;
    }

    std::span<const Index> sizes_;
    const std::function<void(std::span<const Setting>)>& tell_;
    const bool in_full_;
    std::vector<Setting> settings_;
};

void Combinations::for_each_sharing(
    std::span<const Index> sizes, std::span<const std::uint32_t> judging,
    const std::function<void(std::span<const Setting>)>& tell) const {
    std::size_t count = 1;
    for (const Index size : sizes) count *= size;
    std::vector<Mark> all = marks_;
    all.resize(count, Mark::not_asked);
    for (std::size_t c = 0; c < judging.size(); ++c) all[c] = all[judging[c]];
    Tree(sizes, tell, count <= told_in_full).branch(all, sizes.size());
}

}  // namespace loopwright
