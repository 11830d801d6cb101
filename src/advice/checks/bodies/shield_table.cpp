#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <array>
#include <cmath>

/// The table of shields, entered between its columns.
namespace fluewright {

std::optional<double> shielded_clearance_m(Shield shield, double needed_m, bool above) {
    const catalog::ShieldClearance* row = catalog::find_shield(name(shield));
    if (row == nullptr) {
        return std::nullopt;
    }
    constexpr double inch_m = constants::inch_m;
    const std::array<double, 5> needed{
        6.0 * inch_m, 9.0 * inch_m, 12.0 * inch_m, 18.0 * inch_m, 36.0 * inch_m};
    const std::array<double, 5> left =
        above ? std::array{row->above_6_m,
                           row->above_9_m,
                           row->above_12_m,
                           row->above_18_m,
                           row->above_36_m}
              : std::array{
                  row->side_6_m, row->side_9_m, row->side_12_m, row->side_18_m, row->side_36_m};
    constexpr double rounding_m = 5e-4;
    for (std::size_t i = 0; i < needed.size(); ++i) {
        if (std::abs(needed_m - needed[i]) < rounding_m) {
            return left[i] > 0.0 ? std::optional{left[i]} : std::nullopt;
        }
        if (i > 0 && needed_m < needed[i] && needed_m > needed[i - 1]) {
            if (left[i] <= 0.0 || left[i - 1] <= 0.0) {
                return std::nullopt;
            }
            const double share = (needed_m - needed[i - 1]) / (needed[i] - needed[i - 1]);
            return left[i - 1] + share * (left[i] - left[i - 1]);
        }
    }
    return std::nullopt;
}

} // namespace fluewright
