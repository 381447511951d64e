#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include <loopwright/base/diagnostic.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/parser/reader.h>

/// Circuits written as text in a test.
namespace loopwright::testing {

/// The circuit that a whole XML text describes. Fails the running test with the diagnostics, and
/// returns an empty circuit, if the text is not one. With the environment variable
/// LOOPWRIGHT_CIRCUITS_TO, the text is also written to a file in that folder, in one for each test
/// suite, named in the order of reading; the rules' pages (tests/pages) are made of them.
Circuit circuit_from(std::string_view xml);

/// The same for what stands inside `<circuit format="1">`.
Circuit circuit_with(std::string_view parts);

/// All that there is to say about a diagnostic, as one text that a test can compare:
///
///     error 3:18-3:25 'rekief-valve' ...
///       expected: ...
///       means: ...
///       in block.xml, through 4:3-4:42
///
/// The places are line:column, the end behind the last character. Lines without content are left
/// out, and so is the file where it is the outermost.
std::string described(const Diagnostic& diagnostic, const SourceSet& sources);

/// The same for all diagnostics of a result, each closed by a line feed.
std::string described(const ReadResult& result);

/// What the reader says about a circuit's text, described as above.
std::string told(std::string_view xml);

/// A folder of files for one test, removed with it.
class TemporaryFolder {
  public:
    TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    ~TemporaryFolder();

    const std::filesystem::path& path() const { return path_; }
    /// Writes a file; makes the folders that its relative name asks for.
    std::filesystem::path write(const std::string& name, std::string_view text) const;
    /// Makes a symbolic link of that name to another name in the folder.
    void link(const std::string& name, const std::string& target) const;

  private:
    std::filesystem::path path_;
};

/// What the reader says about the file main/main.xml of the folder, which gets that text.
std::string told(const TemporaryFolder& folder, std::string_view xml);

}  // namespace loopwright::testing
