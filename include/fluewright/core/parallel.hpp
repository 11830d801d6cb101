#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace fluewright {

/// Calls work(0, step), work(1, step), ... at once, each on a thread of its own, the first on the
/// calling one; work(first, step) does the indices first, first + step, ... What the work of an
/// index gives must not depend on who does it. Where the system gives fewer threads than jobs, it
/// is short of memory or of threads: half of those it gave are given back before the work begins,
/// so that the work has room. What is thrown first is thrown to the caller when all have ended.
///
/// work  must write only to places of its own indices
template <class Work>
void in_parallel(unsigned jobs, Work work) {
    enum Phase : int { gathering, giving_back, working };

    std::atomic<int> phase{gathering};
    std::size_t step = std::max(1U, jobs);
    std::mutex mutex;
    std::exception_ptr thrown;
    const auto guarded = [&](std::size_t first) {
        try {
            work(first, std::size_t{step});
        } catch (...) {
            const std::lock_guard lock(mutex);
            thrown = thrown ? thrown : std::current_exception();
        }
    };
    const auto begin = [&](Phase next) {
        phase = next;
        phase.notify_all();
    };
    {
        std::vector<std::jthread> others;
        others.reserve(step - 1);
        try {
            for (std::size_t first = 1; first < step; ++first) {
                others.emplace_back([&, first] {
                    phase.wait(gathering);
                    if (first < step) {
                        phase.wait(giving_back);
                        guarded(first);
                    }
                });
            }
        } catch (const std::exception&) { // no thread, or no memory to tell of one
            step = 1 + others.size() / 2;
            begin(giving_back);
            others.resize(step - 1); // each is waited for
        }
        begin(working);
        guarded(0);
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
}

} // namespace fluewright
