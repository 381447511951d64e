#include <loopwright/rules/causes.h>

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

namespace loopwright {

namespace {

/// Where a finding is: a region, and the loop there; `none`: in no one of them.
struct Spot {
    Index region = none;
    Index loop = none;  ///< into Structure::loops
};

class Places {
  public:
    Places(const FlowGraph& graph, const Structure& structure)
        : graph_(graph),
          loop_of_machine_(graph.circuit().components.size(), none),
          loop_of_side_(graph.circuit().ports.size(), none) {
        for (Index loop = 0; loop < structure.loops.size(); ++loop) {
            const LoopInfo& info = structure.loops[loop];
            for (const auto* machines : {&info.pumps, &info.actuators})
                for (const Index c : *machines)
                    if (loop_of_machine_[c] == none) loop_of_machine_[c] = loop;
            for (const SideInfo& side : info.sides)
                if (loop_of_side_[side.named_after] == none) loop_of_side_[side.named_after] = loop;
        }
    }

    Spot of(const Subject& subject) const {
        const Circuit& circuit = graph_.circuit();
        switch (subject.type) {
            case ElementType::loop:
            case ElementType::component:
                return {graph_.region_of(subject.index), loop_of_machine_[subject.index]};
            case ElementType::side:
                return {of_port(subject.index), loop_of_side_[subject.index]};
            case ElementType::port:
                return {of_port(subject.index), none};
            case ElementType::line:
                return {of_port(circuit.ports_of(circuit.lines[subject.index]).front()), none};
            case ElementType::circuit:
            case ElementType::shaft:
            case ElementType::waiver:
                break;
        }
        return {};
    }

  private:
    Index of_port(Index port) const {
        return graph_.region_of(graph_.circuit().ports[port].component);
    }

    const FlowGraph& graph_;
    std::vector<Index> loop_of_machine_;
    std::vector<Index> loop_of_side_;
};

/// First findings of a rule: anywhere, in a region, in a region on no one loop, on a loop.
struct FirstFindings {
    const Verdict* anywhere = nullptr;
    std::map<Index, const Verdict*> in_region = {};
    std::map<Index, const Verdict*> on_no_loop = {};
    std::map<Index, const Verdict*> on_loop = {};

    void add(const Verdict& verdict, const Spot& spot) {
        if (anywhere == nullptr) anywhere = &verdict;
        if (spot.region == none) return;
        in_region.emplace(spot.region, &verdict);
        if (spot.loop == none)
            on_no_loop.emplace(spot.region, &verdict);
        else
            on_loop.emplace(spot.loop, &verdict);
    }

    const Verdict* related_to(const Spot& spot) const {
        const auto first = [](const std::map<Index, const Verdict*>& findings, Index at) {
            const auto found = findings.find(at);
            return found == findings.end() ? nullptr : found->second;
        };
        if (spot.region == none) return anywhere;
        if (spot.loop == none) return first(in_region, spot.region);
        const Verdict* const on_it = first(on_loop, spot.loop);
        return on_it != nullptr ? on_it : first(on_no_loop, spot.region);
    }
};

}  // namespace

void note_causes(const FlowGraph& graph, const Structure& structure, std::vector<Verdict>& verdicts,
                 Keep& keep) {
    const auto is_finding = [](const Verdict& verdict) { return verdict.outcome == Outcome::fail; };
    const auto may_follow = [&](const Verdict& verdict) {
        return is_finding(verdict) && !verdict.rule->follows.empty();
    };
    if (std::none_of(verdicts.begin(), verdicts.end(), may_follow)) return;
    const Places places(graph, structure);
    std::map<std::string_view, FirstFindings> findings;
    for (const Verdict& verdict : verdicts)
        if (is_finding(verdict))
            findings[verdict.rule->id].add(verdict, places.of(verdict.subject));
    for (Verdict& verdict : verdicts) {
        if (!may_follow(verdict)) continue;
        const Spot spot = places.of(verdict.subject);
        for (const std::string_view rule : verdict.rule->follows) {
            const auto found = findings.find(rule);
            if (found == findings.end()) continue;
            const Verdict* const cause = found->second.related_to(spot);
            if (cause == nullptr) continue;
            verdict.follows = keep.one(Cause{cause->rule, cause->subject});
            break;
        }
    }
}

}  // namespace loopwright
