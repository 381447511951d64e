#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/render/writers/catalogue.h>
#include <loopwright/render/writers/check_document.h>
#include <loopwright/render/writers/json_parts.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/render/writers/sarif_artifacts.h>

// The numbers of sections are those of OASIS SARIF 2.1.0.
namespace loopwright {

namespace {

using namespace json;
using sarif::base_id;

/// A message string (3.11): braces would begin a placeholder, "](" end the text of a link.
Json message(std::string_view text) {
    std::string plain;
    const bool has_link = text.find("](") != std::string_view::npos;
    for (const char c : text) {
        if (c == '{' || c == '}') plain += c;
        if (has_link && (c == '[' || c == ']')) plain += '\\';
        plain += c;
    }
    return {{"text", std::move(plain)}};
}

/// Words for people, in which nothing is replaced (3.12).
Json words(std::string_view text) { return {{"text", text}}; }

Json reporting_descriptor(const RuleInfo& rule) {
    Json sources = Json::array();
    for (const Citation& source : rule.sources) sources.push_back(citation(source));
    return {{"id", rule.id},
            {"shortDescription", words(rule.question)},
            {"fullDescription", words(rule.why)},
            {"help",
             {{"text", rule_page(rule, CatalogueFormat::text)},
              {"markdown", rule_page(rule, CatalogueFormat::markdown)}}},
            {"defaultConfiguration", {{"level", name(rule.level)}}},
            {"properties",
             {{"tags", Json::array({rule.family})},
              {"remedy", rule.remedy},
              {"sources", std::move(sources)}}}};
}

std::string_view kind_of(Outcome outcome) {
    switch (outcome) {
        case Outcome::pass:
            return "pass";
        case Outcome::fail:
            return "fail";
        case Outcome::inconclusive:
            return "open";
        case Outcome::not_applicable:
            break;
    }
    return "notApplicable";
}

std::string_view words_of(WitnessShape shape) {
    switch (shape) {
        case WitnessShape::path:
            return "the way that was followed";
        case WitnessShape::frontier:
            return "where the search ended";
        case WitnessShape::cut:
            return "what separates";
        case WitnessShape::set:
            break;
    }
    return "what it is about";
}

/// 3.33. Of a path of ids the last is the name.
Json logical_location(ElementType type, std::string_view id) {
    const bool is_path = type == ElementType::component || type == ElementType::line ||
                         type == ElementType::shaft || type == ElementType::port;
    const std::size_t slash = is_path ? id.rfind('/') : std::string_view::npos;
    return {{"name", slash == std::string_view::npos ? id : id.substr(slash + 1)},
            {"fullyQualifiedName", id},
            {"kind", name(type)}};
}

/// What a verdict says, in sentences that need nothing beside them.
std::string sentences(const Circuit& circuit, const Verdict& verdict) {
    std::string text = fmt::format("{}: {}.", verdict.subject.id, verdict.message);
    if (!verdict.states.empty()) text += fmt::format(" In {}.", states_text(circuit, verdict));
    if (!verdict.point.empty()) text += fmt::format(" At {}.", point_text(verdict));
    if (!verdict.missing.empty()) text += fmt::format(" Missing: {}.", missing_text(verdict));
    if (const Cause* cause = verdict.follows; cause != nullptr)
        text += fmt::format(" Follows from {} of {}.", cause->rule->id, cause->subject.id);
    return text;
}

/// The places of one circuit.
class Places {
  public:
    Places(const SourceSet& sources, std::vector<Json> files)
        : sources_(sources), files_(std::move(files)) {}

    Json physical(SourceRef ref) const {
        Json json{{"artifactLocation", files_[sources_.file_index(ref)]}};
        if (!sources_.has_text(ref)) return json;
        const Place place = sources_.file_of(ref).place(ref.span);
        json["region"] = {{"startLine", place.line},
                          {"startColumn", place.column},
                          {"endLine", place.end_line},
                          {"endColumn", place.end_column}};
        return json;
    }

    Json location(SourceRef ref, ElementType type, std::string_view id) const {
        return {{"physicalLocation", physical(ref)},
                {"logicalLocations", Json::array({logical_location(type, id)})}};
    }

