#pragma once

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

/// How far a long run is: one line of the error stream, written over itself and gone in the end.
namespace loopwright::app {

/// Shows nothing unless standard error is a terminal that can go back in a line, and nothing in the
/// first half second, so that what is short stays quiet. One at a time.
class Progress {
  public:
    Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    /// Takes the line away.
    ~Progress();

    /// Whether anybody sees it: what is costly to tell need not be made else.
    bool is_shown() const { return ticker_.joinable(); }
    /// What is being done now. May be called from any thread.
    void tell(std::string text);

  private:
    void tick(const std::stop_token& stop);

    std::string text_ = {};
    std::string shown_ = {};
    std::condition_variable_any stopped_ = {};
    std::jthread ticker_ = {};
};

/// The line is away for as long as this is held; whoever writes to a standard stream holds it, as
/// both streams may lead to the same terminal.
std::unique_lock<std::mutex> without_progress();

}  // namespace loopwright::app
