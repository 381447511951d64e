#include <loopwright/parser/builder.h>

#include <algorithm>
#include <utility>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/short_text.h>

// The walk through what stands in a circuit or an assembly.

namespace loopwright {
namespace {

// So many bytes, in sizes of the largest file, may uses bring in all together: uses that double
// must not eat the memory before they reach the limit of components.
constexpr std::size_t files_of_text = 4;

LineFunction function_named(std::string_view text) {
    for (const LineFunction function :
         {LineFunction::working, LineFunction::charge, LineFunction::suction, LineFunction::return_,
          LineFunction::drain, LineFunction::pilot}) {
        if (same_text(name(function), text)) {
            return function;
        }
    }
    return LineFunction::not_declared;
}

std::string_view* title_field(CircuitTitle& title, std::string_view attribute) {
    const std::pair<std::string_view, std::string_view*> fields[] = {
        {"title", &title.title},       {"drawing", &title.drawing}, {"revision", &title.revision},
        {"date", &title.date},         {"owner", &title.owner},     {"creator", &title.creator},
        {"approver", &title.approver},
    };
    for (const auto& [name, field] : fields) {
        if (name == attribute) {
            return field;
        }
    }
    return nullptr;
}

}  // namespace

Builder::Builder(const ReadOptions& options)
    : limits_(options.limits),
      rules_(options.rules.begin(), options.rules.end()),
      sources_(std::make_shared<SourceSet>()),
      report_(limits_.messages),
      files_(*sources_, options),
      text_left_(files_of_text * limits_.file_bytes) {
    last_slots_.resize(vocabulary_.size());
    last_values_.resize(vocabulary_.slots());
    line_slots_ = slots_of_line(*vocabulary_.element("line"));
    hose_slots_ = slots_of_line(*vocabulary_.element("hose"));
}

Builder::LineSlots Builder::slots_of_line(const ElementWords& words) const {
    const auto slot = [&](std::string_view name) { return vocabulary_.slot(words, name); };
    return {.joins = slot("joins"),
            .function = slot("function"),
            .bore = slot("bore"),
            .length = slot("length"),
            .rating = slot("rating"),
            .burst_pressure = slot("burst-pressure"),
            .min_bend_radius = slot("min-bend-radius")};
}

ReadResult Builder::build(std::string text, std::string name, std::filesystem::path path,
                          std::filesystem::path folder) {
    const CircuitFile& file =
        files_.add_outermost(std::move(text), std::move(name), std::move(path), std::move(folder));
    const Page page{&file, sources_->add_inclusion(file.index)};
    report_.add_inclusion(file.index);
    if (file.trouble) {
        report_xml(page);
        return finish();
    }
    const std::size_t elements = page.document().elements().size();
    circuit_.components.reserve(elements);
    circuit_.attributes.reserve(elements * 3);
    circuit_.ports.reserve(elements * 2);
    circuit_.passages.reserve(elements * 2);
    circuit_.lines.reserve(elements / 2);
    circuit_.line_ports.reserve(elements * 2);
    names_.reserve(elements);
    open_.push_back(&file);
    circuit(page);
    return finish();
}

ReadResult Builder::refuse(std::string name, Words words) {
    const std::uint32_t file = sources_->add_file(std::move(name), {});
    const SourceRef place{sources_->add_inclusion(file), {}};
    report_.add_inclusion(file);
    report_.error(place, [&] { return std::move(words); });
    return finish();
}

ReadResult Builder::finish() {
    ReadResult result;
    result.diagnostics = report_.finish();
    result.sources = sources_;
    if (!report_.has_errors()) {
        circuit_.sources = sources_;
        for (const std::shared_ptr<const char[]>& text : files_.texts()) {
            circuit_.storage.emplace_back(text, text.get());
        }
        for (std::shared_ptr<char[]>& text : paths_.take()) {
            circuit_.storage.emplace_back(text, text.get());
        }
        result.circuit.emplace(std::move(circuit_));
    }
    return result;
}

void Builder::report_xml(const Page& page) {
    const ScanTrouble& trouble = *page.file->trouble;
    report_.error(page.at(trouble.span), [&] {
        return Words{trouble.message, trouble.expected, trouble.suggestion};
    });
}

bool Builder::limit_reached(const Page& page, Span span, std::size_t count, std::string_view what) {
    if (count < limits_.components) {
        return false;
    }
    report_.error(page.at(span), [&] {
        return Words{fmt::format("a circuit of more than {} {}", limits_.components, what),
                     fmt::format("at most {}, every use expanded", limits_.components),
                     {}};
    });
    stopped_ = true;
    return true;
}

void Builder::check_format(const Page& page, const ElementWords& words, const Given& given,
                           bool& known) {
    const Slot slot = vocabulary_.slot(words, "format");
    known = true;
    if (!given.has(slot) || given.guessed(slot)) {
        return;
    }
    const GivenText text = text_of(page, given, slot);
    if (text.text != "1") {
        known = false;
        report_.error(text.value, [&] {
            return Words{fmt::format("format '{}' is not known", clipped(text.text)),
                         "format=\"1\"", "1"};
        });
    }
}

void Builder::circuit(const Page& page) {
    const ScannedElement& root = page.document().element(0);
    const std::string_view root_name = page.document().name(root);
    const ElementWords& words = *vocabulary_.element("circuit");
    if (root_name != words.name) {
        report_.error(page.at(root.name()), [&] {
            const bool assembly = root_name == "assembly";
            return Words{fmt::format("the root element is '{}'", clipped(root_name)),
                         assembly ? "'circuit'; a file with an assembly is brought in by 'use'"
                                  : "'circuit'",
                         "circuit"};
        });
        return;
    }
    const Given given = read_given(page, words, 0, true);
    check_required(page, words, given, 0);
    bool known = false;
    check_format(page, words, given, known);
    if (!known) {
        return;  // what another format may say is not for this reader to judge
    }
    for (const std::string_view name : words.names) {
        const Slot slot = vocabulary_.slot(words, name);
        std::string_view* field = title_field(circuit_.title, name);
        if (field != nullptr && given.has(slot) && !given.guessed(slot)) {
            *field = text_of(page, given, slot).text;
        }
    }
    circuit_.place = page.at(root.name());
    Scope scope;
    scope.page = &page;
    content(scope, 0);
    if (!stopped_) {
        define(scope);
    }
}

void Builder::content(Scope& scope, std::uint32_t element) {
    scope.first_port = pending_ports_.size();
    scope.first_line = pending_lines_.size();
    scope.first_shaft = pending_shafts_.size();
    const XmlDocument& document = scope.page->document();
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end && !stopped_;
         child = document.element(child).next) {
        one_part(scope, child);
    }
    if (!stopped_) {
        finish_scope(scope);
    }
    pending_ports_.resize(scope.first_port);
    pending_lines_.resize(scope.first_line);
    pending_shafts_.resize(scope.first_shaft);
}