    /// The `use` elements that lead to a place, innermost first, each related to the one before
    /// (3.34); `location` is that of the place.
    Json ways_in(SourceRef ref, Json& location) const {
        Json list = Json::array();
        Json* inner = &location;
        for (auto use = sources_.use_of(ref); use; use = sources_.use_of(*use)) {
            const std::size_t id = list.size() + 1;
            (*inner)["id"] = id - 1;
            relate(*inner, id, "isIncludedBy");
            Json outer{{"id", id},
                       {"physicalLocation", physical(*use)},
                       {"message", message("The file is used here.")}};
            relate(outer, id - 1, "includes");
            list.push_back(std::move(outer));
            inner = &list.back();
        }
        return list;
    }

  private:
    static void relate(Json& location, std::size_t target, const char* kind) {
        location["relationships"].push_back({{"target", target}, {"kinds", Json::array({kind})}});
    }

    const SourceSet& sources_;
    std::vector<Json> files_;
};

Json code_flow(const Circuit& circuit, const Places& places, const Witness& witness) {
    Json steps = Json::array();
    for (const Step& step : witness.steps) {
        Json location = places.location(place_of(circuit, step), step.type, id_of(circuit, step));
        location["message"] = message(step_text(circuit, step));
        Json passage = Json::object();
        put_passage(circuit, step, passage);
        Json json{{"location", std::move(location)}};
        if (!passage.empty()) json["properties"] = std::move(passage);
        steps.push_back(std::move(json));
    }
    return {{"message", message(words_of(witness.shape))},
            {"threadFlows", Json::array({{{"locations", std::move(steps)}}})},
            {"properties", {{"shape", name(witness.shape)}}}};
}

Json suppression(const Circuit& circuit, const Places& places, const Waived& waived) {
    return {{"kind", "inSource"},
            {"status", "accepted"},
            {"justification", fmt::format("{} ({}{}{})", waived.reason, waived.by,
                                          waived.until.empty() ? "" : ", until ", waived.until)},
            {"location",
             {{"physicalLocation", places.physical(circuit.waivers[waived.waiver].place)}}}};
}

Json result_of(const Circuit& circuit, const Places& places, const Verdict& verdict,
               std::size_t rule_index) {
    const bool failed = verdict.outcome == Outcome::fail;
    const SourceRef ref = place_of(circuit, verdict.subject);
    Json location = places.location(ref, verdict.subject.type, verdict.subject.id);
    Json related = places.ways_in(ref, location);
    if (const Cause* cause = verdict.follows; cause != nullptr) {
        Json one = places.location(place_of(circuit, cause->subject), cause->subject.type,
                                   cause->subject.id);
        one["message"] =
            message(fmt::format("Follows from {} of {}.", cause->rule->id, cause->subject.id));
        related.push_back(std::move(one));
    }
    Json json{{"ruleId", verdict.rule->id},
              {"ruleIndex", rule_index},
              {"kind", kind_of(verdict.outcome)},
              {"level", failed ? name(verdict.level) : "none"},
              {"message", message(sentences(circuit, verdict))},
              {"locations", Json::array({std::move(location)})}};
    if (!related.empty()) json["relatedLocations"] = std::move(related);
    if (!verdict.witness.steps.empty())
        json["codeFlows"] = Json::array({code_flow(circuit, places, verdict.witness)});
    // One verdict for each need of a subject, wherever in the file that stands.
    json["partialFingerprints"] = {
        {"need/v1", fmt::format("{} {}", verdict.rule->id, verdict.subject.id)}};
    // All results have them or none (3.27.23).
    json["suppressions"] = Json::array();
    if (verdict.waived != nullptr)
        json["suppressions"].push_back(suppression(circuit, places, *verdict.waived));
    Json properties = Json::object();
    put_states(circuit, verdict, properties);
    put_figures(verdict, properties);
    put_standing(verdict, properties);
    if (!properties.empty()) json["properties"] = std::move(properties);
    return json;
}

class CheckSarif : public CheckDocument {
  public:
    std::string head(const CheckFrame& frame) override {
        frame_ = frame;
        artifacts_.work_in(frame.working_folder);
        if (!frame.thresholds_file.empty()) artifacts_.enter_thresholds(frame.thresholds_file);
        Json rules = Json::array();
        for (const RuleInfo* rule : frame.rules) rules.push_back(reporting_descriptor(*rule));
        const Json driver{
            {"name", "loopwright"},
            {"version", LOOPWRIGHT_VERSION},
            {"semanticVersion", LOOPWRIGHT_VERSION},
            {"shortDescription",
             words("Checks, computes and draws closed-loop hydrostatic drives.")},
            {"fullDescription",
             words("A check of the drawing does not replace review by a competent person; local "
                   "codes govern.")},
            {"notifications",
             Json::array(
                 {{{"id", "input"}, {"shortDescription", words("What is wrong with a file.")}}})},
            {"rules", std::move(rules)}};
        return fmt::format(
            "{{\n\"$schema\": {},\n\"version\": \"2.1.0\",\n\"runs\": [\n{{\n"
            "\"tool\": {},\n\"columnKind\": \"unicodeCodePoints\",\n"
            "\"defaultEncoding\": \"UTF-8\",\n\"newlineSequences\": {},\n\"originalUriBaseIds\": "
            "{},\n\"results\": [\n",
            dumped("https://json.schemastore.org/sarif-2.1.0.json"), dumped({{"driver", driver}}),
            dumped(Json::array({"\r\n", "\n", "\r"}), -1),
            dumped(
                {{base_id, {{"description", words("The folder in which loopwright was run.")}}}}));
    }

