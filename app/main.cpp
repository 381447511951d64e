#include <fcntl.h>

#include <cerrno>
#include <csignal>

#include <loopwright/app/commands.h>

namespace {

/// A standard stream that was closed before the start would be given to the next file opened, and
/// results or messages would end in that. What takes its place refuses to be read or written.
void hold_standard_streams() {
    for (int stream = 0; stream <= 2; ++stream)
        if (::fcntl(stream, F_GETFD) < 0 && errno == EBADF)
            ::open("/dev/null", stream == 0 ? O_WRONLY : O_RDONLY);
}

}  // namespace

int main(int argc, char** argv) {
    // A closed pipe and a file that may grow no more are noticed where they are written to.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    hold_standard_streams();
    return static_cast<int>(loopwright::app::run(argc, argv));
}
