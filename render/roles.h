#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include <loopwright/graph/analysis.h>
#include <loopwright/render/sketch.h>
#include <loopwright/render/trains.h>

/// The part that each component and net plays, as a draughtsman of the trade would name it, told
/// from structure and never from names. A role gives the place; what has none follows the flow.
namespace loopwright {

enum class PartRole : std::uint8_t {
    other,
    prime_mover,
    loop_pump,
    charge_pump,  ///< or another pump on a loop pump's shaft
    pump,         ///< of an open part
    loop_actuator,
    actuator,  ///< of an open part
    load,
    on_shaft,       ///< brake, clutch, gearbox, tachometer: on the axis between what turns with it
    make_up_check,  ///< from the charge line into a side
    crossport_relief,  ///< from a side to another side or into the charge line
    charge_relief,
    flushing_valve,
    flushing_relief,
    charge_filter,
    in_line,  ///< between two stretches of one side or of the charge line
    cooler,
    suction,  ///< between a reservoir and a pump's inlet
};
std::string_view name(PartRole role);

enum class NetRole : std::uint8_t { other, side_a, side_b, side, charge, housing, suction, back };

struct RoleOfNet {
    NetRole role = NetRole::other;
    int loop = -1;  ///< of sides
};

struct Roles {
    std::vector<PartRole> part = {};  ///< by part of the sketch
    std::vector<int> loop = {};       ///< by part: the loop that a machine belongs to; -1
    std::vector<RoleOfNet> net = {};  ///< by net of the sketch
    std::vector<Train> trains = {};
    std::vector<int> train = {};  ///< by part: its train; -1

    /// The train of a part, empty where it has none.
    std::span<const TrainPart> train_of(int p) const {
        const int t = train[static_cast<std::size_t>(p)];
        return t < 0 ? std::span<const TrainPart>() : trains[static_cast<std::size_t>(t)];
    }
};

Roles roles_of(const Sketch& sketch, const Structure& structure);

}  // namespace loopwright
