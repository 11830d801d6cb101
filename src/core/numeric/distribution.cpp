#include "fluewright/core/numeric/distribution.hpp"

#include <cmath>

namespace fluewright {

namespace {

constexpr double root_half = 0.70710678118654752;

} // namespace

double normal_share(double z) {
    return 0.5 * std::erfc(-z * root_half);
}

double normal_quantile(double share) {
    if (share > 0.5) {
        return -normal_quantile(1.0 - share); // erfc is exact to its last digit where it is small
    }
    // Beyond 39 standard deviations a double holds no probability.
    double low = -39.0;
    double high = 39.0;
    for (double middle = 0.0; middle > low && middle < high;) {
        (normal_share(middle) < share ? low : high) = middle;
        middle = 0.5 * (low + high);
    }
    return low;
}

double triangular_quantile(double share, double low, double peak, double high) {
    const double width = high - low;
    const double rise = peak - low;
    if (share * width < rise) {
        return low + std::sqrt(share * width * rise);
    }
    return high - std::sqrt((1.0 - share) * width * (high - peak));
}

} // namespace fluewright
