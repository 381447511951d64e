// Errors planted in rules that judge situations: they see one in which passages are not what they
// are.
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/oracle/planted_errors.h>
#include <loopwright/tests/oracle/tampered.h>

namespace loopwright {
namespace {

constexpr std::uint8_t both = open_forward | open_backward;

/// A check lets charge oil through either way.
void charge_supply(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "charge-supply", docket);
}

/// A shut valve between charge line and reservoir is taken for an open one.
void charge_vented(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::hand) open = both;
    }).judge(s, "charge-vented", docket);
}

/// Nothing in a way clogs, and nobody shuts it.
void trust(Edge& edge, std::uint8_t& /*open*/) {
    if (edge.shift == Shift::hand) edge.locked = true;
    if (edge.passage_class == PassageClass::element) edge.passage_class = PassageClass::switched;
}

/// Whatever stands in the suction line is trusted.
void charge_pump_inlet(const Situation& s, Docket& docket) {
    Tampered(s, trust).judge(s, "charge-pump-inlet", docket);
}

/// Any prime mover will do.
void charge_pump_drive(const Situation& s, Docket& docket) {
    for (const ChargePump& pump : s.feeds.pumps)
        if (s.graph.turned(s.region.edges[pump.edge].component))
            for (const Index loop : s.feeds.would_feed(pump))
                if (s.judges(s.loops.loops[loop].first_pump))
                    docket.record(s, ElementType::loop, s.loops.loops[loop].first_pump,
                                  s.loop_states[loop], Outcome::pass);
}

/// Whatever stands before the charge relief is trusted.
void charge_relief(const Situation& s, Docket& docket) {
    Tampered(s, trust).judge(s, "charge-relief", docket);
}

/// The sense of a check is forgotten.
void charge_backflow(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "charge-backflow", docket);
}

/// An orifice is taken for a make-up check.
void make_up_check(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::metering)
            edge.passage_class = PassageClass::one_way;
    }).judge(s, "make-up-check", docket);
}

/// A shut-off valve before a make-up check is trusted to stay open.
void make_up_path(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.shift == Shift::hand) edge.locked = true;
    }).judge(s, "make-up-path", docket);
}

/// The sense of the make-up check is forgotten, so that the charge relief limits the line.
void intermediate_side(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class != PassageClass::one_way || open == 0) return;
        edge.passage_class = PassageClass::element;
        open = both;
    }).judge(s, "intermediate-side", docket);
}

/// Surplus oil is let out by a make-up check.
void unequal_cylinder(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class != PassageClass::one_way || open == 0) return;
        edge.passage_class = PassageClass::element;
        open = both;
    }).judge(s, "unequal-cylinder", docket);
}

/// A shut-off valve before a relief valve is trusted to stay open.
void crossport_relief(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.shift == Shift::hand) edge.locked = true;
    }).judge(s, "crossport-relief", docket);
}

/// The sense of checks is forgotten, so that the charge relief stands on the sides.
void relief_setting(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class != PassageClass::one_way || open == 0) return;
        edge.passage_class = PassageClass::element;
        edge.both_ways = true;
        open = both;
    }).judge(s, "relief-setting", docket);
}

/// The flushing valve is taken for open in neutral too.
void blocked_pump(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::pressure) open = both;
    }).judge(s, "blocked-pump", docket);
}

/// A cooler cleans the oil.
void filtration(const Situation& s, Docket& docket) {
    const std::vector<Component>& components = s.circuit().components;
    Tampered(s, [&](Edge& edge, std::uint8_t& /*open*/) {
        if (components[edge.component].kind->name == "cooler") edge.part = Part::filter;
    }).judge(s, "filtration", docket);
}

/// The sense of checks is forgotten, so that oil comes from everywhere.
void filter_reversal(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "filter-reversal", docket);
}

/// The springs of checks in a drain are forgotten.
void case_drain_path(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::one_way) edge.opening = 0.0;
    }).judge(s, "case-drain-path", docket);
}

