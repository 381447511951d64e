// What every layout must have, whatever the circuit: nothing on one another, all lines level or
// upright on the grid, crossings that cannot be taken for joints, and every port reached.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include <loopwright/tests/render/laid_out.h>

namespace loopwright::testing {
namespace {

constexpr int quarters = 4;  // a module

/// A wire or a piece of shaft, ordered, with what it belongs to.
struct Stretch {
    GridPoint from = {};
    GridPoint to = {};
    std::string owner = {};

    bool level() const { return from.y == to.y; }
};

Stretch stretch(GridPoint a, GridPoint b, std::string owner) {
    if (b.x < a.x || b.y < a.y) std::swap(a, b);
    return {a, b, std::move(owner)};
}

std::vector<Stretch> wires_of(const LaidOut& one) {
    const std::vector<Index> joined = joined_ports(one.circuit);
    std::vector<Stretch> out;
    for (const Wire& wire : one.layout.wires)
        out.push_back(
            stretch(wire.from, wire.to, one.circuit.port_name(group_of(one, joined, wire.line))));
    return out;
}

std::vector<Stretch> shafts_of(const LaidOut& one) {
    std::vector<Stretch> out;
    for (const ShaftRun& run : one.layout.shafts)
        out.push_back(stretch(run.from, run.to, std::string(one.circuit.shafts[run.shaft].path)));
    return out;
}

bool touch(const Stretch& a, const Stretch& b) {
    return a.from.x <= b.to.x && b.from.x <= a.to.x && a.from.y <= b.to.y && b.from.y <= a.to.y;
}

/// At a right angle, each inside the other's length.
bool cross(const Stretch& a, const Stretch& b) {
    if (a.level() == b.level()) return false;
    const Stretch& level = a.level() ? a : b;
    const Stretch& upright = a.level() ? b : a;
    return level.from.x < upright.from.x && upright.from.x < level.to.x &&
           upright.from.y < level.from.y && level.from.y < upright.to.y;
}

/// What its stroke covers across its length, nothing beyond its ends.
Box thick(const Stretch& s) {
    const double x = s.level() ? 0.0 : 0.1;
    const double y = s.level() ? 0.1 : 0.0;
    return {s.from.x - x, s.from.y - y, s.to.x + x, s.to.y + y};
}

std::string at(GridPoint p) { return fmt::format("({}, {})", p.x, p.y); }

TEST(Layouts, HaveEverySymbolOnceAndReservoirsAsOftenAsTheyServe) {
    each_layout([](const LaidOut& one) {
        std::map<Index, int> shown;
        for (const Placed& placed : one.layout.placed) ++shown[placed.component];
        for (Index c = 0; c < one.circuit.components.size(); ++c) {
            const Component& component = one.circuit.components[c];
            if (component.kind->name == "junction")
                EXPECT_EQ(shown[c], 0) << component.path;
            else if (component.kind->name == "reservoir")
                EXPECT_GE(shown[c], 1) << component.path;
            else
                EXPECT_EQ(shown[c], 1) << component.path;
        }
    });
}

TEST(Layouts, SymbolsDoNotOverlap) {
    each_layout([](const LaidOut& one) {
        for (std::size_t i = 0; i < one.symbols.size(); ++i)
            for (std::size_t j = i + 1; j < one.symbols.size(); ++j)
                EXPECT_FALSE(overlap(body_of(one.symbols[i]), body_of(one.symbols[j])))
                    << one.circuit.components[one.symbols[i].placed.component].path << " and "
                    << one.circuit.components[one.symbols[j].placed.component].path;
    });
}

TEST(Layouts, LinesAreLevelOrUprightOnTheModuleGrid) {
    each_layout([](const LaidOut& one) {
        std::vector<Stretch> all = wires_of(one);
        for (Stretch& shaft : shafts_of(one)) all.push_back(std::move(shaft));
        for (const Stretch& s : all) {
            EXPECT_NE(s.from.x == s.to.x, s.from.y == s.to.y) << s.owner << ' ' << at(s.from);
            for (const int v : {s.from.x, s.from.y, s.to.x, s.to.y})
                EXPECT_EQ(v % quarters, 0) << s.owner << ' ' << at(s.from);
        }
    });
}

TEST(Layouts, LinesOfDifferentNetsTouchOnlyWhereTheyCross) {
    each_layout([](const LaidOut& one) {
        std::vector<Stretch> all = wires_of(one);
        for (Stretch& shaft : shafts_of(one)) {
            shaft.owner = "shaft " + shaft.owner;
            all.push_back(std::move(shaft));
        }
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = i + 1; j < all.size(); ++j)
                if (all[i].owner != all[j].owner && touch(all[i], all[j])) {
                    EXPECT_TRUE(cross(all[i], all[j]))
                        << all[i].owner << ' ' << at(all[i].from) << at(all[i].to) << ", "
                        << all[j].owner << ' ' << at(all[j].from) << at(all[j].to);
                }
    });
}

// Wires of one net end where they meet: none lies on another, none ends inside another.
TEST(Layouts, WiresOfANetMeetAtTheirEnds) {
    each_layout([](const LaidOut& one) {
        const std::vector<Stretch> all = wires_of(one);
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = i + 1; j < all.size(); ++j) {
                if (all[i].owner != all[j].owner || !touch(all[i], all[j])) continue;
                const bool share_an_end = all[i].from == all[j].from || all[i].from == all[j].to ||
                                          all[i].to == all[j].from || all[i].to == all[j].to;
                const bool along =
                    all[i].level() == all[j].level() && overlap(thick(all[i]), thick(all[j]));
                EXPECT_TRUE(share_an_end && !along)
                    << all[i].owner << ' ' << at(all[i].from) << at(all[i].to) << at(all[j].from)
                    << at(all[j].to);
            }
    });
}

