#include <loopwright/rules/docket.h>

#include <algorithm>
#include <bit>
#include <limits>
#include <stdexcept>

#include <loopwright/base/unit_text.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// fail by level, then inconclusive, pass, not applicable.
int rank(Outcome outcome, Level level) {
    return static_cast<int>(outcome) * 4 + (outcome == Outcome::fail ? static_cast<int>(level) : 0);
}

}  // namespace

std::string_view& SubjectNames::slot(std::vector<std::string_view>& names, std::size_t size,
                                     Index index) {
    if (names.empty()) names.resize(size);
    return names[index];
}

std::string_view SubjectNames::operator()(ElementType type, Index index) {
    constexpr std::string_view side = "side:";
    const auto side_name = [&] {
        std::string_view& name = slot(sides_, circuit_.ports.size(), index);
        if (name.empty()) {
            const Port& port = circuit_.ports[index];
            name = keep_.text(side, circuit_.components[port.component].path, ".", port.letter);
        }
        return name;
    };
    switch (type) {
        case ElementType::circuit:
            return "circuit";
        case ElementType::loop: {
            std::string_view& name = slot(loops_, circuit_.components.size(), index);
            if (name.empty()) name = keep_.text("loop:", circuit_.components[index].path);
            return name;
        }
        case ElementType::side:
            return side_name();
        case ElementType::line:
            return circuit_.lines[index].path;
        case ElementType::port:
            return side_name().substr(side.size());
        case ElementType::component:
        case ElementType::shaft:
        case ElementType::waiver:
            break;
    }
    return circuit_.components[index].path;
}

Docket::Docket(const FlowGraph& graph, const Rule& rule, const Thresholds& thresholds,
               SubjectNames& names, Keep& keep)
    : graph_(graph),
      rule_(rule.info),
      asked_(rule.asked),
      best_state_(rule.best_state),
      stateless_(rule.stateless),
      at_work_alone_(rule.is_asked_at_work_alone()),
      thresholds_(thresholds),
      names_(names),
      keep_(keep),
      subjects_(graph.circuit()) {
    verdicts_.reserve(2 * graph.regions().size());  // few drives have more sides or housings
}

std::string_view Docket::told(double si, Dimension dimension) {
    const auto known = std::find_if(told_.begin(), told_.end(), [&](const Told& one) {
        return one.si == si && one.dimension == dimension && !one.text.empty();
    });
    if (known != told_.end()) {
        std::rotate(told_.begin(), known, known + 1);
    } else {
        std::rotate(told_.begin(), told_.end() - 1, told_.end());
        told_.front() = Told{si, dimension, text(std::string_view(format_quantity(si, dimension)))};
    }
    return told_.front().text;
}

Index Docket::add(ElementType type, Index index) {
    const auto at = static_cast<Index>(verdicts_.size());
    Verdict& verdict = verdicts_.emplace_back();  // in place: it is large
    verdict.rule = &rule_;
    verdict.subject = {type, index, names_(type, index)};
    subjects_.add(type, index);
    open_.emplace_back();
    if (type == ElementType::circuit) on_circuit_ = at;
    return at;
}

bool Docket::decides(const Verdict& verdict, Outcome outcome, Level level) const {
    const int before = rank(verdict.outcome, verdict.level);
    const int now = rank(outcome, level);
    return best_state_ ? now < before : now > before;
}

