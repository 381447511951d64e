#include <loopwright/parser/builder.h>

#include <algorithm>
#include <array>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/each_inner.h>

// Operating points.

namespace loopwright {
namespace {

/// Which figures a point may set of what.
struct Owner {
    std::string_view what = {};
    std::array<std::string_view, 6> figures = {};
};
constexpr Owner a_command{"command", {"travel"}};
constexpr Owner a_prime_mover{"prime mover", {"speed"}};
constexpr Owner a_load{"load", {"torque", "force", "grade", "mass", "velocity", "speed"}};
constexpr Owner an_accumulator{"accumulator", {"pressure"}};
constexpr Owner a_valve{"valve", {"position"}};

bool may_set(const Owner& owner, std::string_view figure) {
    return std::find(owner.figures.begin(), owner.figures.end(), figure) != owner.figures.end();
}

}  // namespace

void Builder::duty(Scope& scope, const Entry& entry) {
    const bool twice = comes_twice(entry, circuit_.duty.has_value());
    loads_.clear();
    prime_movers_.clear();
    for (Index i = 0; i < circuit_.components.size(); ++i) {
        const Part part = circuit_.components[i].kind->part;
        if (part == Part::load) {
            loads_.push_back(i);
        } else if (part == Part::prime_mover) {
            prime_movers_.push_back(i);
        }
    }
    Duty duty;
    duty.place = tag_of(entry);
    duty.attributes = keep_figures(entry);
    duty.points.begin = static_cast<Index>(circuit_.points.size());
    double shares = 0.0;
    each_inner(entry.page, entry.element, "duty", "duty",
               [&](const ElementWords& words, std::uint32_t child) {
                   point(scope, enter(entry.page, words, child), shares);
               });
    duty.points.end = static_cast<Index>(circuit_.points.size());
    if (!twice) {
        circuit_.duty = duty;
    }
}

void Builder::point(Scope& scope, const Entry& entry, double& shares) {
    const auto index = static_cast<Index>(circuit_.points.size());
    DutyPoint& point = circuit_.points.emplace_back();
    point.place = tag_of(entry);
    point.id = id_text(entry.page, entry.words, entry.given);
    if (const auto title = text_at(entry, "title")) {
        point.title = title->text;
    }
    point.attributes = keep_figures(entry);
    const Range point_attributes = point.attributes;
    if (const AttributeValue* const state = figure_in(point.attributes, "state")) {
        point.state = state_named(state->text);
    }
    if (!point.id.empty()) {
        const Name* const first =
            names_.add(NameScope::points(), point.id, {NameType::point, false, index});
        if (first != nullptr) {
            report_duplicate(text_of(entry.page, entry.given, entry.words.id), *first);
        }
    }
    if (const AttributeValue* const share = figure_in(point.attributes, "share")) {
        constexpr double rounding = 1e-9;
        const bool full = shares > 1.0 + rounding;
        shares += share->si;
        if (!full && shares > 1.0 + rounding) {
            report_.error(share->place, [&] {
                return Words{fmt::format("the shares come to {:.4g} %", 100.0 * shares),
                             "at most 100 %; what is missing to it is neutral",
                             {}};
            });
        }
    }
    const std::size_t first = circuit_.point_settings.size();
    point.settings.begin = static_cast<Index>(first);
    each_inner(entry.page, entry.element, "point", "point",
               [&](const ElementWords& words, std::uint32_t child) {
                   point_setting(scope, enter(entry.page, words, child), first);
               });
    circuit_.points[index].settings.end = static_cast<Index>(circuit_.point_settings.size());
    check_point_owners(entry);
    check_load_once(point_attributes);
    check_set_once(circuit_.points[index]);
}

void Builder::point_setting(Scope& scope, const Entry& entry, std::size_t first) {
    no_children(entry.page, entry.element, entry.words.name);
    PointSetting setting;
    setting.place = tag_of(entry);
    setting.attributes = keep_figures(entry);
    const auto of = text_at(entry, "of");
    if (!of) {
        return;
    }
    constexpr std::string_view expected =
        "the id of a command, prime mover, load, accumulator or valve of {}";
    const Name* const name = named(scope, *of, of->text, expected);
    if (name == nullptr) {
        return;
    }
    const Owner* owner = nullptr;
    if (name->type == NameType::command) {
        owner = &a_command;
        setting.command = name->index;
    } else if (name->type == NameType::component) {
        setting.component = name->index;
        const Component& part = circuit_.components[name->index];
        owner = part.kind->part == Part::prime_mover   ? &a_prime_mover
                : part.kind->part == Part::load        ? &a_load
                : part.kind->part == Part::accumulator ? &an_accumulator
                : part.positions.size() > 0            ? &a_valve
                                                       : nullptr;
    }
    if (owner == nullptr) {
        report_.error(of->value, [&] {
            return Words{fmt::format("'{}' is {}, of which a point sets nothing", clipped(of->text),
                                     kind_of(*name)),
                         fmt::format(fmt::runtime(expected), scope_name(scope)),
                         {}};
        });
        return;
    }
    bool any = false;
    for (Index i = setting.attributes.begin; i < setting.attributes.end; ++i) {
        const AttributeValue& value = circuit_.attributes[i];
        if (value.spec->name == "of" || !value.given) {
            continue;
        }
        any = true;
        if (!may_set(*owner, value.spec->name)) {
            report_.error(value.place, [&] {
                std::vector<std::string_view> known;
                for (const std::string_view figure : owner->figures) {
                    if (!figure.empty()) {
                        known.push_back(figure);
                    }
                }
                return Words{
                    fmt::format("{} is nothing that a {} has", value.spec->name, owner->what),
                    list_of(known),
                    {}};
            });
        } else if (owner == &a_prime_mover && value.si < 0.0) {
            report_.error(value.place, [&] {
                return Words{fmt::format("{} is out of range", clipped(value.text)),
                             "0 rpm or more of a prime mover; a load's may be negative",
                             {}};
            });
        } else if (value.spec->name == "position") {
            const GivenText text{value.text, value.place, value.place, true};
            setting.position = named_position(text, setting.component, value.text);
        }
    }
    if (!any) {
        report_.error(setting.place, [&] {
            return Words{fmt::format("nothing is set of '{}'", clipped(of->text)),
                         fmt::format("{} of the {}", owner->figures.front(), owner->what),
                         {}};
        });
    }
    for (std::size_t i = first; i < circuit_.point_settings.size(); ++i) {
        const PointSetting& other = circuit_.point_settings[i];
        if (other.command == setting.command && other.component == setting.component) {
            report_.error(of->value, [&] {
                return Words{fmt::format("'{}' is set twice at this point", clipped(of->text)),
                             "one 'set' with all its figures",
                             {}};
            });
            return;
        }
    }
    check_load_once(setting.attributes);
    circuit_.point_settings.push_back(setting);
}

/// What a point says of the only command, load or prime mover no 'set' in it says as well.
void Builder::check_set_once(const DutyPoint& point) {
    for (Index i = point.settings.begin; i < point.settings.end; ++i) {
        const PointSetting& setting = circuit_.point_settings[i];
        const Owner* owner = setting.component == none ? &a_command : nullptr;
        if (owner == nullptr) {
            const Part part = circuit_.components[setting.component].kind->part;
            if (part == Part::load) owner = &a_load;
            if (part == Part::prime_mover) owner = &a_prime_mover;
        }
        if (owner == nullptr) continue;
        const auto says = [&](Range attributes) -> const AttributeValue* {
            for (Index a = attributes.begin; a < attributes.end; ++a) {
                const AttributeValue& one = circuit_.attributes[a];
                // How fast a load goes is asked beside what it takes.
                const bool pace =
                    owner == &a_load && (one.spec->name == "velocity" || one.spec->name == "speed");
                if (one.given && !pace && may_set(*owner, one.spec->name)) return &one;
            }
            return nullptr;
        };
        const AttributeValue* const at_point = says(point.attributes);
        const AttributeValue* const here = says(setting.attributes);
        if (at_point == nullptr || here == nullptr) continue;
        report_.error(here->place, [&] {
            return Words{fmt::format("the {} is set twice, by {} of the point and {} here",
                                     owner->what, at_point->spec->name, here->spec->name),
                         "one of the two",
                         {}};
        });
    }
}

/// What a load asks for is said as a torque, as a force, or by its weight and the grade it is on.
void Builder::check_load_once(Range attributes) {
    const AttributeValue* said = nullptr;
    for (Index i = attributes.begin; i < attributes.end; ++i) {
        const AttributeValue& value = circuit_.attributes[i];
        const bool weighed = value.spec->name == "grade" || value.spec->name == "mass";
        if (!value.given ||
            !(weighed || value.spec->name == "torque" || value.spec->name == "force"))
            continue;
        const bool said_weighed =
            said != nullptr && (said->spec->name == "grade" || said->spec->name == "mass");
        if (said == nullptr || (weighed && said_weighed)) {
            said = &value;
            continue;
        }
        report_.error(value.place, [&] {
            return Words{fmt::format("the load is given twice, by {} and by {}", said->spec->name,
                                     value.spec->name),
                         "a torque, a force, or grade and mass",
                         {}};
        });
        return;
    }
}

void Builder::check_point_owners(const Entry& entry) {
    std::vector<std::string_view> commands;
    std::vector<std::string_view> loads;
    std::vector<std::string_view> movers;
    for (const Command& command : circuit_.commands) {
        commands.push_back(command.id);
    }
    for (const Index load : loads_) {
        loads.push_back(circuit_.components[load].path);
    }
    for (const Index mover : prime_movers_) {
        movers.push_back(circuit_.components[mover].path);
    }
    check_owner(entry, "travel", "command", commands);
    check_owner(entry, "speed", "prime mover", movers);
    for (const std::string_view figure : a_load.figures) {
        if (figure == "speed") {
            continue;  // a point's own is the prime mover's
        }
        check_owner(entry, figure, "load", loads);
    }
}

void Builder::check_owner(const Entry& entry, std::string_view attribute, std::string_view owner,
                          const std::vector<std::string_view>& owners) {
    const auto text = text_at(entry, attribute);
    if (!text || owners.size() == 1) {
        return;
    }
    report_.error(text->whole, [&] {
        if (owners.empty()) {
            return Words{fmt::format("{} is given, but the circuit has no {}", attribute, owner),
                         fmt::format("a {} that it belongs to", owner),
                         {}};
        }
        return Words{fmt::format("{} may belong to any of {} {}s", attribute, owners.size(), owner),
                     fmt::format(R"(a <set of="{}" {}="{}"/> in the point)",
                                 clipped(owners.front()), attribute, clipped(text->text)),
                     {}};
    });
}

}  // namespace loopwright
