// The XML schema of the circuit description, made from the kind table, so that editors complete and
// check what the reader reads. What XSD 1.0 cannot say (ports that exist, units by kind of port,
// exactly one rest position) stays with the reader.
#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/kinds/definitions.h>
#include <loopwright/parser/reader.h>
#include <loopwright/parser/settings.h>

namespace loopwright {

namespace {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

/// A unit's spelling as a piece of an XSD pattern.
std::string pattern_of(std::string_view spelling) {
    std::string out;
    for (const char c : spelling) {
        if (std::string_view("\\.|?*+(){}[]^$-").find(c) != std::string_view::npos) out += '\\';
        if (c == ' ')
            out += "\\s+";
        else
            out += c;
    }
    return out;
}

/// One or more of what the pattern describes, blanks between them.
std::string list_of(std::string_view pattern) {
    return fmt::format(R"(\s*{0}(\s+{0})*\s*)", pattern);
}

/// Whole numbers of a range, which is short.
std::string pattern_of_count(const AttributeSpec& spec) {
    std::string numbers;
    for (double number = spec.least; number <= spec.most; ++number)
        numbers += fmt::format("{}{:.0f}", numbers.empty() ? "" : "|", number);
    return fmt::format("0*({})", numbers);
}

std::string type_name(Dimension dimension) {
    std::string text(name(dimension));
    for (char& c : text)
        if (c == ' ') c = '-';
    return text;
}

class SchemaWriter {
  public:
    std::string write() {
        add(R"(<?xml version="1.0" encoding="UTF-8"?>)");
        add("<!-- Made by 'loopwright schema circuit' from the table of component kinds. -->");
        add(R"(<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" elementFormDefault="qualified">)");
        simple_types();
        element_types();
        for (const ElementSpec& spec : definitions()) definition_type(spec);
        for (const Kind* kind : kinds()) kind_type(*kind);
        parts_group();
        roots();
        add("</xs:schema>");
        return std::move(text_);
    }

    std::string write_settings(std::string_view root, std::span<const SettingGroup> groups) {
        add(R"(<?xml version="1.0" encoding="UTF-8"?>)");
        add("<!-- Made by 'loopwright schema {}' from the table of rules. -->", root);
        add(R"(<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" elementFormDefault="qualified">)");
        simple_types();
        add(R"(<xs:element name="{}"><xs:complexType><xs:all>)", root);
        for (const SettingGroup& group : groups) {
            add(R"(<xs:element name="{}" minOccurs="0"><xs:complexType>)", group.name);
            for (const AttributeSpec& spec : group.settings) attribute(spec);
            add("</xs:complexType></xs:element>");
        }
        add("</xs:all>");
        add(R"(<xs:attribute name="format" type="xs:string" use="required" fixed="1"/>)");
        add("</xs:complexType></xs:element>");
        add("</xs:schema>");
        return std::move(text_);
    }

  private:
    template <typename... Args>
    void add(fmt::format_string<Args...> format, Args&&... args) {
        fmt::format_to(std::back_inserter(text_), format, std::forward<Args>(args)...);
        text_ += '\n';
    }

    void documentation(std::string_view words) {
        if (words.empty()) return;
        add("<xs:annotation><xs:documentation>{}</xs:documentation></xs:annotation>",
            escaped(words));
    }

    void pattern_type(std::string_view name, std::string_view pattern, std::string_view words) {
        add(R"(<xs:simpleType name="{}">)", name);
        documentation(words);
        add(R"(<xs:restriction base="xs:string"><xs:pattern value="{}"/></xs:restriction>)",
            escaped(pattern));
        add("</xs:simpleType>");
    }

    void simple_types() {
        pattern_type("id", "[A-Za-z][A-Za-z0-9_\\-]*",
                     "a letter, then letters, digits, - and _; unique in its file or assembly");
        pattern_type("position-id", "[A-Za-z0-9][A-Za-z0-9_\\-]*",
                     "a letter or digit, then letters, digits, - and _; unique in its valve");
        pattern_type("yes-no", "yes|no", "yes or no");
        const std::string part = "[A-Za-z][A-Za-z0-9_\\-/]*";
        const std::string port = part + "\\.[A-Za-z][A-Za-z0-9_\\-]*";
        pattern_type("port-name", port, "a port written component.port");
        pattern_type("port-list", list_of(port),
                     "ports written component.port, blanks between them");
        std::string ends;
        for (const Kind* kind : kinds())
            for (const std::string_view end : kind->ends)
                if (ends.find(fmt::format("|{}|", end)) == std::string::npos)
                    ends += fmt::format("{}{}|", ends.empty() ? "|" : "", end);
        if (!ends.empty()) ends = fmt::format("(\\.({}))?", ends.substr(1, ends.size() - 2));
        pattern_type("part-list", list_of(part + ends),
                     "ids of what turns as one, or shaft ends written component.end, blanks "
                     "between them");
        for (std::size_t d = 0; d < dimension_count; ++d) {
            const auto dimension = static_cast<Dimension>(d);
            std::string list;
            bool bare = false;
            for (const Unit& unit : units()) {
                if (unit.dimension != dimension) continue;
                if (unit.spelling.empty())
                    bare = true;
                else
                    list += fmt::format("{}{}", list.empty() ? "" : "|", pattern_of(unit.spelling));
            }
            pattern_type(type_name(dimension),
                         fmt::format("\\s*[+\\-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+\\-]?[0-9]+)?"
                                     "\\s*({}){}\\s*",
                                     list, bare ? "?" : ""),
                         fmt::format("{} such as {}", phrase(dimension), example(dimension)));
        }
    }

