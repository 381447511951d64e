#pragma once

#include <algorithm>
#include <memory>
#include <string_view>
#include <utility>
#include <vector>

namespace loopwright {

/// Keeps composed paths (`U1/P1`) for as long as the circuit lives.
class PathArena {
  public:
    /// `prefix`/`id`, kept.
    std::string_view join(std::string_view prefix, std::string_view id) {
        const std::size_t size = prefix.size() + 1 + id.size();
        char* const text = room(size);
        char* const slash = std::copy(prefix.begin(), prefix.end(), text);
        *slash = '/';
        std::copy(id.begin(), id.end(), slash + 1);
        return {text, size};
    }

    /// Hands the kept texts over; the arena is empty afterwards.
    std::vector<std::shared_ptr<char[]>> take() {
        left_ = 0;
        return std::move(blocks_);
    }

  private:
    char* room(std::size_t size) {
        if (size > left_) {
            left_ = std::max<std::size_t>(size, 1U << 15);
            blocks_.push_back(std::make_shared_for_overwrite<char[]>(left_));
            next_ = blocks_.back().get();
        }
        char* const text = next_;
        next_ += size;
        left_ -= size;
        return text;
    }

    std::vector<std::shared_ptr<char[]>> blocks_ = {};
    char* next_ = nullptr;
    std::size_t left_ = 0;
};

}  // namespace loopwright