Verdict* Docket::record(const Situation& situation, ElementType type, Index index, StateSet states,
                        Outcome outcome, Level level, double severity) {
    states &= asked_;
    if (states == 0) return nullptr;
    if (const Index* const joints = situation.region.joints.data(); region_joints_ != joints) {
        close_region();
        region_joints_ = joints;
        valves_.assign(situation.valves.begin(), situation.valves.end());
        judging_.assign(situation.judging.begin(), situation.judging.end());
    }
    if (!situation.undecided.empty() && outcome != Outcome::not_applicable)
        outcome = Outcome::inconclusive;
    Index at =
        type == ElementType::circuit ? on_circuit_ : subjects_.find_behind(closed_, type, index);
    const bool fresh = at == none;
    if (fresh) {
        at = add(type, index);
        open_.back().recurs = may_recur(type, index);
    }
    Verdict& verdict = verdicts_[at];
    Entry& entry = type == ElementType::circuit ? circuit_entry_ : open_[at - closed_];
    const bool deciding = fresh || decides(verdict, outcome, level);
    if (deciding) {
        entry.shared = 0;
        for (Combinations& combinations : entry.combinations) combinations.forget_shares();
        if (type == ElementType::circuit) circuit_uses_.clear();
        verdict.outcome = outcome;
        verdict.level = level;
        entry.undecided.assign(situation.undecided.begin(), situation.undecided.end());
    }
    const bool shares =
        verdict.outcome == outcome && (outcome != Outcome::fail || verdict.level == level);
    if (shares && !stateless_) entry.shared |= states;
    if (!situation.positions.empty() && !stateless_) count(entry, situation, states, shares);
    if (!deciding && (!shares || severity <= entry.severity)) return nullptr;
    entry.severity = severity;
    verdict.message = {};
    verdict.witness = {};
    verdict.missing = {};
    verdict.figures = nullptr;
    return &verdict;
}

void Docket::count(Entry& entry, const Situation& situation, StateSet states, bool shares) {
    entry.combinations.resize(state_count);
    for (std::size_t s = 0; s < state_count; ++s)
        if ((states & bit(static_cast<State>(s))) != 0)
            entry.combinations[s].note(situation.combination, shares);
}

void Docket::add_missing(ElementType type, Index index, std::span<const std::string_view> data) {
    const Index at = subjects_.find(type, index);
    if (at == none) return;
    Verdict& verdict = verdicts_[at];
    if (verdict.outcome != Outcome::inconclusive) return;
    std::vector<std::string_view> all(verdict.missing.begin(), verdict.missing.end());
    for (const std::string_view datum : data)
        if (std::find(all.begin(), all.end(), datum) == all.end()) all.push_back(datum);
    if (all.size() != verdict.missing.size()) verdict.missing = missing(all);
}

Verdict* Docket::record_at(std::string_view point, ElementType type, Index index, Outcome outcome,
                           Level level, double severity) {
    close_region();
    region_joints_ = nullptr;
    Index at = subjects_.find(type, index);
    const bool fresh = at == none;
    if (fresh) at = add(type, index);
    close_region();
    Verdict& verdict = verdicts_[at];
    constexpr double least = -std::numeric_limits<double>::infinity();
    severities_.resize(verdicts_.size(), least);
    const bool deciding = fresh || decides(verdict, outcome, level);
    const bool shares = !verdict.point.empty() && verdict.outcome == outcome &&
                        (outcome != Outcome::fail || verdict.level == level);
    if (!deciding && (!shares || severity <= severities_[at])) return nullptr;
    severities_[at] = severity;
    verdict = Verdict{.rule = verdict.rule,
                      .subject = verdict.subject,
                      .outcome = outcome,
                      .level = level,
                      .point = point};
    return &verdict;
}

void Docket::await_points(ElementType type, Index index) {
    const Index at = subjects_.find(type, index);
    if (at == none) return;
    awaiting_.resize(verdicts_.size(), 0);
    awaiting_[at] = 1;
}

void Docket::leave_open(std::string_view point, std::string_view message,
                        std::span<const std::string_view> missing) {
    close_region();
    region_joints_ = nullptr;
    if (verdicts_.empty()) conclude(ElementType::circuit, none, Outcome::pass);
    awaiting_.resize(verdicts_.size(), 0);
    for (std::size_t i = 0; i < verdicts_.size(); ++i) {
        Verdict& verdict = verdicts_[i];
        if (verdict.outcome == Outcome::pass && (at_work_alone_ || awaiting_[i] != 0))
            verdict = Verdict{.rule = verdict.rule,
                              .subject = verdict.subject,
                              .outcome = Outcome::inconclusive,
                              .point = point,
                              .message = message,
                              .missing = missing};
    }
}

Verdict& Docket::conclude(ElementType type, Index index, Outcome outcome, Level level) {
    const Index at = subjects_.find(type, index);
    Verdict& verdict = verdicts_[at == none ? add(type, index) : at];
    verdict.outcome = outcome;
    verdict.level = level;
    return verdict;
}

