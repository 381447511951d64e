#pragma once

#include <optional>
#include <string>
#include <utility>

namespace loopwright::hydraulics {

/// A value, or the reason why there is none: what was out of range, and the range.
template <class T>
class Answer {
  public:
    // NOLINTNEXTLINE(google-explicit-constructor): a value is an answer
    Answer(T value) : value_(std::move(value)) {}
    static Answer none(std::string reason) {
        Answer answer;
        answer.reason_ = std::move(reason);
        return answer;
    }

    explicit operator bool() const { return value_.has_value(); }
    /// Throws std::bad_optional_access where there is none.
    const T& value() const { return value_.value(); }
    const T& operator*() const { return value(); }
    const T* operator->() const { return &value(); }
    /// Empty where there is a value.
    const std::string& reason() const { return reason_; }

  private:
    Answer() = default;
    std::optional<T> value_;
    std::string reason_;
};

}  // namespace loopwright::hydraulics
