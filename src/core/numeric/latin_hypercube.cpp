#include "fluewright/core/numeric/latin_hypercube.hpp"

#include <random>
#include <utility>

namespace fluewright {
namespace {

/// In the middle of one of 2^53 equal pieces, so never 0 and never 1.
double unit_share(std::mt19937_64& engine) {
    constexpr int dropped_bits = 11;
    constexpr double piece = 0x1p-53;
    return (static_cast<double>(engine() >> dropped_bits) + 0.5) * piece;
}

} // namespace

LatinHypercube::LatinHypercube(std::size_t points, std::size_t dimensions, std::uint64_t seed)
    : points_{points}, places_(points * dimensions) {
    constexpr int half_word = 32;
    for (std::size_t dimension = 0; dimension < dimensions; ++dimension) {
        std::seed_seq words{static_cast<std::uint32_t>(seed),
                            static_cast<std::uint32_t>(seed >> half_word),
                            static_cast<std::uint32_t>(dimension)};
        std::mt19937_64 engine(words);
        double* const place = places_.data() + dimension * points;
        for (std::size_t i = 0; i < points; ++i) {
            place[i] = (static_cast<double>(i) + unit_share(engine)) / static_cast<double>(points);
        }
        for (std::size_t i = points; i > 1; --i) {
            std::swap(place[i - 1], place[engine() % i]);
        }
    }
}

} // namespace fluewright
