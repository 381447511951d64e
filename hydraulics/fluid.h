#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include <loopwright/base/quantity.h>
#include <loopwright/hydraulics/answer.h>
#include <loopwright/hydraulics/oil.h>
#include <loopwright/hydraulics/viscosity.h>

namespace loopwright::hydraulics {

/// What a circuit says of its oil.
struct FluidFigures {
    std::string_view grade = {};  ///< ISO 3448, such as "VG 46"; stands for its midpoint at 40 degC
    std::optional<double> viscosity_index = {};
    std::optional<KinematicViscosity> at_40 = {};   ///< goes before the grade
    std::optional<KinematicViscosity> at_100 = {};  ///< goes before the index
    std::optional<Density> density = {};            ///< at 15 degC
    std::optional<SpecificHeat> specific_heat = {};
    std::optional<BulkModulus> bulk_modulus = {};
};

/// The circuit's oil over temperature.
class Fluid {
  public:
    /// None where a viscosity at 40 or at 100 degC cannot be had, and why.
    static Answer<Fluid> of(const FluidFigures& figures);

    /// Oil under the atmosphere's pressure. None out of the range of viscosity or density.
    Answer<Oil> at(Temperature temperature) const;

    /// As given; else by the formula of `specific_heat_at`, in its range.
    Answer<SpecificHeat> specific_heat(Temperature temperature) const;

    BulkModulus bulk_modulus() const { return bulk_modulus_; }
    const ViscosityCurve& viscosity() const { return viscosity_; }

    /// A figure that the circuit leaves out, what is taken for it, and its source.
    struct Assumption {
        std::string_view of;  ///< the attribute's name
        double si;
        std::string_view source;
    };
    const std::vector<Assumption>& assumptions() const { return assumptions_; }

  private:
    explicit Fluid(const ViscosityCurve& viscosity) : viscosity_(viscosity) {}

    ViscosityCurve viscosity_;
    Density density_;  // at 15 degC
    std::optional<SpecificHeat> specific_heat_;
    BulkModulus bulk_modulus_;
    std::vector<Assumption> assumptions_;
};

}  // namespace loopwright::hydraulics
