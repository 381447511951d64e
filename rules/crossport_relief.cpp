// For each main side and section: a relief valve that cannot be isolated from it, whose outlet
// leads, again past nothing that can close, to another side of the loop or to a charge line from
// which another side is made up.
#include <algorithm>
#include <optional>
#include <span>

#include <boost/container/small_vector.hpp>

#include <loopwright/graph/witness.h>
#include <loopwright/rules/line_parts.h>
#include <loopwright/rules/oil_ways.h>
#include <loopwright/rules/rule.h>

namespace loopwright {

namespace {

/// Where one relief's oil goes: the first place that counts, and why others do not.
struct Discharge {
    Index node = none;         ///< that counts
    bool over_charge = false;  ///< it is a charge line
    bool to_tank = false;      ///< some way ends open to a reservoir
};

/// A relief that limits a side, or the first that discharges to a reservoir.
struct Relieved {
    std::optional<FlowArc> relief = {};
    Discharge discharge = {};
    Index to_tank = none;  ///< slot of the relief's arc
};

class Judge {
  public:
    Judge(const Situation& s, Docket& docket)
        : s_(s),
          docket_(docket),
          to_relief_(s.searches.take(s.region.node_count)),
          from_relief_(s.searches.take(s.region.node_count)),
          own_(s.searches.take(s.region.node_count)),
          others_(s.searches.take(s.region.node_count)),
          pieces_(s.searches.take(s.region.node_count)) {}

    void run() {
        for (const JudgedSide& side : s_.sides)
            if (limits(side)) judge(side);
    }

    /// A relief from side to side that is reached while every flushing valve is shut limits in all
    /// situations alike that have the same feeds. False where a side has none.
    bool run_alike() {
        if (!s_.alike.same_feeds) return false;
        boost::container::small_vector<Sound, 4> sound;
        std::vector<FlowArc>& ways = s_.searches.path();
        for (const JudgedSide& side : s_.sides) {
            if (!limits(side)) continue;
            mark(side);
            if (may_be_cut(side)) return false;
            const Relieved found = relieved(side.nodes);
            if (!found.relief || found.discharge.node != found.relief->to ||
                found.discharge.over_charge)
                return false;
            const auto begin = static_cast<Index>(ways.size());
            add_way(found, ways);
            if (!std::all_of(ways.begin() + begin, ways.end() - 1,
                             [&](const FlowArc& arc) { return stands_open(*s_.alike.shut, arc); }))
                return false;
            sound.push_back({&side, found, {begin, static_cast<Index>(ways.size())}});
        }
        for (const Sound& one : sound)
            pass(*one.side, one.side->alike_states, one.found,
                 std::span(ways).subspan(one.way.begin, one.way.size()));
        return true;
    }

  private:
    /// A side that is limited, and the way of its oil in a list of all.
    struct Sound {
        const JudgedSide* side = nullptr;
        Relieved found = {};
        Range way = {};
    };

    /// Main sides and sections are asked about, and are what a relief may discharge into.
    static bool limits(const JudgedSide& side) {
        return side.role == SideRole::main || side.role == SideRole::section;
    }

    /// Marks the nodes of the side, and those of the loop's other sides.
    void mark(const JudgedSide& side) {
        own_->clear(s_.region.node_count);
        others_->clear(s_.region.node_count);
        for (const JudgedSide& one : s_.sides_of_loop(side)) {
            if (!limits(one)) continue;
            Search& marks = one.named_after == side.named_after ? *own_ : *others_;
            for (const Index node : one.nodes) marks.begin_at(node);
        }
    }

    void judge(const JudgedSide& side) {
        mark(side);
        Relieved last;
        if (!may_be_cut(side)) {
            last = relieved(side.nodes);
        } else {
            // With its hand valves shut each piece at a machine stands alone.
            Search& pieces = *pieces_;
            pieces.clear(s_.region.node_count);
            for (const Index node : side.nodes) {
                if (pieces.reached(node)) continue;
                const std::size_t first = pieces.order.size();
                add_piece(node);
                const std::span<const Index> piece = std::span(pieces.order).subspan(first);
                if (!at_a_machine(piece)) continue;
                last = relieved(piece);
                if (!last.relief) break;
            }
        }
        if (last.relief) {
            std::vector<FlowArc>& way = s_.searches.path();
            add_way(last, way);
            pass(side, side.states, last, way);
        } else {
            fail(side, last.to_tank);
        }
    }

