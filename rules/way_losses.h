#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/rules/at_work.h>

namespace loopwright {

/// The ways that oil takes at a duty point to the reservoirs or from them, and whether it is known
/// what it loses on them: lines by bore and length, elements by a drop at a flow and viscosity.
/// The network takes what is not known for nothing.
class WayLosses {
  public:
    explicit WayLosses(const AtWork& at);

    enum class Way : std::uint8_t { to_reservoir, from_reservoir };
    /// Data without which the loss between those ports and the reservoirs is not known, each once,
    /// as "L1.bore".
    std::vector<std::string_view> missing(std::span<const Index> ports, Way way, Docket& docket);

  private:
    struct Search;

    void over_line(Search& search, Index port, Index line) const;
    void over_passage(Search& search, Index port, Index passage) const;

    const AtWork& at_;
    std::vector<std::optional<double>> flow_of_line_;     // first port to second
    std::vector<std::optional<double>> flow_of_passage_;  // from to to
};

}  // namespace loopwright
