#pragma once

#include <cstdint>
#include <vector>

#include <loopwright/render/symbol.h>

namespace loopwright {

/// Which quarter-module squares of the sheet are taken: finds room for text. Coordinates in M.
class Occupancy {
  public:
    explicit Occupancy(const Box& extent);

    void take(const Box& box);
    bool is_free(const Box& box) const;

  private:
    int column(double x) const;
    int row(double y) const;

    double left_ = 0.0;
    double top_ = 0.0;
    int width_ = 0;
    int height_ = 0;
    std::vector<std::uint8_t> taken_;
};

}  // namespace loopwright
