#pragma once

#include <string>
#include <string_view>

#include <loopwright/app/exit_status.h>

/// The circuits that the program writes: out of those that come with it, into files of their own.
namespace loopwright::app {

/// The text of a circuit to begin with; empty where there is none of that name.
std::string_view starting_circuit(std::string_view name);

/// Writes a circuit to a file that is not there yet, or says why not.
ExitStatus write_new_file(const std::string& file, std::string text);

/// A circuit's text whose elements are changed one by one, comments and order kept. Made for the
/// circuits to begin with: no '>' in a value, each id once. Throws std::logic_error where what is
/// to be changed is not there.
class CircuitText {
  public:
    explicit CircuitText(std::string_view text) : text_(text) {}

    const std::string& text() const { return text_; }

    /// An attribute of the element of that id, given or not.
    void set(std::string_view id, std::string_view attribute, std::string_view value);
    void drop(std::string_view id, std::string_view attribute);
    /// The whole element of that id.
    void replace(std::string_view id, std::string_view element);
    /// The first element of that name; of `circuit` the start tag alone.
    void replace_first(std::string_view name, std::string_view element);
    /// What stands between the tags of the element of that id.
    void fill(std::string_view id, std::string_view content);
    /// The comment at the head.
    void set_head(std::string_view comment);

  private:
    struct Span {
        std::size_t begin = 0;
        std::size_t end = 0;  ///< behind the last character
    };
    /// The start tag of an element; '<' and '>' are in it.
    Span tag_of(std::string_view id) const;
    /// From a start tag to the end of its element.
    Span element_of(Span tag) const;
    /// An attribute with the blank before it; empty where it is not given.
    Span attribute_in(Span tag, std::string_view name) const;
    void put(Span span, std::string_view text);

    std::string text_;
};

}  // namespace loopwright::app
