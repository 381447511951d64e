// Answers fluids_test.py: a question a line on standard input, its value on standard output.
//     factor REYNOLDS ROUGHNESS            friction factor; roughness over bore
//     drop FLOW BORE LENGTH ROUGHNESS K DENSITY VISCOSITY    in SI, Pa
#include <iostream>
#include <string>

#include <fmt/core.h>

#include <loopwright/hydraulics/friction.h>
#include <loopwright/hydraulics/pipe.h>

int main() {
    using namespace loopwright;
    using namespace loopwright::hydraulics;
    std::string question;
    while (std::cin >> question) {
        if (question == "factor") {
            double reynolds = 0.0;
            double roughness = 0.0;
            std::cin >> reynolds >> roughness;
            fmt::print("{:.17g}\n", friction_factor(reynolds, roughness).value);
        } else if (question == "drop") {
            double flow = 0.0;
            double bore = 0.0;
            double length = 0.0;
            double roughness = 0.0;
            double minor_losses = 0.0;
            double density = 0.0;
            double viscosity = 0.0;
            std::cin >> flow >> bore >> length >> roughness >> minor_losses >> density >> viscosity;
            const Pipe pipe{Length(bore), Length(length), Length(roughness), minor_losses};
            const Oil oil{Density(density), KinematicViscosity(viscosity)};
            fmt::print("{:.17g}\n", drop(pipe, flow, oil).value);
        } else {
            fmt::print(stderr, "unknown question {}\n", question);
            return 1;
        }
    }
    return 0;
}
