#include "fluewright/core/numeric/sobol.hpp"

#include <array>
#include <cassert>
#include <random>

namespace fluewright {
namespace {

/// A row of the table of Joe and Kuo 2008: the primitive polynomial of a dimension and its first
/// direction numbers.
struct SobolRow {
    unsigned degree;
    unsigned coefficients; ///< `a` of the table: those between the first and the last, as bits
    std::array<std::uint32_t, 7> first;
};

/// Dimensions 2 to 21; the first has a direction number for each bit by itself.
constexpr std::array<SobolRow, SobolSequence::most_dimensions - 1> sobol_rows{
    {{1, 0, {1}},
     {2, 1, {1, 3}},
     {3, 1, {1, 3, 1}},
     {3, 2, {1, 1, 1}},
     {4, 1, {1, 1, 3, 3}},
     {4, 4, {1, 3, 5, 13}},
     {5, 2, {1, 1, 5, 5, 17}},
     {5, 4, {1, 1, 5, 5, 5}},
     {5, 7, {1, 1, 7, 11, 19}},
     {5, 11, {1, 1, 5, 1, 1}},
     {5, 13, {1, 1, 1, 3, 11}},
     {5, 14, {1, 3, 5, 5, 31}},
     {6, 1, {1, 3, 3, 9, 7, 49}},
     {6, 13, {1, 1, 1, 15, 21, 21}},
     {6, 16, {1, 3, 1, 13, 27, 49}},
     {6, 19, {1, 1, 1, 15, 7, 5}},
     {6, 22, {1, 3, 1, 15, 13, 25}},
     {6, 25, {1, 1, 5, 5, 19, 61}},
     {7, 1, {1, 3, 7, 11, 23, 15, 103}},
     {7, 4, {1, 3, 7, 13, 13, 15, 69}}}};

} // namespace

SobolSequence::SobolSequence(std::size_t dimensions) : directions_(dimensions * bits) {
    assert(dimensions > 0 && dimensions <= most_dimensions);
    for (std::size_t i = 0; i < bits; ++i) {
        directions_[i] = 1U << (bits - 1 - i);
    }
    for (std::size_t d = 1; d < dimensions; ++d) {
        const SobolRow& row = sobol_rows[d - 1];
        std::uint32_t* v = &directions_[d * bits];
        for (std::size_t i = 0; i < bits; ++i) {
            if (i < row.degree) {
                v[i] = row.first[i] << (bits - 1 - i);
                continue;
            }
            v[i] = v[i - row.degree] ^ (v[i - row.degree] >> row.degree);
            for (unsigned k = 1; k < row.degree; ++k) {
                if ((row.coefficients >> (row.degree - 1 - k) & 1U) != 0U) {
                    v[i] ^= v[i - k];
                }
            }
        }
    }
}

SobolSequence::SobolSequence(std::size_t dimensions, std::uint64_t seed)
    : SobolSequence(dimensions) {
    std::mt19937_64 random{seed};
    for (std::size_t d = 0; d < dimensions; ++d) {
        shifts_.push_back(static_cast<std::uint32_t>(random() >> 32U));
    }
}

double SobolSequence::at(std::size_t point, std::size_t dimension) const {
    constexpr double unit = 1.0 / 4294967296.0; // 2^-32
    const std::uint32_t gray = static_cast<std::uint32_t>(point ^ (point >> 1U));
    std::uint32_t sum = shifts_.empty() ? 0U : shifts_[dimension];
    for (std::size_t i = 0; i < bits; ++i) {
        if ((gray >> i & 1U) != 0U) {
            sum ^= directions_[dimension * bits + i];
        }
    }
    // The middle of the finest piece of an edge, where the points are moved: never 0.
    return (static_cast<double>(sum) + (shifts_.empty() ? 0.0 : 0.5)) * unit;
}

} // namespace fluewright
