// SVG 1.1, one element a primitive, written by hand so that text stays text and every tag is kept.

#include <cmath>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include <loopwright/render/render.h>
#include <loopwright/render/text_metrics.h>
#include <loopwright/render/writers/stroke_style.h>
#include <loopwright/render/writers/xml_text.h>

namespace loopwright {

namespace {

std::string_view name(Role role) {
    switch (role) {
        case Role::symbol:
            return "symbol";
        case Role::port_letter:
            return "port-letter";
        case Role::designation:
            return "designation";
        case Role::value:
            return "value";
        case Role::line:
            return "line";
        case Role::joint:
            return "joint";
        case Role::shaft:
            return "shaft";
        case Role::frame:
            return "frame";
        case Role::sheet:
            return "sheet";
        case Role::finding:
            return "finding";
        case Role::caution:
            return "caution";
        case Role::computed:
            return "computed";
    }
    return {};
}

class Writer {
  public:
    std::string write(const Drawing& drawing) {
        const std::string width = number_text(drawing.width);
        const std::string height = number_text(drawing.height);
        out_ = fmt::format(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
            "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" "
            "height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" role=\"img\">\n",
            width, height);
        add_words(drawing.title, drawing.description);
        out_ += fmt::format("<rect class=\"paper\" width=\"{}\" height=\"{}\" fill=\"{}\"/>\n",
                            width, height, colour_text(Paint::paper));
        // Pen and font of all; what differs says so.
        out_ += fmt::format(
            "<g fill=\"none\" stroke-linejoin=\"round\" font-family=\"{}\" font-weight=\"normal\" "
            "xml:space=\"preserve\">\n",
            font_family);
        for (const Group& group : drawing.groups) add_group(group);
        out_ += "</g>\n</svg>\n";
        return std::move(out_);
    }

  private:
    void add_words(std::string_view title, std::string_view description) {
        if (!title.empty()) out_ += fmt::format("<title>{}</title>\n", xml_escaped(title));
        if (!description.empty())
            out_ += fmt::format("<desc>{}</desc>\n", xml_escaped(description));
    }

    void add_group(const Group& group) {
        out_ += "<g";
        if (!group.id.empty()) out_ += fmt::format(" id=\"{}\"", xml_escaped(group.id));
        out_ += fmt::format(" class=\"{}\">\n", class_of(group.tag));
        add_words(group.title, group.description);
        for (const Primitive& primitive : group.primitives) {
            class_ = primitive.tag.role == group.tag.role
                         ? std::string{}
                         : fmt::format(" class=\"{}\"", class_of(primitive.tag));
            std::visit([this](const auto& shape) { add(shape); }, primitive.shape);
        }
        out_ += "</g>\n";
    }

    static std::string class_of(const Tag& tag) {
        std::string words(name(tag.role));
        if (tag.finding != none) words += fmt::format(" finding-{}", tag.finding);
        return words;
    }

    std::string paints(const Pen& pen, Paint fill, const std::vector<double>& dashes) const {
        std::string text;
        if (fill != Paint::none) text += fmt::format(" fill=\"{}\"", colour_text(fill));
        if (pen.paint == Paint::none) return text;
        text += fmt::format(R"( stroke="{}" stroke-width="{}")", colour_text(pen.paint),
                            number_text(pen.width));
        if (dashes.empty()) return text;
        text += " stroke-dasharray=\"";
        for (std::size_t i = 0; i < dashes.size(); ++i) {
            if (i > 0) text += ' ';
            text += number_text(dashes[i]);
        }
        return text + "\"";
    }

    void add(const Polyline& line) {
        out_ += line.closed ? "<polygon" : "<polyline";
        out_ += class_ + " points=\"";
        for (std::size_t i = 0; i < line.points.size(); ++i) {
            if (i > 0) out_ += ' ';
            out_ += number_text(line.points[i].x) + ',' + number_text(line.points[i].y);
        }
        out_ += '"' + paints(line.pen, line.fill, dash_pattern(line)) + "/>\n";
    }

    void add(const Arc& arc) {
        const std::string r = number_text(arc.radius);
        const std::string paint = paints(arc.pen, arc.fill, dash_pattern(arc));
        if (arc.full) {
            out_ += fmt::format("<circle{} cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", class_,
                                number_text(arc.centre.x), number_text(arc.centre.y), r, paint);
            return;
        }
        constexpr double turn = 6.283185307179586;
        const double angle = std::fmod(arc.to - arc.from + 2 * turn, turn);
        const auto at = [&arc](double a) {
            return number_text(arc.centre.x + arc.radius * std::cos(a)) + ' ' +
                   number_text(arc.centre.y + arc.radius * std::sin(a));
        };
        out_ += fmt::format("<path{} d=\"M {} A {} {} 0 {} 1 {}\"{}/>\n", class_, at(arc.from), r,
                            r, angle > turn / 2 ? 1 : 0, at(arc.to), paint);
    }

    void add(const Text& text) {
        constexpr std::string_view anchors[] = {"", " text-anchor=\"middle\"",
                                                " text-anchor=\"end\""};
        out_ += fmt::format("<text{} x=\"{}\" y=\"{}\" font-size=\"{}\"{} fill=\"{}\">{}</text>\n",
                            class_, number_text(text.at.x), number_text(text.at.y),
                            number_text(font_size(text.height)),
                            anchors[static_cast<std::size_t>(text.anchor)], colour_text(text.paint),
                            xml_escaped(drawn_text(text.text)));
    }

    std::string out_;
    std::string class_;  ///< of the primitive being written, with its blank; empty: as the group
};

}  // namespace

std::string to_svg(const Drawing& drawing) { return Writer().write(drawing); }

}  // namespace loopwright
