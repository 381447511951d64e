#pragma once

#include <map>
#include <span>
#include <vector>

#include <loopwright/render/sketch.h>

namespace loopwright {

/// The room that the frames of assemblies will take round those of their parts that are placed,
/// while others are being placed.
class FrameRooms {
  public:
    /// Of the assemblies that some of the parts are in; parts not yet placed count for nothing.
    FrameRooms(const Sketch& sketch, std::span<const int> parts);

    void add(int part);
    const std::map<Index, Box>& all() const { return rooms_; }
    /// Whether something of that assembly at that place would be inside the frame of another that
    /// it is not in.
    bool is_foreign(Index assembly, const Box& box) const;
    /// Whether the assembly's frame, grown round the box, would get into that of another.
    bool hits_frame(Index assembly, const Box& box) const;
    /// The room of the innermost assembly round this one that has any; null where none has.
    const Box* around(Index assembly) const;
    /// The same, once the assembly's frame has grown round the box.
    Box grown(Index assembly, const Box& box) const;

  private:
    const Sketch& sketch_;
    std::map<Index, Box> rooms_ = {};
};

/// Moves reservoir marks that hang on the parts and stand in a frame downwards out of it, clear of
/// all parts and of the level lines.
void hang_outside(Sketch& sketch, const FrameRooms& rooms, std::span<const int> parts,
                  const std::vector<int>& levels);

/// Whether two boxes have more than an edge in common.
bool overlap(const Box& a, const Box& b);
Box joined(const Box& a, const Box& b);

}  // namespace loopwright