    std::string circuit(std::string_view /*file*/, const Circuit& circuit,
                        const Diagnostics& diagnostics, const Structure& structure,
                        std::span<const Verdict> verdicts) override {
        const Places places(*circuit.sources, artifacts_.enter(*circuit.sources));
        notify(places, diagnostics);
        Json about = Json::object();
        put_title(circuit, about);
        put_structure(circuit, structure, about);
        const Tally sum = tally(verdicts);
        about["summary"] = summary(sum);
        artifacts_.describe(std::move(about));
        sum_ += sum;
        // A line for each result, so that none but the one at hand is held as a tree.
        std::string text;
        for (const Verdict& verdict : verdicts) {
            text += is_first_ ? "" : ",\n";
            text += dumped(result_of(circuit, places, verdict, index_of(*verdict.rule)), -1);
            is_first_ = false;
        }
        return text;
    }

    std::string unreadable(std::string_view /*file*/, const Diagnostics& diagnostics,
                           const SourceSet& sources) override {
        ++unreadable_;
        notify(Places(sources, artifacts_.enter(sources)), diagnostics);
        return {};
    }

    void waivers_held_on(std::string_view day) override { today_ = day; }

    std::string tail() override {
        Json properties = Json::object();
        if (!today_.empty()) properties["today"] = today_;
        properties["thresholds"] = thresholds(frame_.thresholds);
        properties["summary"] = summary(sum_);
        const Json invocations =
            Json::array({{{"executionSuccessful", unreadable_ == 0},
                          {"toolExecutionNotifications", std::move(notifications_)}}});
        return fmt::format(
            "\n],\n\"artifacts\": {},\n\"invocations\": {},\n\"properties\": {}\n}}\n]\n}}\n",
            dumped(artifacts_.list()), dumped(invocations), dumped(properties));
    }

  private:
    void notify(const Places& places, const Diagnostics& diagnostics) {
        for (const Diagnostic& one : diagnostics) {
            std::string text = one.message + '.';
            if (!one.expected.empty()) text += fmt::format(" Expected: {}.", one.expected);
            if (!one.suggestion.empty()) text += fmt::format(" Perhaps: {}.", one.suggestion);
            Json location{{"physicalLocation", places.physical(one.place)}};
            Json locations = places.ways_in(one.place, location);
            locations.insert(locations.begin(), std::move(location));
            notifications_.push_back({{"descriptor", {{"id", "input"}, {"index", 0}}},
                                      {"level", name(one.level)},
                                      {"message", message(text)},
                                      {"locations", std::move(locations)}});
        }
    }

    std::size_t index_of(const RuleInfo& rule) const {
        const auto found = std::find(frame_.rules.begin(), frame_.rules.end(), &rule);
        return static_cast<std::size_t>(found - frame_.rules.begin());
    }

    CheckFrame frame_ = {};
    sarif::Artifacts artifacts_ = {};
    Json notifications_ = Json::array();
    std::size_t unreadable_ = 0;
    Tally sum_ = {};
    std::string today_ = {};
    bool is_first_ = true;
};

}  // namespace

std::unique_ptr<CheckDocument> check_sarif() { return std::make_unique<CheckSarif>(); }

}  // namespace loopwright
