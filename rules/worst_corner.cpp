// Worlds that nothing joins ("islands") have tolerances of their own: a run moves one set of data
// in each of them, and a verdict counts with what is moved on its own island.
#include <loopwright/rules/worst_corner.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <tuple>

#include <loopwright/base/unit_text.h>
#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/rules/causes.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/tolerances.h>

namespace loopwright {

namespace {

constexpr std::size_t most_to_go_through = 4;  // tolerances of an island with all their corners

using Judge = CheckResult (*)(const Circuit&, std::span<const Rule* const>, const Thresholds&);
using Key = std::tuple<const RuleInfo*, ElementType, Index>;

Key key_of(const Verdict& verdict) {
    return {verdict.rule, verdict.subject.type, verdict.subject.index};
}

/// How bad a verdict is.
struct Worth {
    int rank = 0;
    double off = 0.0;  ///< the lacking margin, as a share of what is required

    bool worse_than(const Worth& other) const {
        constexpr double rounding = 1e-6;
        return rank != other.rank ? rank > other.rank : off > other.off + rounding;
    }
};

Worth worth_of(const Verdict& verdict) {
    Worth worth{.rank = static_cast<int>(verdict.outcome) * 4};
    if (verdict.outcome == Outcome::fail) worth.rank += static_cast<int>(verdict.level);
    const Figures* const figures = verdict.figures;
    if (figures == nullptr || !figures->margin) return worth;
    double scale = figures->required ? std::abs(figures->required->si) : 0.0;
    if (scale == 0.0) scale = std::abs(figures->measured.si);
    if (scale > 0.0) worth.off = -figures->margin->si / scale;
    return worth;
}

/// A component that stands for its subject's island; none: the circuit's.
Index component_of(const Circuit& circuit, const Subject& subject) {
    switch (subject.type) {
        case ElementType::component:
        case ElementType::loop:
            return subject.index;
        case ElementType::side:
        case ElementType::port:
            return circuit.ports[subject.index].component;
        case ElementType::line: {
            const auto ports = circuit.ports_of(circuit.lines[subject.index]);
            return ports.empty() ? none : circuit.ports[ports.front()].component;
        }
        default:
            return none;
    }
}

/// Which tolerances concern which verdicts.
class Islands {
  public:
    Islands(const Circuit& circuit, std::span<const Toleranced> tolerances)
        : circuit_(circuit), sets_(circuit.components.size()) {
        for (const Line& line : circuit.lines) {
            const auto ports = circuit.ports_of(line);
            for (const Index port : ports)
                sets_.join(circuit.ports[ports.front()].component, circuit.ports[port].component);
        }
        for (const Shaft& shaft : circuit.shafts) {
            const auto parts = circuit.components_of(shaft);
            for (const Index part : parts) sets_.join(parts.front(), part);
        }
        for (std::size_t i = 0; i < tolerances.size(); ++i) {
            everywhere_.push_back(i);
            on_[sets_.find(tolerances[i].component)].push_back(i);
        }
    }

    /// The tolerances that a subject hangs on.
    const std::vector<std::size_t>& of(const Subject& subject) {
        const Index component = component_of(circuit_, subject);
        if (component == none) return everywhere_;
        const auto island = on_.find(sets_.find(component));
        return island == on_.end() ? everywhere_ : island->second;
    }
    const std::map<Index, std::vector<std::size_t>>& all() const { return on_; }

  private:
    const Circuit& circuit_;
    DisjointSets sets_;
    std::map<Index, std::vector<std::size_t>> on_;
    std::vector<std::size_t> everywhere_;
};

class WorstCorner {
  public:
    WorstCorner(const Circuit& circuit, std::span<const Rule* const> rules,
                const Thresholds& thresholds, Judge judge)
        : circuit_(circuit),
          rules_(rules),
          thresholds_(thresholds),
          judge_(judge),
          tolerances_(tolerances_of(circuit)),
          islands_(circuit, tolerances_),
          result_(judge(circuit, rules, thresholds)) {}