/// A closed shut-off valve before a control is taken for an open one.
void control_supply(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::hand) open = both;
    }).judge(s, "control-supply", docket);
}

/// Operated valves are taken to open every way that they have, at rest too.
void neutral_on_loss(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::position) open = ways_of(edge);
    }).judge(s, "neutral-on-loss", docket);
}

/// The same.
void parking_brake(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::position) open = ways_of(edge);
    }).judge(s, "parking-brake", docket);
}

/// Make-up checks are taken for a way from side to side.
void towing_bypass(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class == PassageClass::one_way && open != 0) open = both;
    }).judge(s, "towing-bypass", docket);
}

/// A shut-off valve before a relief valve is trusted to stay open.
void accumulator_safety(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.shift == Shift::hand) edge.locked = true;
    }).judge(s, "accumulator-safety", docket);
}

/// The charge line is taken to end at its filter.
void test_points(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.part == Part::filter && edge.passage_class == PassageClass::element)
            edge.passage_class = PassageClass::metering;
    }).judge(s, "test-points", docket);
}

/// A check parts no two pumps.
void double_source(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.passage_class != PassageClass::one_way || open == 0) return;
        edge.passage_class = PassageClass::metering;
        open = both;
    }).judge(s, "double-source", docket);
}

/// Relief valves are taken for a way to exchange oil.
void loop_flushing(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::pressure_opened)
            edge.passage_class = PassageClass::metering;
    }).judge(s, "loop-flushing", docket);
}

/// The valve is thought to lead the high side to its outlet.
void flushing_side(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& open) {
        if (edge.shift == Shift::pressure) open = open != 0 ? 0 : both;
    }).judge(s, "flushing-side", docket);
}

/// A filter cools the oil.
void cooling(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.part == Part::filter) edge.part = Part::cooler;
    }).judge(s, "cooling", docket);
}

/// A shut-off valve before a relief valve is trusted to stay open.
void pressure_rating(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.shift == Shift::hand) edge.locked = true;
    }).judge(s, "pressure-rating", docket);
}

/// A relief valve behind a check is taken for one that stands on the line itself.
void flushing_setting(const Situation& s, Docket& docket) {
    Tampered(s, [](Edge& edge, std::uint8_t& /*open*/) {
        if (edge.passage_class == PassageClass::one_way) edge.passage_class = PassageClass::element;
    }).judge(s, "flushing-setting", docket);
}

// A line each, so that one more changes one line.
// clang-format off
constexpr Planted planted[] = {
    {"charge-supply", charge_supply},
    {"charge-vented", charge_vented},
    {"charge-pump-inlet", charge_pump_inlet},
    {"charge-pump-drive", charge_pump_drive},
    {"charge-relief", charge_relief},
    {"charge-backflow", charge_backflow},
    {"make-up-check", make_up_check},
    {"make-up-path", make_up_path},
    {"intermediate-side", intermediate_side},
    {"unequal-cylinder", unequal_cylinder},
    {"crossport-relief", crossport_relief},
    {"relief-setting", relief_setting},
    {"pressure-rating", pressure_rating},
    {"blocked-pump", blocked_pump},
    {"filtration", filtration},
    {"filter-reversal", filter_reversal},
    {"case-drain-path", case_drain_path},
    {"loop-flushing", loop_flushing},
    {"flushing-side", flushing_side},
    {"flushing-setting", flushing_setting},
    {"cooling", cooling},
    {"control-supply", control_supply},
    {"neutral-on-loss", neutral_on_loss},
    {"parking-brake", parking_brake},
    {"towing-bypass", towing_bypass},
    {"accumulator-safety", accumulator_safety},
    {"test-points", test_points},
    {"double-source", double_source},
};
// clang-format on

}  // namespace

std::span<const Planted> planted_in_situations() { return planted; }

}  // namespace loopwright
