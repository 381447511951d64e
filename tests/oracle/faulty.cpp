// The program with one rule judged wrongly, or one state misread: the second opinion must notice.
// Where no error is planted in a rule, it judges nothing.
//
//     faulty_check RULE|STATE FILE...    the result as JSON on standard output; for a state, of
//                                        the rule that shows the error
#include <algorithm>
#include <cstdio>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/reader.h>
#include <loopwright/render/writers/check_document.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/oracle/planted_errors.h>

namespace loopwright {
namespace {

/// The rule with an error in place of its own functions.
Rule spoilt(const Rule& rule, const Planted& error) {
    Rule wrong = rule;
    if (error.judge != nullptr) {
        wrong.judge = error.judge;
        wrong.judge_alike = nullptr;
    }
    if (error.conclude != nullptr) wrong.conclude = error.conclude;
    return wrong;
}

/// The rule with its planted error.
Rule spoilt(const Rule& rule) {
    for (const auto planted : {planted_in_situations(), planted_in_the_circuit()}) {
        const auto error = std::find_if(planted.begin(), planted.end(), [&](const Planted& one) {
            return one.rule == rule.info.id;
        });
        if (error != planted.end()) return spoilt(rule, *error);
    }
    Rule wrong = rule;
    if (rule.judge == nullptr && rule.judge_alike == nullptr) wrong.conclude = nullptr;
    wrong.best_state = !rule.best_state;
    return wrong;
}

/// The rule, or the one that shows what is misread of the state; none: neither is known.
std::optional<Rule> spoilt(std::string_view id) {
    for (const PlantedState& planted : planted_in_states()) {
        if (planted.state != id) continue;
        Rule wrong = spoilt(*find_rule(planted.error.rule), planted.error);
        if (planted.asked != 0) wrong.asked = planted.asked;
        return wrong;
    }
    const Rule* const rule = find_rule(id);
    return rule == nullptr ? std::nullopt : std::optional(spoilt(*rule));
}

int run(std::string_view id, const std::vector<std::string>& files) {
    const std::optional<Rule> wrong = spoilt(id);
    if (!wrong) return 2;
    const std::vector<const Rule*> rules{&*wrong};

    const auto json = check_json();
    std::string out = json->head({});
    for (const std::string& file : files) {
        const ReadResult read = read_circuit(file);
        if (!read.circuit) return 2;
        const CheckResult result = check(*read.circuit, rules);
        out +=
            json->circuit(file, *read.circuit, read.diagnostics, result.structure, result.verdicts);
    }
    out += json->tail();
    return std::fwrite(out.data(), 1, out.size(), stdout) == out.size() ? 0 : 2;
}

}  // namespace
}  // namespace loopwright

int main(int argc, char** argv) {
    if (argc < 3) return 2;
    return loopwright::run(argv[1], {argv + 2, argv + argc});
}