    CheckResult run() {
        for (std::size_t v = 0; v < result_.verdicts.size(); ++v) {
            const Worth worth = worth_of(result_.verdicts[v]);
            found_.emplace(key_of(result_.verdicts[v]),
                           Found{.verdict = v,
                                 .as_given = worth,
                                 .worst = worth,
                                 .ends = ends_of(result_.verdicts[v], worth)});
        }
        move_one_by_one();
        move_where_it_was_worse();
        go_through_all();
        return finish();
    }

  private:
    struct Ends {
        Worth lowest = {};
        Worth highest = {};
    };
    /// What is known of one rule and subject.
    struct Found {
        std::size_t verdict = 0;  ///< in the result
        Worth as_given = {};
        Worth worst = {};
        Corner corner = {};           ///< of the worst one; empty: as given
        std::vector<Ends> ends = {};  ///< by the tolerances that it hangs on
    };

    std::vector<Ends> ends_of(const Verdict& verdict, const Worth& worth) {
        return std::vector<Ends>(islands_.of(verdict.subject).size(), {worth, worth});
    }

    Corner as_given() const {
        Corner corner(tolerances_.size());
        return corner;
    }

    static std::ptrdiff_t moved_in(const Corner& corner) {
        return static_cast<std::ptrdiff_t>(corner.size()) -
               std::count(corner.begin(), corner.end(), 0);
    }

    void move_one_by_one() {
        std::size_t most = 0;
        for (const auto& [island, on] : islands_.all()) most = std::max(most, on.size());
        for (std::size_t round = 0; round < most; ++round)
            for (const int side : {-1, 1}) {
                Corner corner = as_given();
                for (const auto& [island, on] : islands_.all())
                    if (round < on.size()) corner[on[round]] = static_cast<std::int8_t>(side);
                judge_at(corner, true);
            }
    }

    /// All data at the ends that were worse for some verdict.
    void move_where_it_was_worse() {
        std::map<std::vector<std::size_t>, std::vector<Corner>> wanted;  // by the tolerances
        for (const auto& [key, found] : found_) {
            const auto& on = islands_.of(result_.verdicts[found.verdict].subject);
            const Corner corner = worse_ends(found, on);
            auto& corners = wanted[on];
            const bool is_new = std::find(corners.begin(), corners.end(), corner) == corners.end();
            if (is_new && moved_in(corner) > 1) corners.push_back(corner);  // one is known
        }
        // Those that move least come first, so that of equal ones they are told.
        for (auto& [on, corners] : wanted)
            std::stable_sort(corners.begin(), corners.end(), [](const Corner& a, const Corner& b) {
                return moved_in(a) > moved_in(b);
            });
        for (bool any = true; any;) {
            any = false;
            Corner corner = as_given();
            for (auto& [on, corners] : wanted) {
                const bool is_free = std::all_of(on.begin(), on.end(),
                                                 [&](std::size_t i) { return corner[i] == 0; });
                if (corners.empty() || !is_free) continue;
                for (const std::size_t i : on) corner[i] = corners.back()[i];
                corners.pop_back();
                any = true;
            }
            if (any) judge_at(corner, false);
        }
    }

    Corner worse_ends(const Found& found, const std::vector<std::size_t>& on) const {
        Corner corner = as_given();
        for (std::size_t i = 0; i < on.size(); ++i) {
            const auto& [lowest, highest] = found.ends[i];
            if (highest.worse_than(lowest))
                corner[on[i]] = 1;
            else if (lowest.worse_than(highest) || lowest.worse_than(found.as_given))
                corner[on[i]] = -1;
        }
        return corner;
    }

    void go_through_all() {
        std::size_t most = 0;
        for (const auto& [island, on] : islands_.all())
            if (on.size() <= most_to_go_through) most = std::max(most, on.size());
        if (most < 2) return;  // both ends of one are known
        for (unsigned round = 0; round < 1U << most; ++round) {
            Corner corner = as_given();
            for (const auto& [island, on] : islands_.all())
                if (on.size() <= most_to_go_through && round < 1U << on.size())
                    for (std::size_t i = 0; i < on.size(); ++i)
                        corner[on[i]] = (round >> i & 1U) != 0 ? 1 : -1;
            judge_at(corner, false);
        }
    }