    /// Whether somebody, or a pilot, can cut the side in two.
    bool may_be_cut(const JudgedSide& side) const {
        return std::any_of(side.nodes.begin(), side.nodes.end(), [&](Index node) {
            const auto arcs = s_.region.arcs_of(node);
            return std::any_of(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
                const Edge& edge = s_.region.edges[arc.edge];
                return ((edge.shift == Shift::hand && !edge.locked) ||
                        edge.shift == Shift::pilot_shuts) &&
                       own_->reached(arc.to);
            });
        });
    }

    /// What hangs together with a node of the side without hand valves that can be shut.
    void add_piece(Index node) {
        pieces_->begin_at(node);
        s_.graph.work += pieces_->run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
            const Edge& edge = s_.region.edges[arc.edge];
            return own_->reached(arc.to) && s_.standing[arc.edge] != 0 &&
                   (edge.shift != Shift::hand || edge.locked) &&
                   (open_way(edge) || edge.passage_class == PassageClass::one_way ||
                    edge.passage_class == PassageClass::divider ||
                    edge.passage_class == PassageClass::metering);
        });
    }

    bool at_a_machine(std::span<const Index> nodes) const {
        return std::any_of(nodes.begin(), nodes.end(), [&](Index node) {
            const auto arcs = s_.region.arcs_of(node);
            return std::any_of(arcs.begin(), arcs.end(), [&](const FlowArc& arc) {
                const Edge& edge = s_.region.edges[arc.edge];
                return edge.passage_class == PassageClass::displacement &&
                       edge.part != Part::hand_pump;
            });
        });
    }

    /// The first relief valve reached from some nodes of a side whose oil gets where it counts.
    Relieved relieved(std::span<const Index> from) {
        Search& search = *to_relief_;
        search.clear(s_.region.node_count);
        for (const Index node : from) search.begin_at(node);
        s_.graph.work += search.run(s_.region, [&](Index /*node*/, const FlowArc& arc) {
            return secured(s_, arc) && s_.region.is_reservoir[arc.to] == 0;
        });
        Relieved found;
        for (const Index node : search.order) {
            for (Index slot = s_.region.arc_offsets[node]; slot < s_.region.arc_offsets[node + 1];
                 ++slot) {
                const FlowArc& relief = s_.region.arcs[slot];
                if (!is_relief(s_.region.edges[relief.edge]) || relief.backward != 0) continue;
                found.discharge = follow(relief.to);
                if (found.discharge.to_tank && found.to_tank == none) found.to_tank = slot;
                if (found.discharge.node == none) continue;
                found.relief = relief;
                return found;
            }
        }
        return found;
    }

    /// Open to a vented reservoir, or a reservoir that no loop is charged from.
    bool loses_pressure(Index node) const {
        return s_.feeds.pressureless()[node] != 0 ||
               (s_.region.is_reservoir[node] != 0 && !s_.feeds.line.reached(node));
    }

    /// From a relief's outlet to another side of the loop, or to the charge line.
    Discharge follow(Index outlet) {
        Discharge discharge;
        Search& search = *from_relief_;
        search.clear(s_.region.node_count);
        if (loses_pressure(outlet)) {
            discharge.to_tank = true;
            return discharge;
        }
        // What comes back to the side relieves nothing.
        if (own_->reached(outlet)) return discharge;
        search.begin_at(outlet);
        bool found = false;
        const auto look = [&](Index node) {
            if (found) return;
            if (others_->reached(node)) {
                discharge.node = node;
                found = true;
            } else if (s_.feeds.line.reached(node) &&
                       gets_to_another(line_parts().checked_from(node))) {
                discharge.node = node;
                discharge.over_charge = true;
                found = true;
            }
        };
        look(outlet);
        s_.graph.work += search.run(s_.region, [&](Index node, const FlowArc& arc) {
            // What counts ends the search, as does what opens to a tank; a charge line is left only
            // where that leads somewhere.
            if (found || own_->reached(arc.to) || !secured(s_, arc)) return false;
            if (s_.region.is_reservoir[node] != 0) return false;
            if (s_.feeds.line.reached(node) && !gets_to_another(line_parts().secured_from(node)))
                return false;
            if (loses_pressure(arc.to)) {
                discharge.to_tank = true;
                return false;
            }
            look(arc.to);
            return true;
        });
        return discharge;
    }

    /// Whether a search got to another side of the loop.
    bool gets_to_another(const Search& search) const {
        return std::any_of(others_->order.begin(), others_->order.end(),
                           [&](Index node) { return search.reached(node); });
    }

    LineParts& line_parts() {
        if (!line_parts_) line_parts_.emplace(s_);
        return *line_parts_;
    }

    /// From the side over the relief just found to where its oil goes.
    void add_way(const Relieved& found, std::vector<FlowArc>& way) const {
        to_relief_->add_path_to(s_.region, tail(s_.region, *found.relief), way);
        way.push_back(*found.relief);
        from_relief_->add_path_to(s_.region, found.discharge.node, way);
    }

    void pass(const JudgedSide& side, StateSet states, const Relieved& found,
              std::span<const FlowArc> way) {
        Verdict* verdict =
            docket_.record(s_, ElementType::side, side.named_after, states, Outcome::pass);
        if (verdict == nullptr) return;
        const Index start = tail(s_.region, way.front());
        verdict->witness =
            witness(way, {.from = port_on(s_.graph, s_.region, start, side.named_after),
                          .to = port_on(s_.graph, s_.region, found.discharge.node, none)});
        const Edge& relief = s_.region.edges[found.relief->edge];
        verdict->message = docket_.text(
            s_.circuit().components[relief.component].path, " limits the ", name(side.role),
            " side and discharges into ",
            found.discharge.over_charge ? "the charge line, which makes the other side up"
                                        : "another side of the loop");
    }

    void fail(const JudgedSide& side, Index tank_relief) {
        Verdict* verdict =
            docket_.record(s_, ElementType::side, side.named_after, side.states, Outcome::fail);
        if (verdict == nullptr) return;
        if (tank_relief != none) {
            const FlowArc& relief = s_.region.arcs[tank_relief];
            std::vector<FlowArc>& arcs = s_.searches.path();
            to_relief_->add_path_to(s_.region, tail(s_.region, relief), arcs);
            arcs.push_back(relief);
            verdict->witness =
                witness(arcs, {.from = port_on(s_.graph, s_.region, tail(s_.region, arcs.front()),
                                               side.named_after)});
            verdict->message =
                docket_.text(s_.circuit().components[s_.region.edges[relief.edge].component].path,
                             " limits the ", name(side.role),
                             " side but discharges to a reservoir, so the loop runs empty");
            return;
        }
        std::vector<Step>& steps = s_.searches.steps();
        add_frontier(s_.graph, s_.region, s_.standing, *to_relief_, true, steps);
        verdict->witness = docket_.witness(WitnessShape::frontier, steps);
        const bool closable =
            std::any_of(verdict->witness.steps.begin(), verdict->witness.steps.end(),
                        [](const Step& step) { return step.text == "can be closed"; });
        verdict->message = docket_.text("no relief valve limits the ", name(side.role), " side",
                                        closable ? " that cannot be shut off from it" : "");
    }

    Witness witness(std::span<const FlowArc> arcs, WalkEnds ends) {
        std::vector<Step>& steps = s_.searches.steps();
        add_walk(s_.graph, s_.region, arcs, ends, steps);
        return docket_.witness(WitnessShape::path, steps);
    }

    const Situation& s_;
    Docket& docket_;
    std::optional<LineParts> line_parts_;  // only where a relief leads into a charge line
    SearchPool::Lease to_relief_;
    SearchPool::Lease from_relief_;
    SearchPool::Lease own_;     // the side's nodes
    SearchPool::Lease others_;  // those of the loop's other sides
    SearchPool::Lease pieces_;  // pieces between hand valves, one after the other
};

