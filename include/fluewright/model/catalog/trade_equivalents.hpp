#pragma once

#include <span>
#include <string_view>

/// Sizes of the two markets that stand for each other.
namespace fluewright::catalog {

/// A row of data/trade_equivalents.csv.
struct TradeEquivalent {
    std::string_view id;
    double inch_m;   ///< inside diameter of the one named in inches
    double metric_m; ///< of the one named in millimetres
    std::string_view source;
    std::string_view mark;
};

[[nodiscard]] std::span<const TradeEquivalent> trade_equivalents();

/// Whether two diameters [m] are a size of inches and the metric one that stands for it, in either
/// order; each within half a percent of its own.
[[nodiscard]] bool are_trade_equivalents(double diameter_m, double other_m);

} // namespace fluewright::catalog
