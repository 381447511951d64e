#include <algorithm>
#include <map>
#include <stdexcept>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <loopwright/render/layout_fit.h>
#include <loopwright/render/render.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view format_name = "loopwright-layout/1";

Json point(GridPoint p) { return Json::array({p.x, p.y}); }

Json run(GridPoint from, GridPoint to) { return Json::array({from.x, from.y, to.x, to.y}); }

/// What is wrong with a layout's text; never leaves this file.
class BadLayout : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

class LayoutReader {
  public:
    explicit LayoutReader(const Circuit& circuit) : circuit_(circuit) {
        for (Index i = 0; i < circuit.components.size(); ++i)
            components_.emplace(circuit.components[i].path, i);
        for (Index i = 0; i < circuit.lines.size(); ++i) lines_.emplace(circuit.lines[i].path, i);
        for (Index i = 0; i < circuit.shafts.size(); ++i)
            shafts_.emplace(circuit.shafts[i].path, i);
        for (Index i = 0; i < circuit.assemblies.size(); ++i)
            assemblies_.emplace(circuit.assemblies[i].path, i);
        for (Index i = 0; i < circuit.ports.size(); ++i) ports_.emplace(circuit.port_name(i), i);
    }

    Layout read(const Json& json) const {
        if (!json.is_object()) throw BadLayout("a layout is an object");
        if (word(field(json, "format")) != format_name)
            throw BadLayout(fmt::format("format: expected \"{}\"", format_name));
        Layout layout;
        layout.sheet = word(field(json, "sheet"));
        if (find_sheet(layout.sheet) == nullptr)
            throw BadLayout("sheet: expected A4, A3, A2, A1 or A0");
        each(json, "symbols", [&](const Json& item) {
            Placed placed;
            placed.component = find(components_, field(item, "component"), "component");
            if (item.contains("port")) placed.port = find(ports_, item["port"], "port");
            placed.at = read_point(field(item, "at"));
            placed.attitude.quarter_turns = number(field(item, "turns"));
            if (placed.attitude.quarter_turns < 0 || placed.attitude.quarter_turns > 3)
                throw BadLayout("turns: expected 0 to 3");
            placed.attitude.mirrored = truth(field(item, "mirrored"));
            layout.placed.push_back(placed);
        });
        each(json, "wires", [&](const Json& item) {
            Wire wire;
            wire.line = find(lines_, field(item, "line"), "line");
            read_run(field(item, "run"), wire.from, wire.to);
            if (item.contains("sag")) wire.sag = read_sag(item["sag"], circuit_.lines[wire.line]);
            layout.wires.push_back(wire);
        });
        each(json, "joints", [&](const Json& item) {
            layout.joints.push_back(
                {find(lines_, field(item, "line"), "line"), read_point(field(item, "at"))});
        });
        each(json, "shafts", [&](const Json& item) {
            ShaftRun shaft;
            shaft.shaft = find(shafts_, field(item, "shaft"), "shaft");
            read_run(field(item, "run"), shaft.from, shaft.to);
            layout.shafts.push_back(shaft);
        });
        each(json, "labels", [&](const Json& item) {
            LabelBox label;
            if (item.is_object() && item.contains("component"))
                label.component = find(components_, item["component"], "component");
            else if (item.is_object() && item.contains("assembly"))
                read_frame_label(item, label);
            else
                label.line = find(lines_, field(item, "line"), "line");
            read_box(field(item, "box"), label.box);
            label.right_aligned = truth(field(item, "right_aligned"));
            for (const Json& p : list(item, "leader")) label.leader.push_back(read_point(p));
            layout.labels.push_back(std::move(label));
        });
        each(json, "frames", [&](const Json& item) {
            FrameBox frame;
            frame.assembly = find(assemblies_, field(item, "assembly"), "assembly");
            read_box(field(item, "box"), frame.box);
            layout.frames.push_back(frame);
        });
        return layout;
    }

  private:
    void read_frame_label(const Json& item, LabelBox& label) const {
        label.assembly = find(assemblies_, item["assembly"], "assembly");
        if (!item.contains("port")) return;
        label.port = find(ports_, item["port"], "port");
        const auto& declared = circuit_.assemblies[label.assembly].ports;
        if (std::none_of(declared.begin(), declared.end(), [&](const Assembly::DeclaredPort& port) {
                return port.port == label.port;
            }))
            throw BadLayout(fmt::format("assembly {} declares no port for {}",
                                        circuit_.assemblies[label.assembly].path,
                                        circuit_.port_name(label.port)));
    }

    using Names = std::map<std::string, Index, std::less<>>;

