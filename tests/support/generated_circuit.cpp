#include <loopwright/tests/support/generated_circuit.h>

#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace loopwright::testing {

namespace {

constexpr unsigned unit_components = 15;

/// How many elements stand in each chain of one drive.
struct Chains {
    unsigned charge = 0;
    unsigned working = 0;
    unsigned drain = 0;
};

class Writer {
  public:
    template <typename... Args>
    void add(fmt::format_string<Args...> text, Args&&... args) {
        fmt::format_to(std::back_inserter(xml_), text, std::forward<Args>(args)...);
        xml_ += '\n';
    }

    /// A chain of elements from one joint to another; `from` and `to` are what else is joined at
    /// its ends.
    void chain(const char* kind, char letter, unsigned drive, unsigned length,
               const std::string& from, const std::string& to) {
        std::string open = from;
        for (unsigned i = 0; i < length; ++i) {
            const std::string id = fmt::format("{}{}x{}", letter, drive, i);
            add(R"(<{} id="{}"/>)", kind, id);
            add(R"(<line id="L{}" joins="{} {}.A" bore="20 mm" rating="420 bar"/>)", id, open, id);
            open = id + ".B";
        }
        add(R"(<line id="L{}{}" joins="{} {}" bore="20 mm" rating="420 bar"/>)", letter, drive,
            open, to);
    }

    /// A whole drive: 15 components and what its chains hold.
    void drive(unsigned n, Chains chains) {
        add(R"(<engine id="E{}" power="55 kW" speed="2400 rpm"/>)", n);
        add(R"(<pump id="P{}" displacement="71 cm3/rev" variable="yes" flow-directions="2" drain="external" case-pressure="3 bar"/>)",
            n);
        add(R"(<pump id="Q{}" displacement="18 cm3/rev"/>)", n);
        add(R"(<motor id="M{}" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>)",
            n);
        add(R"(<load id="D{}" torque="60 N.m"/>)", n);
        add(R"(<check-valve id="C{}"/>)", n);
        add(R"(<check-valve id="B{}"/>)", n);
        add(R"(<relief-valve id="R{}" setting="24 bar"/>)", n);
        add(R"(<relief-valve id="S{}" setting="350 bar"/>)", n);
        add(R"(<relief-valve id="U{}" setting="350 bar"/>)", n);
        add(R"(<flushing-valve id="V{}"/>)", n);
        add(R"(<relief-valve id="X{}" setting="18 bar"/>)", n);
        add(R"(<filter id="F{}" fineness="10 um" beta="200"/>)", n);
        add(R"(<cooler id="K{}" capacity="12 kW" bypass="3 bar"/>)", n);
        add(R"(<reservoir id="T{}" volume="60 L"><port id="s"/><port id="r"/><port id="d"/></reservoir>)",
            n);
        add(R"(<shaft id="W{0}" joins="E{0} P{0} Q{0}"/>)", n);
        add(R"(<shaft id="Y{0}" joins="M{0} D{0}"/>)", n);
        add(R"(<line id="a{0}" joins="T{0}.s Q{0}.S" bore="38 mm"/>)", n);
        add(R"(<line id="b{0}" joins="Q{0}.P F{0}.A" bore="16 mm"/>)", n);
        chain("filter", 'f', n, chains.charge, fmt::format("F{}.B", n),
              fmt::format("R{0}.P C{0}.A B{0}.A", n));
        chain("cooler", 'w', n, chains.working, fmt::format("P{}.A", n),
              fmt::format("M{0}.A C{0}.B S{0}.P U{0}.T V{0}.A", n));
        add(R"(<line id="h{0}" joins="P{0}.B M{0}.B B{0}.B U{0}.P S{0}.T V{0}.B" bore="25 mm" rating="450 bar"/>)",
            n);
        add(R"(<line id="e{0}" joins="R{0}.T T{0}.r"/>)", n);
        add(R"(<line id="g{0}" joins="V{0}.F X{0}.P"/>)", n);
        chain("cooler", 'd', n, chains.drain, fmt::format("X{0}.T M{0}.L P{0}.L", n),
              fmt::format("K{}.A", n));
        add(R"(<line id="k{0}" joins="K{0}.B T{0}.d"/>)", n);
    }

    std::string finish() { return std::move(xml_); }

  private:
    std::string xml_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
};

void need(unsigned components) {
    if (components < unit_components) throw std::invalid_argument("at least 15 components");
}

}  // namespace

std::string many_loops(unsigned components) {
    need(components);
    Writer writer;
    writer.add(R"(<circuit format="1" title="Many drives">)");
    const unsigned drives = components / unit_components;
    for (unsigned n = 0; n < drives; ++n)
        writer.drive(n, {.drain = n + 1 == drives ? components % unit_components : 0});
    writer.add("</circuit>");
    return writer.finish();
}

std::string long_chains(unsigned components) {
    need(components);
    Writer writer;
    writer.add(R"(<circuit format="1" title="One drive, long lines">)");
    const unsigned left = components - unit_components;
    writer.drive(0, {.charge = left / 3, .working = left / 3, .drain = left - 2 * (left / 3)});
    writer.add("</circuit>");
    return writer.finish();
}

}  // namespace loopwright::testing
