// For each relief valve on a side or charge line of a loop: does everything there bear what it
// holds, and is it set far enough above the working pressure?
#include <algorithm>
#include <cmath>
#include <vector>

#include <loopwright/graph/ceilings.h>
#include <loopwright/graph/witness.h>
#include <loopwright/hydraulics/duty.h>
#include <loopwright/rules/at_work.h>
#include <loopwright/rules/limited_pieces.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/side_reliefs.h>

namespace loopwright {

extern const Rule pressure_limiter;

namespace {

/// A valve built to limit a pressure, of which it can be said what it holds at its full flow;
/// sequence, priority, counterbalance and reducing valves open to another end.
bool is_relief_valve(const Circuit& circuit, const Edge& edge) {
    if (!is_relief(edge)) return false;
    const auto& attributes = circuit.components[edge.component].kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(),
                       [](const AttributeSpec& spec) { return spec.name == "full-flow-pressure"; });
}

/// One of the two questions decided.
struct Finding {
    Outcome outcome = Outcome::pass;
    Level level = Level::error;

    bool worse_than(const Finding& other) const {
        return outcome != other.outcome ? outcome > other.outcome
                                        : outcome == Outcome::fail && level > other.level;
    }
};

/// A relief valve that is asked about.
struct Asked {
    Index edge = none;
    const LimitedPiece* piece = nullptr;
    // What it holds at its full flow, missing settings taken for infinite and for nothing:
    double most = 0.0;
    double least = 0.0;
};

class Judge {
  public:
    Judge(const Situation& s, Docket& docket) : s_(s), docket_(docket), pieces_(s) {
        for (Index e = 0; e < s.region.edges.size(); ++e) {
            const Edge& edge = s.region.edges[e];
            if (!is_relief_valve(s_.circuit(), edge)) continue;
            const LimitedPiece* const piece = pieces_.at(edge.from);
            // What comes back to the piece relieves nothing.
            if (piece != nullptr && !pieces_.together(edge.from, edge.to))
                asked_.push_back({.edge = e, .piece = piece});
        }
        if (!asked_.empty()) pieces_.find_ratings();
    }

    /// By a bound for all situations alike: false, with nothing recorded, where that is too much.
    bool run_alike() {
        if (asked_.empty()) return true;
        find_pressures(any_of_alike(s_));
        if (std::any_of(asked_.begin(), asked_.end(), [](const Asked& one) {
                return one.piece->least && one.most > *one.piece->least;
            }))
            return false;
        for (const Asked& one : asked_) record(one, s_.alike.states);
        return true;
    }

    void run() {
        if (asked_.empty()) return;
        find_pressures(case_of(s_, UnknownSetting::limits_nothing, Direction::none));
        for (const Asked& one : asked_) record(one, s_.states);
    }

  private:
    const Component& valve(const Asked& one) const {
        return s_.circuit().components[s_.region.edges[one.edge].component];
    }
    /// NaN where it is not given.
    double setting(const Asked& one) const { return s_.region.edges[one.edge].opening; }
    std::string_view say(double pressure) { return docket_.told(pressure, Dimension::pressure); }
    double required() const { return docket_.threshold(pressure_limiter.info, "margin"); }

    void find_pressures(CeilingCase one) {
        std::vector<Index> edges;
        for (const Asked& relief : asked_) edges.push_back(relief.edge);
        one.unknown = UnknownSetting::limits_nothing;
        const std::vector<double> most = find_full_pressures(s_, one, edges);
        one.unknown = UnknownSetting::zero;
        const std::vector<double> least =
            unknown_settings().empty() ? most : find_full_pressures(s_, one, edges);
        for (std::size_t i = 0; i < asked_.size(); ++i) {
            asked_[i].most = most[i];
            asked_[i].least = least[i];
        }
    }

    static Finding borne(const Asked& one) {
        if (!one.piece->least) return {.outcome = Outcome::inconclusive};
        if (one.most <= *one.piece->least) return {};
        return {.outcome = one.least > *one.piece->least ? Outcome::fail : Outcome::inconclusive};
    }