    void attribute(const AttributeSpec& spec) {
        const std::string_view use = spec.required ? R"( use="required")" : "";
        std::string words(spec.doc);
        if (!spec.default_text.empty()) words += fmt::format("; default {}", spec.default_text);
        if (spec.name == "id") {
            add(R"(<xs:attribute name="id" type="id"{}>)", use);
        } else if (spec.type == AttributeType::quantity) {
            add(R"(<xs:attribute name="{}" type="{}"{}>)", spec.name, type_name(spec.dimension),
                use);
        } else if (spec.type == AttributeType::yes_no) {
            add(R"(<xs:attribute name="{}" type="yes-no"{}>)", spec.name, use);
        } else if (spec.type == AttributeType::date) {
            add(R"(<xs:attribute name="{}" type="xs:date"{}>)", spec.name, use);
        } else if (spec.type == AttributeType::text) {
            add(R"(<xs:attribute name="{}" type="xs:string"{}>)", spec.name, use);
        } else {
            add(R"(<xs:attribute name="{}"{}>)", spec.name, use);
            documentation(words);
            add(R"(<xs:simpleType><xs:restriction base="xs:string">)");
            if (spec.type == AttributeType::count)
                add(R"(<xs:pattern value="{}"/>)", pattern_of_count(spec));
            for (const std::string_view choice : spec.choices)
                add(R"(<xs:enumeration value="{}"/>)", choice);
            add("</xs:restriction></xs:simpleType>");
            add("</xs:attribute>");
            return;
        }
        documentation(words);
        add("</xs:attribute>");
    }

    /// Attributes of an element that is no component; those that it needs are written out where
    /// it is, with types of their own.
    void attributes_of(const ElementSpec& element) {
        for (const AttributeSpec& spec : element.attributes)
            if (!spec.required) attribute(spec);
    }

    /// Begins the type of such an element.
    const ElementSpec& begin_type(std::string_view type, std::string_view name,
                                  std::string_view in) {
        const ElementSpec& element = *find_element(name, in);
        add(R"(<xs:complexType name="{}">)", type);
        documentation(element.doc);
        return element;
    }

    void element_types() {
        begin_type("port", "port", "component");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        add("</xs:complexType>");

        const ElementSpec& reservoir_port = begin_type("reservoir-port", "port", "reservoir");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        attributes_of(reservoir_port);
        add("</xs:complexType>");

        begin_type("declared-port", "port", "assembly");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        add(R"(<xs:attribute name="of" type="port-name" use="required"/>)");
        add("</xs:complexType>");

        const ElementSpec& path = begin_type("path", "path", "position");
        add(R"(<xs:attribute name="from" type="id" use="required"/>)");
        add(R"(<xs:attribute name="to" type="id" use="required"/>)");
        attributes_of(path);
        add("</xs:complexType>");

        const ElementSpec& position = begin_type("position", "position", "directional-valve");
        add(R"(<xs:sequence><xs:element name="path" type="path" minOccurs="0" maxOccurs="unbounded"/></xs:sequence>)");
        add(R"(<xs:attribute name="id" type="position-id" use="required"/>)");
        attributes_of(position);
        add("</xs:complexType>");

        joining_type("line", "port-list");
        joining_type("hose", "port-list");
        joining_type("shaft", "part-list");

        begin_type("set", "set", "use");
        for (const std::string_view attribute : {"of", "attribute", "value"})
            add(R"(<xs:attribute name="{}" type="xs:string" use="required"/>)", attribute);
        add("</xs:complexType>");

        const ElementSpec& use = begin_type("use", "use", "circuit");
        add(R"(<xs:sequence><xs:element name="set" type="set" minOccurs="0" maxOccurs="unbounded"/></xs:sequence>)");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        attributes_of(use);
        add("</xs:complexType>");
    }

    void joining_type(std::string_view name, std::string_view joins) {
        const ElementSpec& element = begin_type(name, name, "circuit");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        add(R"(<xs:attribute name="joins" type="{}" use="required"/>)", joins);
        attributes_of(element);
        add("</xs:complexType>");
    }

    /// A definition's type: its name behind that of what it stands in.
    static std::string type_of(const ElementSpec& spec) {
        return fmt::format("{}-in-{}", spec.name, spec.in);
    }

