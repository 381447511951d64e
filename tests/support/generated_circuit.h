#pragma once

#include <string>

/// Circuits of a given size for benchmarks and tests of cost. Sound, so that every rule has its
/// full work to do. Drives, lines and figures are those of the ice resurfacer among the examples,
/// and so a component takes no more bytes than there.
namespace loopwright::testing {

/// Many loops of 15 components, each with charge pump, filter and reservoir of its own; the last
/// one's drain takes up what is left over. `components` at least 15; exactly that many come out.
std::string many_loops(unsigned components);

/// One loop whose charge line, working line and drain are long chains; exactly `components`.
std::string long_chains(unsigned components);

/// One loop with that many two-position valves one behind the other in a working line, each worked
/// by itself. Any of them shuts the line off, and the pump off from its relief valves, so it is not
/// sound.
std::string valves_in_a_loop(unsigned valves);

/// The same with the valves side by side: only all of them together shut the line off.
std::string valves_side_by_side(unsigned valves);

}  // namespace loopwright::testing
