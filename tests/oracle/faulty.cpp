// The program with one rule judged wrongly: the second opinion must notice. Each planted error is
// one that a person could make; the rest of the program is as it is.
//
//     faulty_check RULE FILE...    the result as JSON on standard output
#include <algorithm>
#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/graph/feeds.h>
#include <loopwright/parser/reader.h>
#include <loopwright/render/writers/json_report.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright {
namespace {

constexpr std::uint8_t both = open_forward | open_backward;

/// A situation with some passages changed, and what hangs on them worked out anew.
class Tampered {
  public:
    template <typename Change>
    Tampered(const Situation& s, Change change)
        : edges_(s.region.edges.begin(), s.region.edges.end()),
          region_(s.region),
          standing_(s.standing) {
        for (std::size_t e = 0; e < edges_.size(); ++e) change(edges_[e], standing_[e]);
        region_.edges = edges_;
        find_feeds(s.graph, region_, standing_, s.loops, s.looped, s.open_part_ways, s.turning,
                   s.searches, feeds_);
    }

    void judge(const Situation& s, std::string_view rule, Docket& docket) const {
        const Situation changed{.graph = s.graph,
                                .region = region_,
                                .loops = s.loops,
                                .states = s.states,
                                .combination = s.combination,
                                .valves = s.valves,
                                .positions = s.positions,
                                .undecided = s.undecided,
                                .turning = s.turning,
                                .highs = s.highs,
                                .loop_states = s.loop_states,
                                .judged_pump = s.judged_pump,
                                .resting = s.resting,
                                .standing = standing_,
                                .sides = s.sides,
                                .feeds = feeds_,
                                .searches = s.searches,
                                .looped = s.looped,
                                .open_part_ways = s.open_part_ways};
        find_rule(rule)->judge(changed, docket);
    }

  private:
    std::vector<Edge> edges_;
    Region region_;
    Standing standing_;
    Feeds feeds_;
};

/// A check lets charge oil through either way.
void charge_supply(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "charge-supply", docket);
}

/// A shut valve between charge line and reservoir is taken for an open one.
void charge_vented(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::hand) open = both;
    }).judge(s, "charge-vented", docket);
}

/// The sense of a check is forgotten.
void charge_backflow(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "charge-backflow", docket);
}

/// An orifice is taken for a make-up check.
void make_up_check(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::metering)
            edge.passage_class = PassageClass::one_way;
    }).judge(s, "make-up-check", docket);
}

/// A shut-off valve before a relief valve is trusted to stay open.
void crossport_relief(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.shift == Shift::hand) edge.locked = true;
    }).judge(s, "crossport-relief", docket);
}

/// A cooler cleans the oil.
void filtration(const Situation& s, Docket& docket) {
    const std::vector<Component>& components = s.circuit().components;
    Tampered(s, [&](Edge& edge, std::uint8_t& /*open*/) {
        if (components[edge.component].kind->name == "cooler") edge.part = Part::filter;
    }).judge(s, "filtration", docket);
}

/// The springs of checks in a drain are forgotten.
void case_drain_path(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::one_way) edge.opening = 0.0;
    }).judge(s, "case-drain-path", docket);
}

/// Relief valves are taken for a way to exchange oil.
void loop_flushing(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::pressure_opened)
            edge.passage_class = PassageClass::metering;
    }).judge(s, "loop-flushing", docket);
}

/// The valve is thought to lead the high side to its outlet.
void flushing_side(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::pressure) open = open != 0 ? 0 : both;
    }).judge(s, "flushing-side", docket);
}

/// A filter cools the oil.
void cooling(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.part == Part::filter) edge.part = Part::cooler;
    }).judge(s, "cooling", docket);
}

/// Judges what hangs on no state on a circuit that is changed.
template <typename Change>
void conclude_on_changed(const FlowGraph& graph, const Structure& structure, std::string_view rule,
                         Docket& docket, Change change) {
    Circuit changed = graph.circuit();
    change(changed);
    find_rule(rule)->conclude(FlowGraph(changed), structure, docket);
}

/// Any bypass will do.
void filter_in_drain(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "filter-in-drain", docket, [](Circuit& circuit) {
        for (AttributeValue& value : circuit.attributes)
            if (value.spec->name == "bypass") value.si = 0.0;
    });
}

/// A port whose level is not given, or is above, is taken for one below.
void take_all_below(Circuit& circuit) {
    for (Port& port : circuit.ports) port.below_level = port.level_given = true;
}
void case_drain_return(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "case-drain-return", docket, take_all_below);
}
void return_below_level(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "return-below-level", docket, take_all_below);
}

/// That a valve is locked is not looked at.
void suction_shut_off(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "suction-shut-off", docket, [](Circuit& circuit) {
        for (AttributeValue& value : circuit.attributes)
            if (value.spec->name == "locked") value.si = 0.0;
    });
}

/// The sense of passages is forgotten.
void reservoir_balance(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    conclude_on_changed(graph, structure, "reservoir-balance", docket, [](Circuit& circuit) {
        for (Passage& passage : circuit.passages) passage.both_ways = true;
    });
}

struct Planted {
    std::string_view rule;
    void (*judge)(const Situation&, Docket&) = nullptr;
    void (*conclude)(const FlowGraph&, const Structure&, Docket&) = nullptr;
};

constexpr Planted planted[] = {
    {"lost-loop"},  // the worst state decides, where one in a loop is enough
    {"charge-supply", charge_supply},
    {"charge-vented", charge_vented},
    {"charge-backflow", charge_backflow},
    {"make-up-check", make_up_check},
    {"crossport-relief", crossport_relief},
    {"hose-safety"},  // no hose is noticed
    {"filtration", filtration},
    {"filter-bypass"},  // nothing is judged
    {"filter-in-drain", nullptr, filter_in_drain},
    {"case-drain-path", case_drain_path},
    {"case-drain-return", nullptr, case_drain_return},
    {"missing-drain-port"},  // nothing is judged
    {"loop-flushing", loop_flushing},
    {"flushing-side", flushing_side},
    {"cooling", cooling},
    {"cooler-bypass"},  // nothing is judged
    {"suction-shut-off", nullptr, suction_shut_off},
    {"reservoir-balance", nullptr, reservoir_balance},
    {"reservoir-size"},      // nothing is judged
    {"reservoir-breather"},  // the same
    {"level-indicator"},     // the same
    {"return-below-level", nullptr, return_below_level},
    {"dangling-line"},      // nothing is judged
    {"shorted-ports"},      // the same
    {"unused-definition"},  // nothing that is fixed is noticed
};

int run(std::string_view id, const std::vector<std::string>& files) {
    const auto* const error = std::find_if(std::begin(planted), std::end(planted),
                                           [&](const Planted& one) { return one.rule == id; });
    if (error == std::end(planted)) return 2;
    Rule wrong = *find_rule(id);
    if (error->judge != nullptr) {
        wrong.judge = error->judge;
        wrong.judge_alike = nullptr;
    } else if (error->conclude != nullptr) {
        wrong.conclude = error->conclude;
    } else {
        if (wrong.judge == nullptr && wrong.judge_alike == nullptr) wrong.conclude = nullptr;
        wrong.best_state = !wrong.best_state;
    }
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
