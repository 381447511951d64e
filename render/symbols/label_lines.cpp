// What ISO 1219-2 wants written beside each component (clause 6.4, as a national adoption gives
// it).

#include <initializer_list>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/render/symbol.h>

namespace loopwright {

namespace {

using Lines = std::vector<std::string>;

/// Reads one component's data as text.
class Data {
  public:
    Data(const Circuit& circuit, const Component& component)
        : circuit_(circuit), component_(component) {}

    bool is_kind(std::string_view kind) const { return component_.kind->name == kind; }
    bool is_yes(std::string_view name) const { return circuit_.is_yes(component_, name); }
    std::string_view choice(std::string_view name) const {
        return circuit_.choice(component_, name);
    }
    bool has(std::string_view name) const {
        return circuit_.attribute(component_, name) != nullptr;
    }
    double si(std::string_view name) const {
        return circuit_.figure(component_, name).value_or(0.0);
    }
    std::string quantity(std::string_view name) const {
        return format_quantity(si(name), circuit_.attribute(component_, name)->spec->dimension);
    }

  private:
    const Circuit& circuit_;
    const Component& component_;
};

void add_bypass(const Data& data, Lines& lines) {
    if (data.has("bypass")) lines.push_back("bypass " + data.quantity("bypass"));
}

/// A quantity's text without its unit, where the next one has the same.
std::string_view without_unit_of(std::string_view text, std::string_view next) {
    const std::size_t blank = text.find(' ');
    return blank != std::string_view::npos && next.ends_with(text.substr(blank))
               ? text.substr(0, blank)
               : text;
}

/// "28 to 80 cm3/rev".
std::string range(std::string_view least, std::string_view most) {
    return fmt::format("{} to {}", without_unit_of(least, most), most);
}

void add_machine(const Data& data, Lines& lines) {
    if (data.has("displacement")) {
        std::string text = data.quantity("displacement");
        const bool over_centre = !data.is_kind("motor") && data.si("flow-directions") == 2.0;
        if (data.is_yes("variable") && data.has("min-displacement"))
            text = range(data.quantity("min-displacement"), text);
        else if (data.is_yes("variable"))
            text = (over_centre ? "\u00B1" : "0 to ") + text;
        lines.push_back(std::move(text));
    }
    if (data.is_kind("pump-motor")) lines.emplace_back("pump/motor");
    if (data.is_kind("motor") && data.has("rotation")) lines.emplace_back(data.choice("rotation"));
    if (data.is_yes("freewheeling")) lines.emplace_back("freewheeling");
    for (const auto& [name, words] :
         {std::pair{"pressure-limiter", "limiter"}, std::pair{"compensator-setting", "compensator"},
          std::pair{"load-sensing-margin", "margin"}})
        if (data.has(name)) lines.push_back(fmt::format("{} {}", words, data.quantity(name)));
}

/// Bore, rod and stroke, as far as they are given: "\u00D8 63 / \u00D8 36 \u00D7 500 mm".
void add_cylinder(const Data& data, Lines& lines) {
    std::string text;
    std::string next;
    for (const auto& [name, link, sign] :
         {std::tuple{"stroke", " \u00D7 ", ""}, std::tuple{"rod", " / ", "\u00D8 "},
          std::tuple{"bore", "", "\u00D8 "}}) {
        if (!data.has(name)) continue;
        const std::string own = data.quantity(name);
        text = fmt::format("{}{}{}{}", link, sign, without_unit_of(own, next), text);
        next = own;
    }
    if (text.starts_with(" / ") || text.starts_with(" \u00D7 "))
        text.erase(0, text.find(' ', 1) + 1);
    if (!text.empty()) lines.push_back(std::move(text));
}

void add_brake(const Data& data, Lines& lines) {
    if (data.has("torque")) lines.push_back(data.quantity("torque"));
    if (data.has("release-pressure") && data.has("full-release-pressure"))
        lines.push_back("release " + range(data.quantity("release-pressure"),
                                           data.quantity("full-release-pressure")));
    else
        for (const std::string_view name : {"release-pressure", "full-release-pressure"})
            if (data.has(name)) lines.push_back("release " + data.quantity(name));
    if (data.has("apply-pressure")) lines.push_back("apply " + data.quantity("apply-pressure"));
}

/// The figures of those names that are given, one a line.
void add_given(const Data& data, Lines& lines, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names)
        if (data.has(name)) lines.push_back(data.quantity(name));
}

/// Valves and fittings: what is given of the figures that belong beside them.
void add_others(const Data& data, Lines& lines) {
    if (data.is_kind("accumulator")) {
        add_given(data, lines, {"volume"});
        if (data.has("precharge")) lines.push_back("precharge " + data.quantity("precharge"));
        return;
    }
    add_given(data, lines, {"setting", "fineness", "power"});
    if (data.has("full-flow-pressure"))
        lines.push_back("full flow " + data.quantity("full-flow-pressure"));
    if (data.has("pilot-ratio")) lines.push_back(data.quantity("pilot-ratio") + ":1");
    if (data.has("range")) lines.push_back("0 to " + data.quantity("range"));
    if (data.is_yes("filler")) lines.emplace_back("filler");
    add_given(data, lines, {"opening-pressure", "flow", "priority-flow"});
    if (data.has("bore")) lines.push_back("\u00D8 " + data.quantity("bore"));
    if (!data.choice("position").empty())
        lines.push_back((data.is_yes("locked") ? "locked " : "") +
                        std::string(data.choice("position")));
}

/// Notation of the filtration ratio: ISO 16889.
void add_filter(const Data& data, Lines& lines) {
    if (data.has("fineness") && data.has("beta")) {
        const double micrometres = data.si("fineness") * 1e6;
        lines.push_back(fmt::format("\u03B2{:.4g}(c) = {}", micrometres, data.quantity("beta")));
    } else if (data.has("fineness")) {
        lines.push_back(data.quantity("fineness"));
    }
    add_bypass(data, lines);
}

void add_cooler(const Data& data, Lines& lines) {
    if (data.has("capacity") && data.has("temperature-difference"))
        lines.push_back(data.quantity("capacity") + " at " +
                        data.quantity("temperature-difference"));
    else if (data.has("capacity"))
        lines.push_back(data.quantity("capacity"));
    add_bypass(data, lines);
}

void add_reservoir(const Data& data, Lines& lines) {
    if (data.has("min-volume") && data.has("max-volume"))
        lines.push_back(range(data.quantity("min-volume"), data.quantity("max-volume")));
    else
        add_given(data, lines, {"volume"});
    if (data.has("pressure")) lines.push_back("sealed, " + data.quantity("pressure"));
    if (data.is_yes("breather")) lines.emplace_back("breather");
    if (data.is_yes("level-indicator")) lines.emplace_back("level indicator");
}

void add_figures(const Data& data, Lines& lines) {
    if (data.is_kind("pump") || data.is_kind("motor") || data.is_kind("pump-motor")) {
        add_machine(data, lines);
    } else if (data.is_kind("filter")) {
        add_filter(data, lines);
    } else if (data.is_kind("cooler")) {
        add_cooler(data, lines);
    } else if (data.is_kind("reservoir")) {
        add_reservoir(data, lines);
    } else if (data.is_kind("cylinder")) {
        add_cylinder(data, lines);
    } else if (data.is_kind("brake")) {
        add_brake(data, lines);
    } else if (data.is_kind("engine") || data.is_kind("electric-motor")) {
        add_given(data, lines, {"power", "speed"});
    } else if (data.is_kind("semi-rotary-actuator")) {
        add_given(data, lines, {"displacement", "angle"});
    } else if (data.is_kind("hand-pump")) {
        add_given(data, lines, {"volume"});
    } else if (data.is_kind("gearbox")) {
        if (data.has("ratio")) lines.push_back("i = " + data.quantity("ratio"));
    } else if (data.is_kind("clutch")) {
        add_given(data, lines, {"torque"});
    } else if (data.is_kind("load")) {
        add_given(data, lines, {"torque", "force", "mass"});
    } else {
        add_others(data, lines);
    }
}

}  // namespace

std::vector<std::string> label_lines(const Circuit& circuit, const Component& component) {
    Lines lines;
    lines.emplace_back(component.designation.empty() ? component.path : component.designation);
    if (!component.title.empty()) lines.emplace_back(component.title);
    add_figures(Data(circuit, component), lines);
    return lines;
}

}  // namespace loopwright
