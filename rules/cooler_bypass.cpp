// For each cooler: can cold oil pass it by, over a bypass of its own or over another component?
#include <vector>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

struct Cooler {
    Index component = none;
    Index a = none;     ///< joint
    Index b = none;     ///< joint
    Index past = none;  ///< component that leads past it
};

bool counts(const Passage& passage) {
    return passage.passage != PassageClass::leakage &&
           passage.passage != PassageClass::displacement;
}

/// Looks which components lead past coolers: one with a passage between the two joints, or one that
/// leads from one of its ports to either joint, as a thermostat does.
class WaysPast {
  public:
    WaysPast(const FlowGraph& graph, std::vector<Cooler>& coolers)
        : graph_(graph),
          coolers_(coolers),
          coolers_at_(graph.joint_count()),
          seen_from_(graph.joint_count(), none),
          through_(graph.circuit().ports.size()) {
        for (Index i = 0; i < coolers.size(); ++i) coolers_at_[coolers[i].a].push_back(i);
    }

    void find() {
        const Circuit& circuit = graph_.circuit();
        for (const Passage& passage : circuit.passages) {
            if (!counts(passage)) continue;
            through_[passage.from].push_back(passage.to);
            through_[passage.to].push_back(passage.from);
        }
        for (Index port = 0; port < circuit.ports.size(); ++port) see(port);
    }

  private:
    /// The joints that the passages at a port lead to, and its own.
    void see(Index port) {
        if (through_[port].empty()) return;
        mark(port, port);
        for (const Index other : through_[port]) mark(other, port);
        see_coolers(port, port);
        for (const Index other : through_[port]) see_coolers(other, port);
    }

    void mark(Index port, Index from) { seen_from_[graph_.joint_of(port)] = from; }

    void see_coolers(Index port, Index from) {
        const Index component = graph_.circuit().ports[from].component;
        for (const Index i : coolers_at_[graph_.joint_of(port)]) {
            Cooler& cooler = coolers_[i];
            if (cooler.past == none && cooler.component != component &&
                seen_from_[cooler.b] == from)
                cooler.past = component;
        }
    }

    const FlowGraph& graph_;
    std::vector<Cooler>& coolers_;
    std::vector<std::vector<Index>> coolers_at_;  // by joint of their port A
    std::vector<Index> seen_from_;                // by joint: the last port that leads there
    std::vector<std::vector<Index>> through_;     // by port
};

void judge(const Circuit& circuit, Index c, Index past, Docket& docket) {
    const Component& cooler = circuit.components[c];
    const bool own = circuit.attribute(cooler, "bypass") != nullptr;
    const bool sound = own || past != none;
    Verdict& verdict = docket.conclude(ElementType::component, c,
                                       sound ? Outcome::pass : Outcome::fail, Level::warning);
    if (own)
        verdict.message =
            docket.text("cold oil passes the cooler ", cooler.path, " by over its bypass");
    else if (sound)
        verdict.message = docket.text("oil can pass the cooler ", cooler.path, " by over ",
                                      circuit.components[past].path);
    else
        verdict.message =
            docket.text("cold, thick oil cannot pass the cooler ", cooler.path, " by");
    std::vector<Step> steps{{ElementType::component, c, none, none, "cooler"}};
    if (!own && sound) steps.push_back({ElementType::component, past, none, none, "leads past it"});
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

/// The joints of a cooler's ports.
Cooler cooler_of(const FlowGraph& graph, Index c) {
    const Component& component = graph.circuit().components[c];
    for (const Passage& passage : graph.circuit().passages_of(component))
        if (passage.passage == PassageClass::element)
            return {c, graph.joint_of(passage.from), graph.joint_of(passage.to)};
    return {c};
}

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    std::vector<Cooler> without;
    for (const Index c : graph.components_with(Part::cooler)) {
        if (circuit.attribute(circuit.components[c], "bypass") != nullptr)
            judge(circuit, c, none, docket);
        else
            without.push_back(cooler_of(graph, c));
    }
    if (without.empty()) return;
    WaysPast(graph, without).find();
    for (const Cooler& cooler : without) judge(circuit, cooler.component, cooler.past, docket);
}

constexpr Citation sources[] = {{.work = "US Army TM 5-3895-348-14&P (the project's row C-30)",
                                 .place = "paragraph 7-107: a bypass at the cooler"}};

}  // namespace

extern constinit const Rule cooler_bypass{
    .info = {.id = "cooler-bypass",
             .family = "Flushing and cooling",
             .question = "Can cold oil pass every cooler by?",
             .why = "Cold oil is thick. Pressed through a cooler it raises the pressure of the "
                    "housings that drain through it until the shaft seals blow out, or it bursts "
                    "the cooler.",
             .decided = "The cooler gives the opening pressure of a bypass, or another component "
                        "leads from its one line to its other, or from one port to both, as a "
                        "thermostat does.",
             .data = "bypass, joins",
             .subject = "each cooler",
             .states = "none",
             .level = Level::warning,
             .remedy = "Fit a cooler with a bypass, or put a check valve with a spring beside it.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