    void definition_elements(std::string_view in) {
        for (const ElementSpec& spec : definitions())
            if (spec.in == in)
                add(R"(<xs:element name="{}" type="{}"/>)", spec.name, type_of(spec));
    }

    void definition_type(const ElementSpec& spec) {
        add(R"(<xs:complexType name="{}">)", type_of(spec));
        documentation(spec.doc);
        // `set` stands in a point; nothing else that has children shares its name.
        if (std::any_of(definitions().begin(), definitions().end(),
                        [&](const ElementSpec& inner) { return inner.in == spec.name; })) {
            add(R"(<xs:choice minOccurs="0" maxOccurs="unbounded">)");
            definition_elements(spec.name);
            add("</xs:choice>");
        }
        for (const AttributeSpec& attribute_spec : spec.attributes) attribute(attribute_spec);
        add("</xs:complexType>");
    }

    void kind_type(const Kind& kind) {
        add(R"(<xs:complexType name="{}">)", kind.name);
        documentation(kind.doc);
        add(R"(<xs:choice minOccurs="0" maxOccurs="unbounded">)");
        if (kind.children != Children::no)
            add(R"(<xs:element name="port" type="{}"/>)",
                kind.part == Part::reservoir ? "reservoir-port" : "port");
        if (kind.children == Children::ports_and_positions)
            add(R"(<xs:element name="position" type="position"/>)");
        if (kind.children == Children::ports_and_passages) definition_elements(kind.name);
        definition_elements("component");
        add("</xs:choice>");
        for (const AttributeSpec& spec : common_attributes()) attribute(spec);
        for (const AttributeSpec& spec : kind.attributes) attribute(spec);
        add("</xs:complexType>");
    }

    /// Ids that must differ among the children named in `children`.
    void unique(std::string_view of, std::string_view what, std::string_view children) {
        add(R"(<xs:unique name="{}-of-{}"><xs:selector xpath="{}"/><xs:field xpath="@id"/></xs:unique>)",
            what, of, children);
    }

    void parts_group() {
        add(R"(<xs:group name="parts"><xs:choice>)");
        for (const Kind* kind : kinds()) {
            add(R"(<xs:element name="{0}" type="{0}">)", kind->name);
            if (kind->children != Children::no) unique(kind->name, "ports", "port");
            if (kind->children == Children::ports_and_positions)
                unique(kind->name, "positions", "position");
            add("</xs:element>");
        }
        for (const std::string_view element : {"line", "hose", "shaft", "use"})
            add(R"(<xs:element name="{0}" type="{0}"/>)", element);
        add(R"(<xs:element name="assembly"><xs:complexType><xs:complexContent><xs:extension base="assembly">)");
        add(R"(<xs:attribute name="id" type="id" use="required"/>)");
        add("</xs:extension></xs:complexContent></xs:complexType>");
        unique("assembly", "ids", parts());
        unique("assembly", "ports", "port");
        add("</xs:element>");
        add("</xs:choice></xs:group>");
        const ElementSpec& assembly = begin_type("assembly", "assembly", "circuit");
        add(R"(<xs:choice minOccurs="0" maxOccurs="unbounded">)");
        add(R"(<xs:group ref="parts"/><xs:element name="port" type="declared-port"/>)");
        add("</xs:choice>");
        attributes_of(assembly);
        add("</xs:complexType>");
    }

    /// All that has an id of its own in a circuit or assembly.
    static std::string parts() {
        std::string path;
        for (const Kind* kind : kinds()) path += fmt::format("{}|", kind->name);
        return path + "line|hose|shaft|use|assembly";
    }

    void roots() {
        add(R"(<xs:element name="circuit"><xs:complexType>)");
        add(R"(<xs:choice minOccurs="0" maxOccurs="unbounded"><xs:group ref="parts"/>)");
        definition_elements("circuit");
        add("</xs:choice>");
        add(R"(<xs:attribute name="format" type="xs:string" use="required" fixed="1"/>)");
        attributes_of(*find_element("circuit", ""));
        add("</xs:complexType>");
        unique("circuit", "ids", parts() + "|command");
        unique("circuit", "points", "duty/point");
        add("</xs:element>");
        add(R"(<xs:element name="assembly"><xs:complexType><xs:complexContent><xs:extension base="assembly">)");
        add(R"(<xs:attribute name="format" type="xs:string" use="required" fixed="1"/>)");
        add("</xs:extension></xs:complexContent></xs:complexType>");
        unique("assembly-file", "ids", parts());
        unique("assembly-file", "ports", "port");
        add("</xs:element>");
    }

    std::string text_;
};

}  // namespace

std::string circuit_schema() { return SchemaWriter().write(); }

std::string settings_schema(std::string_view root, std::span<const SettingGroup> groups) {
    return SchemaWriter().write_settings(root, groups);
}

}  // namespace loopwright
