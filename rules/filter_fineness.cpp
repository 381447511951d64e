// For each filter: does it, or a finer one beside it, keep the oil as clean as the most sensitive
// component needs it?
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <vector>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Numbers of particles of at least 4, 6 and 14 um (ISO 4406); nothing where one is not counted.
using Code = std::array<std::optional<int>, 3>;

/// What the threshold's code is: 18/16/13.
constexpr std::array<int, 3> common_code = {18, 16, 13};
constexpr int highest_number = 28;  // "> 28" ends the standard's table

/// "18/16/13", "-/16/13": numbers never increase from left to right.
std::optional<Code> code_from(std::string_view text) {
    Code code;
    int above = highest_number;
    for (std::size_t i = 0; i < code.size(); ++i) {
        const auto slash = text.find('/');
        if ((slash == std::string_view::npos) != (i + 1 == code.size())) return std::nullopt;
        const std::string_view part = text.substr(0, slash);
        text.remove_prefix(slash == std::string_view::npos ? text.size() : slash + 1);
        if (part == "-") continue;
        int number = 0;
        const auto [end, trouble] = std::from_chars(part.data(), part.data() + part.size(), number);
        if (trouble != std::errc() || end != part.data() + part.size() || number < 0 ||
            number > above)
            return std::nullopt;
        above = number;
        code[i] = number;
    }
    if (!code[0] && !code[1] && !code[2]) return std::nullopt;
    return code;
}

/// By how many numbers a code is above the common one, by its strictest size; below 0: cleaner.
int numbers_above(const Code& code) {
    int least = highest_number;
    for (std::size_t i = 0; i < code.size(); ++i)
        if (code[i]) least = std::min(least, *code[i] - common_code[i]);
    return least;
}

/// Who needs the oil how clean.
struct Need {
    Index component = none;  ///< none: the fluid says it
    std::string_view code = {};
    int above = 0;
};

struct Needs {
    std::optional<Need> strictest = {};
    std::vector<std::string_view> missing = {};
    std::string_view unreadable = {};  ///< a code that is none, and whose
};

void take(Needs& needs, Docket& docket, Index component, std::string_view path,
          std::string_view text) {
    const auto code = code_from(text);
    if (!code) {
        const std::string_view datum = docket.text(path, ".cleanliness");
        needs.missing.push_back(datum);
        needs.unreadable =
            docket.text("'", text, "' of ", datum, " is no code of ISO 4406, such as 18/16/13");
        return;
    }
    const int above = numbers_above(*code);
    if (!needs.strictest || above < needs.strictest->above)
        needs.strictest = Need{component, text, above};
}

bool can_need(const Component& component) {
    const auto& specs = component.kind->attributes;
    return std::any_of(specs.begin(), specs.end(),
                       [](const AttributeSpec& spec) { return spec.name == "cleanliness"; });
}

/// What the fluid says holds for all parts that do not say it themselves.
Needs needs_of(const Circuit& circuit, Docket& docket) {
    Needs needs;
    const AttributeValue* const fluid =
        circuit.fluid ? circuit.figure_of(*circuit.fluid, "cleanliness") : nullptr;
    if (fluid != nullptr) take(needs, docket, none, "fluid", fluid->text);
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (!can_need(component)) continue;
        const AttributeValue* const own = circuit.attribute(component, "cleanliness");
        if (own != nullptr)
            take(needs, docket, c, component.path, own->text);
        else if (fluid == nullptr)
            needs.missing.push_back(docket.text(component.path, ".cleanliness"));
    }
    return needs;
}

/// The size at which the filtration ratio is `beta`, m, from the ratio at another: ln(beta) falls
/// with the size to the power of 1/0.8, which meets the pairs that the trade takes for equal
/// (10 um: 10 and 15 to 20 um: 75; 10 um: 2 and 35 to 45 um: 75).
double size_at(double beta, double size, double ratio) {
    constexpr double steepness = 0.8;
    return size * std::pow(std::log(beta) / std::log(ratio), steepness);
}

struct Filter {
    Index component = none;
    std::optional<double> fineness = {};  ///< as given, m
    std::optional<double> beta = {};
    std::optional<double> size = {};  ///< at which it has the ratio asked for, m
};

std::vector<Filter> filters_of(const Circuit& circuit, double beta) {
    std::vector<Filter> filters;
    for (Index c = 0; c < circuit.components.size(); ++c) {
        const Component& component = circuit.components[c];
        if (component.kind->part != Part::filter) continue;
        Filter filter{.component = c,
                      .fineness = circuit.figure(component, "fineness"),
                      .beta = circuit.figure(component, "beta")};
        if (filter.fineness && filter.beta && *filter.beta > 1.0)
            filter.size = size_at(beta, *filter.fineness, *filter.beta);
        filters.push_back(filter);
    }
    return filters;
}

class Judge {
  public:
    Judge(const Circuit& circuit, Docket& docket)
        : circuit_(circuit),
          docket_(docket),
          beta_(docket.threshold("beta")),
          needs_(needs_of(circuit, docket)),
          filters_(filters_of(circuit, beta_)) {
        if (!needs_.strictest) return;
        required_ = docket.threshold("fineness") *
                    std::exp2(needs_.strictest->above / docket.threshold("codes-per-doubling"));
        const auto fine = std::find_if(filters_.begin(), filters_.end(),
                                       [&](const Filter& one) { return is_fine_enough(one); });
        if (fine != filters_.end()) fine_ = &*fine;
    }

    void run() {
        for (const Filter& filter : filters_) judge(filter);
    }

