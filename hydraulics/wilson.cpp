#include <loopwright/hydraulics/wilson.h>

#include <fmt/core.h>

namespace loopwright::hydraulics {

namespace {

std::string trouble_with(std::string_view name, double efficiency, const RatedPoint& point) {
    if (!(efficiency > 0.0 && efficiency <= 1.0))
        return fmt::format("a {} efficiency of {:.4g} is not above 0 and at most 1", name,
                           efficiency);
    if (!(point.pressure.si() > 0.0 && point.speed.si() > 0.0 && point.viscosity.si() > 0.0))
        return "rated pressure, speed and viscosity must be above 0";
    return {};
}

// Cf + Cv S.
double torque_loss(Work work, double efficiency) {
    return work == Work::pump ? 1.0 / efficiency - 1.0 : 1.0 - efficiency;
}

}  // namespace

Answer<double> slip_from(Work work, double volumetric_efficiency, const RatedPoint& point) {
    if (std::string why = trouble_with("volumetric", volumetric_efficiency, point); !why.empty())
        return Answer<double>::none(std::move(why));
    const double loss = 1.0 - volumetric_efficiency;
    return point.sommerfeld() * (work == Work::pump ? loss : loss / volumetric_efficiency);
}

Answer<double> case_share_from(Flow case_flow, double slip, Displacement displacement,
                               const RatedPoint& point) {
    const double leakage = slip * displacement.si() * point.pressure.si() / point.viscosity.si();
    if (!(case_flow.si() >= 0.0 && case_flow.si() <= leakage))
        return Answer<double>::none(fmt::format(
            "{:.4g} m3/s out of the housing are not within the {:.4g} m3/s that leak in all",
            case_flow.si(), leakage));
    return leakage > 0.0 ? case_flow.si() / leakage : 1.0;
}

Answer<TorqueCoefficients> torque_losses_from(Work work, double hydro_mechanical_efficiency,
                                              double drag_share, const RatedPoint& point) {
    using None = Answer<TorqueCoefficients>;
    if (std::string why = trouble_with("hydro-mechanical", hydro_mechanical_efficiency, point);
        !why.empty())
        return None::none(std::move(why));
    if (!(drag_share >= 0.0 && drag_share <= 1.0))
        return None::none(fmt::format("a drag share of {:.4g} is not 0 to 1", drag_share));
    const double loss = torque_loss(work, hydro_mechanical_efficiency);
    return TorqueCoefficients{drag_share * loss / point.sommerfeld(), (1.0 - drag_share) * loss};
}

Answer<TorqueCoefficients> torque_losses_from(Work work, double one_efficiency,
                                              const RatedPoint& one, double other_efficiency,
                                              const RatedPoint& other) {
    using None = Answer<TorqueCoefficients>;
    for (const auto& [efficiency, point] :
         {std::pair(one_efficiency, one), std::pair(other_efficiency, other)})
        if (std::string why = trouble_with("hydro-mechanical", efficiency, point); !why.empty())
            return None::none(std::move(why));
    const double run = one.sommerfeld() - other.sommerfeld();
    if (run == 0.0)
        return None::none(
            "at both points viscosity x speed / pressure is the same, so that they "
            "do not tell drag from friction");
    const double drag =
        (torque_loss(work, one_efficiency) - torque_loss(work, other_efficiency)) / run;
    const double friction = torque_loss(work, one_efficiency) - drag * one.sommerfeld();
    if (!(drag >= 0.0 && friction >= 0.0))
        return None::none("the two efficiencies ask for a negative drag or friction");
    return TorqueCoefficients{drag, friction};
}

}  // namespace loopwright::hydraulics
