#include <loopwright/app/sized_circuit.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/app/new_file.h>
#include <loopwright/base/unit_text.h>
#include <loopwright/hydraulics/load_at_rest.h>
#include <loopwright/render/writers/xml_text.h>

namespace loopwright::app {

using namespace hydraulics;

namespace {

template <Dimension D>
std::string said(Quantity<D> quantity) {
    return format_quantity(quantity.si(), D);
}

std::string attribute(std::string_view name, std::string_view value) {
    return value.empty() ? std::string() : fmt::format(" {}=\"{}\"", name, xml_escaped(value));
}

/// Those that the file gives, but for some.
std::string given(std::span<const AttributeValue> figures,
                  std::initializer_list<std::string_view> but = {}) {
    std::string out;
    for (const AttributeValue& one : figures)
        if (one.given && std::find(but.begin(), but.end(), one.spec->name) == but.end())
            out += attribute(one.spec->name, one.text);
    return out;
}

/// A flow that leaves some room, to the next 5 L/min.
std::string with_room(Flow flow) {
    constexpr double room = 1.25;
    constexpr double step = 5e-3 / 60.0;
    return said(Flow(std::ceil(room * flow.si() / step) * step));
}

class Writer {
  public:
    Writer(const Circuit& asked, const SizingTask& task, const DriveSizes& sizes,
           std::span<const double> travels)
        : asked_(asked),
          task_(task),
          sizes_(sizes),
          travels_(travels),
          has_brake_(can_drive(asked, load())),
          text_(starting_circuit(asked.is_yes(load(), "vehicle") ? "traction"
                                 : has_brake_                    ? "hoist"
                                                                 : "stationary")) {}

    std::string write() {
        write_head();
        write_prime_mover();
        write_pumps();
        write_motor();
        write_load();
        write_oil();
        write_loop();
        write_command();
        write_duty();
        return text_.text();
    }

  private:
    const Component& load() const { return asked_.components[task_.load]; }
    bool has_gearbox() const { return task_.gearbox != none; }

    std::string element(Index component, std::string_view id, std::string_view more = {}) const {
        const Component& one = asked_.components[component];
        return fmt::format("<{} id=\"{}\"{}{}{}/>", one.kind->name, id,
                           attribute("title", one.title), given(asked_.attributes_of(one)), more);
    }

    void write_head() {
        const CircuitTitle& title = asked_.title;
        text_.set_head(
            "Sized by 'loopwright size': one pump, one motor, closed loop. Displacements, "
            "settings, "
            "flows and bores\n     are what the duty asks for; efficiencies and limits of machines "
            "that are not chosen yet are common practice.\n     Put the figures of the machines "
            "that you choose in their place, and check again");
        text_.replace_first(
            "circuit", fmt::format("<circuit format=\"1\" title=\"{}\"{}{}>",
                                   xml_escaped(title.title.empty() ? "Sized drive" : title.title),
                                   attribute("drawing", title.drawing),
                                   attribute("revision", title.revision)));
        const auto figures = asked_.figures_of(*asked_.fluid);
        const bool clean = asked_.figure_of(*asked_.fluid, "cleanliness") != nullptr;
        text_.replace_first("fluid", fmt::format("<fluid{}{}/>", given(figures),
                                                 clean ? "" : R"( cleanliness="18/16/13")"));
    }

    void write_prime_mover() {
        const Component& mover = asked_.components[task_.mover];
        const std::string_view turns = asked_.choice(mover, "rotation");
        const std::string_view own = turns.empty() ? R"( rotation="counter-clockwise")" : "";
        text_.replace("E1", element(task_.mover, "E1", own));
        // Each seen at its own shaft end, which face each other.
        const std::string_view against = turns == "clockwise" ? "counter-clockwise" : "clockwise";
        text_.set("P1", "rotation", against);
        text_.set("P2", "rotation", against);
    }

    void write_pumps() {
        text_.set("P1", "displacement", said(sizes_.pump));
        text_.set("P1", "max-pressure", said(sizes_.rating));
        text_.set("P1", "max-speed", said(sizes_.pump_speed));
        text_.set("P1", "rated-speed", said(task_.duty.rated_speed));
        text_.set("P1", "max-torque", said(sizes_.pump_torque));
        text_.set("P1", "through-drive-torque", said(sizes_.through_torque));
        text_.set("P1", "volumetric-efficiency", percent(sizing::pump_volumetric));
        text_.set("P1", "torque-efficiency", percent(sizing::pump_torque));
        common("P1");
        for (const AttributeValue& one : asked_.attributes_of(asked_.components[task_.pump]))
            if (one.given) text_.set("P1", one.spec->name, one.text);
        text_.set("P2", "displacement", said(sizes_.charge));
        text_.set("P2", "max-speed", said(sizes_.pump_speed));
        text_.set("P2", "rated-speed", said(task_.duty.rated_speed));
        text_.set("P2", "rated-pressure", "25 bar");
        text_.set("P2", "rated-viscosity", said(sizing::rated_viscosity));
        text_.set("P2", "volumetric-efficiency", percent(sizing::charge_volumetric));
        text_.set("P2", "torque-efficiency", percent(sizing::charge_torque));
        text_.set("P2", "max-torque", said(sizes_.through_torque));
    }

    static std::string percent(double share) { return fmt::format("{:.4g} %", 100.0 * share); }
    void common(std::string_view machine) {
        text_.set(machine, "rated-pressure", said(sizing::rated_pressure));
        text_.set(machine, "rated-viscosity", said(sizing::rated_viscosity));
    }

