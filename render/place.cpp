#include <loopwright/render/place.h>

#include <algorithm>
#include <cmath>

namespace loopwright {

namespace {

constexpr int block_gap = 8;

/// Parts and the trunks that the block's placing added.
Box box_of(const Sketch& sketch, const Block& block,
           const std::vector<std::size_t>& trunks_before) {
    Box box{1e9, 1e9, -1e9, -1e9};
    for (std::size_t n = 0; n < sketch.nets.size(); ++n)
        for (std::size_t t = trunks_before[n]; t < sketch.nets[n].trunks.size(); ++t) {
            const Run& run = sketch.nets[n].trunks[t];
            box.top = std::min<double>(box.top, run.from.y);
            box.bottom = std::max<double>(box.bottom, run.to.y);
        }
    for (const int p : block.parts) {
        const Box own = sketch.extent(p);
        const Cell at = sketch.parts[static_cast<std::size_t>(p)].at;
        box.left = std::min(box.left, own.left + at.x);
        box.top = std::min(box.top, own.top + at.y);
        box.right = std::max(box.right, own.right + at.x);
        box.bottom = std::max(box.bottom, own.bottom + at.y);
    }
    return box;
}

/// The trunks that a block's placing added lie in its own coordinates.
void shift(Sketch& sketch, const Block& block, const std::vector<std::size_t>& trunks_before,
           Cell by) {
    for (const int p : block.parts) {
        const Cell at = sketch.parts[static_cast<std::size_t>(p)].at;
        sketch.move_to(p, {at.x + by.x, at.y + by.y});
    }
    for (std::size_t n = 0; n < sketch.nets.size(); ++n)
        for (std::size_t t = trunks_before[n]; t < sketch.nets[n].trunks.size(); ++t) {
            Run& run = sketch.nets[n].trunks[t];
            run = {{run.from.x + by.x, run.from.y + by.y}, {run.to.x + by.x, run.to.y + by.y}};
        }
}

/// Draws everything apart: where rows and columns have no room for a line, there is some then.
void spread_apart(Sketch& sketch, int factor) {
    std::vector<bool> hung(sketch.parts.size(), false);
    for (const SketchPart& part : sketch.parts)
        for (const int mark : part.marks) hung[static_cast<std::size_t>(mark)] = true;
    for (std::size_t p = 0; p < sketch.parts.size(); ++p) {
        const Cell at = sketch.parts[p].at;
        if (!hung[p]) sketch.move_to(static_cast<int>(p), {at.x * factor, at.y * factor});
    }
    for (SketchNet& net : sketch.nets)
        for (Run& run : net.trunks)
            run = {{run.from.x * factor, run.from.y * factor},
                   {run.to.x * factor, run.to.y * factor}};
}

}  // namespace

void place(Sketch& sketch, const Roles& roles, const Structure& structure, const Spacing& spacing,
           int columns) {
    std::vector<Block> blocks = blocks_of(sketch, roles, structure);
    for (SketchNet& net : sketch.nets) net.trunks.clear();
    for (std::size_t b = 0; b < blocks.size(); ++b)
        for (const int p : blocks[b].parts)
            sketch.parts[static_cast<std::size_t>(p)].block = static_cast<int>(b);

    const std::size_t rows =
        (blocks.size() + static_cast<std::size_t>(columns) - 1) / static_cast<std::size_t>(columns);
    int left = 0;
    int top = 0;
    int widest = 0;
    int axis = 0;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        if (b % rows == 0) {
            left += b == 0 ? 0 : widest + block_gap;
            top = 0;
            widest = 0;
            axis = 0;
        }
        std::vector<std::size_t> before;
        for (const SketchNet& net : sketch.nets) before.push_back(net.trunks.size());
        Block& block = blocks[b];
        if (block.loop >= 0)
            place_loop(sketch, roles, block, spacing);
        else
            place_flow(sketch, roles, block, spacing);
        const Box box = box_of(sketch, block, before);
        // Loops below one another have their pumps in line.
        int x = left - static_cast<int>(std::floor(box.left));
        if (block.loop >= 0 && axis == 0)
            axis = x + block.axis_x;
        else if (block.loop >= 0)
            x = std::max(x, axis - block.axis_x);
        shift(sketch, block, before, {x, top - static_cast<int>(std::floor(box.top))});
        top += static_cast<int>(std::ceil(box.bottom) - std::floor(box.top)) + block_gap;
        widest = std::max(widest, static_cast<int>(std::ceil(box.right)) + x - left);
    }
    spread_apart(sketch, spacing.spread);
}

}  // namespace loopwright
