#include <loopwright/parser/file_store.h>

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/ready.h>

namespace loopwright {
namespace {

namespace fs = std::filesystem;

// The system's own words depend on the locale.
std::string reason(int error) {
    switch (error) {
        case ENOENT:
        case ENOTDIR:
            return "there is no such file";
        case EACCES:
        case EPERM:
            return "it may not be read";
        case ELOOP:
            return "its links lead in a circle";
        case ENAMETOOLONG:
            return "its name is too long";
        default:
            return "the system cannot read it";
    }
}

class Descriptor {
  public:
    explicit Descriptor(int value) : value_(value) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (value_ >= 0) {
            ::close(value_);
        }
    }
    int get() const { return value_; }

  private:
    int value_;
};

bool is_below(const fs::path& path, const fs::path& folder) {
    const auto [end, rest] = std::mismatch(folder.begin(), folder.end(), path.begin(), path.end());
    return end == folder.end() && rest != path.end();
}

}  // namespace

std::optional<std::string> read_regular_file(const fs::path& path, std::size_t most, Words& words) {
    const auto refuse = [&](std::string why, std::string expected) {
        words = {std::move(why), std::move(expected), {}};
        return std::nullopt;
    };
    struct stat status = {};
    if (::stat(path.c_str(), &status) != 0) {
        return refuse(reason(errno), "the name of a circuit file");
    }
    if (S_ISDIR(status.st_mode)) {
        return refuse("it is a folder", "the name of a circuit file");
    }
    if (!S_ISREG(status.st_mode)) {
        return refuse("it is no regular file", "a regular file");
    }
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (file.get() < 0) {
        return refuse(reason(errno), "a file that may be read");
    }
    // Again, for the file that was really opened.
    if (::fstat(file.get(), &status) != 0 || !S_ISREG(status.st_mode)) {
        return refuse("it is no regular file", "a regular file");
    }
    const std::string limit = fmt::format("at most {} bytes", most);
    if (status.st_size > 0 && static_cast<std::uintmax_t>(status.st_size) > most) {
        return refuse(fmt::format("it has {} bytes", status.st_size), limit);
    }
    // The size may be wrong (a file that grows, or one of the system's): read until the end.
    std::string text(static_cast<std::size_t>(std::max<off_t>(status.st_size, 0)) + 1, '\0');
    std::size_t length = 0;
    for (;;) {
        const ssize_t got = ::read(file.get(), text.data() + length, text.size() - length);
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            return refuse(reason(errno), "a file that may be read");
        }
        if (got == 0) {
            break;
        }
        length += static_cast<std::size_t>(got);
        if (length > most) {
            return refuse(fmt::format("it has more than {} bytes", most), limit);
        }
        if (length == text.size()) {
            text.resize(std::min(text.size() * 2 + 4096, most + 1));
        }
    }
    text.resize(length);
    return text;
}

const CircuitFile& FileStore::add_outermost(std::string text, std::string name, fs::path path,
                                            fs::path folder) {
    root_ = folder;
    return add(std::move(text), std::move(name), std::move(path), std::move(folder));
}

const CircuitFile& FileStore::add(std::string text, std::string name, fs::path path,
                                  fs::path folder) {
    CircuitFile& file = files_.emplace_back();
    file.bytes = text.size();
    file.index = sources_.add_file(std::move(name), std::move(text), path.string());
    XmlResult result = read_xml(sources_.file(file.index).text_string(), limits_.depth);
    file.document = std::move(result.document);
    file.trouble = std::move(result.trouble);
    file.path = std::move(path);
    file.folder = std::move(folder);
    return file;
}

std::vector<std::shared_ptr<const char[]>> FileStore::texts() const {
    std::vector<std::shared_ptr<const char[]>> texts;
    for (const CircuitFile& file : files_) {
        if (file.document && file.document->decoded() != nullptr) {
            texts.push_back(file.document->decoded());
        }
    }
    return texts;
}

