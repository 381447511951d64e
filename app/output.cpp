#include <loopwright/app/output.h>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <deque>

#include <fmt/format.h>

#include <loopwright/app/progress.h>

namespace loopwright::app {

namespace {

namespace fs = std::filesystem;

/// True when everything was written; false leaves errno.
bool write_all(int descriptor, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0) {
            if (errno == EINTR) continue;
            return false;
        }
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

bool give(const Output& output, const Put& put) {
    return output.fill ? output.fill(put) : put(output.text);
}

std::string trouble(const fs::path& file, std::string_view what, int error) {
    return fmt::format("{}: {}: {}", file.string(), what, std::strerror(error));
}

/// A file beside its target that takes the target's place, or is gone again.
class Temporary {
  public:
    /// The name is short, so that it fits wherever the target's does.
    explicit Temporary(fs::path target)
        : target_(std::move(target)),
          name_((target_.parent_path() / ".loopwright-XXXXXX").string()),
          descriptor_(::mkstemp(name_.data())) {}
    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;
    ~Temporary() {
        if (descriptor_ < 0) return;
        ::close(descriptor_);
        if (!kept_) ::unlink(name_.c_str());
    }

    bool made() const { return descriptor_ >= 0; }
    bool fill(const Output& output) const {
        return give(output, [&](std::string_view text) { return write_all(descriptor_, text); }) &&
               ::fsync(descriptor_) == 0;
    }
    bool take_mode() const {
        struct stat before = {};
        if (::stat(target_.c_str(), &before) == 0)
            return ::fchmod(descriptor_, before.st_mode & 07777U) == 0;
        const mode_t mask = ::umask(0);
        ::umask(mask);
        return ::fchmod(descriptor_, 0666U & ~mask) == 0;
    }
    bool put_in_place() {
        kept_ = ::rename(name_.c_str(), target_.c_str()) == 0;
        return kept_;
    }

  private:
    fs::path target_;
    std::string name_;
    int descriptor_;
    bool kept_ = false;
};

bool is_standard_output(const fs::path& file) {
    if (file == "-") return true;
    struct stat named = {};
    struct stat open = {};
    return ::stat(file.c_str(), &named) == 0 && ::fstat(STDOUT_FILENO, &open) == 0 &&
           named.st_dev == open.st_dev && named.st_ino == open.st_ino;
}

std::string write_straight(const Output& output) {
    const fs::path& file = output.file;
    const bool ours = is_standard_output(file);
    const int descriptor = ours ? STDOUT_FILENO : ::open(file.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) return trouble(file, "cannot be opened for writing", errno);
    // As with standard output: a reader that has seen enough is no trouble.
    const bool written = give(output, [&](std::string_view text) {
        const auto alone = without_progress();
        return write_all(descriptor, text) || errno == EPIPE;
    });
    const int error = errno;
    if (!ours) ::close(descriptor);
    return written ? std::string{}
                   : trouble(file == "-" ? "standard output" : file, "cannot be written", error);
}

/// What the links lead to, whether it is there or not; as the library's own function stops at a
/// link to nothing.
fs::path followed(const fs::path& file, std::error_code& error) {
    constexpr int most_links = 40;  // as the system's own limit
    fs::path target = file;
    for (int i = 0; i < most_links; ++i) {
        if (!fs::is_symlink(target, error)) {
            error.clear();
            return target;
        }
        const fs::path next = fs::read_symlink(target, error);
        if (error) return target;
        target = next.is_absolute() ? next : target.parent_path() / next;
    }
    error = std::make_error_code(std::errc::too_many_symbolic_link_levels);
    return target;
}

bool same_file(const fs::path& a, const fs::path& b) {
    std::error_code error;
    return fs::equivalent(a, b, error) && !error;
}

/// Why a target cannot be an output, or an empty text.
std::string unfit(const Output& output, const fs::path& target, const fs::file_status& status,
                  const std::vector<fs::path>& inputs) {
    if (fs::is_directory(status))
        return fmt::format("{}: is a folder; name a file", output.file.string());
    if (!fs::is_regular_file(status)) return {};
    for (const fs::path& input : inputs)
        if (same_file(input == "-" ? fs::path("/dev/stdin") : input, target))
            return fmt::format("{}: is an input and is not overwritten; name another output",
                               output.file.string());
    // A rename asks the folder only; who protects a file wants it kept.
    if (::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0)
        return trouble(output.file, "cannot be written", errno);
    return {};
}

}  // namespace

bool write_out(std::string_view text) {
    const auto alone = without_progress();
    if (write_all(STDOUT_FILENO, text)) return true;
    // The reader has seen enough (a pager closed, `head`): nothing to say about it.
    if (errno == EPIPE) std::_Exit(0);
    return false;
}

void write_message(std::string_view text) {
    const auto alone = without_progress();
    write_all(STDERR_FILENO, text);
}

std::string write_files(const std::vector<Output>& outputs, const std::vector<fs::path>& inputs) {
    std::deque<Temporary> temporaries;
    std::vector<Temporary*> temporary_of;  // null: written straight
    std::vector<fs::path> targets;
    for (const Output& output : outputs) {
        if (output.file == "-") {
            temporary_of.push_back(nullptr);
            continue;
        }
        std::error_code error;
        // Not followed by hand: links such as /dev/stdout lead to names that are no files.
        const fs::file_status status = fs::status(output.file, error);
        const fs::path target = followed(output.file, error);
        if (error) return trouble(output.file, "the link cannot be followed", error.value());
        if (std::string why = unfit(output, target, status, inputs); !why.empty()) return why;
        if (fs::exists(status) &&
            (!fs::is_regular_file(status) || is_standard_output(output.file))) {
            temporary_of.push_back(nullptr);
            continue;
        }
        for (const fs::path& other : targets)
            if (other.lexically_normal() == target.lexically_normal() || same_file(other, target))
                return fmt::format("{}: is named for two outputs", output.file.string());
        targets.push_back(target);
        temporary_of.push_back(&temporaries.emplace_back(target));
        if (!temporary_of.back()->made())
            return trouble(output.file, "cannot be written in that folder", errno);
    }
    for (std::size_t i = 0; i < outputs.size(); ++i) {
        const Temporary* const temporary = temporary_of[i];
        if (temporary == nullptr) {
            if (std::string why = write_straight(outputs[i]); !why.empty()) return why;
        } else if (!temporary->fill(outputs[i]) || !temporary->take_mode()) {
            return trouble(outputs[i].file, "cannot be written", errno);
        }
    }
    for (std::size_t i = 0; i < outputs.size(); ++i)
        if (temporary_of[i] != nullptr && !temporary_of[i]->put_in_place())
            return trouble(outputs[i].file, "cannot be put in place", errno);
    return {};
}

bool wants_colour(std::string_view choice, int stream) {
    if (choice == "always") return true;
    if (choice == "never") return false;
    const char* const no_colour = std::getenv("NO_COLOR");
    return (no_colour == nullptr || *no_colour == '\0') && ::isatty(stream) != 0;
}

}  // namespace loopwright::app
