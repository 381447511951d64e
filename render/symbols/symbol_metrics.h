#pragma once

/// Every dimension of the symbols, in one place, so that a person with the standard at hand can
/// check them all. Modules M (2.5 mm) unless said otherwise. Recalled from ISO 1219-1:2012, not
/// read there; those marked "house" are our own choice.
namespace loopwright::metrics {

inline constexpr double module_mm = 2.5;

// Lettering, mm (ISO 3098 series 1.8 2.5 3.5 5).
inline constexpr double letter_mm = 2.5;        ///< port letters, text inside a symbol
inline constexpr double small_letter_mm = 1.8;  ///< a gearbox's ratio
inline constexpr double large_letter_mm = 3.5;  ///< the M of a prime mover
inline constexpr double letter_clear = 0.1;     ///< from a letter to any other stroke; house
/// Where the letter of an upright stub stands: `gap` aside, `inset` back from the stub's end, where
/// a line may bend. The better ones first; each inset is its own, so that a letter's place tells
/// which was taken. House.
struct LetterSpot {
    double gap = 0.0;
    double inset = 0.0;
};
inline constexpr LetterSpot letter_spots[] = {{0.4, 0.2}, {1.25, 0.12}, {0.4, -0.1}, {0.22, -0.15}};
inline constexpr double level_letter_gap = 0.4;    ///< from a level stub up or down to its letter
inline constexpr double level_letter_inset = 0.1;  ///< from its end inwards

// Energy converters.
inline constexpr double converter_radius = 3.0;
inline constexpr double machine_port = 4.0;  ///< ports on the vertical axis
inline constexpr double triangle_side = 2.0;
inline constexpr double case_port_x = 2.0;
inline constexpr double variable_arrow = 3.2;    ///< its ends at (-3.2, 3.2) and (3.2, -3.2)
inline constexpr double controlled_arrow = 3.0;  ///< the same where a control frame is attached
inline constexpr double shaft_half = 0.25;       ///< two lines 0.5 apart
inline constexpr double free_shaft_length =
    1.5;  ///< length of a shaft end that nothing is on; house
inline constexpr double prime_mover_half = 3.0;
inline constexpr double load_half = 2.0;  ///< no item of the standard; house

// What stands on shafts: brake, clutch, gearbox.
inline constexpr double bar_half = 0.25;  ///< bars of a brake or clutch stand 0.5 apart
inline constexpr double bar_inner = 0.5;  ///< a brake's bars, from the axis
inline constexpr double bar_outer = 1.5;
inline constexpr double clutch_bar = 1.0;   ///< half a clutch's bar; house
inline constexpr double parted_bar = 0.75;  ///< of a parted clutch, from the middle; house
inline constexpr double end_mark_x = 0.75;  ///< of a gearbox's end `in`, from its corner; house
inline constexpr double end_mark_y = 0.6;
inline constexpr double on_shaft_half = 2.0;  ///< where shafts meet brake, clutch, gearbox
inline constexpr double brake_top = 1.5;      ///< of the cylinder below the bars
inline constexpr double brake_bottom = 4.5;
inline constexpr double brake_cylinder_half = 1.5;
inline constexpr double brake_piston = 2.5;      ///< applied by its spring
inline constexpr double brake_off_piston = 3.5;  ///< applied by pressure, without it; house
inline constexpr double brake_port_x = -4.0;
inline constexpr double brake_release_y = 2.0;   ///< chamber above the piston
inline constexpr double brake_apply_y = 4.0;     ///< chamber below it; house
inline constexpr double clutch_frame_top = 2.0;  ///< of what works a clutch; house
inline constexpr double clutch_port_y = 5.0;

// Cylinders: body 9 x 3 about the rod's axis.
inline constexpr double cylinder_half_length = 4.5;
inline constexpr double cylinder_half_height = 1.5;
inline constexpr double cylinder_port_x = 4.0;
inline constexpr double cylinder_port_y = 3.0;
inline constexpr double piston_left = -1.5;
inline constexpr double piston_right = -0.5;
inline constexpr double rod_end = 7.0;
inline constexpr double cushion_length = 0.75;  ///< house
inline constexpr double cushion_half = 0.6;     ///< house

// Semi-rotary actuator: half a circle, its flat side upright. House but for the shape.
inline constexpr double semi_rotary_port_x = -1.0;
inline constexpr double semi_rotary_base = 2.5;  ///< of its triangles, from the axis

// Hand pump: a pump with a lever in place of the shaft; house.
inline constexpr double lever_x = 5.0;
inline constexpr double lever_y = -2.0;

// Control mechanisms.
inline constexpr double frame_length = 3.0;
inline constexpr double long_frame_length = 4.0;
inline constexpr double frame_port = 1.0;        ///< from the frame to the end of a pilot's stub
inline constexpr double level_frame_port = 2.0;  ///< the same of a level one, for its letter
inline constexpr double frame_height = 2.0;
inline constexpr double small_triangle_side = 1.0;
inline constexpr double spring_length = 2.5;
inline constexpr double control_spring_half = 0.35;  ///< in a pump's control frame; house
inline constexpr double spring_half = 0.5;
inline constexpr double spring_pitch = 0.625;   ///< a full wave; house
inline constexpr double adjustment_half = 1.1;  ///< half the arrow over a spring, along x and y
inline constexpr double framed_adjustment_half = 1.4;  ///< over a spring in its frame
inline constexpr double knob_radius = 0.375;
inline constexpr double detent_pitch = 0.8;  ///< house
inline constexpr double detent_depth = 0.4;  ///< house

// Valves.
inline constexpr double valve_half = 2.0;  ///< box 4 x 4; also half the height of every box
inline constexpr double valve_port = 4.0;  ///< ends of the stubs
inline constexpr double port_pitch = 2.0;
inline constexpr double blocked_stem = 0.75;
inline constexpr double blocked_half = 0.5;
inline constexpr double bend_depth = 1.25;  ///< of a path that leaves by the side it came in; house
inline constexpr double relief_arrow_x = -1.0;
inline constexpr double drain_x = 3.0;       ///< of a spring chamber's drain; house
inline constexpr double drain_y = 1.75;      ///< where it leaves the box; house
inline constexpr double checked_port = 6.0;  ///< stub ends with a check beside the valve; house
inline constexpr double checked_drain_port = 7.0;  ///< its letter stays clear of the branch; house
inline constexpr double priority_port = 5.0;       ///< of its outlets, for the letters; house
inline constexpr double beside_y = 5.0;            ///< where its branch leaves; house
inline constexpr double beside_left = -5.0;        ///< the check itself; house
inline constexpr double beside_right = 6.0;
inline constexpr double infinite_gap = 0.5;  ///< lines along a row that takes all positions between
inline constexpr double flushing_pilot_y = -2.5;  ///< level of its pilots over the row; house
inline constexpr double pilot_reach = 3.0;        ///< how far out a pilot inside a symbol runs
inline constexpr double pilot_y = 1.25;  ///< where the flushing valve's pilots meet the row; house

// Non-return, flow and shut-off valves.
inline constexpr double ball_radius = 0.5;
inline constexpr double seat_apex = 0.71;
inline constexpr double seat_arm_x = 0.9;
inline constexpr double seat_arm_y = -0.19;
inline constexpr double check_port = 2.0;
inline constexpr double check_spring_end = 1.5;
inline constexpr double check_spring_half = 0.35;
inline constexpr double orifice_x = 1.0;
inline constexpr double orifice_y = 0.75;
inline constexpr double orifice_throat = 0.2;
inline constexpr double mark_throat = 0.5;  ///< wider, so that a small mark is no cross; house
inline constexpr double throttle_mark_scale =
    0.55;  ///< scale of the orifice as a mark on a path; house
inline constexpr double check_pilot_y = 1.0;
inline constexpr double shuttle_half = 2.0;
inline constexpr double shuttle_seat = 1.4;
inline constexpr double seat_depth = 0.7;  ///< house
inline constexpr double throttle_x = 1.25;
inline constexpr double throttle_radius = 1.0;
inline constexpr double throttle_arrow = 1.5;
inline constexpr double throttle_port = 3.0;    ///< its letters stay clear of the arrow; house
inline constexpr double flow_check_x = 4.0;     ///< a check beside a throttle; house
inline constexpr double compensation_x = -1.4;  ///< house
inline constexpr double compensation_tail = -1.5;
inline constexpr double compensation_head = 0.5;  ///< clear of the adjusting arrow's tail
inline constexpr double divider_half = 3.0;
inline constexpr double rotary_radius = 2.0;  ///< house
inline constexpr double rotary_pitch = 6.0;
inline constexpr double rotary_joint_y = 4.0;
inline constexpr double rotary_port_y = 6.0;
inline constexpr double bow_x = 1.5;
inline constexpr double bow_y = 1.0;
inline constexpr double bow_port = 3.0;  ///< house

// Conditioners.
inline constexpr double diamond = 2.83;  ///< half the diagonal of a square of 4
inline constexpr double diamond_port = 4.0;
inline constexpr double branch_x = 4.0;        ///< where a bypass leaves; house
inline constexpr double branch_y = -4.5;       ///< house
inline constexpr double branched_port = 5.0;   ///< house
inline constexpr double series_check_x = 4.6;  ///< a check behind a one-way element; house
inline constexpr double tap_x = 3.4;           ///< where the clogging indicator taps; house
inline constexpr double indicator_y = 4.0;     ///< house
inline constexpr double indicator_radius = 1.0;

inline constexpr double heater_apex = 1.3;   ///< house
inline constexpr double bulb_stem = 1.5;     ///< house
inline constexpr double bulb_radius = 0.35;  ///< house

// Accumulators and instruments.
inline constexpr double accumulator_radius = 2.0;
inline constexpr double accumulator_port = 6.0;
inline constexpr double separator_y = 0.5;
inline constexpr double diaphragm_sag = 0.75;
inline constexpr double gas_half = 0.75;  ///< of an open triangle of side 1.5
inline constexpr double gas_top = 3.0;
inline constexpr double gas_apex = 1.7;
inline constexpr double bag_half = 1.25;  ///< house
inline constexpr double bag_bottom = 1.0;
inline constexpr double instrument_radius = 2.0;
inline constexpr double pointer = 1.1;
inline constexpr double stem_top = 1.2;
inline constexpr double stem_bottom = 0.8;
inline constexpr double contact_x = 1.0;  ///< house
inline constexpr double contact_y = 0.6;
inline constexpr double contact_lift = 0.5;
inline constexpr double cross_half = 0.5;
inline constexpr double point_half = 0.35;  ///< of the cross in a measuring point's circle; house
inline constexpr double cup_x = 0.4;        ///< house, as all of couplings and joints
inline constexpr double cup_half = 0.8;
inline constexpr double cup_depth = 0.4;
inline constexpr double parted_gap = 0.5;
inline constexpr double coupling_seat = 0.3;
inline constexpr double coupling_port = 4.0;
inline constexpr double joint_inner = 0.5;
inline constexpr double joint_outer = 1.0;

// Breather.
inline constexpr double breather_diamond = 1.41;  ///< half the diagonal of a square of 2
inline constexpr double breather_port = 3.0;      ///< house, as the rest of it
inline constexpr double vent_stem = 0.5;
inline constexpr double vent_half = 0.5;  ///< of an open triangle of side 1
inline constexpr double vent_height = 0.866;
inline constexpr double breather_spring = 1.5;

// Joints and reservoir.
inline constexpr double joint_radius = 0.375;
inline constexpr double inner_joint_radius = 0.25;
inline constexpr double mark_half = 1.0;  ///< local reservoir mark 2 x 1
inline constexpr double mark_depth = 1.0;
inline constexpr double mark_port = -2.0;         ///< end of its stub
inline constexpr double tank_depth = 3.0;         ///< at least 2
inline constexpr double above_level = 1.0 / 3.0;  ///< share of the depth where such a line stops

// Arrow heads; house.
inline constexpr double head_length = 1.0;
inline constexpr double head_half = 0.3;

}  // namespace loopwright::metrics
