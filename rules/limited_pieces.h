#pragma once

#include <optional>
#include <vector>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/rules/ratings.h>

/// The sides and charge lines of the loops as what relief valves on them limit.
namespace loopwright {

/// What hangs together over ways open both ways, whichever side is high, and holds a main side, a
/// section, or the charge line of a pump that feeds a loop.
struct LimitedPiece {
    bool on_main_side = false;
    std::optional<double> least = {};      ///< rating, Pa; nothing where none is given
    Rated weakest = {};                    ///< that has it; without its places
    RatedPlace place = {};                 ///< of the weakest, in the piece
    std::vector<Rated> unrated = {};       ///< those whose rating is not given
    std::optional<double> working = {};    ///< highest pressure that a pump of its loops works at
    Index working_pump = none;             ///< that says so
    std::vector<Index> silent_pumps = {};  ///< that do not say
};

class LimitedPieces {
  public:
    explicit LimitedPieces(const Situation& s);

    /// The piece that a node is on; null: none.
    LimitedPiece* at(Index node);
    /// Whether two nodes hang together over such ways, or are on one side.
    bool together(Index a, Index b) { return sets_.find(a) == sets_.find(b); }
    /// Fills in what is rated for what.
    void find_ratings();
    /// Adds the way inside a piece; false where there is none.
    bool add_way(Index from, Index to, std::vector<FlowArc>& way);

  private:
    SearchPool::Lease charge_line();
    LimitedPiece& make(Index node);
    void add_side(const JudgedSide& side);
    void add_rated(const Rated& rated, const RatedPlace& place, LimitedPiece& piece) const;

    const Situation& s_;
    DisjointSets sets_;         // of nodes
    std::vector<Index> slots_;  // by leader, into all_
    std::vector<LimitedPiece> all_;
};

}  // namespace loopwright