TEST(Layouts, JointsStandWhereThreeEndsMeetAndNowhereElse) {
    each_layout([](const LaidOut& one) {
        const std::vector<Index> joined = joined_ports(one.circuit);
        std::map<Place, Index> joints;
        for (const Joint& joint : one.layout.joints)
            EXPECT_TRUE(
                joints.emplace(Place{joint.at.x, joint.at.y}, group_of(one, joined, joint.line))
                    .second)
                << "two joints at " << at(joint.at);
        for (const auto& [place, groups] : ends_of(one))
            for (const auto& [group, count] : groups) {
                const bool dotted = joints.count(place) != 0 && joints[place] == group;
                EXPECT_EQ(count >= 3, dotted)
                    << count << " ends of " << one.circuit.port_name(group) << " at "
                    << at({place.first, place.second});
                EXPECT_LE(count, 4);
            }
    });
}

// Every end of a wire is another wire's or a port's; wires hang together from port to port.
TEST(Layouts, EveryPortIsReachedByItsOwnWiresAlone) {
    each_layout([](const LaidOut& one) {
        const Ends ends = ends_of(one);
        for (const Wire& wire : one.layout.wires)
            for (const GridPoint& p : {wire.from, wire.to}) {
                const auto& here = ends.at({p.x, p.y});
                EXPECT_EQ(here.size(), 1u) << "two nets at " << at(p);
                EXPECT_GE(here.begin()->second, 2)
                    << one.circuit.lines[wire.line].path << " ends in nothing at " << at(p);
            }
        std::map<Place, std::vector<Place>> next;
        for (const Wire& wire : one.layout.wires) {
            next[{wire.from.x, wire.from.y}].push_back({wire.to.x, wire.to.y});
            next[{wire.to.x, wire.to.y}].push_back({wire.from.x, wire.from.y});
        }
        const auto reached = [&](Place start) {
            std::set<Place> seen{start};
            std::vector<Place> queue{start};
            for (std::size_t i = 0; i < queue.size(); ++i)
                for (const Place& p : next[queue[i]])
                    if (seen.insert(p).second) queue.push_back(p);
            return seen;
        };
        const std::vector<Index> joined = joined_ports(one.circuit);
        const std::vector<PortPlace> places = port_places(one);
        for (const PortPlace& port : places) {
            const std::set<Place> seen = reached(port.at);
            bool needs_mark = false;
            bool has_mark = false;
            for (const PortPlace& other : places) {
                if (joined[other.port] != joined[port.port]) {
                    EXPECT_EQ(seen.count(other.at), 0u)
                        << one.circuit.port_name(port.port) << " leads to "
                        << one.circuit.port_name(other.port);
                    continue;
                }
                needs_mark = needs_mark || other.mark;
                has_mark = has_mark || (other.mark && seen.count(other.at) != 0);
            }
            if (needs_mark) {
                EXPECT_TRUE(has_mark) << one.circuit.port_name(port.port);
                continue;
            }
            for (const PortPlace& other : places)
                if (joined[other.port] == joined[port.port]) {
                    EXPECT_EQ(seen.count(other.at), 1u)
                        << one.circuit.port_name(port.port) << " does not lead to "
                        << one.circuit.port_name(other.port);
                }
        }
    });
}

