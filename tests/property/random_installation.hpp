#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <cstdint>

namespace fluewright::property {

/// A sequence of random numbers that is the same on every machine.
///
/// Source   SplitMix64, Steele, Lea and Flood 2014, OOPSLA   [from memory]
class Random {
public:
    explicit Random(std::uint64_t seed) : state_(seed) {}

    std::uint64_t bits();
    /// Even over [low, high).
    double between(double low, double high);
    /// Even over the logarithm.
    double between_by_ratio(double low, double high);
    /// 0 to count - 1.
    std::size_t index(std::size_t count);
    bool chance(double probability);

    template <class List>
    const auto& one_of(const List& list) {
        return list[index(list.size())];
    }

private:
    std::uint64_t state_;
};

/// An installation of any kind the input format allows, within what people build: every appliance
/// type with a fuel it burns, 1 to 12 parts of every kind, every wall and zone, heights of 0.5 to
/// 30 m, flues of 80 to 400 mm, weathers of -40 to 35 degC, up to 3000 m altitude.
/// The same seed gives the same installation.
[[nodiscard]] Installation random_installation(std::uint64_t seed);

} // namespace fluewright::property
