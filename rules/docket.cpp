#include <loopwright/rules/docket.h>

#include <algorithm>

namespace loopwright {

namespace {

std::string subject_id(const Circuit& circuit, ElementType type, Index index) {
    switch (type) {
        case ElementType::circuit:
            return "circuit";
        case ElementType::loop:
            return "loop:" + std::string(circuit.components[index].path);
        case ElementType::side:
            return "side:" + circuit.port_name(index);
        case ElementType::line:
            return std::string(circuit.lines[index].path);
        case ElementType::shaft:
            return std::string(circuit.shafts[index].path);
        case ElementType::port:
            return circuit.port_name(index);
        case ElementType::component:
        case ElementType::waiver:
            break;
    }
    return std::string(circuit.components[index].path);
}

/// fail by level, then inconclusive, pass, not applicable.
int rank(Outcome outcome, Level level) {
    return static_cast<int>(outcome) * 4 + (outcome == Outcome::fail ? static_cast<int>(level) : 0);
}

}  // namespace

Docket::Docket(const FlowGraph& graph, const RuleInfo& rule, bool best_state)
    : graph_(graph),
      rule_(rule),
      best_state_(best_state),
      by_port_(graph.circuit().ports.size(), none),
      by_component_(graph.circuit().components.size(), none) {}

Docket::Entry& Docket::entry_of(ElementType type, Index index, bool& fresh) {
    Index* slot = nullptr;
    Index circuit_slot = none;
    if (type == ElementType::side || type == ElementType::port)
        slot = &by_port_[index];
    else if (type == ElementType::circuit)
        slot = &circuit_slot;
    else
        slot = &by_component_[index];
    fresh = *slot == none;
    if (fresh) {
        *slot = static_cast<Index>(entries_.size());
        entries_.emplace_back();
        Verdict& verdict = entries_.back().verdict;
        verdict.rule = &rule_;
        verdict.subject = {type, index, subject_id(graph_.circuit(), type, index)};
    }
    return entries_[*slot];
}

bool Docket::decides(const Verdict& verdict, Outcome outcome, Level level) const {
    const int before = rank(verdict.outcome, verdict.level);
    const int now = rank(outcome, level);
    return best_state_ ? now < before : now > before;
}

Verdict* Docket::record(const Situation& situation, ElementType type, Index index, StateSet states,
                        Outcome outcome, Level level) {
    if (states == 0) return nullptr;
    if (!situation.undecided.empty() && outcome != Outcome::not_applicable)
        outcome = Outcome::inconclusive;
    bool fresh = false;
    Entry& entry = entry_of(type, index, fresh);
    Verdict& verdict = entry.verdict;
    const bool deciding = fresh || decides(verdict, outcome, level);
    if (deciding) {
        for (Share& share : entry.shares) {
            share.shared = 0;
            share.last_shared = none;
        }
        entry.uses.clear();
        verdict.outcome = outcome;
        verdict.level = level;
        verdict.message.clear();
        verdict.witness = {};
        verdict.missing.clear();
        verdict.measured.reset();
        verdict.required.reset();
        verdict.margin.reset();
        entry.undecided.assign(situation.undecided.begin(), situation.undecided.end());
    }
    const bool shares =
        verdict.outcome == outcome && (outcome != Outcome::fail || verdict.level == level);
    for (std::size_t s = 0; s < state_count; ++s) {
        const auto state = static_cast<State>(s);
        if ((states & bit(state)) == 0) continue;
        Share& share = entry.shares[s];
        if (share.last_asked != situation.combination) {
            share.last_asked = situation.combination;
            ++share.asked;
        }
        if (!shares || share.last_shared == situation.combination) continue;
        share.last_shared = situation.combination;
        ++share.shared;
        if (situation.positions.empty()) continue;
        Use use{state, situation.combination, {}};
        for (std::size_t v = 0; v < situation.valves.size(); ++v)
            use.positions.emplace_back(situation.valves[v],
                                       graph_.circuit().positions[situation.positions[v]].id);
        entry.uses.push_back(std::move(use));
    }
    return deciding ? &verdict : nullptr;
}

Verdict& Docket::conclude(ElementType type, Index index, Outcome outcome, Level level) {
    bool fresh = false;
    Verdict& verdict = entry_of(type, index, fresh).verdict;
    verdict.outcome = outcome;
    verdict.level = level;
    return verdict;
}

void Docket::finish(std::vector<Verdict>& verdicts) {
    std::vector<Entry*> order;
    order.reserve(entries_.size());
    for (Entry& entry : entries_) order.push_back(&entry);
    std::sort(order.begin(), order.end(), [](const Entry* a, const Entry* b) {
        const Subject& left = a->verdict.subject;
        const Subject& right = b->verdict.subject;
        return left.type != right.type ? left.type < right.type : left.index < right.index;
    });
    for (Entry* const at : order) {
        Entry& entry = *at;
        Verdict& verdict = entry.verdict;
        for (std::size_t s = 0; s < state_count; ++s) {
            const Share& share = entry.shares[s];
            const auto state = static_cast<State>(s);
            if (share.shared == 0) continue;
            if (verdict.states.empty()) verdict.states.reserve(state_count);
            if (share.shared == share.asked) {
                verdict.states.push_back({.state = state});
                continue;
            }
            for (Use& use : entry.uses)
                if (use.state == state) verdict.states.push_back({state, std::move(use.positions)});
        }
        if (!entry.undecided.empty()) {
            verdict.message =
                "the operated valves have too many combinations of positions to go "
                "through in one state";
            verdict.witness = {.shape = WitnessShape::set};
            verdict.missing.clear();
            for (const Index valve : entry.undecided) {
                verdict.witness.steps.push_back({ElementType::component, valve, none, none, {}});
                verdict.missing.push_back(std::string(graph_.circuit().components[valve].path) +
                                          ".positions");
            }
        }
        verdicts.push_back(std::move(verdict));
    }
}

}  // namespace loopwright
