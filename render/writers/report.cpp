#include <loopwright/base/unit_text.h>
#include <loopwright/render/writers/report.h>

#include <algorithm>

#include <fmt/format.h>

#include <loopwright/base/utf8.h>
#include <loopwright/render/told_together.h>
#include <loopwright/render/writers/listed.h>

namespace loopwright {

namespace {

constexpr std::size_t width = 92;

struct Colours {
    std::string_view error = "\x1b[31m";
    std::string_view warning = "\x1b[33m";
    std::string_view strong = "\x1b[1m";
    std::string_view off = "\x1b[0m";
};

std::string painted(std::string_view text, std::string_view colour, const ReportStyle& style) {
    if (!style.colour) return std::string(text);
    return fmt::format("{}{}{}", colour, text, Colours{}.off);
}

std::string level_word(Level level, const ReportStyle& style) {
    const Colours colours;
    return painted(name(level),
                   level == Level::error     ? colours.error
                   : level == Level::warning ? colours.warning
                                             : colours.strong,
                   style);
}

/// Breaks a text at blanks; every line begins with `indent` blanks, the first after `head`.
std::string wrapped(std::string_view head, std::string_view text, std::size_t indent) {
    std::string out(head);
    std::size_t column = head.size();
    bool first = true;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        if (!first && column + 1 + word.size() > width) {
            out += '\n';
            out.append(indent, ' ');
            column = indent;
        } else if (!first) {
            out += ' ';
            ++column;
        }
        out += word;
        column += word.size();
        first = false;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return out + '\n';
}

std::string join(const Circuit& circuit, const std::vector<Index>& components) {
    std::string text;
    for (const Index c : components)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", circuit.components[c].path);
    return text;
}

std::string count_of(std::size_t count, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string structure_lines(const Circuit& circuit, const Structure& structure) {
    std::string text;
    if (structure.loops.empty()) text += "No closed loop.\n";
    for (const LoopInfo& loop : structure.loops) {
        text += wrapped(
            "Loop  ",
            fmt::format("{}: {} {}, {} {}", loop.id, loop.pumps.size() == 1 ? "pump" : "pumps",
                        join(circuit, loop.pumps),
                        loop.actuators.size() == 1 ? "actuator" : "actuators",
                        join(circuit, loop.actuators)),
            6);
        for (const SideInfo& side : loop.sides) {
            std::string lines;
            for (const Index line : side.lines)
                lines += fmt::format("{}{}", lines.empty() ? "" : ", ", circuit.lines[line].path);
            text += wrapped("      ",
                            fmt::format("{} ({}): {}", side.id, name(side.role),
                                        lines.empty() ? "no line" : lines),
                            8);
        }
    }
    for (const OpenPart& part : structure.open_parts) {
        const bool charges = std::any_of(part.pumps.begin(), part.pumps.end(), [&](Index pump) {
            return std::binary_search(structure.charge_pumps.begin(), structure.charge_pumps.end(),
                                      pump);
        });
        text +=
            wrapped("Open  ",
                    fmt::format("{}: {}{}{}{}", part.id,
                                part.pumps.empty() ? "no pump" : join(circuit, part.pumps),
                                part.actuators.empty() ? "" : " drives ",
                                join(circuit, part.actuators), charges ? " (charges a loop)" : ""),
                    6);
    }
    return text;
}

std::string outcome_word(const Verdict& verdict, const ReportStyle& style) {
    if (verdict.waived != nullptr)
        return fmt::format("waived {}", verdict.outcome == Outcome::fail ? name(verdict.level)
                                                                         : name(verdict.outcome));
    if (verdict.outcome == Outcome::fail) return level_word(verdict.level, style);
    if (verdict.outcome == Outcome::inconclusive)
        return painted("cannot tell", Colours{}.strong, style);
    return std::string(name(verdict.outcome));
}

std::string finding_text(const Circuit& circuit, const Verdict& verdict, const ReportStyle& style) {
    const SourceRef ref = place_of(circuit, verdict.subject);
    const Place place = circuit.sources->place(ref);
    std::string text = fmt::format("{}:{}:{}: {}: {}: {} [{}]\n", visible(place.file), place.line,
                                   place.column, outcome_word(verdict, style), verdict.subject.id,
                                   visible(verdict.message), verdict.rule->id);
    const Cause* const cause = verdict.follows;
    if ((verdict.outcome == Outcome::fail && cause == nullptr) ||
        verdict.outcome == Outcome::inconclusive)
        text += circuit.sources->quote(ref) + '\n';
    if (!verdict.states.empty())
        text += wrapped("    in       ", states_text(circuit, verdict), 13);
    if (!verdict.point.empty()) text += wrapped("    at       ", point_text(verdict), 13);
    if (!verdict.missing.empty()) text += wrapped("    missing  ", missing_text(verdict), 13);
    if (const Waived* waived = verdict.waived; waived != nullptr)
        text +=
            wrapped("    waived   ",
                    visible(fmt::format("{} ({}{}{})", waived->reason, waived->by,
                                        waived->until.empty() ? "" : ", until ", waived->until)),
                    13);
    // Whoever repairs the cause reads no more of it.
    if (cause != nullptr)
        return text + wrapped("    follows  ",
                              fmt::format("from {} of {}", cause->rule->id, cause->subject.id), 13);
    const std::string_view shape = verdict.witness.shape == WitnessShape::frontier ? "ends at"
                                   : verdict.witness.shape == WitnessShape::path   ? "way    "
                                                                                   : "see    ";
    std::size_t number = 0;
    for (const Step& step : verdict.witness.steps) {
        ++number;
        text += wrapped(fmt::format("    {}  {:>2}. ", number == 1 ? shape : "       ", number),
                        step_text(circuit, step), 17);
    }
    if (verdict.outcome == Outcome::fail) {
        text += wrapped("    why      ", verdict.rule->why, 13);
        text += wrapped("    remedy   ", verdict.rule->remedy, 13);
        for (const Citation& source : verdict.rule->sources)
            text += wrapped("    source   ",
                            source.place.empty() ? std::string(source.work)
                                                 : fmt::format("{}, {}", source.work, source.place),
                            13);
    }
    return text;
}

/// Several findings that are told together: what their subjects have in common.
std::string group_text(const Circuit& circuit, std::span<const Verdict* const> group,
                       const ReportStyle& style) {
    const Verdict& first = *group.front();
    if (group.size() == 1) return finding_text(circuit, first, style);
    Listed rules;
    Listed subjects;
    Listed missing;
    for (const Verdict* verdict : group) {
        rules.add(verdict->rule->id);
        subjects.add(verdict->subject.id);
        for (const std::string_view datum : verdict->missing) missing.add(datum);
    }
    const Place place = circuit.sources->place(place_of(circuit, first.subject));
    const bool of_one_rule = group.back()->rule == first.rule;
    std::string text =
        fmt::format("{}:{}:{}: {}{}: {}{}\n", visible(place.file), place.line, place.column,
                    outcome_word(first, style),
                    of_one_rule ? fmt::format(", {} subjects", group.size()) : std::string(),
                    of_one_rule ? std::string(first.rule->question) : visible(first.message),
                    of_one_rule ? fmt::format(" [{}]", first.rule->id) : std::string());
    if (!of_one_rule) text += wrapped("    rules    ", rules.text(), 13);
    if (subjects.text() != "circuit") text += wrapped("    of       ", subjects.text(), 13);
    if (!missing.text().empty()) text += wrapped("    missing  ", missing.text(), 13);
    if (first.follows != nullptr)
        text += wrapped(
            "    follows  ",
            fmt::format("from {} of {}", first.follows->rule->id, first.follows->subject.id), 13);
    return text;
}

/// Those that `wanted` picks, each group in the place of its first.
template <typename Wanted>
std::string group_texts(const Circuit& circuit, std::span<const Verdict> verdicts,
                        const ReportStyle& style, Wanted wanted) {
    std::vector<std::vector<const Verdict*>> groups;
    for (const Verdict& verdict : verdicts) {
        if (!wanted(verdict)) continue;
        const auto first_of = [](const auto& group) -> const Verdict& { return *group.front(); };
        const auto group = entry_of(groups, verdict, first_of);
        if (group != groups.end())
            group->push_back(&verdict);
        else
            groups.push_back({&verdict});
    }
    std::string text;
    for (const auto& group : groups) text += '\n' + group_text(circuit, group, style);
    return text;
}

}  // namespace

std::string visible(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const utf8::Character character = utf8::first(text);
        if (!character.valid)
            out += fmt::format("\\x{:02x}", static_cast<unsigned char>(text.front()));
        else if (utf8::is_control(character.code))
            out += fmt::format("\\u{:04x}", static_cast<unsigned>(character.code));
        else
            out += text.substr(0, character.length);
        text.remove_prefix(character.length);
    }
    return out;
}

std::string diagnostics_text(const Diagnostics& diagnostics, const SourceSet& sources,
                             const ReportStyle& style) {
    std::string text;
    for (const Diagnostic& diagnostic : diagnostics) {
        const Place place = sources.place(diagnostic.place);
        text += fmt::format("{}:{}:{}: {}: {}\n", visible(place.file), place.line, place.column,
                            level_word(diagnostic.level, style), visible(diagnostic.message));
        // Of a file that could not be read there is nothing to quote.
        if (sources.has_text(diagnostic.place)) text += sources.quote(diagnostic.place) + '\n';
        if (!diagnostic.expected.empty())
            text += wrapped("    expected  ", visible(diagnostic.expected), 14);
        if (!diagnostic.suggestion.empty())
            text += wrapped("    perhaps   ", visible(diagnostic.suggestion), 14);
        for (const Place& outer : place.within)
            text += fmt::format("    used at   {}:{}:{}\n", visible(outer.file), outer.line,
                                outer.column);
    }
    return text;
}

std::string report_text(const Circuit& circuit, const Structure& structure,
                        std::span<const Verdict> verdicts, const ReportStyle& style) {
    const Tally sum = tally(verdicts);
    std::string text = fmt::format(
        "{}{}{}\n",
        painted(visible(circuit.title.title.empty() ? std::string_view("Circuit without a title")
                                                    : circuit.title.title),
                Colours{}.strong, style),
        circuit.title.drawing.empty() ? ""
                                      : fmt::format(", drawing {}", visible(circuit.title.drawing)),
        circuit.title.revision.empty()
            ? ""
            : fmt::format(", revision {}", visible(circuit.title.revision)));
    text += structure_lines(circuit, structure);
    const std::size_t refuted = sum.error + sum.warning + sum.note;
    text += fmt::format("{} proved, {} refuted ({}, {}, {}), {} undecided, {} not applicable{}\n",
                        count_of(sum.pass, "need", "needs"), refuted,
                        count_of(sum.error, "error", "errors"),
                        count_of(sum.warning, "warning", "warnings"),
                        count_of(sum.note, "note", "notes"), sum.inconclusive, sum.not_applicable,
                        sum.waived == 0 ? "" : fmt::format(", {} waived", sum.waived));
    if (!style.today.empty() && !circuit.waivers.empty())
        text += fmt::format("Waivers held against {}\n", style.today);
    for (const Remark& remark : circuit.remarks)
        text += wrapped("Remark ", visible(remark_text(remark)), 7);
    for (const ThresholdInUse& one : style.thresholds)
        text += fmt::format(
            "Threshold {} of {}: {}{}\n", one.threshold->name, one.rule->id,
            format_quantity(one.si, one.threshold->dimension),
            one.given ? fmt::format(" (set; else {})",
                                    format_quantity(one.threshold->value, one.threshold->dimension))
                      : "");
    // Causes first: a rule whose finding follows may come before the one it follows from.
    for (const Verdict& verdict : verdicts) {
        const bool finding = verdict.outcome == Outcome::fail ||
                             (verdict.outcome == Outcome::inconclusive && verdict.waived);
        if ((finding || style.all) && verdict.follows == nullptr)
            text += '\n' + finding_text(circuit, verdict, style);
    }
    if (style.all) {
        for (const Verdict& verdict : verdicts)
            if (verdict.follows != nullptr) text += '\n' + finding_text(circuit, verdict, style);
    } else {
        text += group_texts(circuit, verdicts, style, [](const Verdict& verdict) {
            return verdict.outcome == Outcome::fail && verdict.follows != nullptr;
        });
        text += group_texts(circuit, verdicts, style, [](const Verdict& verdict) {
            return verdict.outcome == Outcome::inconclusive && verdict.waived == nullptr;
        });
    }
    if (refuted + sum.inconclusive > 0)
        text +=
            "\nA check of the drawing does not replace review by a competent person; local codes "
            "govern.\nBefore work on the machine: stop, lock out, secure the load, release stored "
            "pressure,\nlet the oil cool. A jet of oil injects through skin.\n";
    return text;
}

}  // namespace loopwright
