// Lines with a declared function that what they are joined to contradicts.
#include <algorithm>
#include <array>

#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// What a pipe can be joined to that tells its function.
enum class Sign : std::uint8_t { pump_outlet, pump_inlet, side, reservoir, housing };
constexpr std::size_t sign_count = 5;

std::string_view text_of(Sign sign) {
    switch (sign) {
        case Sign::pump_outlet:
            return "the outlet of a pump";
        case Sign::pump_inlet:
            return "the inlet of a pump";
        case Sign::side:
            return "a side of a loop";
        case Sign::reservoir:
            return "a reservoir";
        case Sign::housing:
            return "a housing";
    }
    return {};
}

/// For a pipe a port with each sign, else none.
using Signs = std::array<Index, sign_count>;

class SignBoard {
  public:
    SignBoard(const FlowGraph& graph, const Structure& structure)
        : pipes_(graph.pipes()), signs_(pipes_.count(), no_signs()) {
        const Circuit& circuit = graph.circuit();
        for (const Part part :
             {Part::pump, Part::hand_pump, Part::actuator, Part::pump_motor, Part::reservoir})
            for (const Index c : graph.components_with(part)) {
                const Range ports = circuit.components[c].ports;
                for (Index port = ports.begin; port < ports.end; ++port)
                    note_port(graph.part(c), circuit.ports[port].use, port);
            }
        for (const LoopInfo& loop : structure.loops)
            for (const SideInfo& side : loop.sides)
                if (side.role == SideRole::main)
                    for (const Index port : side.ports)
                        if (noted(Sign::side, port) == none) noted(Sign::side, port) = port;
    }

    const Signs& of(Index port) const { return signs_[pipes_.of(port)]; }

  private:
    static Signs no_signs() {
        Signs signs{};
        signs.fill(none);
        return signs;
    }

    Index& noted(Sign sign, Index port) {
        return signs_[pipes_.of(port)][static_cast<std::size_t>(sign)];
    }

    /// The first in the file counts.
    void note(Sign sign, Index port) { noted(sign, port) = std::min(noted(sign, port), port); }

    void note_port(Part part, PortUse use, Index port) {
        const bool pump = part == Part::pump || part == Part::hand_pump;
        if (part == Part::reservoir) note(Sign::reservoir, port);
        if (pump && use == PortUse::outlet) note(Sign::pump_outlet, port);
        if (pump && use == PortUse::suction) note(Sign::pump_inlet, port);
        if ((part == Part::pump || part == Part::actuator) && use == PortUse::drain)
            note(Sign::housing, port);
    }

    const Pipes& pipes_;
    std::vector<Signs> signs_;
};

std::span<const Sign> contradictions(LineFunction function) {
    static constexpr Sign to_suction[] = {Sign::pump_outlet, Sign::side, Sign::housing};
    static constexpr Sign to_return[] = {Sign::pump_outlet, Sign::side};
    static constexpr Sign to_charge[] = {Sign::side, Sign::reservoir, Sign::housing};
    static constexpr Sign to_working[] = {Sign::reservoir, Sign::housing};
    static constexpr Sign to_pilot[] = {Sign::pump_inlet};
    switch (function) {
        case LineFunction::suction:
            return to_suction;
        case LineFunction::return_:
        case LineFunction::drain:
            return to_return;
        case LineFunction::charge:
            return to_charge;
        case LineFunction::working:
            return to_working;
        case LineFunction::pilot:
            return to_pilot;
        case LineFunction::not_declared:
            break;
    }
    return {};
}

void judge_line(const Circuit& circuit, const SignBoard& board, Index l, Docket& docket) {
    const Line& line = circuit.lines[l];
    const Index joined = circuit.ports_of(line).front();
    const Signs& signs = board.of(joined);
    const auto against = contradictions(line.function);
    const auto sign = std::find_if(against.begin(), against.end(), [&](Sign one) {
        return signs[static_cast<std::size_t>(one)] != none;
    });
    if (sign == against.end()) return;
    Verdict& verdict = docket.conclude(ElementType::line, l, Outcome::fail, Level::warning);
    verdict.message = docket.text("line ", line.path, " is declared ", name(line.function),
                                  ", yet it is joined to ", text_of(*sign));
    const Index port = signs[static_cast<std::size_t>(*sign)];
    const Step steps[] = {{.type = ElementType::line, .index = l, .from = joined},
                          {.type = ElementType::component,
                           .index = circuit.ports[port].component,
                           .to = port,
                           .text = text_of(*sign)}};
    verdict.witness = docket.witness(WitnessShape::set, steps);
}

void conclude(const FlowGraph& graph, const Structure& structure, Docket& docket) {
    const Circuit& circuit = graph.circuit();
    if (std::none_of(circuit.lines.begin(), circuit.lines.end(),
                     [](const Line& line) { return line.function != LineFunction::not_declared; }))
        return;
    const SignBoard board(graph, structure);
    for (Index l = 0; l < circuit.lines.size(); ++l) judge_line(circuit, board, l, docket);
    if (docket.empty())
        docket.conclude(ElementType::circuit, none, Outcome::pass).message =
            "no line is joined against its declared function";
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K44)", .place = "5.4.6"}};

}  // namespace

extern constinit const Rule line_function{
    .info = {.id = "line-function",
             .family = "Drawing integrity",
             .question = "Is each line joined to what its declared function allows?",
             .why = "A line that is drawn as one thing and joined as another is piped, rated and "
                    "serviced wrongly: a drain hose on a side bursts.",
             .decided = "By the pipe that the line is part of. Suction: no outlet of a pump, no "
                        "side of a loop, no housing. Drain and return: no outlet of a pump, no "
                        "side. Charge: no side, reservoir or housing. Working: no reservoir or "
                        "housing. Pilot: no inlet of a pump.",
             .data = "function of lines, joins",
             .subject = "each line so contradicted; the circuit where there is none",
             .states = "none",
             .level = Level::warning,
             .remedy = "Put right the function that the line is declared for, or its joins.",
             .sources = sources},
    .conclude = conclude};

}  // namespace loopwright
