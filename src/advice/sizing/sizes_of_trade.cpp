#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "size_rows.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::sizing {
namespace {

/// Whether a wall of the run is made in the sizes of inches alone.
bool in_inches_alone(const Case& resolved) {
    return std::any_of(resolved.walls.begin(), resolved.walls.end(), [](const WallBuild& wall) {
        return wall.sizes == "inch";
    });
}

} // namespace

bool is_same_height(double one_m, double other_m) {
    constexpr double same_m = 1e-6;
    return std::abs(one_m - other_m) < same_m;
}

bool is_same_diameter(double one_m, double other_m) {
    return is_same_size(one_m * one_m, other_m * other_m);
}

TradeSizes usual_sizes(const Case& resolved) {
    if (in_inches_alone(resolved)) {
        return TradeSizes::inch;
    }
    const double collar_m = resolved.appliance.outlet_diameter_m;
    const auto is_of = [&](TradeSizes sizes) {
        const auto list = trade_sizes(sizes);
        return std::any_of(list.begin(), list.end(), [&](const catalog::TradeSize* size) {
            return is_same_diameter(size->inside_diameter_m, collar_m);
        });
    };
    const TradeSizes by_units =
        resolved.units == UnitSystem::us ? TradeSizes::inch : TradeSizes::metric;
    const TradeSizes other = by_units == TradeSizes::inch ? TradeSizes::metric : TradeSizes::inch;
    return !is_of(by_units) && is_of(other) ? other : by_units;
}

std::vector<const catalog::TradeSize*> trade_sizes(TradeSizes sizes) {
    const std::string_view system = sizes == TradeSizes::inch ? "inch" : "metric";
    std::vector<const catalog::TradeSize*> list;
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system == system) {
            list.push_back(&size);
        }
    }
    return list;
}

std::string trade_name(double diameter_m, TradeSizes sizes, UnitSystem units) {
    for (const catalog::TradeSize* size : trade_sizes(sizes)) {
        if (is_same_diameter(size->inside_diameter_m, diameter_m)) {
            return std::string{size->id};
        }
    }
    return format_quantity(diameter_m, Kind::length, units);
}

} // namespace fluewright::sizing
