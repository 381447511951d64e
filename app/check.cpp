#include <unistd.h>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/app/progress.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/render/writers/check_document.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/waivers.h>

namespace loopwright::app {

namespace {

struct Options {
    std::vector<std::string> files = {};
    std::string format = "text";
    std::string output = {};
    std::vector<std::string> rules = {};
    bool all = false;
    std::string fail_on = "warning";
    bool fail_on_inconclusive = false;
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
    std::string thresholds = {};
    std::string today = this_day();
};

bool counts(const Verdict& verdict, const Options& options) {
    if (verdict.waived != nullptr) return false;
    if (verdict.outcome == Outcome::inconclusive) return options.fail_on_inconclusive;
    if (verdict.outcome != Outcome::fail || options.fail_on == "never") return false;
    const Level least = options.fail_on == "error"     ? Level::error
                        : options.fail_on == "warning" ? Level::warning
                                                       : Level::note;
    return verdict.level >= least;
}

std::unique_ptr<CheckDocument> document_for(std::string_view format) {
    return format == "json" ? check_json() : format == "sarif" ? check_sarif() : nullptr;
}

class Run {
  public:
    explicit Run(const Options& options)
        : options_(options),
          machine_(document_for(options.format)),
          rules_(rules_of(options.rules)),
          thresholds_(thresholds_of(options.thresholds, options.colour)),
          style_{.all = options.all,
                 .today = options.today,
                 .colour = options.output.empty() && !machine_ &&
                           wants_colour(options.colour, STDOUT_FILENO)} {}

    ExitStatus run() {
        if (rules_.empty() || !thresholds_) return ExitStatus::unusable;
        if (std::count(options_.files.begin(), options_.files.end(), "-") > 1) {
            complain("standard input ('-') can be read once only");
            return ExitStatus::unusable;
        }
        in_use_ = thresholds_->in_use(rules_);
        if (!options_.thresholds.empty() || options_.all) style_.thresholds = in_use_;
        if (!options_.thresholds.empty()) inputs_.emplace_back(options_.thresholds);
        if (machine_) put(head());
        for (std::size_t i = 0; i < options_.files.size() && !broken_; ++i) {
            progress_.tell(fmt::format("checking {} of {}: {}", i + 1, options_.files.size(),
                                       options_.files[i]));
            check_file(options_.files[i]);
        }
        if (machine_) put(machine_->tail());
        // Input that cannot be used touches no file, unless the result itself says so.
        if (whole_.empty() || (!machine_ && status_ == ExitStatus::unusable)) return status_;
        return hand_over(whole_, options_.output, inputs_, status_);
    }

  private:
    std::string head() {
        for (const Rule* rule : rules_) infos_.push_back(&rule->info);
        std::error_code error;
        folder_ = std::filesystem::current_path(error).string();
        return machine_->head({.rules = infos_,
                               .thresholds = in_use_,
                               .thresholds_file = options_.thresholds,
                               .working_folder = folder_});
    }

    void check_file(const std::string& file) {
        const ReadResult read = read_input(file, options_.assemblies);
        if (!read.circuit) {
            status_ = worse(status_, ExitStatus::unusable);
            if (machine_) put(machine_->unreadable(file, read.diagnostics, *read.sources));
            print_diagnostics(read.diagnostics, *read.sources, options_.colour);
            return;
        }
        print_diagnostics(read.diagnostics, *read.sources, options_.colour);
        if (!options_.output.empty()) {
            const auto used = files_of(file, *read.circuit);
            inputs_.insert(inputs_.end(), used.begin(), used.end());
        }
        CheckResult result = loopwright::check(*read.circuit, rules_, *thresholds_);
        apply_waivers(*read.circuit, rules_, *date_of(options_.today), result);
        if (machine_ && !read.circuit->waivers.empty()) machine_->waivers_held_on(options_.today);
        if (machine_)
            put(machine_->circuit(file, *read.circuit, read.diagnostics, result.structure,
                                  result.verdicts));
        else
            put((first_ ? "" : "\n") +
                report_text(*read.circuit, result.structure, result.verdicts, style_));
        first_ = false;
        for (const Verdict& verdict : result.verdicts)
            if (counts(verdict, options_)) status_ = worse(status_, ExitStatus::findings);
    }

    /// A part of the result: written when it is done, or kept for the output file.
    void put(const std::string& text) {
        if (!options_.output.empty())
            whole_ += text;
        else if (!broken_ && !write_out(text)) {
            complain("standard output cannot be written");
            status_ = ExitStatus::unusable;
            broken_ = true;
        }
    }

    const Options& options_;
    Progress progress_;
    std::unique_ptr<CheckDocument> machine_;  ///< null: text for people
    std::vector<const Rule*> rules_;
    std::optional<Thresholds> thresholds_;
    std::vector<ThresholdInUse> in_use_;
    std::vector<const RuleInfo*> infos_;
    std::string folder_;
    ReportStyle style_;
    std::string whole_;
    std::vector<std::filesystem::path> inputs_;
    bool broken_ = false;  ///< standard output: the rest is not worth the work
    bool first_ = true;
    ExitStatus status_ = ExitStatus::good;
};

}  // namespace

std::function<ExitStatus()> declare_check(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->files, "Circuits to check; - for standard input")->required();
    options.add_option("--format", given->format, "text, json or sarif (OASIS SARIF 2.1.0)")
        ->check(CLI::IsMember({"text", "json", "sarif"}));
    options.add_option("-o,--output", given->output, "File for the result")->check(is_named);
    add_rules_option(options, given->rules);
    options.add_flag("--all", given->all, "Show passes and what is not applicable, too");
    options.add_option("--fail-on", given->fail_on, "Lowest level that gives exit status 1")
        ->check(CLI::IsMember({"error", "warning", "note", "never"}));
    options.add_flag("--fail-on-inconclusive", given->fail_on_inconclusive,
                     "Exit status 1 also where a verdict could not be reached");
    options.add_option("--color", given->colour, "auto, always or never")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    add_thresholds_option(options, given->thresholds);
    add_today_option(options, given->today);
    return [given] { return Run(*given).run(); };
}

}  // namespace loopwright::app