void judge(const Situation& s, Docket& docket) { Judge(s, docket).run(); }

bool judge_alike(const Situation& s, Docket& docket) { return Judge(s, docket).run_alike(); }

constexpr Citation sources[] = {
    {.work = "ISO 4413:2010 (paraphrase; the project's rows K01, K02)", .place = "5.2.2"},
    {.work = "US Army TM 5-3895-382-24 (crossport relief of a roller)", .place = "p. 11-9"}};

}  // namespace

extern constinit const Rule crossport_relief{
    .info = {.id = "crossport-relief",
             .family = "High-pressure protection",
             .question = "Is every main side, and every section while cut off, limited by a relief "
                         "that cannot be isolated, to another side or to the charge line?",
             .why = "A blocked or overrunning load drives the pressure up until a hose, a housing "
                    "or a shaft gives way; oil at that pressure injects through skin.",
             .decided = "From the side (from each piece of it at a machine, where hand valves or "
                        "pilots cut it) to a relief valve, and from its outlet to another side of "
                        "the loop, or to a charge line with a make-up path onward, past nothing "
                        "that can be closed; not to a vented reservoir.",
             .data = "joins, valve positions, locked hand valves",
             .subject = "each main side and each section",
             .states = "running",
             .level = Level::error,
             .remedy = "Put a relief valve from the side to the other side, or to the charge line, "
                       "with no valve between that can be closed.",
             .sources = sources},
    .judge = judge,
    .judge_alike = judge_alike};

}  // namespace loopwright
