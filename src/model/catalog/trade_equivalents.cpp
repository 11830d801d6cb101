#include "fluewright/model/catalog/trade_equivalents.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright::catalog {
namespace {

#include "fluewright_data/trade_equivalents.inc"

constexpr double makers_share = 0.005; ///< what makers miss a size by: judgement

bool is_of_size(double diameter_m, double size_m) {
    return std::abs(diameter_m - size_m) <= makers_share * size_m;
}

} // namespace

std::span<const TradeEquivalent> trade_equivalents() {
    return trade_equivalent_rows;
}

bool are_trade_equivalents(double diameter_m, double other_m) {
    return std::any_of(
        trade_equivalent_rows.begin(),
        trade_equivalent_rows.end(),
        [&](const TradeEquivalent& row) {
            return (is_of_size(diameter_m, row.inch_m) && is_of_size(other_m, row.metric_m))
                   || (is_of_size(diameter_m, row.metric_m) && is_of_size(other_m, row.inch_m));
        });
}

} // namespace fluewright::catalog