    Finding above_working(const Asked& one) const {
        if (!one.piece->on_main_side) return {};
        if (awaits_points(one)) return {};
        if (!one.piece->working || std::isnan(setting(one)))
            return {.outcome = Outcome::inconclusive};
        if (setting(one) - *one.piece->working < required() * (1 - 1e-9))
            return {.outcome = Outcome::fail, .level = Level::warning};
        return {};
    }

    /// Points of motion say what the working pressure is that no pump states.
    bool awaits_points(const Asked& one) const {
        if (!one.piece->on_main_side || one.piece->working || std::isnan(setting(one)))
            return false;
        const Circuit& circuit = s_.circuit();
        for (Index point = 0; point < circuit.points.size(); ++point)
            if (hydraulics::PointFigures(circuit, point).moves()) return true;
        return false;
    }

    void record(const Asked& one, StateSet states) {
        const Finding rating = borne(one);
        const Finding margin = above_working(one);
        const Finding& worst = margin.worse_than(rating) ? margin : rating;
        const Index component = s_.region.edges[one.edge].component;
        Verdict* verdict = docket_.record(s_, ElementType::component, component, states,
                                          worst.outcome, worst.level, -spare(one, worst, margin));
        if (awaits_points(one)) docket_.await_points(ElementType::component, component);
        if (worst.outcome == Outcome::inconclusive)
            docket_.add_missing(ElementType::component, component,
                                find_missing(one, rating, margin, verdict));
        else if (verdict != nullptr && &worst == &margin)
            tell_margin(one, *verdict);
        else if (verdict != nullptr)
            tell_rating(one, *verdict);
    }

    /// By how much the question that decides is met, Pa; 0 where that cannot be told.
    double spare(const Asked& one, const Finding& worst, const Finding& margin) const {
        if (worst.outcome == Outcome::inconclusive) return 0.0;
        if (&worst == &margin) return setting(one) - *one.piece->working - required();
        return *one.piece->least - held(one, worst.outcome);
    }

    /// What it holds by the reading that the outcome stands on.
    static double held(const Asked& one, Outcome outcome) {
        return outcome == Outcome::fail ? one.least : one.most;
    }

    void tell_margin(const Asked& one, Verdict& verdict) {
        const double working = *one.piece->working;
        const double above = setting(one) - working;
        const auto what =
            above > 0.0
                ? docket_.text(" is set ", say(above), " above the working pressure of ",
                               say(working), "; at least ", say(required()), " are asked for")
                : docket_.text(" is set to ", say(setting(one)),
                               ", not above the working pressure of ", say(working));
        verdict.message = docket_.text(valve(one).path, what);
        verdict.figures =
            docket_.figures({.measured = {above, Dimension::pressure},
                             .required = Measure{required(), Dimension::pressure},
                             .margin = Measure{above - required(), Dimension::pressure}});
        const Step steps[] = {{ElementType::component, one.piece->working_pump, none, none,
                               "works up to its working pressure"},
                              opens(one, none)};
        verdict.witness = docket_.witness(WitnessShape::set, steps);
    }

    void tell_rating(const Asked& one, Verdict& verdict) {
        const double rating = *one.piece->least;
        const std::string_view weakest = path_of(s_.circuit(), one.piece->weakest);
        const bool fails = verdict.outcome == Outcome::fail;
        const double pressure = held(one, verdict.outcome);
        verdict.witness = way_to_weakest(one);
        if (std::isinf(pressure)) {
            verdict.message = docket_.text("nothing limits what ", valve(one).path,
                                           " discharges against, and so what it holds");
            return;
        }
        verdict.message =
            fails ? docket_.text(valve(one).path, " holds ", say(pressure), ", more than the ",
                                 say(rating), " that ", weakest, " is rated for")
                  : docket_.text(valve(one).path, " holds ", say(pressure), " at most, which ",
                                 weakest, ", the weakest part there, bears");
        verdict.figures =
            docket_.figures({.measured = {pressure, Dimension::pressure},
                             .required = Measure{rating, Dimension::pressure},
                             .margin = Measure{rating - pressure, Dimension::pressure}});
    }

    Step opens(const Asked& one, Index at) const {
        return {ElementType::component, s_.region.edges[one.edge].component, none, at,
                "opens at its setting"};
    }

