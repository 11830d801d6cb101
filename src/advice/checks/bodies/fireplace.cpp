#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// Open fireplaces: flue against opening, hearth, air.
namespace fluewright::checking {
namespace {

constexpr std::string_view no_fireplace = "for open fireplaces only";

std::optional<double> opening_m2(const View& view) {
    const DoorOpening& door = view.heater().door;
    return view.heater().has_door ? std::optional{door.width_m * door.height_m} : std::nullopt;
}

Verdict unknown_opening() {
    return unknown({"/appliance/door/width", "/appliance/door/height"});
}

const Piece* narrowest(const View& view) {
    const Piece* least = nullptr;
    for (const Piece& piece : view.pieces) {
        const bool smaller =
            least == nullptr || piece.section->built_area_m2 < least->section->built_area_m2;
        least = piece.has_length() && smaller ? &piece : least;
    }
    return least;
}

/// The area a code allows a flue: the net area of a clay liner, else what it is inside.
double net_area_m2(const Piece& piece) {
    const FlueBore& bore = piece.run_part->bore;
    const auto liners = catalog::clay_liners();
    const auto same = [](double a, double b) { return std::abs(a - b) < 1e-6; };
    const auto row = std::find_if(liners.begin(), liners.end(), [&](const catalog::ClayLiner& l) {
        return bore.clay_liner && bore.rectangular() && same(l.inside_width_m, bore.width_m)
               && same(l.inside_depth_m, bore.depth_m);
    });
    return row == liners.end() ? piece.section->built_area_m2 : row->net_area_m2;
}

Verdict share_of_opening(const View& view, double share) {
    const auto opening = opening_m2(view);
    const Piece* least = narrowest(view);
    if (!opening) {
        return unknown_opening();
    }
    if (least == nullptr) {
        return not_here("the run has no flue");
    }
    return at(view,
              *least,
              at_least(view, net_area_m2(*least), share * *opening, Kind::area, "flue area"));
}

double aspect(const Piece& piece) {
    const FlueBore& bore = piece.run_part->bore;
    return bore.rectangular()
               ? std::max(bore.width_m, bore.depth_m) / std::min(bore.width_m, bore.depth_m)
               : 1.0;
}

Verdict by_shape(const View& view, const catalog::Rule& rule) {
    constexpr double slim = 0.125;
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Piece* least = narrowest(view);
    if (least == nullptr) {
        return not_here("the run has no flue");
    }
    const double share = !least->section->rectangular ? rule.figure
                         : aspect(*least) < 1.995     ? rule.second
                                                      : slim;
    return share_of_opening(view, share);
}

Verdict by_height(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const double height_m = view.rise_m() + view.heater().outlet_height_m;
    return share_of_opening(
        view, view.reaches(height_m, rule.figure, Kind::length) ? 1.0 / 12.0 : 1.0 / 10.0);
}

Verdict by_height_fha(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    return share_of_opening(
        view, view.reaches(view.rise_m(), rule.figure, Kind::length) ? 1.0 / 10.0 : 1.0 / 8.0);
}

Verdict large_uk(const View& view, const catalog::Rule& rule) {
    constexpr double usual_m2 = 0.5 * 0.55;
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const auto opening = opening_m2(view);
    if (opening && *opening <= usual_m2) {
        return not_here("the opening is no larger than 500 x 550 mm");
    }
    return share_of_opening(view, rule.figure);
}

/// The table of British Columbia: a least and a greatest round flue.
Verdict table_bc(const View& view, const catalog::Rule& /*rule*/) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const auto opening = opening_m2(view);
    const Piece* least = narrowest(view);
    if (!opening) {
        return unknown_opening();
    }
    if (least == nullptr || least->section->rectangular) {
        return not_here("the table is for round flues");
    }
    const double height_m = view.rise_m();
    constexpr double shortest_m = 3.0;
    constexpr double tallest_m = 12.0;
    const auto rows = catalog::fireplace_flues();
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& r) {
        return *opening > r.over_m2 && *opening <= r.to_m2;
    });
    if (row == rows.end() || height_m < shortest_m || height_m > tallest_m) {
        return not_here("opening or height is outside the table");
    }
    const auto [low_m, high_m] = height_m < 4.5   ? std::pair{row->least_1_m, row->most_1_m}
                                 : height_m < 5.9 ? std::pair{row->least_2_m, row->most_2_m}
                                 : height_m < 8.9 ? std::pair{row->least_3_m, row->most_3_m}
                                                  : std::pair{row->least_4_m, row->most_4_m};
    if (low_m <= 0.0) {
        return decided(false, "the table gives no flue for this opening and height");
    }
    const double d_m = least->section->built_diameter_m;
    Verdict v =
        decided(view.reaches(d_m, low_m, Kind::length) && view.reaches(high_m, d_m, Kind::length),
                "flue of " + view.show(d_m, Kind::length) + "; " + view.show(low_m, Kind::length)
                    + " to " + view.show(high_m, Kind::length) + " is required");
    v.kind = Kind::length;
    v.figure = d_m;
    v.limit = low_m;
    return at(view, *least, std::move(v));
}

