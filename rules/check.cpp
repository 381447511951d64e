#include <loopwright/rules/check.h>

#include <loopwright/rules/at_work.h>
#include <loopwright/rules/causes.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/tolerances.h>
#include <loopwright/rules/unknown_inside.h>
#include <loopwright/rules/worst_corner.h>

namespace loopwright {

namespace {

CheckResult judge(const Circuit& circuit, std::span<const Rule* const> rules,
                  const Thresholds& thresholds) {
    const FlowGraph graph(circuit);
    CheckResult result;
    SubjectNames names(circuit, *result.keep);
    std::vector<Docket> dockets;
    dockets.reserve(rules.size());
    for (const Rule* rule : rules)
        dockets.emplace_back(graph, *rule, thresholds, names, *result.keep);

    std::vector<std::size_t> judging;  // the rules that are shown situations
    for (std::size_t i = 0; i < rules.size(); ++i)
        if (rules[i]->judge != nullptr || rules[i]->judge_alike != nullptr) judging.push_back(i);
    std::vector<std::uint32_t> settled(rules.size(), 0);  // a bit for each group of those alike
    result.structure = for_each_situation(graph, [&](const Situation& situation) {
        const std::uint32_t group = std::uint32_t{1} << situation.alike.number;
        for (const std::size_t i : judging) {
            const Rule& rule = *rules[i];
            if ((situation.alike.states & rule.asked) == 0) continue;
            if (rule.judge_alike != nullptr && situation.alike.first) {
                settled[i] &= ~group;
                if (rule.judge_alike(situation, dockets[i])) settled[i] |= group;
            }
            if (rule.judge != nullptr && (settled[i] & group) == 0 &&
                (situation.states & rule.asked) != 0)
                rule.judge(situation, dockets[i]);
        }
    });
    judge_at_work(graph, result.structure, rules, dockets, *result.keep);
    std::size_t verdicts = 0;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        if (rules[i]->conclude != nullptr) rules[i]->conclude(graph, result.structure, dockets[i]);
        if (dockets[i].empty())
            dockets[i].conclude(ElementType::circuit, none, Outcome::not_applicable).message =
                result.keep->text("the circuit has nothing to ask it of: ", rules[i]->info.subject);
        verdicts += dockets[i].size();
    }
    result.verdicts.reserve(verdicts);
    for (Docket& docket : dockets) docket.finish(result.verdicts);
    note_causes(graph, result.structure, result.verdicts, *result.keep);
    result.work = graph.work;
    return result;
}

CheckResult judge_with_tolerances(const Circuit& circuit, std::span<const Rule* const> rules,
                                  const Thresholds& thresholds) {
    return tolerances_of(circuit).empty() ? judge(circuit, rules, thresholds)
                                          : check_worst_corner(circuit, rules, thresholds, judge);
}

}  // namespace

CheckResult check(const Circuit& circuit, std::span<const Rule* const> rules,
                  const Thresholds& thresholds) {
    return has_unknown_inside(circuit)
               ? check_unknown_inside(circuit, rules, thresholds, judge_with_tolerances)
               : judge_with_tolerances(circuit, rules, thresholds);
}

}  // namespace loopwright
