#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/parser/circuit.h>

/// What turns with what: a drive is all that shafts, gearboxes and engaged clutches make turn
/// together.
namespace loopwright {

struct Drive {
    bool turned = false;          ///< has a prime mover
    bool variable_speed = false;  ///< and all that it has are of variable speed
    bool reversing = false;       ///< and all that it has reverse
    bool loaded = false;          ///< has a load
    bool pulls_forward = false;   ///< has loads, and each drives its motor forward only
    bool pulls_back = false;      ///< has loads, and each drives its motor in reverse only
    bool overrunning = false;     ///< has a load that can drive its motor
    bool vehicle = false;         ///< has a load that is what drives a vehicle
};

/// Whether what stands between two shafts turns one when the other turns: not a parted clutch.
bool passes_torque(const Circuit& circuit, const Component& component);

class Drives {
  public:
    explicit Drives(const Circuit& circuit);

    /// The drive that a component is on, by its first shaft end; `none` for one on no shaft.
    Index of(Index component) const { return drive_of_[component]; }
    const Drive& operator[](Index drive) const { return drives_[drive]; }
    /// The drive of a component; one that nothing turns where it is on no shaft.
    const Drive& at(Index component) const {
        static constexpr Drive still;
        return of(component) == none ? still : drives_[of(component)];
    }
    bool turned(Index component) const { return at(component).turned; }
    /// What stands on its shafts, one behind the other; a component with both ends on them comes
    /// twice.
    std::span<const Index> members(Index drive) const {
        return {members_.data() + offsets_[drive], offsets_[drive + 1] - offsets_[drive]};
    }

  private:
    void list_members(const Circuit& circuit, const std::vector<Index>& drive_of_shaft);

    std::vector<Index> drive_of_;  // by component
    std::vector<Drive> drives_;
    std::vector<Index> offsets_;  // into members_
    std::vector<Index> members_;
};

}  // namespace loopwright
