#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <loopwright/parser/scan.h>

namespace loopwright {

/// An XML file taken apart: the tables of the scan, and the text that names and values are views
/// of: the file's own where nothing in it needs decoding, else a decoded copy. Free of the XML
/// library, so that nothing else includes it.
class XmlDocument {
  public:
    XmlDocument(Scan scan, const std::string& text) : scan_(std::move(scan)), text_(text.c_str()) {}
    XmlDocument(Scan scan, std::shared_ptr<const char[]> decoded)
        : scan_(std::move(scan)), text_(decoded.get()), decoded_(std::move(decoded)) {}

    /// The root is element 0.
    const std::vector<ScannedElement>& elements() const { return scan_.elements; }
    const ScannedElement& element(std::uint32_t index) const { return scan_.elements[index]; }
    const ScannedAttribute& attribute(std::uint32_t index) const { return scan_.attributes[index]; }

    std::string_view name(const ScannedElement& element) const { return view(element.name()); }
    std::string_view name(const ScannedAttribute& attribute) const {
        return view(attribute.name());
    }
    /// With references replaced and every white space character a blank.
    std::string_view value(const ScannedAttribute& attribute) const {
        return attribute.plain ? view(attribute.value())
                               : std::string_view(text_ + attribute.value_begin);
    }

    /// What all views point into; null where that is the file's own text.
    const std::shared_ptr<const char[]>& decoded() const { return decoded_; }

  private:
    std::string_view view(Span span) const { return {text_ + span.begin, span.end - span.begin}; }

    Scan scan_;
    const char* text_;
    std::shared_ptr<const char[]> decoded_;
};

/// Exactly one of the two is there.
struct XmlResult {
    std::optional<XmlDocument> document = {};
    std::optional<ScanTrouble> trouble = {};
};

/// Scans and decodes the text of a whole file, which has to outlive the document. `depth`: see
/// `scan_xml`.
XmlResult read_xml(const std::string& text, std::size_t depth);

}  // namespace loopwright
