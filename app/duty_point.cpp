#include <loopwright/app/duty_point.h>

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include <loopwright/app/commands.h>
#include <loopwright/parser/attribute_value.h>

namespace loopwright::app {

bool has_point(const Circuit& circuit, const std::string& id) {
    std::vector<std::string_view> known;
    for (const DutyPoint& point : circuit.points) known.push_back(point.id);
    if (id.empty() || std::find(known.begin(), known.end(), id) != known.end()) return true;
    if (known.empty()) {
        complain(fmt::format("no duty point '{}': the circuit has none", id));
        return false;
    }
    const std::string_view near = nearest_name(id, known);
    complain(fmt::format("no duty point '{}'{}; there are {}", id,
                         near.empty() ? "" : fmt::format("; perhaps '{}'", near),
                         fmt::join(known, ", ")));
    return false;
}

}  // namespace loopwright::app
