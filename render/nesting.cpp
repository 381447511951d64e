#include <loopwright/render/nesting.h>

namespace loopwright {

bool is_inside(const Circuit& circuit, Index assembly, Index outer) {
    while (assembly != none && assembly != outer) assembly = circuit.assemblies[assembly].parent;
    return assembly == outer;
}

Index common_assembly(const Circuit& circuit, Index a, Index b) {
    while (!is_inside(circuit, b, a)) a = circuit.assemblies[a].parent;
    return a;
}

Index next_inside(const Circuit& circuit, Index assembly, Index outer) {
    if (assembly == outer) return none;
    while (circuit.assemblies[assembly].parent != outer)
        assembly = circuit.assemblies[assembly].parent;
    return assembly;
}

int frames_between(const Circuit& circuit, Index a, Index b) {
    const Index both = common_assembly(circuit, a, b);
    int count = 0;
    for (; a != both; a = circuit.assemblies[a].parent) ++count;
    for (; b != both; b = circuit.assemblies[b].parent) ++count;
    return count;
}

}  // namespace loopwright
