#include <loopwright/tests/support/generated_circuit.h>

#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace loopwright::testing {

namespace {

constexpr unsigned unit_components = 15;

/// How many elements stand in each chain of one drive, and how many valves in its other working
/// line.
struct Chains {
    unsigned charge = 0;
    unsigned working = 0;
    unsigned drain = 0;
    unsigned valves = 0;
    bool side_by_side = false;  ///< these, not one behind the other
};

class Writer {
  public:
    template <typename... Args>
    void add(fmt::format_string<Args...> text, Args&&... args) {
        fmt::format_to(std::back_inserter(xml_), text, std::forward<Args>(args)...);
        xml_ += '\n';
    }

    void begin(std::string_view title) {
        add(R"(<circuit format="1" title="{}">
  <fluid grade="VG 46" viscosity-index="105" density="870 kg/m3" cleanliness="18/16/13"/>)",
            title);
    }

    /// A chain of elements from one joint to another; `from` and `to` are what else is joined at
    /// its ends.
    void chain(std::string_view kind, std::string_view function, char letter, unsigned drive,
               unsigned length, const std::string& from, const std::string& to) {
        std::string open = from;
        for (unsigned i = 0; i < length; ++i) {
            const std::string id = fmt::format("{}{}x{}", letter, drive, i);
            add(R"(  <{} id="{}" title="in the {} line" max-pressure="{}" {}/>)", kind, id,
                function, borne(function),
                kind == "filter"
                    ? R"(fineness="10 um" beta="200" clogging-indicator="electrical")"
                    : R"(capacity="12 kW" temperature-difference="30 K" bypass="1.5 bar")");
            line(function, fmt::format("L{}", id), fmt::format("{} {}.A", open, id));
            open = id + ".B";
        }
        line(function, fmt::format("L{}{}", letter, drive), fmt::format("{} {}", open, to));
    }

