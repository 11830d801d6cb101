#include "pipe_sizes.hpp"

#include "advice/remedies/run_edit.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright::pipe_sizes {

std::string_view system_name(TradeSizes sizes) {
    return sizes == TradeSizes::inch ? "inch" : "metric";
}

double greatest_area_ratio(const Case& present) {
    if (present.appliance.type == ApplianceType::fireplace) {
        return std::numeric_limits<double>::infinity();
    }
    const bool outdoors =
        std::any_of(present.sections.begin(), present.sections.end(), [](const Section& section) {
            return section.zone == Zone::outdoors && section.length_m > 1.0;
        });
    return catalog::default_of(outdoors ? "flue_area_most_outside" : "flue_area_most_inside").value;
}

std::string rule_against(double area_over_outlet, double greatest) {
    if (area_over_outlet < 1.0 - 2.0 * same_size) {
        return "smaller than the outlet";
    }
    if (area_over_outlet > greatest * (1.0 + same_size)) {
        return "more than " + format_number(greatest, 2) + " times the outlet's area";
    }
    return {};
}

std::string trade_name(double diameter_m, TradeSizes sizes, UnitSystem units) {
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system == system_name(sizes)
            && std::abs(size.inside_diameter_m / diameter_m - 1.0) < same_size / 2.0) {
            return std::string{size.id};
        }
    }
    return format_quantity(diameter_m, Kind::length, units);
}

Present present_size(const Installation& spelled, std::size_t begin, std::size_t end) {
    Present present;
    double longest_m = -1.0;
    for (std::size_t i = begin; i < end; ++i) {
        const Part& part = spelled.run[i];
        if (!part.diameter_m || !run_edit::is_resizable(spelled, part)) {
            continue;
        }
        if (present.diameter_m > 0.0
            && std::abs(*part.diameter_m / present.diameter_m - 1.0) > same_size) {
            present.uniform = false;
        }
        if (run_edit::length_m(part) > longest_m) {
            longest_m = run_edit::length_m(part);
            present.diameter_m = *part.diameter_m;
        }
    }
    return present;
}

Installation with_sizes(const Installation& spelled, double connector_m, double chimney_m) {
    Installation changed = spelled;
    const std::size_t chimney = run_edit::chimney_start(spelled);
    for (std::size_t i = 0; i < changed.run.size(); ++i) {
        if (run_edit::is_resizable(spelled, spelled.run[i])) {
            run_edit::set_diameter(changed.run[i], i < chimney ? connector_m : chimney_m);
        }
    }
    run_edit::settle_size_changes(changed);
    return changed;
}

} // namespace fluewright::pipe_sizes
