#include "figures.hpp"

#include <cmath>
#include <fmt/format.h>

namespace published {

std::string figure(double value) {
    if (value == 0.0) {
        return "0";
    }
    constexpr int digits = 4;
    const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
    if (exponent >= digits && exponent < 9) {
        const double step = std::pow(10.0, exponent - digits + 1);
        return fmt::format("{:.0f}", std::round(value / step) * step);
    }
    return fmt::format("{:.4g}", value);
}

std::string signed_figure(double value, double least) {
    if (std::abs(value) < least) {
        return "0";
    }
    return fmt::format("{:+.2g}", value);
}

std::string per_cent(double share) {
    return std::abs(share) < 1e-4 ? "under 0.01 %" : fmt::format("{:+.2f} %", 100.0 * share);
}

} // namespace published
