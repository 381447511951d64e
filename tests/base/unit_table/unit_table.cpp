// Prints the unit table for units_test.py: dimension, spelling, SI value of 0 and of 1, a line
// each, tabs between.
#include <string>

#include <fmt/core.h>

#include <loopwright/base/unit_text.h>

int main() {
    for (const loopwright::Unit& unit : loopwright::units()) {
        const auto value = [&unit](int number) {
            return loopwright::parse_quantity(fmt::format("{} {}", number, unit.spelling),
                                              unit.dimension)
                .si;
        };
        fmt::print("{}\t{}\t{:.17g}\t{:.17g}\n", name(unit.dimension), unit.spelling, value(0),
                   value(1));
    }
}
