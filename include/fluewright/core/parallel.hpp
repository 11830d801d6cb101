#pragma once

#include <cstddef>
#include <thread>
#include <vector>

namespace fluewright {

/// Calls work(0, jobs), work(1, jobs), ... at once, each on a thread of its own, the first on the
/// calling one; work(first, step) does the indices first, first + step, ... What the work of an
/// index gives must not depend on who does it.
///
/// work  must not throw, and must write only to places of its own indices
template <class Work>
void in_parallel(unsigned jobs, Work work) {
    std::vector<std::jthread> others;
    for (unsigned job = 1; job < jobs; ++job) {
        others.emplace_back([&work, job, jobs] { work(std::size_t{job}, std::size_t{jobs}); });
    }
    work(std::size_t{0}, std::size_t{jobs});
}

} // namespace fluewright