void Builder::one_part(Scope& scope, std::uint32_t element) {
    const XmlDocument& document = scope.page->document();
    const std::string_view name = document.name(document.element(element));
    const ElementWords* words = vocabulary_.element(name);
    if (words == nullptr) {
        if (name == "port" && scope.assembly != none) {
            assembly_port(scope, element);
        } else {
            unknown_element(scope, element);
        }
        return;
    }
    switch (words->role) {
        case ElementRole::component:
            component(scope, *words, element);
            break;
        case ElementRole::line:
        case ElementRole::hose:
            line(scope, *words, element);
            break;
        case ElementRole::shaft:
            shaft(scope, *words, element);
            break;
        case ElementRole::assembly:
            assembly(scope, *words, element);
            break;
        case ElementRole::use:
            use(scope, *words, element);
            break;
        case ElementRole::definition:
            if (scope.assembly == none) {
                pending_definitions_.push_back(element);
            } else {
                unknown_element(scope, element);
            }
            break;
        default:
            unknown_element(scope, element);
            break;
    }
}

void Builder::line(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Page& page = *scope.page;
    Given given = read_given(page, words, element);
    const auto index = static_cast<Index>(circuit_.lines.size());
    circuit_.lines.emplace_back();
    const std::string_view id = take_id(scope, words, given, NameType::line, index);
    Line& line = circuit_.lines.back();
    line.path = path_of(scope, element, id);
    if (!overrides_.empty()) {
        apply_overrides(words, line.path, given);
    }
    check_required(page, words, given, element);
    line.assembly = scope.assembly;
    line.place = page.at(page.document().element(element).tag());
    if (given.has(words.title)) {
        line.title = text_of(page, given, words.title).text;
    }
    line.flexible = words.role == ElementRole::hose;
    const LineSlots& slots = line.flexible ? hose_slots_ : line_slots_;
    Values values = {};
    std::array<AttributeValue, 5> read;
    std::size_t sound = 0;
    const auto figure = [&](Slot slot, auto& field) {
        if (given.has(slot) && read_given_value(page, words, given, slot, read[sound])) {
            values[slot] = &read[sound];
            field.emplace(read[sound++].si);
        }
    };
    figure(slots.bore, line.bore);
    figure(slots.length, line.length);
    figure(slots.rating, line.rating);
    if (line.flexible) {
        figure(slots.burst_pressure, line.burst_pressure);
        figure(slots.min_bend_radius, line.min_bend_radius);
        check_agreements(words, values);
    }
    if (given.has(slots.function)) {
        line.function = function_named(value_of(page, words, given, slots.function).text);
    }
    if (given.has(slots.joins) && !given.guessed(slots.joins)) {
        pending_lines_.push_back({index, given.attribute(slots.joins)});
    }
    no_children(page, element, words.name);
}

