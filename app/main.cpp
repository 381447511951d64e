#include <csignal>

#include <loopwright/app/commands.h>

int main(int argc, char** argv) {
    // A closed pipe is noticed where it is written to.
    std::signal(SIGPIPE, SIG_IGN);
    return static_cast<int>(loopwright::app::run(argc, argv));
}