    /// `alone`: one datum of each island is moved, and what comes of it is kept.
    void judge_at(const Corner& corner, bool alone) {
        CheckResult other = judge_(at_corner(circuit_, tolerances_, corner), rules_, thresholds_);
        result_.work += other.work;
        bool used = false;
        for (const Verdict& verdict : other.verdicts) {
            const Worth worth = worth_of(verdict);
            const Key key = key_of(verdict);
            auto at = found_.find(key);
            if (at == found_.end()) {
                // Nothing of the kind is there as given: what finds nothing is not told.
                if (verdict.outcome < Outcome::inconclusive) continue;
                at = add(key, verdict);
            }
            Found& found = at->second;
            if (alone) keep_ends(found, islands_.of(verdict.subject), corner, worth);
            if (!worth.worse_than(found.worst)) continue;
            found.worst = worth;
            found.corner = corner;
            result_.verdicts[found.verdict] = verdict;
            used = true;
        }
        // Verdicts are views of what their result keeps.
        if (used) result_.kept_beside.push_back(std::move(other.keep));
    }

    static void keep_ends(Found& found, const std::vector<std::size_t>& on, const Corner& corner,
                          const Worth& worth) {
        for (std::size_t i = 0; i < on.size(); ++i) {
            if (corner[on[i]] < 0) found.ends[i].lowest = worth;
            if (corner[on[i]] > 0) found.ends[i].highest = worth;
        }
    }

    std::map<Key, Found>::iterator add(const Key& key, const Verdict& verdict) {
        const std::size_t at = result_.verdicts.size();
        result_.verdicts.push_back(verdict);
        const Worth nothing{.rank = -1};
        return found_
            .emplace(key, Found{.verdict = at,
                                .as_given = nothing,
                                .worst = nothing,
                                .ends = ends_of(verdict, nothing)})
            .first;
    }

    CheckResult finish() {
        for (const auto& [key, found] : found_)
            if (!found.corner.empty()) say_which(found);
        const auto order = [&](const Verdict& verdict) {
            return std::find_if(rules_.begin(), rules_.end(),
                                [&](const Rule* rule) { return &rule->info == verdict.rule; }) -
                   rules_.begin();
        };
        std::stable_sort(result_.verdicts.begin(), result_.verdicts.end(),
                         [&](const Verdict& a, const Verdict& b) { return order(a) < order(b); });
        for (Verdict& verdict : result_.verdicts) verdict.follows = nullptr;
        const FlowGraph graph(circuit_);
        note_causes(graph, result_.structure, result_.verdicts, *result_.keep);
        return std::move(result_);
    }

    void say_which(const Found& found) {
        Verdict& verdict = result_.verdicts[found.verdict];
        std::string corner;
        for (const std::size_t i : islands_.of(verdict.subject)) {
            if (found.corner[i] == 0) continue;
            const Toleranced& one = tolerances_[i];
            corner += corner.empty() ? "" : ", ";
            corner += circuit_.components[one.component].path;
            corner += '.';
            corner += one.spec->name;
            corner += ' ';
            corner += format_quantity(one.at(found.corner[i]), one.spec->dimension);
        }
        verdict.message =
            result_.keep->text(verdict.message, verdict.message.empty() ? "" : " ",
                               "(worst corner of the tolerances: ", std::string_view(corner), ")");
    }

    const Circuit& circuit_;
    std::span<const Rule* const> rules_;
    const Thresholds& thresholds_;
    Judge judge_;
    std::vector<Toleranced> tolerances_;
    Islands islands_;
    CheckResult result_;
    std::map<Key, Found> found_;
};

}  // namespace

CheckResult check_worst_corner(const Circuit& circuit, std::span<const Rule* const> rules,
                               const Thresholds& thresholds, Judge judge) {
    return WorstCorner(circuit, rules, thresholds, judge).run();
}

}  // namespace loopwright