    /// From the valve's inlet to what has the least rating.
    Witness way_to_weakest(const Asked& one) {
        const Rated& weakest = one.piece->weakest;
        const RatedPlace& place = one.piece->place;
        const Index inlet = entry_port(s_.graph, s_.region, arc_over(s_.region, one.edge));
        std::vector<FlowArc>& way = s_.searches.path();
        std::vector<Step>& steps = s_.searches.steps();
        steps.push_back(opens(one, inlet));
        if (!pieces_.add_way(s_.region.edges[one.edge].from, place.node, way)) {
            steps.front().to = none;
            steps.push_back({weakest.type, weakest.index, none, none, "bears the least"});
            return docket_.witness(WitnessShape::set, steps);
        }
        add_walk(s_.graph, s_.region, way, {.from = inlet, .to = place.port}, steps);
        if (weakest.type == ElementType::component)
            steps.push_back({weakest.type, weakest.index, place.port, none, "bears the least"});
        else if (steps.back().type != ElementType::line || steps.back().index != weakest.index)
            steps.push_back({weakest.type, weakest.index, place.port, other_end(weakest, place),
                             "bears the least"});
        return docket_.witness(WitnessShape::path, steps);
    }

    Index other_end(const Rated& line, const RatedPlace& place) const {
        const auto ports = s_.circuit().ports_of(s_.circuit().lines[line.index]);
        return ports.front() == place.port ? ports.back() : ports.front();
    }

    /// The data that an inconclusive finding lacks. `verdict`: to tell it in; may be null.
    std::vector<std::string_view> find_missing(const Asked& one, const Finding& rating,
                                               const Finding& margin, Verdict* verdict) {
        std::vector<std::string_view> data;
        std::vector<Step>& steps = s_.searches.steps();
        steps.push_back(opens(one, none));
        const std::string_view path = valve(one).path;
        std::string_view message;
        if (margin.outcome == Outcome::inconclusive) {
            message = docket_.text("whether ", path, " is set far enough above the ",
                                   "working pressure cannot be told");
            if (std::isnan(setting(one))) add_setting(one.edge, data);
            if (!one.piece->working)
                for (const Index pump : one.piece->silent_pumps)
                    data.push_back(
                        docket_.text(s_.circuit().components[pump].path, ".working-pressure"));
        }
        if (rating.outcome == Outcome::inconclusive && one.piece->least) {
            message = docket_.text("what ", path, " holds hangs on settings that are not given");
            for (const Index e : unknown_settings())
                if (hangs_on(one, e)) add_setting(e, data);
        } else if (rating.outcome == Outcome::inconclusive) {
            message = docket_.text("what the parts at ", path, " bear is not given");
            for (const Rated& rated : one.piece->unrated) {
                data.push_back(
                    docket_.text(path_of(s_.circuit(), rated), ".", rating_attribute(rated)));
                steps.push_back({rated.type, rated.index, none, none, "is not rated"});
            }
        }
        if (verdict != nullptr) {
            verdict->message = message;
            verdict->witness = docket_.witness(WitnessShape::set, steps);
        }
        return data;
    }

    /// Whether what a relief holds changes with one missing setting alone.
    bool hangs_on(const Asked& one, Index unknown) const {
        CeilingCase other = case_of(s_, UnknownSetting::limits_nothing, Direction::none);
        other.otherwise = s_.region.edges[unknown].component;
        if (find_full_pressures(s_, other, {&one.edge, 1}).front() != one.most) return true;
        other.unknown = UnknownSetting::zero;
        return find_full_pressures(s_, other, {&one.edge, 1}).front() != one.least;
    }

    /// Each component once.
    std::vector<Index> unknown_settings() const {
        std::vector<Index> edges;
        for (Index e = 0; e < s_.region.edges.size(); ++e) {
            const Edge& edge = s_.region.edges[e];
            if (has_unknown_setting(s_.circuit(), edge) &&
                (edges.empty() || s_.region.edges[edges.back()].component != edge.component))
                edges.push_back(e);
        }
        return edges;
    }

