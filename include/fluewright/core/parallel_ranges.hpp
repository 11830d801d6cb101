#pragma once

#include <cstddef>
#include <thread>
#include <vector>

namespace fluewright {

/// Calls work(begin, end) for parts that together make up 0 to `count`, each on a thread of its
/// own. What the work of an index gives must not depend on the part it falls into.
///
/// work  must not throw, and must write only to places of its own indices
template <class Work>
void in_parallel_ranges(std::size_t count, unsigned jobs, Work work) {
    if (jobs <= 1 || count < jobs) {
        work(std::size_t{0}, count);
        return;
    }
    std::vector<std::jthread> threads;
    threads.reserve(jobs - 1);
    std::size_t begin = 0;
    for (unsigned job = 0; job < jobs; ++job) {
        const std::size_t end = count * (job + 1) / jobs;
        if (job + 1 < jobs) {
            threads.emplace_back([&work, begin, end] { work(begin, end); });
        } else {
            work(begin, end);
        }
        begin = end;
    }
}

} // namespace fluewright
