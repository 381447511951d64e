// The program with one rule judged wrongly: the second opinion must notice. Where no error is
// planted in a rule, it judges nothing.
//
//     faulty_check RULE FILE...    the result as JSON on standard output
#include <algorithm>
#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/reader.h>
#include <loopwright/render/writers/json_report.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/oracle/planted_errors.h>

namespace loopwright {
namespace {

/// The rule with its planted error.
Rule spoilt(const Rule& rule) {
    Rule wrong = rule;
    for (const auto planted : {planted_in_situations(), planted_in_the_circuit()}) {
        const auto error = std::find_if(planted.begin(), planted.end(), [&](const Planted& one) {
            return one.rule == rule.info.id;
        });
        if (error == planted.end()) continue;
        if (error->judge != nullptr) {
            wrong.judge = error->judge;
            wrong.judge_alike = nullptr;
        }
        if (error->conclude != nullptr) wrong.conclude = error->conclude;
        return wrong;
    }
    if (rule.judge == nullptr && rule.judge_alike == nullptr) wrong.conclude = nullptr;
    wrong.best_state = !rule.best_state;
    return wrong;
}

int run(std::string_view id, const std::vector<std::string>& files) {
    const Rule* const rule = find_rule(id);
    if (rule == nullptr) return 2;
    const Rule wrong = spoilt(*rule);
    const std::vector<const Rule*> rules{&wrong};

    CheckJson json;
    std::string out = json.head({});
    for (const std::string& file : files) {
        const ReadResult read = read_circuit(file);
        if (!read.circuit) return 2;
        const CheckResult result = check(*read.circuit, rules);
        out +=
            json.circuit(file, *read.circuit, read.diagnostics, result.structure, result.verdicts);
    }
    out += json.tail();
    return std::fwrite(out.data(), 1, out.size(), stdout) == out.size() ? 0 : 2;
}

}  // namespace
}  // namespace loopwright

int main(int argc, char** argv) {
    if (argc < 3) return 2;
    return loopwright::run(argv[1], {argv + 2, argv + argc});
}
