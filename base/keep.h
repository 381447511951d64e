#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <memory_resource>
#include <span>
#include <string_view>
#include <type_traits>
#include <utility>

#include <fmt/format.h>

namespace loopwright {

/// Memory for the texts and lists of one result: each is copied in once, none is given back before
/// all are. A result of many thousand small parts is made, read and freed without an allocation for
/// each.
class Keep {
  public:
    Keep() = default;
    Keep(const Keep&) = delete;
    Keep& operator=(const Keep&) = delete;

    /// A copy that lives as long as this.
    template <typename T>
    std::span<const T> list(std::span<const T> items) {
        static_assert(std::is_trivially_destructible_v<T>);
        if (items.empty()) return {};
        T* const kept = static_cast<T*>(memory_.allocate(items.size_bytes(), alignof(T)));
        std::uninitialized_copy(items.begin(), items.end(), kept);
        return {kept, items.size()};
    }
    std::string_view text(std::string_view text) {
        const std::span<const char> kept = list(std::span<const char>(text));
        return {kept.data(), kept.size()};
    }

    /// The same of a text made after fmt's rules.
    template <typename... Args>
    std::string_view format(fmt::format_string<Args...> words, Args&&... args) {
        scratch_.clear();
        fmt::format_to(fmt::appender(scratch_), words, std::forward<Args>(args)...);
        return text({scratch_.data(), scratch_.size()});
    }

  private:
    std::pmr::monotonic_buffer_resource memory_{std::size_t{1} << 14};
    fmt::memory_buffer scratch_;
};

}  // namespace loopwright