void Docket::close_region() {
    for (Entry& entry : open_) {
        Verdict& verdict = verdicts_[closed_++];
        if (verdict.subject.type != ElementType::circuit) close(entry, verdict);
        if (entry.recurs) take_over(static_cast<Index>(closed_ - 1), entry.severity);
    }
    open_.clear();
    if (circuit_entry_.shared != 0) close_circuit(verdicts_[on_circuit_]);
}

/// A part with several ports and no passages, as a coupling that is apart.
bool Docket::may_recur(ElementType type, Index index) const {
    if (type != ElementType::component) return false;
    const Component& part = graph_.circuit().components[index];
    return part.ports.size() > 1 && part.passages.size() == 0;
}

/// What another region said of the same part: the worse of the two decides, what is as bad has the
/// states of both and the words of the more severe.
void Docket::take_over(Index at, double severity) {
    Verdict& verdict = verdicts_[at];
    const auto before =
        std::find_if(recurring_.begin(), recurring_.end(), [&](const Recurring& one) {
            return verdicts_[one.at].subject.index == verdict.subject.index;
        });
    if (before == recurring_.end()) {
        recurring_.push_back({at, severity});
        return;
    }
    const Verdict& earlier = verdicts_[before->at];
    if (decides(verdict, earlier.outcome, earlier.level)) {
        verdict = earlier;
        severity = before->severity;
    } else if (!decides(earlier, verdict.outcome, verdict.level)) {
        std::vector<std::string_view> data(earlier.missing.begin(), earlier.missing.end());
        for (const std::string_view datum : verdict.missing)
            if (std::find(data.begin(), data.end(), datum) == data.end()) data.push_back(datum);
        std::vector<StateUse> uses(earlier.states.begin(), earlier.states.end());
        for (const StateUse& use : verdict.states)
            if (std::none_of(uses.begin(), uses.end(), [&](const StateUse& other) {
                    return other.state == use.state &&
                           std::equal(other.positions.begin(), other.positions.end(),
                                      use.positions.begin(), use.positions.end());
                }))
                uses.push_back(use);
        std::stable_sort(uses.begin(), uses.end(),
                         [](const StateUse& a, const StateUse& b) { return a.state < b.state; });
        if (before->severity >= severity) verdict = earlier;
        verdict.missing = missing(data);
        verdict.states = keep_.list(std::span<const StateUse>(uses));
        severity = std::max(severity, before->severity);
    }
    *before = {at, severity};
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
    if (entry.combinations.empty())
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
    const Circuit& circuit = graph_.circuit();
    uses_.clear();
    std::vector<Index> sizes;
    for (const Index valve : valves_) sizes.push_back(circuit.components[valve].positions.size());
    std::vector<ValvePosition> positions;
    for (std::size_t s = 0; s < state_count; ++s) {
        const auto state = static_cast<State>(s);
        if ((entry.shared & bit(state)) == 0) continue;
        if (entry.combinations[s].all_share()) {
            uses_.push_back({.state = state});
            continue;
        }
        const auto tell = [&](std::span<const Combinations::Setting> settings) {
            positions.clear();
            for (const auto& [v, position] : settings) {
                const Component& valve = circuit.components[valves_[v]];
                positions.emplace_back(valves_[v],
                                       circuit.positions[valve.positions.begin + position].id);
            }
            uses_.push_back({state, keep_.list(std::span<const ValvePosition>(positions))});
        };
        // A valve that is judged at rest is allowed in other positions in motion only.
        const auto judging = (bit(state) & moving_states) != 0
                                 ? std::span<const std::uint32_t>(judging_)
                                 : std::span<const std::uint32_t>();
        entry.combinations[s].for_each_sharing(sizes, judging, tell);
    }
    verdict.states = keep_.list(std::span<const StateUse>(uses_));
}

void Docket::finish(std::vector<Verdict>& verdicts) {
    close_region();
    // In order of the subjects the last verdict on each stands.
    if (subjects_.in_order() && recurring_.empty())
        verdicts.insert(verdicts.end(), verdicts_.begin(), verdicts_.end());
    else
        subjects_.for_each_in_order([&](Index at) { verdicts.push_back(verdicts_[at]); });
    // Given back at once, so that no more than one docket's verdicts are there twice.
    verdicts_ = {};
    subjects_ = SubjectTable(graph_.circuit());
}

}  // namespace loopwright
