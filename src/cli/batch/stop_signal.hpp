#pragma once

#include <array>
#include <csignal>

/// Being asked to stop from outside: Ctrl-C, the end of a job, a terminal that goes.
namespace fluewright::cli {

/// The number of the signal that asked; 0 for none.
[[nodiscard]] int stop_signal();

[[nodiscard]] bool asked_to_stop();

/// Takes SIGINT, SIGTERM and SIGHUP while it stands and gives them back; one at a time.
class StopSignals {
public:
    StopSignals();
    ~StopSignals();
    StopSignals(const StopSignals&) = delete;
    StopSignals& operator=(const StopSignals&) = delete;

private:
    struct Taken {
        int number;

        struct sigaction before;
    };

    std::array<Taken, 3> taken_{Taken{SIGINT, {}}, Taken{SIGTERM, {}}, Taken{SIGHUP, {}}};
};

} // namespace fluewright::cli
