#include <loopwright/rules/docket.h>

#include <algorithm>
#include <bit>

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
        *slot = static_cast<Index>(open_.size());
        open_.emplace_back();
        Verdict& verdict = open_.back().verdict;
        verdict.rule = &rule_;
        verdict.subject = {type, index, subject_id(graph_.circuit(), type, index)};
    }
    return open_[*slot];
}

bool Docket::decides(const Verdict& verdict, Outcome outcome, Level level) const {
    const int before = rank(verdict.outcome, verdict.level);
    const int now = rank(outcome, level);
    return best_state_ ? now < before : now > before;
}

Verdict* Docket::record(const Situation& situation, ElementType type, Index index, StateSet states,
                        Outcome outcome, Level level) {
    if (states == 0) return nullptr;
    if (region_ != &situation.region) close_region();
    region_ = &situation.region;
    if (!situation.undecided.empty() && outcome != Outcome::not_applicable)
        outcome = Outcome::inconclusive;
    bool fresh = false;
    Entry& entry = entry_of(type, index, fresh);
    Verdict& verdict = entry.verdict;
    const bool deciding = fresh || decides(verdict, outcome, level);
    if (deciding) {
        entry.shared = 0;
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
    if (shares) entry.shared |= states;
    if (!situation.positions.empty()) count(entry, situation, states, shares);
    return deciding ? &verdict : nullptr;
}

void Docket::count(Entry& entry, const Situation& situation, StateSet states, bool shares) {
    entry.shares.resize(state_count);
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
        Use use{state, situation.combination, {}};
        use.positions.reserve(situation.valves.size());
        for (std::size_t v = 0; v < situation.valves.size(); ++v)
            use.positions.emplace_back(situation.valves[v],
                                       situation.circuit().positions[situation.positions[v]].id);
        entry.uses.push_back(std::move(use));
    }
}

Verdict& Docket::conclude(ElementType type, Index index, Outcome outcome, Level level) {
    bool fresh = false;
    Verdict& verdict = entry_of(type, index, fresh).verdict;
    verdict.outcome = outcome;
    verdict.level = level;
    return verdict;
}

void Docket::close_region() {
    for (Entry& entry : open_) {
        close(entry);
        closed_.push_back(std::move(entry.verdict));
    }
    open_.clear();
}

void Docket::close(Entry& entry) {
    Verdict& verdict = entry.verdict;
    verdict.states.reserve(static_cast<std::size_t>(std::popcount(entry.shared)));
    for (std::size_t s = 0; s < state_count; ++s) {
        const auto state = static_cast<State>(s);
        if ((entry.shared & bit(state)) == 0) continue;
        if (entry.shares.empty() || entry.shares[s].shared == entry.shares[s].asked) {
            verdict.states.push_back({.state = state});
            continue;
        }
        for (Use& use : entry.uses)
            if (use.state == state) verdict.states.push_back({state, std::move(use.positions)});
    }
    if (entry.undecided.empty()) return;
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

void Docket::finish(std::vector<Verdict>& verdicts) {
    close_region();
    const auto before = [](const Verdict& a, const Verdict& b) {
        return a.subject.type != b.subject.type ? a.subject.type < b.subject.type
                                                : a.subject.index < b.subject.index;
    };
    std::vector<Verdict*> order;
    order.reserve(closed_.size());
    for (Verdict& verdict : closed_) order.push_back(&verdict);
    // Regions come as in the file, and so mostly do the subjects.
    if (!std::is_sorted(closed_.begin(), closed_.end(), before))
        std::sort(order.begin(), order.end(),
                  [&](const Verdict* a, const Verdict* b) { return before(*a, *b); });
    for (Verdict* const verdict : order) verdicts.push_back(std::move(*verdict));
    closed_.clear();
}

}  // namespace loopwright
