#include <loopwright/app/progress.h>

#include <sys/ioctl.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <string_view>

#include <loopwright/base/utf8.h>
#include <loopwright/render/writers/report.h>

namespace loopwright::app {

namespace {

constexpr std::chrono::milliseconds quiet_at_first{500};
constexpr std::chrono::milliseconds between{100};
constexpr std::size_t usual_columns = 80;

/// Guards what every `Progress` keeps, and whether its line stands there.
std::mutex mutex;  // NOLINT(cppcoreguidelines-avoid-non-const-global-variables): as is the terminal
bool stands = false;  // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)

bool can_go_back() {
    const char* const terminal = std::getenv("TERM");
    return ::isatty(STDERR_FILENO) != 0 &&
           (terminal == nullptr || std::string_view(terminal) != "dumb");
}

void write(std::string_view text) {
    [[maybe_unused]] const auto written = ::write(STDERR_FILENO, text.data(), text.size());
}

/// The beginning of the text that fits a line of the terminal.
std::string_view fitting(std::string_view text) {
    struct winsize size = {};
    const bool known = ::ioctl(STDERR_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 1;
    std::size_t left = (known ? size.ws_col : usual_columns) - 1;
    std::size_t end = 0;
    for (; left > 0 && end < text.size(); --left) end += utf8::first(text.substr(end)).length;
    return text.substr(0, end);
}

/// With the mutex held.
void take_away() {
    if (stands) write("\r\x1b[K");
    stands = false;
}

}  // namespace

Progress::Progress() {
    if (can_go_back()) ticker_ = std::jthread([this](const std::stop_token& stop) { tick(stop); });
}

Progress::~Progress() {
    if (!ticker_.joinable()) return;
    ticker_.request_stop();
    ticker_.join();
    const std::lock_guard lock(mutex);
    take_away();
}

void Progress::tell(std::string text) {
    if (!is_shown()) return;
    const std::lock_guard lock(mutex);
    text_ = std::move(text);
}

void Progress::tick(const std::stop_token& stop) {
    std::unique_lock lock(mutex);
    std::chrono::milliseconds pause = quiet_at_first;
    while (!stopped_.wait_for(lock, stop, pause, [&] { return stop.stop_requested(); })) {
        pause = between;
        if (stands && text_ == shown_) continue;
        shown_ = text_;
        if (!shown_.empty()) {
            write("\r" + std::string(fitting(visible(shown_))) + "\x1b[K");
            stands = true;
        }
    }
}

std::unique_lock<std::mutex> without_progress() {
    std::unique_lock lock(mutex);
    take_away();
    return lock;
}

}  // namespace loopwright::app
