#pragma once

#include <memory>
#include <string>
#include <vector>

#include <loopwright/base/finding.h>
#include <loopwright/parser/circuit.h>

/// What a circuit is made of, found from its structure alone: loops with their sides, and the open
/// parts beside them. For text, JSON and drawing; rules work on `Situation`s (situation.h).
namespace loopwright {

enum class SideRole : std::uint8_t { main, intermediate, branch, section };
std::string_view name(SideRole role);

/// A side as it is in the states listed.
struct SideInfo {
    std::string id = {};  ///< "side:P1.A"
    SideRole role = SideRole::main;
    std::vector<State> states = {};
    std::vector<Index> ports = {};  ///< in file order
    std::vector<Index> lines = {};
    Index named_after = none;  ///< port
};

struct LoopInfo {
    std::string id = {};                ///< "loop:P1"
    std::vector<Index> pumps = {};      ///< components
    std::vector<Index> actuators = {};  ///< components
    std::vector<SideInfo> sides = {};
};

struct OpenPart {
    std::string id = {};  ///< "open:P2"
    std::vector<Index> pumps = {};
    std::vector<Index> actuators = {};
};

struct Structure {
    std::vector<LoopInfo> loops = {};
    std::vector<OpenPart> open_parts = {};
    std::vector<Index> charge_pumps = {};  ///< pumps that are a charge source in some running state
    std::vector<Index> charge_lines = {};  ///< lines on a charge line in some running state
    std::vector<Index> node_of_port = {};  ///< for each port of the circuit; ports joined = equal
};

}  // namespace loopwright
