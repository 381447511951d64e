#pragma once

#include <optional>
#include <string>
#include <utility>

namespace loopwright::hydraulics {

/// A value, or the reason why there is none: what was out of range, and the range.
template <class T>
class Answer {
  public:
    // Not explicit: a value is an answer.
    Answer(T value) : value_(std::move(value)) {}
    static Answer none(std::string reason) { return Answer(std::nullopt, std::move(reason)); }

    explicit operator bool() const { return value_.has_value(); }
    /// Throws std::bad_optional_access where there is none.
    const T& value() const { return value_.value(); }
    const T& operator*() const { return value(); }
    const T* operator->() const { return &value(); }
    /// Empty where there is a value.
    const std::string& reason() const { return reason_; }

  private:
    Answer(std::nullopt_t, std::string reason) : reason_(std::move(reason)) {}
    std::optional<T> value_;
    std::string reason_;
};

}  // namespace loopwright::hydraulics
