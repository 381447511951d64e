#include <loopwright/app/output.h>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

#include <fmt/format.h>

namespace loopwright::app {

namespace {

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

std::string trouble(const std::filesystem::path& file, std::string_view what, int error) {
    return fmt::format("{}: {}: {}", file.string(), what, std::strerror(error));
}

/// A file that is gone again unless it is kept.
class Temporary {
  public:
    explicit Temporary(const std::filesystem::path& beside)
        : name_(beside.string() + ".XXXXXX"), descriptor_(::mkstemp(name_.data())) {}
    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;
    ~Temporary() {
        if (descriptor_ < 0) return;
        ::close(descriptor_);
        if (!kept_) ::unlink(name_.c_str());
    }
    int descriptor() const { return descriptor_; }
    const std::string& name() const { return name_; }
    void keep() { kept_ = true; }

  private:
    std::string name_;
    int descriptor_;
    bool kept_ = false;
};

std::string write_straight(const std::filesystem::path& file, std::string_view text) {
    const int descriptor = ::open(file.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) return trouble(file, "cannot be opened for writing", errno);
    const bool written = write_all(descriptor, text);
    const int error = errno;
    ::close(descriptor);
    return written ? std::string{} : trouble(file, "cannot be written", error);
}

}  // namespace

bool write_out(std::string_view text) {
    if (write_all(STDOUT_FILENO, text)) return true;
    // The reader has seen enough (a pager closed, `head`): nothing to say about it.
    if (errno == EPIPE) std::_Exit(0);
    return false;
}

std::string write_file(const std::filesystem::path& file, std::string_view text,
                       const std::vector<std::filesystem::path>& inputs) {
    std::error_code error;
    std::filesystem::path target = file;
    if (std::filesystem::is_symlink(file, error)) {
        target = std::filesystem::weakly_canonical(file, error);
        if (error) return trouble(file, "the link cannot be followed", error.value());
    }
    for (const std::filesystem::path& input : inputs)
        if (std::filesystem::equivalent(input, target, error) && !error)
            return fmt::format("{}: is an input and is not overwritten; name another output",
                               file.string());
    const std::filesystem::file_status status = std::filesystem::status(target, error);
    if (std::filesystem::is_directory(status))
        return fmt::format("{}: is a folder; name a file", file.string());
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status))
        return write_straight(target, text);

    Temporary temporary(target);
    if (temporary.descriptor() < 0) return trouble(file, "cannot be written in that folder", errno);
    if (!write_all(temporary.descriptor(), text) || ::fsync(temporary.descriptor()) != 0)
        return trouble(file, "cannot be written", errno);
    struct stat before = {};
    mode_t mode = 0;
    if (::stat(target.c_str(), &before) == 0) {
        mode = before.st_mode & 07777U;
    } else {
        const mode_t mask = ::umask(0);
        ::umask(mask);
        mode = 0666U & ~mask;
    }
    if (::fchmod(temporary.descriptor(), mode) != 0 ||
        ::rename(temporary.name().c_str(), target.c_str()) != 0)
        return trouble(file, "cannot be put in place", errno);
    temporary.keep();
    return {};
}

bool wants_colour(std::string_view choice, int stream) {
    if (choice == "always") return true;
    if (choice == "never") return false;
    const char* const no_colour = std::getenv("NO_COLOR");
    return (no_colour == nullptr || *no_colour == '\0') && ::isatty(stream) != 0;
}

}  // namespace loopwright::app
