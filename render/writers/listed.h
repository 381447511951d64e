#pragma once

#include <set>
#include <string>
#include <string_view>

namespace loopwright {

/// Words each once, in their order, with commas between.
class Listed {
  public:
    void add(std::string_view word) {
        if (!known_.emplace(word).second) return;
        text_ += text_.empty() ? "" : ", ";
        text_ += word;
    }
    const std::string& text() const { return text_; }

  private:
    std::set<std::string, std::less<>> known_ = {};
    std::string text_ = {};
};

}  // namespace loopwright