  private:
    std::string_view path(Index c) const { return circuit_.components[c].path; }
    std::string_view told(double size) const { return docket_.told(size, Dimension::length); }
    bool is_fine_enough(const Filter& filter) const {
        return filter.size && *filter.size <= required_ * (1.0 + 1e-9);
    }

    void judge(const Filter& filter) {
        std::vector<std::string_view> missing;
        if (!filter.fineness) missing.push_back(docket_.text(path(filter.component), ".fineness"));
        if (!filter.beta) missing.push_back(docket_.text(path(filter.component), ".beta"));
        if (!missing.empty()) {
            leave_open(filter, missing, "how fine the filter is, is not given");
            return;
        }
        const bool too_coarse = needs_.strictest && fine_ == nullptr;
        if (!too_coarse && (!needs_.missing.empty() || !needs_.strictest)) {
            leave_open(filter, needs_.missing,
                       !needs_.unreadable.empty() ? needs_.unreadable
                                                  : "how clean the oil has to be is not given");
            return;
        }
        tell(filter, too_coarse);
    }

    void leave_open(const Filter& filter, std::span<const std::string_view> missing,
                    std::string_view message) {
        Verdict& verdict =
            docket_.conclude(ElementType::component, filter.component, Outcome::inconclusive);
        static constexpr std::string_view fluid[] = {"fluid.cleanliness"};
        verdict.missing =
            missing.empty() ? std::span<const std::string_view>(fluid) : docket_.missing(missing);
        verdict.message = message;
    }

    void tell(const Filter& filter, bool too_coarse) {
        const Need& need = *needs_.strictest;
        Verdict& verdict =
            docket_.conclude(ElementType::component, filter.component,
                             too_coarse ? Outcome::fail : Outcome::pass, Level::warning);
        const std::string_view who = need.component == none
                                         ? std::string_view("the fluid is to be")
                                         : docket_.text(path(need.component), " needs the oil");
        const std::string_view ratio = docket_.told(beta_, Dimension::ratio);
        // One that lets all through has no such size.
        const std::string_view has =
            filter.size ? docket_.text(path(filter.component), " has a filtration ratio of ", ratio,
                                       " at ", told(*filter.size))
                        : docket_.text(path(filter.component), " holds nothing back");
        const Filter* const other = is_fine_enough(filter) ? nullptr : fine_;
        verdict.message = docket_.text(
            has, "; ", who, " as clean as ", need.code, ", which asks for ", told(required_),
            other != nullptr ? docket_.text(": ", path(other->component), " sees to that") : "");
        if (filter.size)
            verdict.figures =
                docket_.figures({.measured = {*filter.size, Dimension::length},
                                 .required = Measure{required_, Dimension::length},
                                 .margin = Measure{required_ - *filter.size, Dimension::length}});
        std::vector<Step> steps = {
            {.type = ElementType::component, .index = filter.component, .text = "filters"}};
        if (other != nullptr)
            steps.push_back({.type = ElementType::component,
                             .index = other->component,
                             .text = "filters finer"});
        if (need.component != none)
            steps.push_back({.type = ElementType::component,
                             .index = need.component,
                             .text = "needs the cleanest oil"});
        verdict.witness = docket_.witness(WitnessShape::set, steps);
    }

    const Circuit& circuit_;
    Docket& docket_;
    double beta_;
    Needs needs_;
    std::vector<Filter> filters_;
    const Filter* fine_ = nullptr;  ///< one that keeps the oil clean enough
    double required_ = 0.0;
};

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    Judge(graph.circuit(), docket).run();
}

constexpr Citation practice = {.work = "common practice, no source", .place = {}};
constexpr Threshold thresholds[] = {
    {.name = "fineness",
     .dimension = Dimension::length,
     .value = 10e-6,
     .least = 1e-6,
     .most = 1e-3,
     .doc = "size at which a filter needs the ratio below for oil as clean as 18/16/13",
     .example = "10 um",
     .source = practice},
    {.name = "beta",
     .dimension = Dimension::ratio,
     .value = 75.0,
     .least = 2.0,
     .doc = "filtration ratio (ISO 16889) at that size",
     .example = "75",
     .source = practice},
    {.name = "codes-per-doubling",
     .dimension = Dimension::ratio,
     .value = 2.0,
     .least = 0.5,
     .doc = "numbers of the code by which the oil may be dirtier for twice that size",
     .example = "2",
     .source = practice}};
constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K23 and K30)",
     .place = "5.4.5.1, 5.4.5.3"},
    {.work = "ISO 4406 (the code), ISO 16889 (the filtration ratio)", .place = {}},
    practice};

}  // namespace

extern constinit const Rule filter_fineness{
    .info = {.id = "filter-fineness",
             .family = "Filtration",
             .question = "Is each filter fine enough for the component that needs the cleanest "
                         "oil?",
             .why = "What a filter lets through grinds the gaps of pumps, motors and control "
                    "spools: they leak more, then stick, and a stuck control moves the machine by "
                    "itself.",
             .decided = "The cleanest code of ISO 4406 that the fluid or a machine asks for gives "
                        "the size at which the filtration ratio has to be reached: that of the "
                        "thresholds at 18/16/13, twice that size for so many numbers more. A ratio "
                        "at another size is converted: its logarithm falls with the size to the "
                        "power of 1.25. What one filter keeps clean need not be kept clean by a "
                        "second one.",
             .data = "fineness, beta, cleanliness of the fluid and of machines",
             .subject = "each filter",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a finer element with a ratio of at least 75, and ask whether it still "
                       "passes the flow.",
             .sources = sources,
             .thresholds = thresholds},
    .conclude = conclude};

}  // namespace loopwright
