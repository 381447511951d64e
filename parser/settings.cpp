#include <loopwright/parser/settings.h>

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/file_store.h>
#include <loopwright/parser/report.h>
#include <loopwright/parser/xml_reader.h>

namespace loopwright {

namespace {

class SettingsReader {
  public:
    SettingsReader(std::string_view root, std::span<const SettingGroup> groups,
                   const ReadLimits& limits)
        : root_(root),
          groups_(groups),
          limits_(limits),
          sources_(std::make_shared<SourceSet>()),
          report_(limits.messages) {}

    SettingsResult read(const std::filesystem::path& file) {
        Words trouble;
        std::optional<std::string> text = read_regular_file(file, limits_.file_bytes, trouble);
        const std::uint32_t index = sources_->add_file(file.string(), text.value_or(""));
        inclusion_ = sources_->add_inclusion(index);
        report_.add_inclusion(index);
        if (text)
            read_text(sources_->file(index).text_string());
        else
            report_.error(at({}), [&] {
                return Words{
                    fmt::format("'{}' cannot be read: {}", clipped(file.string()), trouble.message),
                    trouble.expected, trouble.suggestion};
            });
        result_.diagnostics = report_.finish();
        result_.sources = sources_;
        return std::move(result_);
    }

  private:
    SourceRef at(Span span) const { return {inclusion_, span}; }

    void read_text(const std::string& text) {
        const XmlResult xml = read_xml(text, limits_.depth);
        if (xml.trouble) {
            report_.error(at(xml.trouble->span), [&] {
                return Words{xml.trouble->message, xml.trouble->expected, xml.trouble->suggestion};
            });
            return;
        }
        const XmlDocument& document = *xml.document;
        const ScannedElement& root = document.element(0);
        if (document.name(root) != root_) {
            report_.error(at(root.name()), [&] {
                return Words{fmt::format("the root element is '{}'", clipped(document.name(root))),
                             fmt::format("'{}'", root_), std::string(root_)};
            });
            return;
        }
        if (!is_known_format(document, root)) return;
        for (std::uint32_t child = 1; child < root.next; child = document.element(child).next)
            read_group(document, child);
    }

    bool is_known_format(const XmlDocument& document, const ScannedElement& root) {
        bool given = false;
        bool known = false;
        for (std::uint32_t i = 0; i < root.attribute_count; ++i) {
            const ScannedAttribute& attribute = document.attribute(root.attributes + i);
            if (document.name(attribute) != "format") {
                report_.error(at(attribute.name()), [&] {
                    return Words{fmt::format("unknown attribute '{}' of {}",
                                             clipped(document.name(attribute)), root_),
                                 "format",
                                 {}};
                });
                continue;
            }
            given = true;
            known = document.value(attribute) == "1";
            if (!known)
                report_.error(at(attribute.value()), [&] {
                    return Words{
                        fmt::format("format '{}' is not known", clipped(document.value(attribute))),
                        "format=\"1\"", "1"};
                });
        }
        if (!given)
            report_.error(at(root.name()), [&] {
                return Words{
                    fmt::format("{} needs the attribute 'format'", root_), "format=\"1\"", {}};
            });
        return known;
    }

    void read_group(const XmlDocument& document, std::uint32_t index) {
        const ScannedElement& element = document.element(index);
        const std::string_view name = document.name(element);
        const auto group = std::find_if(groups_.begin(), groups_.end(),
                                        [&](const SettingGroup& one) { return one.name == name; });
        if (group == groups_.end()) {
            std::vector<std::string_view> known;
            for (const SettingGroup& one : groups_) known.push_back(one.name);
            report_.error(at(element.name()), [&] {
                return Words{fmt::format("nothing can be set for '{}'", clipped(name)),
                             list_of(known), std::string(nearest_word(name, known))};
            });
            return;
        }
        if (!seen_.insert(name).second)
            report_.error(at(element.name()), [&] {
                return Words{fmt::format("'{}' stands there twice", clipped(name)),
                             "one element with all its figures",
                             {}};
            });
        for (std::uint32_t i = 0; i < element.attribute_count; ++i)
            read_setting(document, *group, document.attribute(element.attributes + i));
        for (std::uint32_t inner = index + 1; inner < element.next;
             inner = document.element(inner).next)
            report_.error(at(document.element(inner).name()), [&] {
                return Words{fmt::format("'{}' cannot stand here",
                                         clipped(document.name(document.element(inner)))),
                             fmt::format("nothing inside {}", name),
                             {}};
            });
    }

    void read_setting(const XmlDocument& document, const SettingGroup& group,
                      const ScannedAttribute& attribute) {
        const std::string_view name = document.name(attribute);
        const auto spec = std::find_if(group.settings.begin(), group.settings.end(),
                                       [&](const AttributeSpec& one) { return one.name == name; });
        if (spec == group.settings.end()) {
            std::vector<std::string_view> known;
            for (const AttributeSpec& one : group.settings) known.push_back(one.name);
            report_.error(at(attribute.name()), [&] {
                return Words{fmt::format("unknown attribute '{}' of {}", clipped(name), group.name),
                             list_of(known), std::string(nearest_word(name, known))};
            });
            return;
        }
        AttributeValue value;
        Words words;
        const Span place =
            attribute.value_begin < attribute.value_end ? attribute.value() : attribute.whole();
        if (read_value(*spec, document.value(attribute), value, words))
            result_.settings.push_back({group.name, spec->name, value.si, at(place)});
        else
            report_.error(at(place), [&] { return std::move(words); });
    }

    std::string_view root_;
    std::span<const SettingGroup> groups_;
    ReadLimits limits_;
    std::shared_ptr<SourceSet> sources_;
    Report report_;
    std::uint32_t inclusion_ = 0;
    std::set<std::string_view> seen_;
    SettingsResult result_;
};

}  // namespace

bool SettingsResult::ok() const {
    return std::none_of(diagnostics.begin(), diagnostics.end(),
                        [](const Diagnostic& one) { return one.level == Level::error; });
}

SettingsResult read_settings(const std::filesystem::path& file, std::string_view root,
                             std::span<const SettingGroup> groups, const ReadLimits& limits) {
    return SettingsReader(root, groups, limits).read(file);
}

}  // namespace loopwright
