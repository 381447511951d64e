// For each loop: does what turns its pumps turn a charge pump too? Else a pressure switch or sensor
// on the charge line must stop the drive.
#include <algorithm>
#include <optional>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// A pressure switch, or a sensor of pressure.
bool feels_pressure(const Circuit& circuit, const Component& instrument) {
    if (instrument.kind->part != Part::instrument) return false;
    const std::string_view measured = circuit.choice(instrument, "measures");
    if (!measured.empty()) return measured == "pressure";
    const auto& attributes = instrument.kind->attributes;
    return std::any_of(attributes.begin(), attributes.end(), [](const AttributeSpec& spec) {
        return spec.name == "setting" && spec.dimension == Dimension::pressure;
    });
}

/// Ports of the instruments whose pressure an interlock reads.
std::vector<Index> read_ports(const Circuit& circuit) {
    std::vector<Index> ports;
    for (const Interlock& interlock : circuit.interlocks) {
        if (interlock.when != Trigger::below && interlock.when != Trigger::above) continue;
        const Component& instrument = circuit.components[interlock.watched];
        if (!feels_pressure(circuit, instrument)) continue;
        for (Index port = instrument.ports.begin; port < instrument.ports.end; ++port)
            ports.push_back(port);
    }
    return ports;
}

bool would_feed(const Situation& s, const ChargePump& pump, Index loop) {
    const auto loops = s.feeds.would_feed(pump);
    return std::find(loops.begin(), loops.end(), loop) != loops.end();
}

/// The candidate turned by what turns every pump of the loop; null if there is none.
const ChargePump* turned_with(const Situation& s, Index loop) {
    const Drives& drives = s.graph.drives();
    const auto with_all = [&](const ChargePump& pump) {
        const Index drive = drives.of(s.region.edges[pump.edge].component);
        const auto pumps = s.loops.pumps_of(s.loops.loops[loop]);
        return drive != none && std::all_of(pumps.begin(), pumps.end(),
                                            [&](Index c) { return drives.of(c) == drive; });
    };
    const auto found =
        std::find_if(s.feeds.pumps.begin(), s.feeds.pumps.end(), [&](const ChargePump& pump) {
            return pump.delivers && would_feed(s, pump, loop) && with_all(pump);
        });
    return found == s.feeds.pumps.end() ? nullptr : &*found;
}

/// Searches the lines of candidates for an instrument that an interlock reads.
class Lines {
  public:
    explicit Lines(const Situation& s) : s_(s), read_(read_ports(s.circuit())) {}

    /// The port of one that stands on the candidate's line; `none` if there is none.
    Index instrument_on(const ChargePump& pump, std::vector<FlowArc>& way) const {
        if (read_.empty()) return none;
        const auto line = s_.searches.take(s_.region.node_count);
        line->begin_at(pump.outlet);
        s_.graph.work += line->run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& edge = s_.region.edges[arc.edge];
            return (edge.passage_class == PassageClass::element || edge.shift == Shift::hand) &&
                   stands_open(s_.standing, arc) && s_.region.is_reservoir[arc.to] == 0 &&
                   !on_a_side(s_, arc.to);
        });
        for (const Index node : line->order)
            for (const Index port : read_)
                if (s_.graph.joint_of(port) == s_.region.joints[node]) {
                    line->add_path_to(s_.region, node, way);
                    return port;
                }
        return none;
    }

  private:
    const Situation& s_;
    std::vector<Index> read_;
};

std::string_view path_of(const Situation& s, const ChargePump& pump) {
    return s.circuit().components[s.region.edges[pump.edge].component].path;
}

/// A charge pump and the loop's pumps.
Witness pumps_of(const Situation& s, Docket& docket, Index loop, const ChargePump& pump,
                 std::string_view text) {
    std::vector<Step>& steps = s.searches.steps();
    steps.push_back(
        {ElementType::component, s.region.edges[pump.edge].component, none, none, text});
    for (const Index c : s.loops.pumps_of(s.loops.loops[loop]))
        steps.push_back({ElementType::component, c, none, none, "pump of the loop"});
    return docket.witness(WitnessShape::set, steps);
}

void pass_turned(const Situation& s, Docket& docket, Index loop, StateSet states,
                 const ChargePump& pump) {
    Verdict* verdict =
        docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump, states, Outcome::pass);
    if (verdict == nullptr) return;
    verdict->message = docket.text("what turns the loop's pumps turns ", path_of(s, pump), " too");
    verdict->witness = pumps_of(s, docket, loop, pump, "turned with the loop's pumps");
}

