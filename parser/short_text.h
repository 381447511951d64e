#pragma once

#include <bit>
#include <cstdint>
#include <cstring>
#include <string_view>

/// Names and ids are a few bytes long; what the reader does with them thousands of times is done
/// here without a call and without a copy whose length is unknown.
namespace loopwright {

/// The first four or eight bytes at `p`.
inline std::uint64_t load_4(const char* p) {
    std::uint32_t value = 0;
    std::memcpy(&value, p, sizeof value);
    return value;
}
inline std::uint64_t load_8(const char* p) {
    std::uint64_t value = 0;
    std::memcpy(&value, p, sizeof value);
    return value;
}

/// Up to eight bytes as one number; different for different texts of the same length.
inline std::uint64_t packed(std::string_view text) {
    const std::size_t size = text.size();
    const char* const p = text.data();
    if constexpr (std::endian::native == std::endian::little) {
        if (size == 8) {
            return load_8(p);
        }
        if (size >= 4) {  // two words that may overlap: there they agree
            return load_4(p) | (load_4(p + size - 4) << (8 * (size - 4)));
        }
    }
    if (size == 0) {
        return 0;
    }
    if (size < 4) {  // the first, the middle and the last, which may be one
        const auto byte = [p](std::size_t i) {
            return std::uint64_t{static_cast<unsigned char>(p[i])};
        };
        return byte(0) | (byte(size / 2) << 8) | (byte(size - 1) << 16);
    }
    std::uint64_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
        value |= std::uint64_t{static_cast<unsigned char>(p[i])} << (8 * i);
    }
    return value;
}

/// Equality; quick for short texts.
inline bool same_text(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) {
        return false;
    }
    const std::size_t size = a.size();
    if (size > 16) {
        return std::memcmp(a.data(), b.data(), size) == 0;
    }
    if (size > 8) {
        return load_8(a.data()) == load_8(b.data()) &&
               load_8(a.data() + size - 8) == load_8(b.data() + size - 8);
    }
    return packed(a) == packed(b);
}

/// A hash for tables that live within one read; nothing printed depends on it.
inline std::uint64_t hash_text(std::string_view text, std::uint64_t seed) {
    const auto mix = [](std::uint64_t hash, std::uint64_t value) {
        hash = (hash ^ value) * 0x9E3779B97F4A7C15U;
        return hash ^ (hash >> 32);
    };
    std::uint64_t hash = mix(seed + 0x51ED270B7F3C4D01U, text.size());
    while (text.size() > 8) {
        hash = mix(hash, load_8(text.data()));
        text.remove_prefix(8);
    }
    return mix(hash, packed(text));
}

}  // namespace loopwright
