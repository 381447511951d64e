#include <cstdio>

#include <loopwright/parser/reader.h>
#include <loopwright/render/render.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>

int main(int, char** arguments) {
    const auto read = loopwright::read_circuit(arguments[1]);
    if (!read.circuit) return 1;
    const auto result = loopwright::check(*read.circuit, loopwright::rules());
    const auto layout = loopwright::lay_out(*read.circuit, result.structure);
    const auto pdf = loopwright::to_pdf(loopwright::draw(*read.circuit, layout, result.verdicts));
    std::printf("%zu loop, %zu verdicts, %.5s\n", result.structure.loops.size(),
                result.verdicts.size(), pdf.c_str());
}
