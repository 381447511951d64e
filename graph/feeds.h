#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/graph/loops.h>
#include <loopwright/graph/search.h>

/// Where charge oil comes from and gets to, in one situation.
///
/// Vented      open to a reservoir by a way that holds no pressure
/// Pressureless  the same, to a reservoir that is vented itself
/// Source      a pump outside every loop that is turned, draws from a reservoir and delivers; a
///             reservoir under pressure, an accumulator (a store), whose oil gets into a loop
/// Feed        from the sources by everything but leakage, pressure-opened and displacement
/// Charge line what the sources reach by joined, element and hand-valve passages
namespace loopwright {

/// How the prime movers turn in a situation.
struct Turning {
    Direction direction = Direction::none;
    /// For each drive whether it stands still, as one of variable speed does in neutral that drives
    /// a loop's pump; empty: none does.
    std::span<const std::uint8_t> still = {};
    bool signal = true;  ///< without one, springs take the stroke of two-way pumps to zero; those
                         ///< of a loop run down

    bool turns(const Drives& drives, Index component) const {
        const Index drive = drives.of(component);
        return drive != none && drives[drive].turned && (still.empty() || still[drive] == 0);
    }
    /// Whether it turns the way that its flow is stated for.
    bool turns_ahead(const Drives& drives, Index component) const {
        return turns(drives, component) &&
               (direction != Direction::reverse || !drives.at(component).reversing);
    }
};

struct ChargeSource {
    Index edge = none;    ///< the pump's displacement passage; none: a store
    Index outlet = none;  ///< node
    /// False: its outlet stands on a side, so there is no charge line; nor is what is joined to a
    /// store one if no check leads from there into a loop.
    bool has_line = false;
    Index store = none;   ///< component; none: a pump
    bool finite = false;  ///< an accumulator

    bool is_pump() const { return edge != none; }
};

/// A pump outside every loop whose oil would get into a loop if it were turned, could draw, and
/// nothing on the way were open to a reservoir.
struct ChargePump {
    Index edge = none;
    Index inlet = none;     ///< node
    Index outlet = none;    ///< node
    bool delivers = false;  ///< turned, and the right way round
    Range loops = {};       ///< into Feeds::loops_would_feed
    Range fed = {};         ///< into Feeds::loops_fed
};

/// A reservoir under pressure or an accumulator whose oil would get into a loop if nothing on the
/// way were open to a reservoir.
struct ChargeStore {
    Index component = none;
    Index node = none;
    bool finite = false;  ///< an accumulator
    Range loops = {};     ///< into Feeds::loops_would_feed
};

struct Feeds {
    Search to_tank = {};                    ///< against the oil: ways that hold no pressure
    std::vector<std::uint8_t> vented = {};  ///< for each node (reservoirs are)
    /// For each node, vented reservoirs included. Empty: all that is vented is so.
    std::vector<std::uint8_t> told_apart = {};
    Search from_tank = {};  ///< what the reservoirs feed by themselves
    std::vector<ChargeSource> sources = {};
    Search fed = {};           ///< from all sources
    Search from_lasting = {};  ///< from those that are not finite; only where some are
    bool any_finite = false;
    bool any_idle_store = false;  ///< some store is no source
    Search line_fed = {};         ///< from the sources with a charge line
    Search checked = {};  ///< behind a check and, from there on, only open ways; see feeds.cpp
    Search line = {};     ///< the charge line

    std::vector<ChargePump> pumps = {};        ///< those of which `loops` is not empty
    std::vector<ChargeStore> stores = {};      ///< the same
    std::vector<Index> loops_would_feed = {};  ///< into LoopSet::loops
    std::vector<Index> loops_fed = {};         ///< the same

    /// For each node; a feed comes to none of these.
    const std::vector<std::uint8_t>& pressureless() const {
        return told_apart.empty() ? vented : told_apart;
    }
    const Search& lasting() const { return any_finite ? from_lasting : fed; }

    template <typename Giver>
    std::span<const Index> would_feed(const Giver& giver) const {
        return {loops_would_feed.data() + giver.loops.begin, giver.loops.size()};
    }
    /// The loops that it feeds as all stands.
    std::span<const Index> feeds(const ChargePump& pump) const {
        return {loops_fed.data() + pump.fed.begin, pump.fed.size()};
    }

    /// The walk of a make-up path: source, charge line, check, node. Only where checked reached it.
    void add_make_up_path(const Region& region, Index node, std::vector<FlowArc>& path) const;
};

/// True where the arc may hand a feed on from `node` to the arc's end, other limits apart.
class FeedRule {
  public:
    /// `pressureless` for each node: no feed comes there.
    FeedRule(const Region& region, const Standing& standing, const LoopSet& loops,
             std::span<const std::uint8_t> pressureless,
             std::span<const std::uint8_t> open_part_ways)
        : region_(region),
          standing_(standing),
          loops_(loops),
          pressureless_(pressureless),
          open_part_ways_(open_part_ways) {}

    bool operator()(Index node, const FlowArc& arc) const;

    /// The same, but what comes to a side ends there.
    FeedRule up_to_sides() const {
        FeedRule rule = *this;
        rule.up_to_sides_ = true;
        return rule;
    }

  private:
    const Region& region_;
    const Standing& standing_;
    const LoopSet& loops_;
    std::span<const std::uint8_t> pressureless_;
    std::span<const std::uint8_t> open_part_ways_;
    bool up_to_sides_ = false;
};

/// For each edge the senses in which an open part's actuator lets a feed through: where a
/// pressure-opened passage leads from the same node to the same node. `looped[e]`: the passage of
/// a machine that is in a loop in some state.
void find_open_part_ways(const Region& region, std::span<const std::uint8_t> looped,
                         std::vector<std::uint8_t>& ways);

/// Adds the loops that have a main side among what a search reached, each once; gives their places.
Range add_loops(const LoopSet& loops, const Search& search, std::vector<Index>& found);

/// Nodes that open to a reservoir both ways through nothing that holds pressure.
void find_at_tank(const FlowGraph& graph, const Region& region, const Standing& standing,
                  SearchPool& searches, std::vector<std::uint8_t>& at_tank);

/// Works out all of `feeds` anew, in the memory that it has.
void find_feeds(const FlowGraph& graph, const Region& region, const Standing& standing,
                const LoopSet& loops, std::span<const std::uint8_t> looped,
                std::span<const std::uint8_t> open_part_ways, const Turning& turning,
                SearchPool& searches, Feeds& feeds);

/// Whether feeds found in one standing are those of another, to the last witness: none of their
/// searches came to an edge that it passes in the one and not in the other. `changed` holds all
/// edges that may stand differently; all else (loops, sources) must be the same.
bool hold_with(const Feeds& feeds, const Region& region, const LoopSet& loops,
               std::span<const std::uint8_t> open_part_ways, std::span<const Index> changed,
               const Standing& before, const Standing& now);

/// One step of a make-up path behind its check: an open way that meters nothing.
bool open_way(const Edge& edge);

/// Continues `checked` from `fed`: seeds every node behind a check that a fed node feeds, then
/// goes on over open ways and further checks.
void find_checked(const FlowGraph& graph, const Region& region, const Search& fed,
                  const FeedRule& feeds, Search& checked);

}  // namespace loopwright
