#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include <loopwright/graph/feeds.h>
#include <loopwright/graph/situation.h>
#include <loopwright/rules/docket.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

/// A situation with some passages changed, and what hangs on them worked out anew.
class Tampered {
  public:
    /// `change` is given each edge and how it stands.
    template <typename Change>
    Tampered(const Situation& s, Change change)
        : edges_(s.region.edges.begin(), s.region.edges.end()),
          region_(s.region),
          standing_(s.standing) {
        for (std::size_t e = 0; e < edges_.size(); ++e) change(edges_[e], standing_[e]);
        region_.edges = edges_;
        find_feeds(s.graph, region_, standing_, s.loops, s.looped, s.open_part_ways, s.turning,
                   s.searches, feeds_);
    }

    void judge(const Situation& s, std::string_view rule, Docket& docket) const {
        judge(s, rule, docket, [](StateSet states) { return states; });
    }

    /// `states_of` says for which states those of the situation are taken.
    template <typename StatesOf>
    void judge(const Situation& s, std::string_view rule, Docket& docket,
               StatesOf states_of) const {
        std::vector<StateSet> loop_states(s.loop_states.begin(), s.loop_states.end());
        std::vector<JudgedSide> sides(s.sides.begin(), s.sides.end());
        for (StateSet& states : loop_states) states = states_of(states);
        for (JudgedSide& side : sides) side.states = states_of(side.states);
        const Situation changed{.graph = s.graph,
                                .region = region_,
                                .loops = s.loops,
                                .states = states_of(s.states),
                                .combination = s.combination,
                                .judging = s.judging,
                                .valves = s.valves,
                                .positions = s.positions,
                                .undecided = s.undecided,
                                .turning = s.turning,
                                .highs = s.highs,
                                .loop_states = loop_states,
                                .judged_pump = s.judged_pump,
                                .resting = s.resting,
                                .standing = standing_,
                                .sides = sides,
                                .feeds = feeds_,
                                .searches = s.searches,
                                .looped = s.looped,
                                .open_part_ways = s.open_part_ways};
        find_rule(rule)->judge(changed, docket);
    }

  private:
    std::vector<Edge> edges_;
    Region region_;
    Standing standing_;
    Feeds feeds_;
};

}  // namespace loopwright