/// False where no interlock reads the pressure of any line that would feed the loop.
bool pass_read(const Situation& s, Docket& docket, Index loop, const Lines& lines) {
    std::vector<FlowArc>& way = s.searches.path();
    for (const ChargePump& pump : s.feeds.pumps) {
        if (!would_feed(s, pump, loop)) continue;
        const Index port = lines.instrument_on(pump, way);
        if (port == none) continue;
        Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                         s.loop_states[loop], Outcome::pass);
        if (verdict == nullptr) return true;
        const Index instrument = s.circuit().ports[port].component;
        const Index outlet = port_at(s, pump.edge, pump.outlet);
        std::vector<Step>& steps = s.searches.steps();
        steps.push_back({ElementType::component, s.region.edges[pump.edge].component, none, outlet,
                         "delivers"});
        add_walk(s.graph, s.region, way, {.from = outlet, .to = port}, steps);
        steps.push_back({ElementType::component, instrument, port, none, "read by an interlock"});
        verdict->witness = docket.witness(WitnessShape::path, steps);
        verdict->message = docket.text("an interlock reads the pressure that ", path_of(s, pump),
                                       " delivers at ", s.circuit().components[instrument].path);
        return true;
    }
    return false;
}

void fail(const Situation& s, Docket& docket, Index loop, const ChargePump& pump) {
    Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                     s.loop_states[loop], Outcome::fail);
    if (verdict == nullptr) return;
    const Drives& drives = s.graph.drives();
    const Index c = s.region.edges[pump.edge].component;
    const std::string_view wrong = !drives.turned(c) ? ": nothing turns it"
                                   : !pump.delivers  ? ": it stands, or turns the wrong way round"
                                                     : ": its drive can stop by itself";
    verdict->witness = pumps_of(s, docket, loop, pump, "not turned with the loop's pumps");
    verdict->message =
        docket.text("what turns the loop's pumps does not keep ", path_of(s, pump), " delivering",
                    wrong, ", and no interlock reads the charge pressure");
}

/// A pump on the loop's drive is there in all situations with the same candidates.
bool judge_alike(const Situation& s, Docket& docket) {
    if (!same_charge_pumps(s)) return false;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop) && turned_with(s, loop) == nullptr) return false;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop)
        if (judged(s, loop))
            pass_turned(s, docket, loop, s.alike.loop_states[loop], *turned_with(s, loop));
    return true;
}

void judge(const Situation& s, Docket& docket) {
    std::optional<Lines> lines;
    for (Index loop = 0; loop < s.loops.loops.size(); ++loop) {
        if (!judged(s, loop)) continue;
        if (const ChargePump* with = turned_with(s, loop); with != nullptr) {
            pass_turned(s, docket, loop, s.loop_states[loop], *with);
            continue;
        }
        const auto candidate =
            std::find_if(s.feeds.pumps.begin(), s.feeds.pumps.end(),
                         [&](const ChargePump& pump) { return would_feed(s, pump, loop); });
        if (candidate == s.feeds.pumps.end()) {
            Verdict* verdict = docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                             s.loop_states[loop], Outcome::not_applicable);
            if (verdict != nullptr) verdict->message = "no pump should feed the loop";
            continue;
        }
        if (!lines) lines.emplace(s);
        if (!pass_read(s, docket, loop, *lines)) fail(s, docket, loop, *candidate);
    }
}

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's row K04)", .place = "5.2.2"},
    {.work = "common practice, no source", .place = "charge pump on the loop pump's shaft"}};

}  // namespace

extern constinit const Rule charge_pump_drive{
    .info = {.id = "charge-pump-drive",
             .family = "Charge supply",
             .question =
                 "Does whatever turns the loop pump turn the charge pump too, the right way "
                 "round, at rest under load included (or is loss of charge pressure "
                 "sensed)?",
             .why = "A loop that goes on without charge runs empty and loses its braking torque "
                    "under load: the load runs away, and the brake may drop in at full speed.",
             .decided = "A pump that should feed the loop delivers, and shafts, gearboxes and "
                        "engaged clutches join it with every pump of the loop; or a pressure "
                        "switch or sensor that an interlock reads stands on its line, past "
                        "elements and open hand valves at most.",
             .data = "shafts, engaged, reversing, variable-speed, interlocks",
             .subject = "each loop",
             .states = "running",
             .level = Level::error,
             .remedy = "Drive the charge pump from the loop pump's shaft, or stop the drive by a "
                       "pressure switch on the charge line.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
