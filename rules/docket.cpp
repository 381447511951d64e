#include <loopwright/rules/docket.h>

#include <algorithm>
#include <bit>
#include <stdexcept>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// fail by level, then inconclusive, pass, not applicable.
int rank(Outcome outcome, Level level) {
    return static_cast<int>(outcome) * 4 + (outcome == Outcome::fail ? static_cast<int>(level) : 0);
}

}  // namespace

Docket::Docket(const FlowGraph& graph, const Rule& rule, const Thresholds& thresholds, Keep& keep)
    : graph_(graph),
      rule_(rule.info),
      asked_(rule.asked),
      best_state_(rule.best_state),
      thresholds_(thresholds),
      keep_(keep) {
    verdicts_.reserve(2 * graph.regions().size());  // few drives have more sides or housings
}

std::string_view Docket::subject_id(ElementType type, Index index) {
    const Circuit& circuit = graph_.circuit();
    const auto port_name = [&](std::string_view before) {
        const Port& port = circuit.ports[index];
        return text(before, circuit.components[port.component].path, ".", port.letter);
    };
    switch (type) {
        case ElementType::circuit:
            return "circuit";
        case ElementType::loop:
            return text("loop:", circuit.components[index].path);
        case ElementType::side:
            return port_name("side:");
        case ElementType::line:
            return keep_.text(circuit.lines[index].path);
        case ElementType::shaft:
            return keep_.text(circuit.shafts[index].path);
        case ElementType::port:
            return port_name("");
        case ElementType::component:
        case ElementType::waiver:
            break;
    }
    return keep_.text(circuit.components[index].path);
}

std::vector<Index>& Docket::slots_of(ElementType type) {
    switch (type) {
        case ElementType::circuit:
            return of_circuit_;
        case ElementType::side:
        case ElementType::port:
            return by_port_;
        case ElementType::line:
            return by_line_;
        case ElementType::shaft:
            throw std::logic_error("no rule judges shafts");
        case ElementType::loop:
        case ElementType::component:
        case ElementType::waiver:
            break;
    }
    return by_component_;
}

bool Docket::has(ElementType type, Index index) {
    const std::vector<Index>& slots = slots_of(type);
    return !slots.empty() && slots[type == ElementType::circuit ? 0 : index] != none;
}

Index Docket::verdict_of(ElementType type, Index index, bool& fresh) {
    std::vector<Index>& slots = slots_of(type);
    if (slots.empty()) {
        const Circuit& circuit = graph_.circuit();
        slots.assign(type == ElementType::circuit                             ? 1
                     : type == ElementType::side || type == ElementType::port ? circuit.ports.size()
                     : type == ElementType::line                              ? circuit.lines.size()
                                                 : circuit.components.size(),
                     none);
    }
    Index& slot = slots[type == ElementType::circuit ? 0 : index];
    fresh = slot == none;
    if (fresh) {
        slot = static_cast<Index>(verdicts_.size());
        Verdict& verdict = verdicts_.emplace_back();  // in place: it is large
        verdict.rule = &rule_;
        verdict.subject = {type, index, subject_id(type, index)};
        open_.emplace_back();
    }
    return slot;
}

bool Docket::decides(const Verdict& verdict, Outcome outcome, Level level) const {
    const int before = rank(verdict.outcome, verdict.level);
    const int now = rank(outcome, level);
    return best_state_ ? now < before : now > before;
}

