#include <loopwright/rules/check.h>

#include <loopwright/rules/rule.h>

namespace loopwright {

CheckResult check(const Circuit& circuit, std::span<const Rule* const> rules) {
    const FlowGraph graph(circuit);
    CheckResult result;
    std::vector<Docket> dockets;
    dockets.reserve(rules.size());
    for (const Rule* rule : rules)
        dockets.emplace_back(graph, rule->info, rule->best_state, *result.keep);

    result.structure = for_each_situation(graph, [&](const Situation& situation) {
        for (std::size_t i = 0; i < rules.size(); ++i)
            if (rules[i]->judge != nullptr) rules[i]->judge(situation, dockets[i]);
    });
    std::size_t verdicts = 0;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        if (rules[i]->conclude != nullptr)
            rules[i]->conclude(circuit, result.structure, dockets[i]);
        if (dockets[i].empty())
            dockets[i].conclude(ElementType::circuit, none, Outcome::not_applicable).message =
                result.keep->text("the circuit has nothing to ask it of: ", rules[i]->info.subject);
        verdicts += dockets[i].size();
    }
    result.verdicts.reserve(verdicts);
    for (Docket& docket : dockets) docket.finish(result.verdicts);
    result.work = graph.work;
    return result;
}

}  // namespace loopwright