    /// A whole drive, the ice resurfacer's of the examples: 15 components and what its chains hold.
    void drive(unsigned n, Chains chains) {
        add(R"(
  <!-- Prime mover and what it turns -->
  <engine id="E{}" title="engine" power="55 kW" speed="2400 rpm" rotation="counter-clockwise"/>
  <pump id="P{}" title="loop pump" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic"
        rest-displacement="zero" rotation="clockwise" drain="external" case-ports="2" case-pressure="3 bar"
        working-pressure="350 bar" max-pressure="420 bar" max-speed="3300 rpm"/>
  <pump id="Q{}" title="charge pump" displacement="18 cm3/rev" rotation="clockwise"
        max-pressure="60 bar" max-speed="3300 rpm"/>
  <shaft id="W{}" joins="E{} P{} Q{}"/>)",
            n, n, n, n, n, n, n);
        add(R"(
  <!-- Motor and load -->
  <motor id="M{}" title="traction motor" displacement="80 cm3/rev" min-displacement="28 cm3/rev" variable="yes"
         design="bent-axis" control="hydraulic" drain="external" case-ports="2" case-pressure="3 bar"
         max-pressure="450 bar" max-speed="4500 rpm"/>
  <load id="D{}" title="rear axle" torque="300 N.m"/>
  <shaft id="Y{}" joins="M{} D{}"/>)",
            n, n, n, n, n);
        add(R"(
  <!-- Reservoir and suction -->
  <reservoir id="T{}" volume="60 L" breather="yes" level-indicator="yes">
    <port id="S" level="below"/> <port id="R" level="below"/> <port id="D" level="below"/>
  </reservoir>
  <line id="S{}" function="suction" joins="T{}.S Q{}.S" bore="38 mm" length="0.8 m"/>)",
            n, n, n, n);
        add(R"(
  <!-- Charge line: relief before the filter, which has no bypass but an indicator -->
  <relief-valve id="R{}" title="charge relief" setting="24 bar"/>
  <filter id="F{}" title="charge filter" fineness="10 um" beta="200" clogging-indicator="electrical"
          max-pressure="60 bar"/>
  <check-valve id="C{}" title="make-up A"/>
  <check-valve id="B{}" title="make-up B"/>)",
            n, n, n, n);
        line("charge", fmt::format("G{}", n), fmt::format("Q{0}.P R{0}.P F{0}.A", n));
        chain("filter", "charge", 'f', n, chains.charge, fmt::format("F{}.B", n),
              fmt::format("C{0}.A B{0}.A", n));
        line("return", fmt::format("N{}", n), fmt::format("R{0}.T T{0}.R", n));
        add(R"(
  <!-- The loop, with crossport reliefs from side to side -->
  <relief-valve id="X{}" title="crossport A to B" setting="380 bar" operation="pilot"/>
  <relief-valve id="Z{}" title="crossport B to A" setting="380 bar" operation="pilot"/>
  <flushing-valve id="V{}" title="flushing valve"/>
  <relief-valve id="U{}" title="flushing relief" setting="18 bar"/>
  <cooler id="K{}" title="oil cooler" capacity="12 kW" temperature-difference="30 K" bypass="1.5 bar"/>)",
            n, n, n, n, n);
        chain("filter", "working", 'w', n, chains.working, fmt::format("P{}.A", n),
              fmt::format("M{0}.A X{0}.P Z{0}.T C{0}.B V{0}.A", n));
        line("working", fmt::format("HB{}", n),
             fmt::format("{1} M{0}.B Z{0}.P X{0}.T B{0}.B V{0}.B", n, valves(n, chains)));
        line("drain", fmt::format("FA{}", n), fmt::format("V{0}.F U{0}.P", n));
        line("drain", fmt::format("FB{}", n), fmt::format("U{0}.T M{0}.L1", n));
        line("drain", fmt::format("FC{}", n), fmt::format("M{0}.L2 P{0}.L1", n));
        chain("cooler", "drain", 'd', n, chains.drain, fmt::format("P{}.L2", n),
              fmt::format("K{}.A", n));
        line("drain", fmt::format("FD{}", n), fmt::format("K{0}.B T{0}.D", n));
    }

    std::string finish() { return std::move(xml_); }

  private:
    static std::string_view borne(std::string_view function) {
        return function == "working" ? "450 bar" : "60 bar";
    }

    void line(std::string_view function, const std::string& id, const std::string& joins) {
        add(R"(  <line id="{}" function="{}" joins="{}" bore="{} mm" length="0.6 m" rating="{}"/>)",
            id, function, joins, function == "working" ? 25 : 16, borne(function));
    }

    /// Two-position valves, open at rest; the ports that the pump's oil leaves them by.
    std::string valves(unsigned drive, Chains chains) {
        std::string open = fmt::format("P{}.B", drive);
        std::string left;
        for (unsigned i = 0; i < chains.valves; ++i) {
            const std::string id = fmt::format("o{}x{}", drive, i);
            add(R"(  <directional-valve id="{}"><port id="P"/><port id="A"/>
    <position id="open" rest="yes"><path from="P" to="A"/></position><position id="shut"/>
  </directional-valve>)",
                id);
            if (chains.side_by_side) {
                open += " " + id + ".P";
                left += " " + id + ".A";
            } else {
                line("working", "L" + id, fmt::format("{} {}.P", open, id));
                open = id + ".A";
            }
        }
        if (!chains.side_by_side) return open;
        line("working", fmt::format("HC{}", drive), open);
        return left;
    }

    std::string xml_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
};

void need(unsigned components) {
    if (components < unit_components) throw std::invalid_argument("at least 15 components");
}

}  // namespace

std::string many_loops(unsigned components) {
    need(components);
    Writer writer;
    writer.begin("Many drives");
    const unsigned drives = components / unit_components;
    for (unsigned n = 0; n < drives; ++n)
        writer.drive(n, {.drain = n + 1 == drives ? components % unit_components : 0});
    writer.add("</circuit>");
    return writer.finish();
}

std::string valves_in_a_loop(unsigned valves) {
    Writer writer;
    writer.begin("Valves one behind the other");
    writer.drive(0, {.valves = valves});
    writer.add("</circuit>");
    return writer.finish();
}

std::string valves_side_by_side(unsigned valves) {
    Writer writer;
    writer.begin("Valves side by side");
    writer.drive(0, {.valves = valves, .side_by_side = true});
    writer.add("</circuit>");
    return writer.finish();
}

std::string long_chains(unsigned components) {
    need(components);
    Writer writer;
    writer.begin("One drive, long lines");
    const unsigned left = components - unit_components;
    writer.drive(0, {.charge = left / 3, .working = left / 3, .drain = left - 2 * (left / 3)});
    writer.add("</circuit>");
    return writer.finish();
}

}  // namespace loopwright::testing
