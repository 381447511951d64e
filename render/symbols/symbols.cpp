#include <loopwright/render/symbols/symbols.h>

#include <algorithm>
#include <stdexcept>
#include <string>

namespace loopwright {

namespace {

constexpr KindSymbol symbols[] = {
    {"check-valve", draw_check_valve},
    {"cooler", draw_cooler},
    {"directional-valve", draw_directional_valve},
    {"engine", draw_engine},
    {"filter", draw_filter},
    {"flushing-valve", draw_flushing_valve},
    {"junction", draw_junction},
    {"load", draw_load},
    {"motor", draw_motor},
    {"orifice", draw_orifice},
    {"pump", draw_pump},
    {"relief-valve", draw_relief_valve},
    {"reservoir", draw_reservoir},
    {"shut-off-valve", draw_shut_off_valve},
};

}  // namespace

std::span<const KindSymbol> kind_symbols() { return symbols; }

Symbol symbol_of(const Circuit& circuit, const Component& component) {
    const auto* const at =
        std::find_if(std::begin(symbols), std::end(symbols),
                     [&](const KindSymbol& symbol) { return symbol.kind == component.kind->name; });
    if (at == std::end(symbols))
        throw std::logic_error("no symbol of kind " + std::string(component.kind->name));
    Strokes strokes(circuit, component);
    at->draw(strokes);
    Symbol symbol = strokes.finish();
    if (symbol.ports.size() != component.ports.size())
        throw std::logic_error("the symbol of " + std::string(component.path) +
                               " does not show every port");
    return symbol;
}

}  // namespace loopwright
