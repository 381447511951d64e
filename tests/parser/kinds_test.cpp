#include <algorithm>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/kinds/elements.h>

// What holds of every kind of the table, whatever it is. What each kind is, is in
// kind_statements_test.cpp.

namespace loopwright {
namespace {

bool kebab(std::string_view word) {
    return !word.empty() && word.front() != '-' && word.back() != '-' &&
           word.find("--") == std::string_view::npos &&
           word.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos;
}

std::vector<std::string_view> parts(std::string_view words) {
    std::vector<std::string_view> list;
    while (true) {
        const std::size_t end = words.find('|');
        list.push_back(words.substr(0, end));
        if (end == std::string_view::npos) return list;
        words.remove_prefix(end + 1);
    }
}

const AttributeSpec* attribute_of(const Kind& kind, std::string_view name) {
    const auto at = std::find_if(kind.attributes.begin(), kind.attributes.end(),
                                 [name](const AttributeSpec& spec) { return spec.name == name; });
    return at == kind.attributes.end() ? nullptr : &*at;
}

const PortSpec* port_of(const Kind& kind, std::string_view letter) {
    const auto at = std::find_if(kind.ports.begin(), kind.ports.end(),
                                 [letter](const PortSpec& port) { return port.letter == letter; });
    return at == kind.ports.end() ? nullptr : &*at;
}

/// The words an attribute can be, where they can be listed.
std::vector<std::string> words_of(const AttributeSpec& spec) {
    if (spec.type == AttributeType::yes_no) return {"yes", "no"};
    std::vector<std::string> words(spec.choices.begin(), spec.choices.end());
    if (spec.type == AttributeType::count) {
        for (double number = spec.least; number <= spec.most; ++number)
            words.push_back(std::to_string(static_cast<int>(number)));
    }
    return words;
}

/// All attribute lists of the catalogue with a name for messages.
std::vector<std::pair<std::string, std::span<const AttributeSpec>>> attribute_lists() {
    std::vector<std::pair<std::string, std::span<const AttributeSpec>>> lists;
    for (const Kind* kind : kinds()) lists.emplace_back(kind->name, kind->attributes);
    lists.emplace_back("any component", common_attributes());
    for (const ElementSpec& element : elements()) {
        lists.emplace_back(element.name, element.attributes);
        EXPECT_FALSE(element.attributes.empty()) << element.name;
        EXPECT_FALSE(element.doc.empty()) << element.name;
        EXPECT_EQ(find_element(element.name, element.in), &element);
    }
    return lists;
}

TEST(Kinds, AreSortedAndFound) {
    ASSERT_FALSE(kinds().empty());
    EXPECT_TRUE(std::is_sorted(kinds().begin(), kinds().end(),
                               [](const Kind* a, const Kind* b) { return a->name < b->name; }));
    std::set<std::string_view> names;
    for (const Kind* kind : kinds()) {
        EXPECT_TRUE(names.insert(kind->name).second) << kind->name;
        EXPECT_TRUE(kebab(kind->name)) << kind->name;
        EXPECT_EQ(find_kind(kind->name), kind);
    }
    for (const std::string_view name :
         {"", "a", "pum", "pumps", "Pump", "line", "circuit", "zzz"}) {
        EXPECT_EQ(find_kind(name), nullptr) << name;
    }
    EXPECT_EQ(find_element("pump", "circuit"), nullptr);
    EXPECT_EQ(find_element("line", ""), nullptr);
}

TEST(Kinds, HaveTheirWords) {
    std::set<std::string_view> titles;
    for (const Kind* kind : kinds()) {
        EXPECT_FALSE(kind->title.empty()) << kind->name;
        EXPECT_TRUE(titles.insert(kind->title).second) << kind->name;
        EXPECT_TRUE(kind->doc.ends_with('.')) << kind->name;
        for (const PortSpec& port : kind->ports)
            EXPECT_FALSE(port.doc.empty()) << kind->name << "." << port.letter;
        std::set<std::string_view> failures;
        for (const FailureMode& failure : kind->failures) {
            EXPECT_TRUE(kebab(failure.id)) << kind->name << ": " << failure.id;
            EXPECT_FALSE(failure.doc.empty()) << kind->name << ": " << failure.id;
            EXPECT_TRUE(failures.insert(failure.id).second) << kind->name << ": " << failure.id;
        }
        // A tee has nothing in it that could fail, and a load fails as what it is, not as
        // hydraulics.
        const bool cannot_fail = kind->name == "junction" || kind->name == "load";
        EXPECT_EQ(kind->failures.empty(), cannot_fail) << kind->name;
    }
}

TEST(Kinds, AttributesAreSound) {
    for (const auto& [owner, list] : attribute_lists()) {
        std::set<std::string_view> names;
        for (const AttributeSpec& spec : list) {
            const std::string where = owner + " " + std::string(spec.name);
            EXPECT_TRUE(kebab(spec.name)) << where;
            EXPECT_TRUE(names.insert(spec.name).second) << where;
            EXPECT_FALSE(spec.doc.empty()) << where;
            EXPECT_FALSE(spec.doc.ends_with('.')) << where;
            EXPECT_LE(spec.least, spec.most) << where;
            EXPECT_EQ(spec.type == AttributeType::choice, !spec.choices.empty()) << where;
            EXPECT_FALSE(spec.required && !spec.default_text.empty()) << where;
            std::set<std::string_view> choices;
            for (const std::string_view choice : spec.choices) {
                EXPECT_TRUE(kebab(choice)) << where << " " << choice;
                EXPECT_TRUE(choices.insert(choice).second) << where << " " << choice;
            }
            if (spec.type == AttributeType::count) {
                EXPECT_LT(spec.least, spec.most) << where;
                EXPECT_LE(spec.most, 9) << where << ": the schema lists them";
                EXPECT_EQ(spec.least, static_cast<int>(spec.least)) << where;
            }
        }
    }
}

TEST(Kinds, HaveOneShaftEndOrTwoOfDifferentNames) {
    for (const Kind* kind : kinds()) {
        if (kind->ends.empty()) continue;
        ASSERT_EQ(kind->ends.size(), 2u) << kind->name;
        EXPECT_NE(kind->ends.front(), kind->ends.back()) << kind->name;
        EXPECT_TRUE(kind->turns) << kind->name;
        for (const std::string_view end : kind->ends) EXPECT_TRUE(is_id(end)) << kind->name;
    }
}

TEST(Kinds, NoKindHasACommonAttributeOfItsOwn) {
    for (const Kind* kind : kinds()) {
        for (const AttributeSpec& spec : common_attributes())
            EXPECT_EQ(attribute_of(*kind, spec.name), nullptr) << kind->name << " " << spec.name;
    }
}

TEST(Kinds, DefaultsAreReadAndHaveASource) {
    int seen = 0;
    for (const auto& [owner, list] : attribute_lists()) {
        for (const AttributeSpec& spec : list) {
            const std::string where = owner + " " + std::string(spec.name);
            EXPECT_EQ(spec.default_text.empty(), spec.default_source.empty()) << where;
            if (spec.default_text.empty()) continue;
            AttributeValue value;
            Words words;
            EXPECT_TRUE(read_value(spec, spec.default_text, value, words))
                << where << ": " << words.message;
            ++seen;
        }
    }
    EXPECT_GT(seen, 15);
}

TEST(Kinds, ExamplesOfADimensionAreInEveryRange) {
    // Whoever types the example of the message gets no second message.
    for (const auto& [owner, list] : attribute_lists()) {
        for (const AttributeSpec& spec : list) {
            if (spec.type != AttributeType::quantity) continue;
            AttributeValue value;
            Words words;
            std::string_view text = example_of(spec);
            if (text == example(Dimension::ratio)) text = "20 %";  // it has two
            EXPECT_TRUE(read_value(spec, text, value, words))
                << owner << " " << spec.name << ": " << words.message;
        }
    }
}

TEST(Kinds, PortsAndPassagesReferToWhatIsThere) {
    for (const Kind* kind : kinds()) {
        std::set<std::string_view> letters;
        const auto known = [kind](const When& when) {
            if (when.attribute.empty()) return when.is.empty();
            const AttributeSpec* spec = attribute_of(*kind, when.attribute);
            if (spec == nullptr) return false;
            // Without a default, neither the condition nor its opposite would hold.
            if (spec->default_text.empty() && !spec->required) return false;
            const std::vector<std::string> words = words_of(*spec);
            const std::vector<std::string_view> asked = parts(when.is);
            return asked.size() < words.size() &&
                   std::all_of(asked.begin(), asked.end(), [&words](std::string_view word) {
                       return std::find(words.begin(), words.end(), word) != words.end();
                   });
        };
        for (const PortSpec& port : kind->ports) {
            EXPECT_TRUE(letters.insert(port.letter).second) << kind->name << "." << port.letter;
            EXPECT_TRUE(is_id(port.letter)) << kind->name << "." << port.letter;
            EXPECT_TRUE(known(port.when) && known(port.also)) << kind->name << "." << port.letter;
        }
        for (const PassageSpec& passage : kind->passages) {
            const std::string where = std::string(kind->name) + " " + std::string(passage.from) +
                                      " to " + std::string(passage.to);
            EXPECT_NE(passage.from, passage.to) << where;
            EXPECT_NE(port_of(*kind, passage.from), nullptr) << where;
            EXPECT_NE(port_of(*kind, passage.to), nullptr) << where;
            EXPECT_TRUE(known(passage.when) && known(passage.also)) << where;
            EXPECT_FALSE(name(passage.passage).empty()) << where;
            const bool opens = passage.passage == PassageClass::pressure_opened ||
                               passage.passage == PassageClass::one_way;
            const bool set = opens || passage.passage == PassageClass::reduced ||
                             passage.shift == Shift::pilot_unloads;
            EXPECT_TRUE(set || passage.opening.empty()) << where;
            EXPECT_FALSE(opens && passage.opening.empty()) << where;
            if (!passage.opening.empty()) {
                const AttributeSpec* opening = attribute_of(*kind, passage.opening);
                ASSERT_NE(opening, nullptr) << where;
                EXPECT_EQ(opening->dimension, Dimension::pressure) << where;
                EXPECT_EQ(opening->type, AttributeType::quantity) << where;
                EXPECT_FALSE(passage.both_ways) << where;
            }
            const bool moved = passage.shift != Shift::never;
            EXPECT_TRUE(moved || passage.passage != PassageClass::switched) << where;
        }
        // Ports come from the table or from the file, not from both.
        const bool legs = kind->children == Children::legs;  // they begin at the kind's port
        EXPECT_TRUE(kind->children == Children::no || kind->ports.size() == (legs ? 1U : 0U))
            << kind->name;
        EXPECT_TRUE(kind->children == Children::no || kind->passages.empty()) << kind->name;
        EXPECT_TRUE(kind->turns || !kind->ports.empty() || kind->children != Children::no)
            << kind->name << ": nothing can be joined to it";
    }
}

}  // namespace
}  // namespace loopwright
