#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/graph/situation.h>
#include <loopwright/render/writers/first_start.h>
#include <loopwright/render/writers/readings_report.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/render/writers/wrapped.h>

namespace loopwright {

using namespace hydraulics;

namespace {

/// At most so many bytes, the cut marked.
std::string cut(std::string text, std::size_t most) {
    if (text.size() <= most) return text;
    std::size_t end = most - 3;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return text.substr(0, end) + "...";
}

/// What is told below the table, each once, by a number beside the place in the column.
class Notes {
  public:
    std::string mark(const std::string& text) {
        auto found = std::find(texts_.begin(), texts_.end(), text);
        if (found == texts_.end()) found = texts_.insert(texts_.end(), text);
        return fmt::format("({})", found - texts_.begin() + 1);
    }
    std::string text() const {
        std::string out;
        for (std::size_t i = 0; i < texts_.size(); ++i)
            out += wrapped(fmt::format("  ({}) ", i + 1), texts_[i]);
        return out;
    }

  private:
    std::vector<std::string> texts_ = {};
};

std::string said(const Reading& reading, const MeasuringPlace& place, Notes& notes) {
    if (!reading.code.empty()) return std::string(reading.code);
    if (!reading.si) return "cannot tell " + notes.mark(reading.unknown);
    const Dimension dimension = dimension_of(place.measured);
    const double nothing = dimension == Dimension::pressure ? 10.0
                           : dimension == Dimension::flow   ? 1e-10
                                                            : 1e-3;
    std::string text =
        format_quantity(std::abs(*reading.si) <= nothing ? 0.0 : *reading.si, dimension);
    if (reading.above_range)
        text += " " + notes.mark(fmt::format("above the range of its instrument, {}",
                                             format_quantity(*place.range, dimension)));
    return text;
}

std::string oil_of(const ReadingsAt& at) {
    return at.oil ? format_quantity(*at.oil, Dimension::temperature) : std::string("cannot tell");
}

std::string table(const Circuit& circuit, const Readings& all, const StateReadings& state,
                  Notes& notes) {
    std::string out = state.is_duty_point
                          ? fmt::format("\nPoint {}: {}", state.id, name(state.state))
                          : std::string("\nNeutral: rated speed, nothing commanded");
    out += fmt::format(", oil {} cold, {} hot\n", oil_of(state.cold), oil_of(state.hot));
    out += fmt::format("  {:<10} {:<38} {:>16} {:>16}  measured\n", "", "", "cold", "hot");
    for (std::size_t i = 0; i < all.places.size(); ++i) {
        const MeasuringPlace& place = all.places[i];
        const Component& component = circuit.components[place.component];
        std::string what(name(place.measured));
        if (!component.title.empty()) what += fmt::format(", {}", visible(component.title));
        if (!place.where.empty()) what += fmt::format(" ({})", place.where);
        out += fmt::format("  {:<10} {:<38} {:>16} {:>16}  ____________\n",
                           cut(std::string(component.path), 10), cut(what, 38),
                           said(state.cold.readings[i], place, notes),
                           said(state.hot.readings[i], place, notes));
    }
    return out;
}

}  // namespace

std::string readings_text(const Circuit& circuit, const Readings& all) {
    std::string out = fmt::format("Readings to expect: {}", visible(circuit.title.title));
    if (!circuit.title.drawing.empty())
        out += fmt::format(", drawing {}", visible(circuit.title.drawing));
    if (!circuit.title.revision.empty())
        out += fmt::format(", revision {}", visible(circuit.title.revision));
    out += "\nMachine ____________________   Date ______________   Name ____________________\n";
    out += "\nBeware\n";
    for (const std::string_view one : reading_cautions()) out += wrapped("  - ", one);
    out += "\nFirst start, in this order\n";
    int number = 0;
    for (const std::string& step : first_start(circuit, structure_of(circuit)))
        out += wrapped(fmt::format("{:>3}. ", ++number), step);
    if (all.places.empty())
        return out +
               "\nThe circuit has no gauge, sensor, measuring point, flow meter, tachometer or "
               "thermometer:\nthere is nothing to read.\n";
    Notes notes;
    for (const StateReadings& state : all.states) out += table(circuit, all, state, notes);
    out += "\n" + notes.text();
    out +=
        "  Pressures are over the atmosphere; a meter's flow is counted from its port A to B. "
        "Computed for\n  a steady state without tolerances: what reads elsewhere is to be "
        "understood before going on.\n";
    if (!all.assumptions.empty()) out += "  Taken, for it is not given:\n";
    for (const Assumption& one : all.assumptions)
        out += wrapped("    ", fmt::format("{}: {} ({})", one.of, one.text, one.source));
    return out;
}

}  // namespace loopwright