void Builder::shaft(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Page& page = *scope.page;
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    const auto index = static_cast<Index>(circuit_.shafts.size());
    circuit_.shafts.emplace_back();
    const std::string_view id = take_id(scope, words, given, NameType::shaft, index);
    Shaft& shaft = circuit_.shafts.back();
    shaft.path = path_of(scope, element, id);
    shaft.assembly = scope.assembly;
    shaft.place = page.at(page.document().element(element).tag());
    if (given.has(words.title)) {
        shaft.title = text_of(page, given, words.title).text;
    }
    const Slot joins = vocabulary_.slot(words, "joins");
    if (given.has(joins) && !given.guessed(joins)) {
        pending_shafts_.push_back({index, given.attribute(joins)});
    }
    no_children(page, element, words.name);
}

bool Builder::enter_assembly(Scope& scope, std::uint32_t element, std::string_view path,
                             std::string_view title) {
    const Page& page = *scope.page;
    const ScannedElement& scanned = page.document().element(element);
    if (limit_reached(page, scanned.name(), circuit_.assemblies.size(), "assemblies")) {
        return false;
    }
    Assembly assembly;
    assembly.path = path;
    assembly.title = title;
    assembly.parent = scope.assembly;
    assembly.place = page.at(scanned.tag());
    circuit_.assemblies.push_back(std::move(assembly));
    assemblies_.emplace_back();
    if (nesting_ >= limits_.depth) {
        report_.error(page.at(scanned.name()), [&] {
            return Words{
                fmt::format("assemblies are nested deeper than {}", limits_.depth),
                fmt::format("at most {} one inside the other, every use expanded", limits_.depth),
                {}};
        });
        assemblies_.back().doubtful = true;
        return false;
    }
    return true;
}

void Builder::assembly(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Page& page = *scope.page;
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    const auto index = static_cast<Index>(circuit_.assemblies.size());
    Scope inner;
    inner.page = scope.page;
    inner.id = take_id(scope, words, given, NameType::assembly, index);
    inner.path = path_of(scope, element, inner.id);
    const std::string_view title =
        given.has(words.title) ? text_of(page, given, words.title).text : std::string_view();
    if (!enter_assembly(scope, element, inner.path, title)) {
        return;
    }
    inner.assembly = index;
    inner.names = NameScope::assembly(index);
    ++nesting_;
    content(inner, element);
    --nesting_;
}

void Builder::assembly_port(Scope& scope, std::uint32_t element) {
    const Page& page = *scope.page;
    const ElementWords& words = vocabulary_.assembly_port();
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    const std::string_view letter = id_text(page, words, given);
    no_children(page, element, words.name);
    const Slot of = vocabulary_.slot(words, "of");
    if (letter.empty() || !given.has(of) || given.guessed(of) || given.guessed(words.id)) {
        assemblies_[scope.assembly].doubtful = true;
        return;
    }
    pending_ports_.push_back(
        {letter, text_of(page, given, of), text_of(page, given, words.id).value});
}

}  // namespace loopwright
