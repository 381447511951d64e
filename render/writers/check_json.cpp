#include <nlohmann/json.hpp>

#include <loopwright/render/writers/check_document.h>
#include <loopwright/render/writers/json_parts.h>
#include <loopwright/render/writers/report.h>

namespace loopwright {

namespace {

using namespace json;

Json json_of(const Diagnostics& diagnostics, const SourceSet& sources) {
    Json list = Json::array();
    for (const Diagnostic& diagnostic : diagnostics) {
        Json json{{"level", name(diagnostic.level)}, {"message", diagnostic.message}};
        if (!diagnostic.expected.empty()) json["expected"] = diagnostic.expected;
        if (!diagnostic.suggestion.empty()) json["suggestion"] = diagnostic.suggestion;
        json["place"] = place(sources.place(diagnostic.place));
        list.push_back(std::move(json));
    }
    return list;
}

Json json_of(const Circuit& circuit, const Witness& witness) {
    Json steps = Json::array();
    for (const Step& step : witness.steps) {
        Json json{{"type", name(step.type)}, {"id", id_of(circuit, step)}};
        put_passage(circuit, step, json);
        json["place"] = place(circuit.sources->place(place_of(circuit, step)));
        steps.push_back(std::move(json));
    }
    return {{"shape", name(witness.shape)}, {"steps", std::move(steps)}};
}

Json json_of(const Circuit& circuit, const Verdict& verdict) {
    Json json{{"rule", verdict.rule->id}, {"outcome", name(verdict.outcome)}};
    if (verdict.outcome == Outcome::fail) json["level"] = name(verdict.level);
    json["subject"] = subject(verdict.subject);
    put_states(circuit, verdict, json);
    json["message"] = verdict.message;
    if (!verdict.witness.steps.empty()) json["witness"] = json_of(circuit, verdict.witness);
    put_figures(verdict, json);
    if (verdict.outcome == Outcome::fail) json["remedy"] = verdict.rule->remedy;
    Json sources = Json::array();
    for (const Citation& source : verdict.rule->sources) sources.push_back(citation(source));
    json["sources"] = std::move(sources);
    put_standing(verdict, json);
    json["place"] = place(circuit.sources->place(place_of(circuit, verdict.subject)));
    return json;
}

class CheckJson : public CheckDocument {
  public:
    std::string head(const CheckFrame& frame) override {
        return "{\n\"format\": \"loopwright-check/1\",\n\"tool\": " +
               dumped({{"name", "loopwright"}, {"version", LOOPWRIGHT_VERSION}}) +
               ",\n\"thresholds\": " + dumped(thresholds(frame.thresholds)) +
               ",\n\"circuits\": [\n";
    }

    std::string circuit(std::string_view file, const Circuit& circuit,
                        const Diagnostics& diagnostics, const Structure& structure,
                        std::span<const Verdict> verdicts) override {
        Json json{{"file", file}};
        put_title(circuit, json);
        json["readable"] = true;
        json["diagnostics"] = json_of(diagnostics, *circuit.sources);
        put_structure(circuit, structure, json);
        Json list = Json::array();
        for (const Verdict& verdict : verdicts) list.push_back(json_of(circuit, verdict));
        json["verdicts"] = std::move(list);
        const Tally sum = tally(verdicts);
        json["summary"] = summary(sum);
        sum_ += sum;
        return part(dumped(json));
    }

    std::string unreadable(std::string_view file, const Diagnostics& diagnostics,
                           const SourceSet& sources) override {
        ++unreadable_;
        return part(dumped(
            {{"file", file}, {"readable", false}, {"diagnostics", json_of(diagnostics, sources)}}));
    }

    void waivers_held_on(std::string_view day) override { today_ = day; }

    std::string tail() override {
        Json sum{{"files", files_}, {"unreadable", unreadable_}};
        sum.update(summary(sum_));
        return "\n],\n" + (today_.empty() ? "" : "\"today\": " + dumped(today_) + ",\n") +
               "\"summary\": " + dumped(sum) + "\n}\n";
    }

  private:
    std::string part(std::string text) { return (files_++ == 0 ? "" : ",\n") + std::move(text); }

    std::size_t files_ = 0;
    std::size_t unreadable_ = 0;
    Tally sum_ = {};
    std::string today_ = {};
};

}  // namespace

std::unique_ptr<CheckDocument> check_json() { return std::make_unique<CheckJson>(); }

}  // namespace loopwright
