#include <loopwright/hydraulics/element.h>

namespace loopwright::hydraulics {

ThroughFlow::Figure drop(const Element& element, double flow, const Oil& oil) {
    using Figure = ThroughFlow::Figure;
    return element.drop.si() / (element.flow.si() * element.viscosity.si()) *
           Figure::variable(ThroughFlow::flow, flow) *
           Figure::variable(ThroughFlow::viscosity, oil.viscosity.si());
}

}  // namespace loopwright::hydraulics
