#pragma once

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <memory>
#include <memory_resource>
#include <span>
#include <string_view>
#include <type_traits>

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

    /// The same for a single thing.
    template <typename T>
    const T* one(const T& item) {
        return list(std::span<const T>(&item, 1)).data();
    }

    /// The parts, one behind the other.
    template <typename... Parts>
    std::string_view text(const Parts&... parts) {
        return joined({std::string_view(parts)...});
    }

  private:
    std::string_view joined(std::initializer_list<std::string_view> parts) {
        std::size_t size = 0;
        for (const std::string_view part : parts) size += part.size();
        if (size == 0) return {};
        char* const kept = static_cast<char*>(memory_.allocate(size, 1));
        char* end = kept;
        for (const std::string_view part : parts) end = std::copy(part.begin(), part.end(), end);
        return {kept, size};
    }

    std::pmr::monotonic_buffer_resource memory_{std::size_t{1} << 14};
};

}  // namespace loopwright
