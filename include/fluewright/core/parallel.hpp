#pragma once

#include <cstddef>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace fluewright {

/// Calls work(0, jobs), work(1, jobs), ... at once, each on a thread of its own, the first on the
/// calling one; work(first, step) does the indices first, first + step, ... What the work of an
/// index gives must not depend on who does it. Where the system gives fewer threads, the calling
/// one does the rest; what is thrown first is thrown to the caller when all have ended.
///
/// work  must write only to places of its own indices
template <class Work>
void in_parallel(unsigned jobs, Work work) {
    std::mutex mutex;
    std::exception_ptr thrown;
    const auto guarded = [&](std::size_t job) {
        try {
            work(job, std::size_t{jobs});
        } catch (...) {
            const std::lock_guard lock(mutex);
            thrown = thrown ? thrown : std::current_exception();
        }
    };
    {
        std::vector<std::jthread> others;
        others.reserve(jobs);
        unsigned job = 1;
        try {
            for (; job < jobs; ++job) {
                others.emplace_back(guarded, std::size_t{job});
            }
        } catch (const std::system_error&) {
            for (; job < jobs; ++job) {
                guarded(std::size_t{job});
            }
        }
        guarded(std::size_t{0});
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
}

} // namespace fluewright
