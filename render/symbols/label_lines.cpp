// What ISO 1219-2 wants written beside each component (clause 6.4, as a national adoption gives
// it).

#include <string>
#include <string_view>
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

/// "28 to 80 cm3/rev".
std::string range(std::string_view least, std::string_view most) {
    const std::size_t blank = least.find(' ');
    if (blank != std::string_view::npos && most.ends_with(least.substr(blank)))
        least = least.substr(0, blank);
    return fmt::format("{} to {}", least, most);
}

void add_machine(const Data& data, Lines& lines) {
    if (data.has("displacement")) {
        std::string text = data.quantity("displacement");
        const bool over_centre = data.is_kind("pump") && data.si("flow-directions") == 2.0;
        if (data.is_yes("variable") && data.has("min-displacement"))
            text = range(data.quantity("min-displacement"), text);
        else if (data.is_yes("variable"))
            text = (over_centre ? "\u00B1" : "0 to ") + text;
        lines.push_back(std::move(text));
    }
    if (data.is_kind("motor") && data.has("rotation")) lines.emplace_back(data.choice("rotation"));
}

void add_relief(const Data& data, Lines& lines) {
    if (data.has("setting")) lines.push_back(data.quantity("setting"));
    if (data.has("full-flow-pressure"))
        lines.push_back("full flow " + data.quantity("full-flow-pressure"));
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
    if (data.has("volume")) lines.push_back(data.quantity("volume"));
    if (data.is_yes("breather")) lines.emplace_back("breather");
    if (data.is_yes("level-indicator")) lines.emplace_back("level indicator");
}

void add_figures(const Data& data, Lines& lines) {
    if (data.is_kind("pump") || data.is_kind("motor")) {
        add_machine(data, lines);
    } else if (data.is_kind("relief-valve")) {
        add_relief(data, lines);
    } else if (data.is_kind("filter")) {
        add_filter(data, lines);
    } else if (data.is_kind("cooler")) {
        add_cooler(data, lines);
    } else if (data.is_kind("reservoir")) {
        add_reservoir(data, lines);
    } else if (data.is_kind("engine")) {
        for (const std::string_view name : {"power", "speed"})
            if (data.has(name)) lines.push_back(data.quantity(name));
    } else if (data.is_kind("load")) {
        if (data.has("torque")) lines.push_back(data.quantity("torque"));
    } else if (data.is_kind("check-valve")) {
        if (data.has("opening-pressure")) lines.push_back(data.quantity("opening-pressure"));
    } else if (data.is_kind("orifice")) {
        if (data.has("bore")) lines.push_back("\u00D8 " + data.quantity("bore"));
    } else if (data.is_kind("shut-off-valve")) {
        lines.push_back((data.is_yes("locked") ? "locked " : "") +
                        std::string(data.choice("position")));
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
