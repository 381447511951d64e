#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include <loopwright/base/finding.h>

namespace loopwright {

/// In which combinations of valve positions something was asked in one state, and in which of them
/// its outcome is the deciding one. A combination is a number: the position of the first valve
/// counts fastest (ValveBoard).
class Combinations {
  public:
    void note(std::uint32_t combination, bool shares);
    /// Another outcome decides from now on.
    void forget_shares();

    bool all_share() const;

    static constexpr std::size_t told_in_full = 256;

    /// Where one valve stands: its number, and the number of its position.
    struct Setting {
        Index valve = 0;
        Index position = 0;
    };
    /// Tells those that share, each with the positions of all valves in their order. Where a region
    /// has more than `told_in_full`, tells them in as few sets as a decision tree gives, each with
    /// the positions on which it hangs. `sizes`: how many positions each valve has.
    /// `judging`: the combination that each is judged by; empty: itself.
    void for_each_sharing(std::span<const Index> sizes, std::span<const std::uint32_t> judging,
                          const std::function<void(std::span<const Setting>)>& tell) const;

  private:
    /// Of one combination; beyond the end nothing was asked.
    enum class Mark : std::uint8_t { not_asked, asked, shares };
    class Tree;

    std::vector<Mark> marks_ = {};
};

}  // namespace loopwright