    static const Json& field(const Json& json, const char* name) {
        if (!json.is_object() || !json.contains(name))
            throw BadLayout(fmt::format("{}: missing", name));
        return json[name];
    }
    static const Json& list(const Json& json, const char* name) {
        const Json& value = field(json, name);
        if (!value.is_array()) throw BadLayout(fmt::format("{}: expected a list", name));
        return value;
    }
    /// Reads the items of a list; what is wrong with one is told with its place ("wires/3", from
    /// 0).
    template <class Read>
    static void each(const Json& json, const char* name, Read&& read) {
        std::size_t index = 0;
        for (const Json& item : list(json, name)) try {
                read(item);
                ++index;
            } catch (const BadLayout& wrong) {
                throw BadLayout(fmt::format("{}/{}: {}", name, index, wrong.what()));
            }
    }
    static int number(const Json& json) {
        // Far beyond any sheet, and far from an overflow in what follows.
        constexpr int most = 1'000'000;
        if (!json.is_number_integer()) throw BadLayout("expected a whole number");
        // What is beyond a signed number of 64 bits would come out as a small one.
        const auto value = json.get<double>();
        if (value < -most || value > most) throw BadLayout("number out of range");
        return static_cast<int>(value);
    }
    static std::string word(const Json& json) {
        if (!json.is_string()) throw BadLayout("expected a text");
        return json.get<std::string>();
    }
    static bool truth(const Json& json) {
        if (!json.is_boolean()) throw BadLayout("expected true or false");
        return json.get<bool>();
    }
    static GridPoint read_point(const Json& json) {
        if (!json.is_array() || json.size() != 2) throw BadLayout("expected a point [x, y]");
        return {number(json[0]), number(json[1])};
    }
    static void read_box(const Json& json, GridBox& box) { read_four(json, box.from, box.to); }
    static void read_run(const Json& json, GridPoint& from, GridPoint& to) {
        read_four(json, from, to);
        if (from.x != to.x && from.y != to.y) throw BadLayout("run: neither level nor upright");
    }
    static int read_sag(const Json& json, const Line& line) {
        const int sag = number(json);
        if (sag != 1 && sag != -1) throw BadLayout("sag: expected 1 or -1");
        if (!line.flexible) throw BadLayout("sag: only a hose sags");
        return sag;
    }
    static void read_four(const Json& json, GridPoint& from, GridPoint& to) {
        if (!json.is_array() || json.size() != 4)
            throw BadLayout("expected four numbers [x, y, x, y]");
        from = {number(json[0]), number(json[1])};
        to = {number(json[2]), number(json[3])};
    }
    static Index find(const Names& names, const Json& json, std::string_view type) {
        const std::string name = word(json);
        const auto at = names.find(name);
        if (at == names.end())
            throw BadLayout(fmt::format("the circuit has no {} \"{}\"", type, name));
        return at->second;
    }

    const Circuit& circuit_;
    Names components_;
    Names lines_;
    Names shafts_;
    Names assemblies_;
    Names ports_;
};

}  // namespace

std::string write_layout(const Circuit& circuit, const Layout& layout) {
    Json json;
    json["format"] = format_name;
    json["sheet"] = layout.sheet;
    Json symbols = Json::array();
    for (const Placed& placed : layout.placed) {
        Json item;
        item["component"] = circuit.components[placed.component].path;
        if (placed.port != none) item["port"] = circuit.port_name(placed.port);
        item["at"] = point(placed.at);
        item["turns"] = placed.attitude.quarter_turns;
        item["mirrored"] = placed.attitude.mirrored;
        symbols.push_back(std::move(item));
    }
    json["symbols"] = std::move(symbols);
    Json wires = Json::array();
    for (const Wire& wire : layout.wires) {
        wires.push_back(
            {{"line", circuit.lines[wire.line].path}, {"run", run(wire.from, wire.to)}});
        if (wire.sag != 0) wires.back()["sag"] = wire.sag;
    }
    json["wires"] = std::move(wires);
    Json joints = Json::array();
    for (const Joint& joint : layout.joints)
        joints.push_back({{"line", circuit.lines[joint.line].path}, {"at", point(joint.at)}});
    json["joints"] = std::move(joints);
    Json shafts = Json::array();
    for (const ShaftRun& shaft : layout.shafts)
        shafts.push_back(
            {{"shaft", circuit.shafts[shaft.shaft].path}, {"run", run(shaft.from, shaft.to)}});
    json["shafts"] = std::move(shafts);
    Json labels = Json::array();
    for (const LabelBox& label : layout.labels) {
        Json item;
        if (label.component != none)
            item["component"] = circuit.components[label.component].path;
        else if (label.assembly != none)
            item["assembly"] = circuit.assemblies[label.assembly].path;
        else
            item["line"] = circuit.lines[label.line].path;
        if (label.port != none) item["port"] = circuit.port_name(label.port);
        item["box"] = run(label.box.from, label.box.to);
        item["right_aligned"] = label.right_aligned;
        item["leader"] = Json::array();
        for (const GridPoint& p : label.leader) item["leader"].push_back(point(p));
        labels.push_back(std::move(item));
    }
    json["labels"] = std::move(labels);
    Json frames = Json::array();
    for (const FrameBox& frame : layout.frames)
        frames.push_back({{"assembly", circuit.assemblies[frame.assembly].path},
                          {"box", run(frame.box.from, frame.box.to)}});
    json["frames"] = std::move(frames);
    return json.dump(1) + "\n";
}

std::optional<Layout> read_layout(const Circuit& circuit, std::string_view json,
                                  std::string& error) {
    try {
        Layout layout = LayoutReader(circuit).read(Json::parse(json));
        error = misfit(circuit, layout);
        if (error.empty()) return layout;
    } catch (const nlohmann::json::parse_error& e) {
        const std::string_view before = json.substr(0, std::min(e.byte, json.size()));
        error = fmt::format("line {}: no valid JSON",
                            1 + std::count(before.begin(), before.end(), '\n'));
    } catch (const BadLayout& e) {
        error = e.what();
    }
    return std::nullopt;
}

}  // namespace loopwright