Verdict* Docket::record(const Situation& situation, ElementType type, Index index, StateSet states,
                        Outcome outcome, Level level) {
    states &= asked_;
    if (states == 0) return nullptr;
    if (region_ != &situation.region) close_region();
    region_ = &situation.region;
    if (!situation.undecided.empty() && outcome != Outcome::not_applicable)
        outcome = Outcome::inconclusive;
    bool fresh = false;
    const Index at = verdict_of(type, index, fresh);
    Verdict& verdict = verdicts_[at];
    Entry& entry = type == ElementType::circuit ? circuit_entry_ : open_[at - closed_];
    const bool deciding = fresh || decides(verdict, outcome, level);
    if (deciding) {
        entry.shared = 0;
        for (Share& share : entry.shares) {
            share.shared = 0;
            share.last_shared = none;
        }
        entry.uses.clear();
        if (type == ElementType::circuit) circuit_uses_.clear();
        verdict.outcome = outcome;
        verdict.level = level;
        verdict.message = {};
        verdict.witness = {};
        verdict.missing = {};
        verdict.figures = nullptr;
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
    Verdict& verdict = verdicts_[verdict_of(type, index, fresh)];
    verdict.outcome = outcome;
    verdict.level = level;
    return verdict;
}

void Docket::close_region() {
    for (Entry& entry : open_) {
        Verdict& verdict = verdicts_[closed_++];
        if (verdict.subject.type != ElementType::circuit) close(entry, verdict);
    }
    open_.clear();
    if (circuit_entry_.shared != 0) close_circuit(verdicts_[of_circuit_.front()]);
}

/// A state that one region shares in all positions is listed without any.
void Docket::close_circuit(Verdict& verdict) {
    close(circuit_entry_, verdict);
    circuit_entry_ = {};
    for (const StateUse& use : verdict.states) {
        const auto same_state = [&](const StateUse& other) { return other.state == use.state; };
        const auto before = std::find_if(circuit_uses_.begin(), circuit_uses_.end(), same_state);
        if (before != circuit_uses_.end() && before->positions.empty()) continue;
        if (use.positions.empty())
            circuit_uses_.erase(
                std::remove_if(circuit_uses_.begin(), circuit_uses_.end(), same_state),
                circuit_uses_.end());
        circuit_uses_.push_back(use);
    }
    std::stable_sort(circuit_uses_.begin(), circuit_uses_.end(),
                     [](const StateUse& a, const StateUse& b) { return a.state < b.state; });
    verdict.states = keep_.list(std::span<const StateUse>(circuit_uses_));
}

std::span<const StateUse> Docket::all_positions_of(StateSet states) {
    for (const auto& [set, uses] : plain_uses_)
        if (set == states) return uses;
    uses_.clear();
    for (std::size_t s = 0; s < state_count; ++s)
        if ((states & bit(static_cast<State>(s))) != 0)
            uses_.push_back({.state = static_cast<State>(s)});
    return plain_uses_.emplace_back(states, keep_.list(std::span<const StateUse>(uses_))).second;
}

void Docket::close(Entry& entry, Verdict& verdict) {
    if (entry.shares.empty())
        verdict.states = all_positions_of(entry.shared);
    else
        list_positions(entry, verdict);
    if (entry.undecided.empty()) return;
    verdict.message =
        "the operated valves have too many combinations of positions to go "
        "through in one state";
    std::vector<Step> steps;
    std::vector<std::string_view> data;
    for (const Index valve : entry.undecided) {
        steps.push_back({ElementType::component, valve, none, none, {}});
        data.push_back(text(graph_.circuit().components[valve].path, ".positions"));
    }
    verdict.witness = witness(WitnessShape::set, steps);
    verdict.missing = missing(data);
}

void Docket::list_positions(const Entry& entry, Verdict& verdict) {
    uses_.clear();
    for (std::size_t s = 0; s < state_count; ++s) {
        const auto state = static_cast<State>(s);
        if ((entry.shared & bit(state)) == 0) continue;
        if (entry.shares[s].shared == entry.shares[s].asked) {
            uses_.push_back({.state = state});
            continue;
        }
        for (const Use& use : entry.uses)
            if (use.state == state)
                uses_.push_back({state, keep_.list(std::span<const ValvePosition>(use.positions))});
    }
    verdict.states = keep_.list(std::span<const StateUse>(uses_));
}

void Docket::finish(std::vector<Verdict>& verdicts) {
    close_region();
    const auto before = [](const Verdict& a, const Verdict& b) {
        return a.subject.type != b.subject.type ? a.subject.type < b.subject.type
                                                : a.subject.index < b.subject.index;
    };
    // Regions come as in the file, and so mostly do the subjects.
    if (!std::is_sorted(verdicts_.begin(), verdicts_.end(), before))
        std::sort(verdicts_.begin(), verdicts_.end(), before);
    verdicts.insert(verdicts.end(), verdicts_.begin(), verdicts_.end());
    verdicts_.clear();
}

}  // namespace loopwright