    void add_setting(Index e, std::vector<std::string_view>& data) {
        const Component& component = s_.circuit().components[s_.region.edges[e].component];
        const std::string_view datum = docket_.text(component.path, ".", setting_of(component));
        if (std::find(data.begin(), data.end(), datum) == data.end()) data.push_back(datum);
    }

    const Situation& s_;
    Docket& docket_;
    LimitedPieces pieces_;
    std::vector<Asked> asked_;
};

bool any_relief(const Situation& s) {
    s.graph.work += s.region.edges.size();
    return std::any_of(s.region.edges.begin(), s.region.edges.end(),
                       [&](const Edge& edge) { return is_relief_valve(s.circuit(), edge); });
}

bool judge_alike(const Situation& s, Docket& docket) {
    if (!any_relief(s)) return true;
    return s.alike.same_feeds && Judge(s, docket).run_alike();
}

void judge(const Situation& s, Docket& docket) {
    if (any_relief(s)) Judge(s, docket).run();
}

/// How far a relief valve's setting is above the pressure over it at a duty point.
void judge_at(const AtWork& at, Docket& docket, Index p) {
    const Circuit& circuit = at.circuit();
    const Passage& passage = circuit.passages[p];
    const auto told = [&](double figure) { return docket.told(figure, Dimension::pressure); };
    const double margin = docket.threshold(pressure_limiter.info, "margin");
    const bool drained =
        passage.spring_chamber != none && !at.graph.lines_of(passage.spring_chamber).empty();
    const double over =
        at.pressure(passage.from) - at.pressure(drained ? passage.spring_chamber : passage.to);
    Verdict* const verdict = hold(at, docket, ElementType::component, passage.component,
                                  {.against = Held::Against::least,
                                   .measured = passage.opening - over,
                                   .required = margin,
                                   .dimension = Dimension::pressure},
                                  Level::warning);
    if (verdict == nullptr) return;
    verdict->message = docket.text(
        circuit.components[passage.component].path, " is set to ", told(passage.opening), "; ",
        told(over), " stand over it at work, and it should be set ", told(margin), " above that");
    const Step steps[] = {
        {ElementType::component, passage.component, passage.from, none, "opens at its setting"}};
    verdict->witness = docket.witness(WitnessShape::set, steps);
}

void judge_point(const AtWork& at, Docket& docket) {
    if (!at.moves()) return;
    for (const LoopInfo& loop : at.structure.loops)
        for (const SideInfo* side : main_sides(loop, at.point.state_of(loop.pumps.front())))
            for (const Index p : reliefs_of(at.circuit(), *side)) judge_at(at, docket, p);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01 and K02)", .place = "5.2.2"},
    {.work = "common practice, no source", .place = "20 to 30 bar above the working pressure"}};
constexpr std::string_view follows[] = {"charge-relief", "charge-vented", "charge-supply"};

}  // namespace

extern constinit const Rule relief_setting{
    .info = {.id = "relief-setting",
             .family = "High-pressure protection",
             .question = "Is each relief valve set above the highest working pressure by its "
                         "margin, and below every rating on its side?",
             .why = "A relief valve that holds more than its side bears protects nothing: hoses "
                    "and housings burst before it opens. One set too near the working pressure "
                    "opens in normal work and burns the oil.",
             .decided =
                 "What it holds at its full flow (its setting where that is not given), over the "
                 "pressure of the low side or charge line that it discharges into, unless its "
                 "spring chamber is drained outside, against the least rating on the side or "
                 "charge line, all that ways open both ways join to it. On a side, its setting "
                 "against the working pressure that the pumps of the loop state (where they state "
                 "none, against their pressure limiters), and against what stands over it at each "
                 "solved duty point of motion, with the margin of pressure-limiter.",
             .data = "setting, full-flow-pressure, drain, rating, max-pressure, working-pressure, "
                     "pressure-limiter, joins; duty",
             .subject = "each relief valve on a side or charge line of a loop",
             .states = "none",
             .level = Level::error,
             .remedy = "Set the relief valve lower or fit parts that bear more; set it higher, or "
                       "work at a lower pressure, where the margin is too small.",
             .sources = sources,
             .follows = follows},
    .judge = judge,
    .judge_alike = judge_alike,
    .judge_point = judge_point,
    .stateless = true};

}  // namespace loopwright
