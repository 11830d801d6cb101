#include "fluewright/advice/parts/piece_prices.hpp"

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/core/same_name.hpp"

#include <cmath>

namespace fluewright {
namespace {

constexpr double same_length_m = 1e-3;

bool is_of_size(const PiecePrice& price, double diameter_m) {
    return !price.diameter_m || std::abs(*price.diameter_m - diameter_m) < same_bore_m;
}

} // namespace

std::optional<double> PiecePrices::of_length(std::string_view wall,
                                             double diameter_m,
                                             double length_m,
                                             bool telescopes) const {
    std::optional<double> by_length;
    for (const PiecePrice& price : prices) {
        if (!price.wall || !is_same_name(*price.wall, wall) || !is_of_size(price, diameter_m)) {
            continue;
        }
        if (price.each && price.length_m && price.telescopes == telescopes
            && std::abs(*price.length_m - length_m) < same_length_m) {
            return price.each;
        }
        if (price.per_metre && !price.length_m && !telescopes) {
            by_length = *price.per_metre * length_m;
        }
    }
    return by_length;
}

std::optional<double> PiecePrices::of_part(std::string_view what, double diameter_m) const {
    for (const PiecePrice& price : prices) {
        if (price.what && price.each && is_same_name(*price.what, what)
            && (diameter_m <= 0.0 || is_of_size(price, diameter_m))) {
            return price.each;
        }
    }
    return std::nullopt;
}

} // namespace fluewright
