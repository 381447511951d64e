#include <loopwright/render/writers/first_start.h>

#include <algorithm>
#include <functional>

#include <fmt/format.h>

namespace loopwright {

namespace {

/// Parts by what they are, as "P1, M1"; empty where there is none.
class Parts {
  public:
    explicit Parts(const Circuit& circuit) : circuit_(circuit) {}

    std::string of(const std::function<bool(const Component&)>& wanted) const {
        std::string list;
        for (const Component& one : circuit_.components)
            if (wanted(one)) list += fmt::format("{}{}", list.empty() ? "" : ", ", one.path);
        return list;
    }
    std::string of_kind(std::string_view kind) const {
        return of([&](const Component& one) { return one.kind->name == kind; });
    }
    std::string of_part(Part part) const {
        return of([&](const Component& one) { return one.kind->part == part; });
    }
    std::string machines_with_drain() const {
        return of([&](const Component& one) {
            const bool machine = one.kind->part == Part::pump || one.kind->part == Part::actuator ||
                                 one.kind->part == Part::pump_motor;
            const auto ports = circuit_.ports_of(one);
            return machine && std::any_of(ports.begin(), ports.end(), [](const Port& port) {
                       return port.use == PortUse::drain;
                   });
        });
    }
    /// Instruments that show pressure on the lines of that list.
    std::string gauges_on(const std::vector<Index>& lines) const {
        std::string list;
        for (const Index line : lines)
            for (const Index port : circuit_.ports_of(circuit_.lines[line])) {
                const Component& one = circuit_.components[circuit_.ports[port].component];
                if (!one.kind->shows_pressure) continue;
                const std::string_view what = circuit_.choice(one, "measures");
                if (what.empty() || what == "pressure")
                    list += fmt::format("{}{}", list.empty() ? "" : ", ", one.path);
            }
        return list;
    }

  private:
    const Circuit& circuit_;
};

std::string listed(const Circuit& circuit, const std::vector<Index>& components) {
    std::string list;
    for (const Index one : components)
        list += fmt::format("{}{}", list.empty() ? "" : ", ", circuit.components[one].path);
    return list;
}

/// " (P1, M1)", or nothing.
std::string named(const std::string& list) {
    return list.empty() ? std::string() : fmt::format(" ({})", list);
}

std::string word_of_fluid(const Circuit& circuit, std::string_view figure) {
    if (!circuit.fluid) return {};
    const AttributeValue* const value = circuit.figure_of(*circuit.fluid, figure);
    return value == nullptr ? std::string() : std::string(value->text);
}

}  // namespace

std::vector<std::string> first_start(const Circuit& circuit, const Structure& structure) {
    const Parts parts(circuit);
    std::vector<std::string> steps;
    steps.push_back(fmt::format(
        "Secure the machine: load off or lowered, wheels clear of the ground, brakes applied{}; "
        "commands in neutral{}.",
        named(parts.of_part(Part::brake)), circuit.commands.empty() ? "" : " and locked there"));
    if (const std::string accumulators = parts.of_part(Part::accumulator); !accumulators.empty())
        steps.push_back(
            fmt::format("Check the precharge of {} with no oil in them.", accumulators));
    const std::string shut_off = parts.of_kind("shut-off-valve");
    const std::string towing = parts.of([](const Component& one) { return one.kind->for_towing; });
    if (!shut_off.empty() || !towing.empty())
        steps.push_back(fmt::format(
            "Set hand valves as drawn: {}{}{}.",
            shut_off.empty() ? "" : fmt::format("{} (open in suction and drain lines)", shut_off),
            !shut_off.empty() && !towing.empty() ? "; " : "",
            towing.empty() ? "" : fmt::format("{} shut, for towing only", towing)));
    const std::string grade = word_of_fluid(circuit, "grade");
    const std::string code = word_of_fluid(circuit, "cleanliness");
    steps.push_back(fmt::format("Fill the reservoir{} through a filter{}{}.",
                                named(parts.of_part(Part::reservoir)),
                                grade.empty() ? "" : fmt::format(", oil {}", grade),
                                code.empty() ? "" : fmt::format(", no dirtier than {}", code)));
    const std::string housings = parts.machines_with_drain();
    if (!housings.empty())
        steps.push_back(fmt::format(
            "Fill the housings of {} through their upper drain ports, with the same oil.",
            housings));
    const std::string charge = listed(circuit, structure.charge_pumps);
    const std::string gauges = parts.gauges_on(structure.charge_lines);
    steps.push_back(
        fmt::format("Fill and bleed the suction line{}; a gauge for low pressure at {}.",
                    charge.empty() ? "" : fmt::format(" up to {}", charge),
                    gauges.empty() ? "the charge line" : gauges));
    steps.push_back(fmt::format(
        "Turn {} in short bursts without starting it, until the charge pressure rises; stop where "
        "it does not within 15 s.",
        structure.charge_pumps.empty() || parts.of_part(Part::prime_mover).empty()
            ? "the prime mover"
            : parts.of_part(Part::prime_mover)));
    steps.emplace_back(
        "Start, and idle in neutral: charge pressure steady, no foam, no leak, oil level made up.");
    steps.emplace_back(
        "Low pressure first: without load, a short travel each way in turn, until the loop is "
        "bled; the charge pressure must hold.");
    steps.emplace_back(
        "Take the readings in neutral, warm up, then those under load, from the lightest point to "
        "the heaviest; at the end level, filters' indicators and joints again.");
    return steps;
}

std::vector<std::string_view> reading_cautions() {
    return {
        "A jet of oil injects through skin: never feel for leaks; a doctor at once.",
        "Pressure stays stored when all stands: release it, and prove it, before opening a joint.",
        "Hot oil scalds, hot parts burn.",
        "The machine may move unexpectedly: nobody where it can reach.",
        "Lock out and tag before hands go in.",
        "Gauges and their hoses bear the highest pressure where they are joined.",
        "Local codes and competent persons decide; these figures support them, no more.",
    };
}

}  // namespace loopwright