/// Whether a stroke goes through a symbol, not just up to it.
bool passes(const Stretch& s, const DrawnSymbol& symbol) {
    const Box body = body_of(symbol);
    return overlap(thick(s),
                   {body.left + 0.5, body.top + 0.5, body.right - 0.5, body.bottom - 0.5});
}

TEST(Layouts, LinesPassNoSymbol) {
    each_layout([](const LaidOut& one) {
        for (const DrawnSymbol& symbol : one.symbols) {
            const Component& component = one.circuit.components[symbol.placed.component];
            for (const Stretch& wire : wires_of(one))
                EXPECT_FALSE(passes(wire, symbol))
                    << wire.owner << " runs through " << component.path;
            for (const ShaftRun& run : one.layout.shafts) {
                if (run.shaft == component.shaft) continue;  // ends between a machine's controls
                EXPECT_FALSE(passes(stretch(run.from, run.to, {}), symbol))
                    << one.circuit.shafts[run.shaft].path << " runs through " << component.path;
            }
        }
    });
}

std::string owner_of(const LaidOut& one, const LabelBox& label) {
    if (label.component != none) return std::string(one.circuit.components[label.component].path);
    if (label.assembly != none) return std::string(one.circuit.assemblies[label.assembly].path);
    return std::string(one.circuit.lines[label.line].path);
}

TEST(Layouts, LabelsOverlapNothing) {
    each_layout([](const LaidOut& one) {
        const auto& labels = one.layout.labels;
        for (std::size_t i = 0; i < labels.size(); ++i) {
            const Box box = box_of(labels[i].box.from, labels[i].box.to);
            const std::string name = owner_of(one, labels[i]);
            for (std::size_t j = i + 1; j < labels.size(); ++j)
                EXPECT_FALSE(overlap(box, box_of(labels[j].box.from, labels[j].box.to)))
                    << name << " and " << owner_of(one, labels[j]);
            for (const DrawnSymbol& symbol : one.symbols)
                EXPECT_FALSE(overlap(box, body_of(symbol)))
                    << name << " on " << one.circuit.components[symbol.placed.component].path;
            std::vector<Stretch> all = wires_of(one);
            for (Stretch& shaft : shafts_of(one)) all.push_back(std::move(shaft));
            for (const Stretch& s : all)
                EXPECT_FALSE(overlap(box, thick(s))) << name << " on " << s.owner;
        }
    });
}

TEST(Layouts, EveryComponentHasItsDesignation) {
    each_layout([](const LaidOut& one) {
        std::map<Index, int> labels;
        std::map<Index, int> marks;
        for (const LabelBox& label : one.layout.labels) ++labels[label.component];
        for (const Placed& placed : one.layout.placed)
            if (placed.port != none) ++marks[placed.component];
        for (const Placed& placed : one.layout.placed) {
            const bool every_mark = placed.port != none && marks.size() > 1;
            EXPECT_EQ(labels[placed.component], every_mark ? marks[placed.component] : 1)
                << one.circuit.components[placed.component].path;
        }
    });
}

}  // namespace
}  // namespace loopwright::testing