    void write_motor() {
        text_.set("M1", "displacement", said(sizes_.motor));
        text_.set("M1", "max-pressure", said(sizes_.rating));
        text_.set("M1", "max-speed", said(sizes_.motor_speed));
        text_.set("M1", "rated-speed", said(Speed(sizes_.motor_speed.si() / 1.1)));
        text_.set("M1", "max-torque", said(sizes_.motor_torque));
        text_.set("M1", "volumetric-efficiency", percent(sizing::motor_volumetric));
        text_.set("M1", "torque-efficiency", percent(sizing::motor_torque));
        common("M1");
        if (sizes_.is_variable()) {
            text_.set("M1", "min-displacement", said(sizes_.least_motor));
            text_.set("M1", "variable", "yes");
            text_.set("M1", "control", "hydraulic");
            text_.set("M1", "control-pressure", "14 bar");
        } else {
            for (const std::string_view name :
                 {"min-displacement", "variable", "control", "control-pressure"})
                text_.drop("M1", name);
        }
    }

    void write_load() {
        std::string on_motor = has_brake_ ? "M1 B1" : "M1";
        std::string shafts;
        if (has_gearbox()) {
            const auto& [motor_end, load_end] =
                task_.load_at_out ? std::pair("in", "out") : std::pair("out", "in");
            shafts = fmt::format(
                "{}\n  {}\n  <shaft id=\"W2\" joins=\"{} X1.{}\"/>\n"
                "  <shaft id=\"W3\" joins=\"X1.{} D1\"/>",
                element(task_.gearbox, "X1"), element(task_.load, "D1"), on_motor, motor_end,
                load_end);
        } else {
            shafts = fmt::format("{}\n  <shaft id=\"W2\" joins=\"{} D1\"/>",
                                 element(task_.load, "D1"), on_motor);
        }
        if (has_brake_) {
            text_.replace("X1", "");
            text_.replace("W3", "");
            text_.set("B1", "torque", said(sizes_.brake.value_or(Torque(10.0))));
        }
        text_.replace("W2", "");
        text_.replace("D1", shafts);
    }

    void write_oil() {
        text_.set("T1", "volume", said(sizes_.reservoir));
        text_.set("T1", "cooling-area", said(sizes_.reservoir_walls));
        text_.set("K1", "capacity", said(sizes_.cooler));
        text_.set("K1", "temperature-difference", said(sizing::cooler_difference));
        const std::string flow = with_room(sizes_.charge_flow);
        for (const std::string_view id : {"K1", "F1"}) text_.set(id, "flow", flow);
        text_.set("R1", "setting", said(sizing::charge_relief));
        text_.set("R1", "full-flow-pressure", said(sizing::charge_relief + Pressure(3e5)));
        text_.set("R4", "setting", said(sizing::flushing_relief));
        text_.set("R4", "full-flow-pressure", said(sizing::flushing_relief + Pressure(3e5)));
        for (const std::string_view id : {"R1", "R4"}) text_.set(id, "full-flow", flow);
        text_.set("S1", "bore", said(sizes_.suction_bore));
        text_.set("S1", "length", said(sizing::suction_length));
        for (const std::string_view id : {"G1", "G2", "G3", "F2"})
            text_.set(id, "bore", said(sizes_.charge_bore));
        for (const std::string_view id : {"L1", "L2", "L3", "L4"})
            text_.set(id, "bore", said(sizes_.drain_bore));
    }

    void write_loop() {
        for (const std::string_view id : {"R2", "R3"}) {
            text_.set(id, "setting", said(sizes_.relief));
            text_.set(id, "full-flow-pressure", said(sizes_.relief_full));
            text_.set(id, "full-flow", with_room(sizes_.loop_flow));
        }
        for (const std::string_view id : {"HA", "HB"}) {
            text_.set(id, "bore", said(sizes_.working_bore));
            text_.set(id, "rating", said(sizes_.rating));
        }
    }

    void write_command() {
        text_.fill("Z1", sizes_.is_variable()
                             ? "\n    <stage of=\"P1\" from=\"0 %\" to=\"33 %\"/>\n"
                               "    <stage of=\"M1\" from=\"33 %\" to=\"100 %\"/>\n  "
                             : "\n    <stage of=\"P1\" from=\"0 %\" to=\"100 %\"/>\n  ");
    }

    void write_duty() {
        std::string duty = fmt::format("<duty{}>\n", given(asked_.figures_of(*asked_.duty)));
        for (std::size_t i = 0; i < asked_.points.size(); ++i) {
            const DutyPoint& point = asked_.points[i];
            std::string of_load;
            for (Index k = point.settings.begin; k < point.settings.end; ++k) {
                const PointSetting& setting = asked_.point_settings[k];
                of_load +=
                    given(asked_.figures_of(setting),
                          setting.component == task_.load
                              ? std::initializer_list<std::string_view>{"of", "velocity", "speed"}
                              : std::initializer_list<std::string_view>{"of"});
            }
            duty += fmt::format(
                "    <point id=\"{}\"{} travel=\"{:.3f} %\"{}{}/>\n", point.id,
                attribute("title", point.title), 100.0 * travels_[i],
                given(asked_.figures_of(point), {"id", "title", "velocity", "travel"}), of_load);
        }
        text_.replace_first("duty", duty + "  </duty>");
    }

    const Circuit& asked_;
    const SizingTask& task_;
    const DriveSizes& sizes_;
    std::span<const double> travels_;
    bool has_brake_;
    CircuitText text_;
};

}  // namespace

std::string sized_circuit(const Circuit& asked, const SizingTask& task, const DriveSizes& sizes,
                          std::span<const double> travels) {
    return Writer(asked, task, sizes, travels).write();
}

}  // namespace loopwright::app
