#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

/// Chance that is the same on every machine: the standard library's distributions are not.
namespace bench {

class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    /// Even between 0 and 1 (splitmix64).
    double even() {
        state_ += 0x9e3779b97f4a7c15ULL;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
        z ^= z >> 31U;
        return static_cast<double>(z >> 11U) * 0x1.0p-53;
    }

    double between(double low, double high) { return low + (high - low) * even(); }

    /// Normal with mean 0 and standard deviation 1, by the sum of twelve.
    double bell() {
        double sum = -6.0;
        for (int i = 0; i < 12; ++i) {
            sum += even();
        }
        return sum;
    }

    bool chance(double share) { return even() < share; }

    std::size_t below(std::size_t count) {
        return static_cast<std::size_t>(even() * static_cast<double>(count)) % count;
    }

    template <class T>
    const T& one_of(const std::vector<T>& list) {
        return list[below(list.size())];
    }

private:
    std::uint64_t state_;
};

} // namespace bench
