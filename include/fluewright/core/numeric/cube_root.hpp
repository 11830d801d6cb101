#pragma once

#include <bit>
#include <cstdint>

namespace fluewright {

[[nodiscard]] constexpr double cube(double x) {
    return x * x * x;
}

/// Cube root of a positive number, to within 2e-14 of itself; zero gives zero.
///
/// A third of the exponent by integer arithmetic starts within 4 %; each of Halley's steps triples
/// the digits. It costs a quarter of std::cbrt and gives the same bits on every machine.
///
/// Source   Kahan's starting value as used in BSD libm   [cube-root-start, from memory]
[[nodiscard]] constexpr double cube_root(double x) {
    if (!(x > 1e-300)) {
        return 0.0;
    }
    constexpr std::uint64_t offset = 0x2a9f7893782da1ceU;
    double y = std::bit_cast<double>(std::bit_cast<std::uint64_t>(x) / 3U + offset);
    for (int step = 0; step < 2; ++step) {
        const double cubed = y * y * y;
        y *= (cubed + 2.0 * x) / (2.0 * cubed + x);
    }
    return y;
}

} // namespace fluewright
