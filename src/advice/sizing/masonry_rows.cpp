#include "masonry_rows.hpp"

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "size_rows.hpp"

#include <algorithm>

namespace fluewright::sizing {
namespace {

/// The longest masonry part; null where there is none.
const RunPart* flue_of(const Case& resolved) {
    const RunPart* flue = nullptr;
    for (const RunPart& part : resolved.run.parts) {
        if (part.wall_kind == WallKind::masonry && part.has_length()
            && (flue == nullptr || part.length_m > flue->length_m)) {
            flue = &part;
        }
    }
    return flue;
}

SizeRow masonry_row(const Case& resolved, std::string name, double area_m2, double height_m) {
    SizeRow row;
    row.connector = std::move(name);
    row.chimney = row.connector;
    row.connector_m = row.chimney_m = circle_diameter_m(area_m2);
    row.height_m = height_m;
    row.area_over_outlet = area_m2 / resolved.appliance.outlet_area_m2;
    return row;
}

} // namespace

bool has_masonry_flue(const Case& resolved) {
    return flue_of(resolved) != nullptr;
}

double masonry_over_outlet(const Case& resolved) {
    return flue_of(resolved)->bore.area_m2 / resolved.appliance.outlet_area_m2;
}

void lead_into_masonry(const Case& resolved, SizeRow& row) {
    if (const RunPart* flue = flue_of(resolved)) {
        row.chimney = bore_name(flue->bore, resolved.units);
        row.chimney_m = 4.0 * flue->bore.area_m2 / flue->bore.perimeter_m;
    }
}

std::string masonry_words(const Case& resolved) {
    const FlueBore& bore = flue_of(resolved)->bore;
    const auto length = [&](double m) { return format_quantity(m, Kind::length, resolved.units); };
    return bore.round() ? "masonry flue of " + length(bore.diameter_m)
                        : "masonry flue of " + length(bore.width_m) + " by " + length(bore.depth_m);
}

std::vector<SizeRow> masonry_rows(const Case& resolved, TradeSizes sizes, double height_m) {
    const double flue_m2 = flue_of(resolved)->bore.area_m2;
    const bool as_it_is = is_same_height(height_m, resolved.total_rise_m());
    std::vector<SizeRow> rows{
        masonry_row(resolved, as_it_is ? "as it is now" : "as wide as now", flue_m2, height_m)};
    rows.front().present = as_it_is;
    for (const catalog::ClayLiner& liner : catalog::clay_liners()) {
        SizeRow row =
            masonry_row(resolved,
                        std::string{liner.id},
                        liner.shape == "round" ? circle_area_m2(liner.inside_width_m)
                                               : liner.inside_width_m * liner.inside_depth_m,
                        height_m);
        row.clay_liner = liner.id;
        rows.push_back(std::move(row));
    }
    const auto clay = rows.begin() + 1;
    std::stable_sort(clay, rows.end(), [](const SizeRow& a, const SizeRow& b) {
        return a.area_over_outlet < b.area_over_outlet;
    });
    for (const catalog::TradeSize* size : trade_sizes(sizes)) {
        if (const auto liner = liner_that_goes_in(resolved.run, size->inside_diameter_m);
            !liner.empty()) {
            rows.push_back(masonry_row(resolved,
                                       std::string{size->id} + " liner",
                                       circle_area_m2(size->inside_diameter_m),
                                       height_m));
            rows.back().liner = liner;
        }
    }
    return rows;
}

std::vector<Change> masonry_changes(const SizeRow& row, double present_height_m) {
    if (row.present) {
        return {AsItStands{}};
    }
    std::vector<Change> changes;
    if (!is_same_height(row.height_m, present_height_m)) {
        VariedKey height;
        height.what = VariedKey::What::height;
        height.name = "height";
        height.kind = Kind::length;
        changes.emplace_back(OtherValue{.key = std::move(height), .value = row.height_m});
    }
    if (row.lines_masonry()) {
        changes.emplace_back(Remedy{.kind = RemedyKind::line_flue,
                                    .amount = row.connector_m,
                                    .word = std::string{row.liner}});
    } else if (!row.clay_liner.empty()) {
        changes.emplace_back(OtherClayLiner{row.clay_liner});
    }
    return changes;
}

} // namespace fluewright::sizing
