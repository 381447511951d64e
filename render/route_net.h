#pragma once

#include <optional>
#include <vector>

#include <loopwright/render/route_grid.h>
#include <loopwright/render/route_search.h>

/// One net on the routing grid: laid, judged, finished.
namespace loopwright {

/// Lays the net as one tree and gives its runs (bends split them, joints do not yet), or takes
/// everything up again and gives nothing where an end cannot be reached. Trunks where another net
/// lies are left to the search.
std::optional<std::vector<Run>> lay_net(RouteGrid& grid, RouteSearch& search, std::int32_t net,
                                        const RouteNet& wished);

/// Length, bends and crossings of a net that lies on the grid, in the search's terms.
int net_cost(const RouteGrid& grid, std::int32_t net, const std::vector<Run>& runs);

/// Runs split at bends and joints, and the joints.
RoutedNet finished(const RouteGrid& grid, std::int32_t net, const std::vector<Run>& runs);

}  // namespace loopwright
