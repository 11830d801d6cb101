#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fluewright {

/// Points of a Sobol sequence: any first 2^k of them have one point in each of the 2^k equal pieces
/// of every edge, and lie evenly in its faces as well. A longer sequence begins with a shorter one.
///
/// Source  S. Joe, F. Y. Kuo, "Constructing Sobol sequences with better two-dimensional
///         projections", SIAM Journal on Scientific Computing 30 (2008), 2635-2654: the direction
///         numbers of its table for the first 21 dimensions [joe-kuo-2008]
/// Notes   Of 32 bits, in the order of the Gray code, as that paper has it. A digital shift, drawn
///         from the seed for each dimension, moves the points without spoiling their evenness; with
///         it no point lies on the edge of the cube. The same for the same seed on every machine.
class SobolSequence {
public:
    static constexpr std::size_t most_dimensions = 21;

    /// Moved by the seed.  dimensions: 1 to 21
    SobolSequence(std::size_t dimensions, std::uint64_t seed);

    /// The plain sequence, which begins with the corner 0.
    explicit SobolSequence(std::size_t dimensions);

    /// A coordinate, 0 to under 1; of a sequence that is moved over 0. point: under 2^32
    [[nodiscard]] double at(std::size_t point, std::size_t dimension) const;

private:
    static constexpr std::size_t bits = 32;

    std::vector<std::uint32_t> directions_; ///< `bits` of each dimension
    std::vector<std::uint32_t> shifts_;     ///< of each dimension; empty: not moved
};

} // namespace fluewright