const CircuitFile* FileStore::open(std::string_view name, const CircuitFile& user, Words& words) {
    std::map<std::string, Opened, std::less<>>& names = opened_[user.index];
    auto known = names.find(name);
    if (known == names.end()) {
        Opened opened;
        opened.file = find(name, user, opened.words);
        known = names.emplace(name, std::move(opened)).first;
    }
    words = known->second.words;
    return known->second.file;
}

const CircuitFile* FileStore::open_ready(std::string_view name, Words& words) {
    if (const auto known = ready_.find(name); known != ready_.end()) {
        return known->second;
    }
    std::vector<std::string> names;
    for (const ReadyText& ready : ready_assemblies()) {
        names.emplace_back(ready.name);
    }
    if (!is_id(name)) {
        words = {fmt::format("'{}' is no name of a ready assembly", clipped(name)),
                 list_of({names.begin(), names.end()}),
                 {}};
        return nullptr;
    }
    if (files_.size() >= limits_.files) {
        words = {fmt::format("'{}' is one file too many", clipped(name)),
                 fmt::format("at most {} files", limits_.files),
                 {}};
        return nullptr;
    }
    const auto keep = [&](const CircuitFile& file) {
        return ready_.emplace(std::string(name), &file).first->second;
    };
    std::error_code error;
    for (const fs::path& folder : folders_) {
        const fs::path path = folder / (std::string(name) + ".xml");
        const fs::path real = fs::canonical(path, error);
        if (error) {
            for (const auto& entry : fs::directory_iterator(folder, error)) {
                if (entry.path().extension() == ".xml") {
                    names.push_back(entry.path().stem().string());
                }
            }
            continue;
        }
        std::optional<std::string> text = read_regular_file(real, limits_.file_bytes, words);
        if (!text) {
            words = {fmt::format("'{}' cannot be read: {}", clipped(name), words.message),
                     words.expected,
                     {}};
            return nullptr;
        }
        return keep(add(std::move(*text), path.string(), real, {}));
    }
    for (const ReadyText& ready : ready_assemblies()) {
        if (ready.name == name) {
            return keep(add(std::string(ready.text), fmt::format("{}.xml", name), {}, {}));
        }
    }
    std::sort(names.begin(), names.end());
    const std::vector<std::string_view> known(names.begin(), names.end());
    words = {fmt::format("there is no ready assembly '{}'", clipped(name)), list_of(known),
             std::string(nearest_word(name, known))};
    return nullptr;
}

const CircuitFile* FileStore::find(std::string_view name, const CircuitFile& user, Words& words) {
    const auto refuse = [&](std::string_view why, std::string expected) {
        words = {fmt::format("'{}' {}", clipped(name), why), std::move(expected), {}};
        return nullptr;
    };
    const std::string below = "a file below the folder of the outermost circuit, links resolved";
    if (user.folder.empty()) {
        return refuse("cannot be looked for: this circuit comes from no folder",
                      "a circuit that is read from a file");
    }
    const fs::path given{std::string(name)};
    if (given.empty()) {
        return refuse("is no file's name", "a relative path, such as parts/block.xml");
    }
    if (given.is_absolute()) {
        return refuse("is no relative path", "a relative path, such as parts/block.xml");
    }
    if (!is_below((user.folder / given).lexically_normal(), root_)) {
        return refuse("leads out of the circuit's folder", below);
    }
    std::error_code error;
    const fs::path path = fs::canonical(user.folder / given, error);
    if (error) {
        return refuse("cannot be read: " + reason(error.value()),
                      "an assembly's file, its path relative to the file that uses it");
    }
    if (!is_below(path, root_)) {
        return refuse("leads out of the circuit's folder", below);
    }
    const auto known = std::find_if(files_.begin(), files_.end(),
                                    [&path](const CircuitFile& file) { return file.path == path; });
    if (known != files_.end()) {
        return &*known;
    }
    if (files_.size() >= limits_.files) {
        return refuse("is one file too many", fmt::format("at most {} files", limits_.files));
    }
    std::optional<std::string> text = read_regular_file(path, limits_.file_bytes, words);
    if (!text) {
        return refuse("cannot be read: " + words.message, std::string(words.expected));
    }
    return &add(std::move(*text), std::string(name), path, path.parent_path());
}

}  // namespace loopwright
