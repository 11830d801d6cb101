#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fluewright {

/// Points spread over a unit cube so that each of its edges, cut into as many equal pieces as there
/// are points, has one point in every piece.
///
/// Source  M. D. McKay, R. J. Beckman, W. J. Conover, "A comparison of three methods for selecting
///         values of input variables in the analysis of output from a computer code",
///         Technometrics 21 (1979), 239-245   [mckay-1979, from memory]
/// Notes   The same for the same seed on every machine: the engine is the standard's 64-bit
///         Mersenne twister, the rest is integer arithmetic.
class LatinHypercube {
public:
    LatinHypercube(std::size_t points, std::size_t dimensions, std::uint64_t seed);

    /// A coordinate, over 0 and under 1.
    [[nodiscard]] double at(std::size_t point, std::size_t dimension) const {
        return places_[dimension * points_ + point];
    }

    [[nodiscard]] std::size_t points() const { return points_; }

    [[nodiscard]] std::size_t dimensions() const {
        return points_ == 0 ? 0 : places_.size() / points_;
    }

private:
    std::size_t points_;
    std::vector<double> places_; ///< dimension by dimension
};

} // namespace fluewright
