#pragma once

#include <algorithm>
#include <array>
#include <chrono>
#include <cstddef>
#include <limits>

namespace fluewright::bench {

/// Keeps the optimiser from dropping a result nobody reads.
template <class T>
inline void keep(const T& value) {
    asm volatile("" : : "g"(&value) : "memory");
}

/// Seconds of the quickest of three calls of `work`: what it costs when nothing disturbs it.
template <class Work>
[[nodiscard]] double seconds_once(const Work& work) {
    using Clock = std::chrono::steady_clock;
    double least = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 3; ++i) {
        const auto start = Clock::now();
        work();
        least = std::min(least, std::chrono::duration<double>(Clock::now() - start).count());
    }
    return least;
}

/// Seconds per call of `work`: the median of several batches, each long enough for the clock.
template <class Work>
[[nodiscard]] double seconds_per_call(const Work& work) {
    using Clock = std::chrono::steady_clock;
    const auto batch_seconds = [&](std::size_t calls) {
        const auto start = Clock::now();
        for (std::size_t i = 0; i < calls; ++i) {
            work();
        }
        return std::chrono::duration<double>(Clock::now() - start).count();
    };
    constexpr double least_batch_seconds = 0.02;
    std::size_t calls = 1;
    while (batch_seconds(calls) < least_batch_seconds) {
        calls *= 2;
    }
    std::array<double, 9> batches{};
    for (double& batch : batches) {
        batch = batch_seconds(calls) / static_cast<double>(calls);
    }
    std::nth_element(batches.begin(), batches.begin() + batches.size() / 2, batches.end());
    return batches[batches.size() / 2];
}

} // namespace fluewright::bench
