// For each pump, motor and unit: at each duty point and at the cold start, is its oil neither
// thinner nor thicker than it bears?
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <loopwright/hydraulics/point_worker.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/warm_oil.h>

namespace loopwright {

namespace {

/// An end of a window, and what stands there.
struct End {
    std::string_view limit;  ///< attribute
    bool thin = false;       ///< whether the oil may not be thinner, rather than thicker
    double temperature = 0.0;
    Level level = Level::error;
};

/// The oil of a machine at a point, K.
struct OilOf {
    double warmest = 0.0;  ///< its loop's, which is the warmer
    double coldest = 0.0;  ///< the reservoir's, that comes in
    bool in_loop = false;
};

class JudgedOil {
  public:
    JudgedOil(const AtWork& at, Docket& docket)
        : at_(at), docket_(docket), fluid_(hydraulics::fluid_of(at.circuit())) {}

    void judge(Index c) {
        if (is_oil_guessed(at_)) {
            leave_open(c, unknown_oil(at_, docket_));
            return;
        }
        const OilOf oil = oil_of(c);
        std::vector<End> ends;
        if (at_.cold_start) {
            ends.push_back({.limit = "start-viscosity", .temperature = oil.coldest});
        } else {
            ends.push_back({.limit = "min-viscosity", .thin = true, .temperature = oil.warmest});
            ends.push_back({.limit = "max-viscosity", .temperature = oil.coldest});
        }
        std::vector<std::string_view> missing;
        const auto figure = [&](std::string_view limit) {
            return at_.circuit().figure(at_.circuit().components[c], limit);
        };
        for (const End& end : ends)
            if (!figure(end.limit)) missing.push_back(docket_.text(path(c), ".", end.limit));
        bool holds = true;
        for (const End& end : ends)
            if (const auto limit = figure(end.limit))
                holds = hold_end(c, oil, end, *limit) && holds;
        if (!holds) return;
        for (const std::string_view datum : unknown(oil, c)) missing.push_back(datum);
        if (!missing.empty()) {
            leave_open(c, missing);
            return;
        }
        // The best range is no limit; a note must not stand for what is open elsewhere.
        if (at_.cold_start || !figure("start-viscosity")) return;
        for (const End& end : {End{"optimum-min-viscosity", true, oil.warmest, Level::note},
                               End{"optimum-max-viscosity", false, oil.coldest, Level::note}})
            if (const auto limit = figure(end.limit)) hold_end(c, oil, end, *limit);
    }

  private:
    void leave_open(Index c, std::span<const std::string_view> missing) {
        if (Verdict* const verdict = lacks(at_, docket_, ElementType::component, c, missing))
            verdict->message = docket_.text("whether ", path(c), " bears its oil is not known");
    }

    std::string_view path(Index c) const { return at_.circuit().components[c].path; }

    OilOf oil_of(Index c) const {
        OilOf oil{.warmest = *at_.point.oil, .coldest = *at_.point.oil};
        for (const LoopInfo& loop : at_.structure.loops) {
            const auto is_in = [&](const std::vector<Index>& machines) {
                return std::find(machines.begin(), machines.end(), c) != machines.end();
            };
            if (!is_in(loop.pumps) && !is_in(loop.actuators)) continue;
            for (const hydraulics::LoopHeat& heat : at_.point.loops) {
                if (heat.first_pump != loop.pumps.front()) continue;
                oil.in_loop = true;
                if (heat.temperature) oil.warmest = std::max(oil.warmest, *heat.temperature);
            }
        }
        return oil;
    }

    /// What may make the oil warmer, and so thinner.
    std::vector<std::string_view> unknown(const OilOf& oil, Index c) const {
        auto data = unknown_oil(at_, docket_);
        if (oil.in_loop && !at_.cold_start && data.empty())
            data = unknown_heat(at_.circuit(), at_.point.assumptions, docket_, {&c, 1});
        return data;
    }

    bool hold_end(Index c, const OilOf& oil, const End& end, double limit) {
        const auto oil_there = fluid_->at(Temperature(end.temperature));
        if (!oil_there) {
            if (Verdict* const verdict = lacks(at_, docket_, ElementType::component, c, {}))
                verdict->message = docket_.text(
                    "the viscosity of the oil at ",
                    docket_.told(end.temperature, Dimension::temperature), " is not known");
            return false;
        }
        const Held held{.against = end.thin ? Held::Against::least : Held::Against::most,
                        .measured = oil_there->viscosity.si(),
                        .required = limit,
                        .dimension = Dimension::kinematic_viscosity};
        if (end.level == Level::note && held.holds()) return true;
        Verdict* const verdict = hold(at_, docket_, ElementType::component, c, held, end.level);
        if (verdict != nullptr) tell(*verdict, c, oil, end, held);
        return held.holds();
    }

    void tell(Verdict& verdict, Index c, const OilOf& oil, const End& end, const Held& held) {
        const auto told = [&](double si) {
            return docket_.told(si, Dimension::kinematic_viscosity);
        };
        const bool best = end.level == Level::note;
        verdict.message =
            docket_.text("the oil of ", path(c), " has ", told(held.measured), " at ",
                         docket_.told(end.temperature, Dimension::temperature),
                         at_.cold_start            ? ", at the cold start"
                         : oil.in_loop && end.thin ? ", which its loop gets to"
                                                   : "",
                         best ? "; best is " : "; it bears ",
                         end.thin ? "no less than " : "no more than ", told(held.required));
        const Step steps[] = {{ElementType::component, c, none, none, "its oil"}};
        verdict.witness = docket_.witness(WitnessShape::set, steps);
    }

    const AtWork& at_;
    Docket& docket_;
    hydraulics::Answer<hydraulics::Fluid> fluid_;
};

void judge_point(const AtWork& at, Docket& docket) {
    JudgedOil oil(at, docket);
    for (const hydraulics::MachinePoint& machine : at.point.machines)
        if (!machine.straight) oil.judge(machine.component);
}

bool concerns(const FlowGraph& graph, const Structure& structure) {
    return has_machines(graph, structure);
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K06)", .place = "5.2.1"},
    {.work = "ASTM D341", .place = "viscosity over temperature"}};
constexpr std::string_view follows[] = {"loop-temperature", "oil-temperature"};

}  // namespace

extern constinit const Rule viscosity_window{
    .info = {.id = "viscosity-window",
             .family = "Flushing and cooling",
             .question = "Does each machine bear the viscosity of its oil, hot and at the cold "
                         "start?",
             .why = "Too thin, the oil no longer parts the sliding faces, and they seize. Too "
                    "thick, it does not follow the pistons: the machine cavitates and breaks up.",
             .decided = "At each duty point the viscosity at the temperature of the machine's "
                        "loop against min-viscosity, that at the reservoir's temperature against "
                        "max-viscosity; at the cold start against start-viscosity. Outside the "
                        "optimum viscosities, where they are given, there is a note.",
             .data = "duty, cold-start, oil or ambient, fluid, min-viscosity, max-viscosity, "
                     "start-viscosity, optimum viscosities, losses of machines",
             .subject = "each pump, motor and unit",
             .states = "at each duty point and the cold start",
             .level = Level::error,
             .remedy = "Choose another viscosity grade or an oil of higher index; cool or flush "
                       "more where it is too thin, warm it before the start where too thick.",
             .sources = sources,
             .follows = follows},
    .judge_point = judge_point,
    .concerns = concerns,
    .at_cold_start = true};

}  // namespace loopwright
