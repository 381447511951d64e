#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/base/diagnostic.h>
#include <loopwright/parser/circuit.h>

namespace loopwright {

/// Limits of the input, in one table; each is an error with its place when passed.
struct ReadLimits {
    std::size_t file_bytes = 16u << 20;
    std::size_t files = 64;
    std::size_t depth = 64;
    std::size_t components = 100'000;  ///< after every `use` is expanded
    std::size_t positions = 100;       ///< of one valve; real ones have two to six
    std::size_t messages = 200;        ///< a file; the rest is counted in a last message
};

/// A circuit, or what kept it from being one. `sources` is there in either case, so that every
/// diagnostic can be placed and quoted.
struct ReadResult {
    std::optional<Circuit> circuit = {};  ///< absent if and only if there is an error
    Diagnostics diagnostics = {};         ///< in the order of files and places
    std::shared_ptr<const SourceSet> sources = {};
};

/// How a circuit is read.
struct ReadOptions {
    ReadLimits limits = {};
    /// Where `<use name="...">` looks first, in this order.
    std::vector<std::filesystem::path> assembly_folders = {};
    /// Rules that a waiver may name; empty: any.
    std::vector<std::string_view> rules = {};
};

/// Reads a file and the files that it uses. Only regular files inside the folder of the outermost
/// one (links resolved) are opened, and ready assemblies. Never throws on bad input.
ReadResult read_circuit(const std::filesystem::path& file, const ReadOptions& options = {});

/// Reads a circuit from text; `name` stands in messages. `folder` is where `use` looks for files;
/// empty: none is found (standard input has no folder).
ReadResult read_circuit_text(std::string text, std::string name,
                             const std::filesystem::path& folder = {},
                             const ReadOptions& options = {});

/// The XML schema (XSD 1.0, no namespace) of the circuit description, made from the kind table.
std::string circuit_schema();

}  // namespace loopwright
