#include "stop_signal.hpp"

#include <atomic>
#include <cstdint>
#include <ctime>

namespace fluewright::cli {
namespace {

/// The number of the signal that asks to stop, and when it came. A handler can reach nothing else.
std::atomic<int> signal_number{0};
std::atomic<std::int64_t> signal_second{0};
static_assert(std::atomic<int>::is_always_lock_free
              && std::atomic<std::int64_t>::is_always_lock_free);

extern "C" void note_signal(int number) {
    // Whoever stops a group of processes may send the same signal twice at once; one that comes
    // later is from somebody who will not wait, and ends the program.
    constexpr int patience_s = 1;
    timespec now{};
    ::clock_gettime(CLOCK_MONOTONIC, &now);
    int none = 0;
    if (signal_number.compare_exchange_strong(none, number)) {
        signal_second = now.tv_sec;
    } else if (now.tv_sec - signal_second > patience_s) {
        ::signal(number, SIG_DFL);
        ::raise(number);
    }
}

} // namespace

int stop_signal() {
    return signal_number;
}

bool asked_to_stop() {
    return signal_number != 0;
}

StopSignals::StopSignals() {
    signal_number = 0;

    struct sigaction action {};

    action.sa_handler = note_signal;
    ::sigemptyset(&action.sa_mask);
    for (Taken& taken : taken_) {
        ::sigaction(taken.number, nullptr, &taken.before);
        // Who is told to outlive its terminal goes on doing so.
        if (taken.before.sa_handler != SIG_IGN) {
            ::sigaction(taken.number, &action, nullptr);
        }
    }
}

StopSignals::~StopSignals() {
    for (const Taken& taken : taken_) {
        ::sigaction(taken.number, &taken.before, nullptr);
    }
}

} // namespace fluewright::cli
