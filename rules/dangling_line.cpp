// Lines and hoses that join one port only.
#include <algorithm>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

void conclude(const FlowGraph& graph, const Structure& /*structure*/, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    for (Index l = 0; l < circuit.lines.size(); ++l) {
        const Line& line = circuit.lines[l];
        if (line.joins.size() != 1) continue;
        Verdict& verdict = docket.conclude(ElementType::line, l, Outcome::fail);
        verdict.message = docket.text(
            line.path, " joins ", circuit.port_name(circuit.ports_of(line).front()), " to nothing");
        const Step step{ElementType::line, l, circuit.ports_of(line).front(), none, {}};
        verdict.witness = docket.witness(WitnessShape::set, {&step, 1});
    }
    if (docket.empty() && !circuit.lines.empty())
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "every line joins two ports or more";
}

constexpr Citation sources[] = {{.work = "common practice, no source", .place = {}}};

}  // namespace

extern constinit const Rule dangling_line{
    .info = {.id = "dangling-line",
             .family = "Drawing integrity",
             .question = "Does every line join two ports or more?",
             .why = "A line that ends in nothing is a drawing error at best; built so, it is an "
                    "open end that oil under pressure leaves by.",
             .decided = "Each line and hose is counted the ports that it joins.",
             .data = "joins",
             .subject = "each line that joins one port; the circuit where there is none",
             .states = "none",
             .level = Level::error,
             .remedy = "Join its other end, or close the port with a plug.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