Verdict hearth(const View& view, double front_m, double sides_m) {
    const FloorProtection& floor = view.written.appliance.floor_protection;
    Fold fold{""};
    fold.add(given_at_least(view,
                            floor.front_m,
                            front_m,
                            Kind::length,
                            "hearth before the fire",
                            "/appliance/floor_protection/front"));
    fold.add(given_at_least(view,
                            floor.sides_m,
                            sides_m,
                            Kind::length,
                            "hearth to each side",
                            "/appliance/floor_protection/sides"));
    return fold.result();
}

Verdict hearth_us(const View& view, const catalog::Rule& rule) {
    constexpr double large_m2 = 0.5574; // 6 ft2
    constexpr double large_front_m = 0.508;
    constexpr double large_sides_m = constants::foot_m;
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const auto opening = opening_m2(view);
    if (!opening) {
        return unknown_opening();
    }
    return *opening < large_m2 ? hearth(view, rule.figure, rule.second)
                               : hearth(view, large_front_m, large_sides_m);
}

Verdict hearth_ca(const View& view, const catalog::Rule& rule) {
    return view.fireplace() ? hearth(view, rule.figure, rule.second) : not_here(no_fireplace);
}

Verdict air_at_least(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Given& inlet = view.written.site.air_inlet_m2;
    if (!inlet) {
        return unknown({"/site/air_inlet"},
                       rule.figure > 0.0
                           ? "air inlet at least " + view.show(rule.figure, Kind::area)
                           : std::string{"an opening that lets in air from outdoors"});
    }
    return rule.figure > 0.0 ? at_least(view, *inlet, rule.figure, Kind::area, "air inlet")
                             : decided(*inlet > 0.0,
                                       *inlet > 0.0 ? "air comes in from outdoors"
                                                    : "no air comes from outdoors");
}

Verdict intake_within(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Given& inlet = view.written.site.air_inlet_m2;
    if (!inlet) {
        return unknown({"/site/air_inlet"},
                       "air inlet of " + view.show(rule.figure, Kind::area) + " to "
                           + view.show(rule.second, Kind::area));
    }
    if (*inlet <= 0.0) {
        return not_here("there is no inlet");
    }
    return *inlet > rule.second ? at_most(view, *inlet, rule.second, Kind::area, "air inlet")
                                : at_least(view, *inlet, rule.figure, Kind::area, "air inlet");
}

Verdict wood_around(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Clearances& around = view.written.appliance.clearances;
    Fold fold{""};
    fold.add(given_at_least(view,
                            around.side_m,
                            rule.figure,
                            Kind::length,
                            "wood at the sides",
                            "/appliance/clearances/side"));
    fold.add(given_at_least(view,
                            around.back_m,
                            rule.second,
                            Kind::length,
                            "wood behind",
                            "/appliance/clearances/back"));
    return fold.result();
}

/// The file does not say how far a mantel stands out: between the two figures nothing can be said.
Verdict mantel_ca(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Given& above = view.written.appliance.clearances.above_m;
    if (!above
        || (view.reaches(*above, rule.figure, Kind::length)
            && !view.reaches(*above, rule.second, Kind::length))) {
        return unknown({"/appliance/clearances/above"},
                       "combustibles above the opening at least "
                           + view.show(rule.figure, Kind::length) + ", or "
                           + view.show(rule.second, Kind::length) + " where it stands out");
    }
    return at_least(view, *above, rule.figure, Kind::length, "combustibles above the opening");
}

Verdict depth(const View& view, const catalog::Rule& rule) {
    if (!view.fireplace()) {
        return not_here(no_fireplace);
    }
    const Given& deep = view.written.appliance.firebox.depth_m;
    return given_at_least(
        view, deep, rule.figure, Kind::length, "firebox depth", "/appliance/firebox/depth");
}

constexpr auto fireplace_entries = std::to_array<Entry>({
    {"fireplace-flue-area", by_shape},
    {"fireplace-flue-by-height", by_height},
    {"fireplace-flue-fha", by_height_fha},
    {"uk-open-fire-large", large_uk},
    {"ca-fireplace-flue", table_bc},
    {"hearth-extension-fireplace", hearth_us},
    {"ca-hearth", hearth_ca},
    {"fireplace-outside-air", air_at_least},
    {"ca-combustion-air", air_at_least},
    {"fireplace-intake-size", intake_within},
    {"fireplace-clearance", wood_around},
    {"fireplace-depth", depth},
    {"ca-mantel", mantel_ca},
});

} // namespace

std::span<const Entry> fireplace_checks() {
    return fireplace_entries;
}

} // namespace fluewright::checking
