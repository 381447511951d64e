#pragma once

#include <string_view>

#include <loopwright/graph/situation.h>
#include <loopwright/rules/docket.h>
#include <loopwright/rules/oil_ways.h>

/// What puts control and brake lines under pressure, and the ways that oil takes there.
namespace loopwright {

/// Ways that oil takes by itself: all but machines, relief valves and leakage.
bool lets_oil_on(const Edge& edge);

/// Whether an instrument at a port tells the pressure there, or lets a gauge be joined.
bool shows_pressure(const Circuit& circuit, const Component& component);

/// Begin a search where pressure comes from: at the outlets of the pumps outside all loops that
/// deliver, at the hand pumps, on the loops' sides, at the accumulators.
void begin_at_pumps(const Situation& s, Search& search);
void begin_at_hand_pumps(const Situation& s, Search& search);
void begin_at_sides(const Situation& s, Search& search, bool intermediate_too);
void begin_at_accumulators(const Situation& s, Search& search);

/// Goes on by all that `lets_oil_on` as it stands, into no reservoir.
void spread(const Situation& s, const Standing& standing, Search& search);

/// The way by which a search that began at such givers came to a port.
Witness way_to(const Situation& s, Docket& docket, const Search& search, Index port);

/// The way from a port that is open to a reservoir.
Witness way_to_tank(const Situation& s, Docket& docket, Index port);

/// Where the oil of a port that is not ends: what does not let it on.
Witness kept_from_tank(const Situation& s, Docket& docket, Index port);

}  // namespace loopwright
