#include <loopwright/tests/support/circuit_text.h>

#include <cstdlib>
#include <fstream>
#include <stdexcept>
#include <utility>

#include <fmt/core.h>
#include <gtest/gtest.h>

namespace loopwright::testing {
namespace {

std::string span_of(const Place& place) {
    return fmt::format("{}:{}-{}:{}", place.line, place.column, place.end_line, place.end_column);
}

void write_to(const std::filesystem::path& folder, std::string_view xml) {
    static int count = 0;
    const std::filesystem::path suite =
        folder / ::testing::UnitTest::GetInstance()->current_test_info()->test_suite_name();
    std::filesystem::create_directories(suite);
    std::ofstream out(suite / fmt::format("{:06}.xml", ++count), std::ios::binary);
    if (!(out << xml << std::flush)) throw std::runtime_error("a circuit cannot be written");
}

}  // namespace

Circuit circuit_from(std::string_view xml) {
    if (const char* folder = std::getenv("LOOPWRIGHT_CIRCUITS_TO")) write_to(folder, xml);
    ReadResult result = read_circuit_text(std::string(xml), "test.xml");
    if (!result.circuit) {
        ADD_FAILURE() << "the circuit of this test cannot be read:\n" << described(result);
        return {};
    }
    return std::move(*result.circuit);
}

Circuit circuit_with(std::string_view parts) {
    return circuit_from(fmt::format("<circuit format=\"1\">{}</circuit>", parts));
}

std::string described(const Diagnostic& diagnostic, const SourceSet& sources) {
    const Place place = sources.place(diagnostic.place);
    std::string text =
        fmt::format("{} {} {}", name(diagnostic.level), span_of(place), diagnostic.message);
    if (!diagnostic.expected.empty()) {
        text += "\n  expected: " + diagnostic.expected;
    }
    if (!diagnostic.suggestion.empty()) {
        text += "\n  means: " + diagnostic.suggestion;
    }
    if (!place.within.empty()) {
        text += "\n  in " + place.file;
        for (const Place& use : place.within) {
            text += ", through " + span_of(use);
        }
    }
    return text;
}

std::string described(const ReadResult& result) {
    std::string text;
    for (const Diagnostic& diagnostic : result.diagnostics) {
        text += described(diagnostic, *result.sources) + "\n";
    }
    return text;
}

std::string told(std::string_view xml) {
    return described(read_circuit_text(std::string(xml), "test.xml"));
}

TemporaryFolder::TemporaryFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "loopwright-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) {
        throw std::runtime_error("no temporary folder");
    }
    path_ = std::filesystem::canonical(name);
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code error;
    std::filesystem::remove_all(path_, error);
}

std::filesystem::path TemporaryFolder::write(const std::string& name, std::string_view text) const {
    std::filesystem::path file = path_ / name;
    std::filesystem::create_directories(file.parent_path());
    std::ofstream out(file, std::ios::binary);
    out.write(text.data(), static_cast<std::streamsize>(text.size()));
    if (!out.flush()) {
        throw std::runtime_error("cannot write " + name);
    }
    return file;
}

void TemporaryFolder::link(const std::string& name, const std::string& target) const {
    const std::filesystem::path file = path_ / name;
    std::filesystem::create_directories(file.parent_path());
    std::filesystem::create_symlink(path_ / target, file);
}

std::string told(const TemporaryFolder& folder, std::string_view xml) {
    return described(read_circuit(folder.write("main/main.xml", xml)));
}

}  // namespace loopwright::testing
