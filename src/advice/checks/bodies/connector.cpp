#include "advice/checks/same_trade_size.hpp"
#include "fluewright/core/constants.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// The way of the pipe from heater to chimney: size, level run, slope and turns.
namespace fluewright::checking {
namespace {

constexpr std::string_view no_connector = "there is no pipe before the chimney";
constexpr std::string_view no_level_run = "no part runs level";

double degrees(double radians) {
    return radians * 180.0 / constants::pi;
}

/// Height of the run above the end of the connector's last level part.
double height_above_level_m(const View& view) {
    double height_m = 0.0;
    for (const Piece& piece : view.pieces) {
        height_m = piece.level() && !piece.in_chimney ? 0.0 : height_m + piece.section->rise_m;
    }
    return height_m;
}

Verdict not_below_collar(const View& view, const catalog::Rule& rule) {
    Fold fold{no_connector};
    for (const Piece* piece : view.connector()) {
        const double share = piece->section->built_area_m2 / view.outlet_area_m2();
        // Trade sizes are nominal: two per cent of area is one per cent of diameter.
        const double needed = rule.figure * 0.98;
        Verdict v =
            decided(view.reaches(share, needed, Kind::fraction)
                        || same_trade_size(piece->section->built_area_m2, view.outlet_area_m2()),
                    view.show(piece->section->built_area_m2, Kind::area) + " inside, the collar "
                        + view.show(view.outlet_area_m2(), Kind::area));
        v.kind = Kind::fraction;
        v.figure = share;
        v.limit = rule.figure;
        fold.add(at(view, *piece, std::move(v)));
    }
    return fold.result();
}

Verdict level_share(const View& view, const catalog::Rule& rule, bool single) {
    double level_m = 0.0;
    const Piece* first = nullptr;
    bool all_insulated = true;
    for (const Piece* piece : view.connector()) {
        if (piece->level()) {
            level_m += piece->run_part->plan_m;
            first = first == nullptr ? piece : first;
            all_insulated = all_insulated && !piece->is_single();
        }
    }
    if (first == nullptr) {
        return not_here(no_level_run);
    }
    if (view.heater().pushed_by_fan) {
        return not_here("a fan pushes the gas through");
    }
    if (all_insulated == single) {
        return not_here(single ? "the horizontal run is double-wall or insulated"
                               : "the horizontal run is single-wall");
    }
    return at(view,
              *first,
              at_most(view,
                      level_m,
                      rule.figure * std::max(0.0, height_above_level_m(view)),
                      Kind::length,
                      "horizontal run"));
}

Verdict level_single(const View& view, const catalog::Rule& rule) {
    return level_share(view, rule, true);
}

Verdict level_insulated(const View& view, const catalog::Rule& rule) {
    return level_share(view, rule, false);
}

/// Lengths run from centre to centre of turns, so that the elbows are in them.
Verdict total_length(const View& view, const catalog::Rule& rule) {
    double length_m = 0.0;
    for (const Piece* piece : view.connector()) {
        length_m += piece->is_single() ? piece->section->length_m : 0.0;
    }
    if (length_m <= 0.0) {
        return not_here("there is no single-wall pipe before the chimney");
    }
    return at_most(view, length_m, rule.figure, Kind::length, "single-wall pipe with its elbows");
}

Verdict slope(const View& view, const catalog::Rule& rule) {
    Fold fold{no_level_run};
    for (const Piece* piece : view.connector()) {
        if (piece->level()) {
            const double rise = piece->section->rise_m;
            const double level_m = piece->run_part->plan_m;
            // 1/4 in per ft is printed as 20 and as 20.8 mm/m; the lower is enough.
            Verdict v =
                at_least(view, rise / level_m, std::min(rule.figure, 0.02), Kind::slope, "rise");
            v.limit = rule.figure;
            fold.add(at(view, *piece, std::move(v)));
        }
    }
    return fold.result();
}

Verdict elbows(const View& view, const catalog::Rule& rule) {
    constexpr double right_angle_rad = 80.0 * constants::pi / 180.0;
    constexpr double rounding_rad = 0.02;
    if (view.connector().empty()) {
        return not_here(no_connector);
    }
    int sharp = 0;
    double sum_rad = 0.0;
    for (const Piece* piece : view.connector()) {
        if (piece->wall->kind == WallKind::insulated) {
            continue; // the tee at the foot of a factory-built chimney is its own
        }
        sum_rad += piece->section->turn_rad;
        sharp += piece->section->turn_rad >= right_angle_rad ? 1 : 0;
    }
    const bool met =
        sharp <= static_cast<int>(rule.figure) && sum_rad <= rule.second + rounding_rad;
    Verdict v = decided(met,
                        "the pipe turns by " + view.show(sum_rad, Kind::angle) + " in all, with "
                            + std::to_string(sharp) + (sharp == 1 ? " bend" : " bends")
                            + " of 90 degrees; at most " + view.show(rule.second, Kind::angle)
                            + " is required");
    v.kind = Kind::angle;
    v.figure = sum_rad;
    v.limit = rule.second;
    return v;
}

Verdict two_45(const View& view, const catalog::Rule& rule) {
    Fold fold{"the pipe has no elbow"};
    for (const Piece* piece : view.connector()) {
        if (piece->section->kind == PartKind::elbow) {
            fold.add(
                at(view,
                   *piece,
                   decided(piece->section->turn_rad < rule.figure,
                           "it turns by " + view.show(piece->section->turn_rad, Kind::angle))));
        }
    }
    return fold.result();
}

/// A bend of 45 degrees counts one, sharper ones and tees two.
Verdict bends_uk(const View& view, const catalog::Rule& rule) {
    int count = 0;
    for (const Piece& piece : view.pieces) {
        const double turn = degrees(piece.section->turn_rad);
        count += turn <= 1.0 ? 0 : turn <= 46.0 ? 1 : 2;
    }
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    Verdict v = decided(count <= static_cast<int>(rule.figure),
                        "bends come to " + std::to_string(count) + " of 45 degrees, at most "
                            + format_number(rule.figure) + " is required");
    v.figure = count;
    v.limit = rule.figure;
    return v;
}

/// Nothing flatter than 45 degrees, but for a short piece straight at a back outlet.
Verdict slope_uk(const View& view, const catalog::Rule& rule) {
    Fold fold{"for solid fuel only"};
    if (!view.solid_fuel()) {
        return fold.result();
    }
    bool first = true;
    for (const Piece& piece : view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        const double angle =
            std::asin(std::clamp(piece.section->rise_m / piece.section->length_m, -1.0, 1.0));
        const bool steep = angle >= rule.second - 0.01;
        const bool back_outlet =
            first && view.reaches(rule.figure, piece.section->length_m, Kind::length);
        fold.add(at(view,
                    piece,
                    decided(steep || back_outlet,
                            "it stands " + view.show(angle, Kind::angle) + " from the level over "
                                + view.show(piece.section->length_m, Kind::length))));
        first = false;
    }
    return fold.result();
}

Verdict rise_before_bend(const View& view, const catalog::Rule& rule) {
    if (view.heater().pushed_by_fan) {
        return not_here("a fan pushes the gas round the bend");
    }
    double rise_m = 0.0;
    for (const Piece* piece : view.connector()) {
        if (piece->level()) {
            return not_here("the pipe leaves the heater level");
        }
        if (piece->section->turn_rad > 0.0) {
            return at(
                view,
                *piece,
                at_least(view, rise_m, rule.figure, Kind::length, "upright before the elbow"));
        }
        rise_m += piece->section->rise_m;
    }
    return not_here("the pipe has no elbow");
}

constexpr auto connector_entries = std::to_array<Entry>({
    {"connector-size-not-below-collar", not_below_collar},
    {"connector-horizontal-75", level_single},
    {"connector-horizontal-100", level_insulated},
    {"connector-total-length", total_length},
    {"ca-flue-pipe-length", total_length},
    {"connector-slope", slope},
    {"ca-slope", slope},
    {"connector-elbows", elbows},
    {"ca-elbows", elbows},
    {"connector-two-45", two_45},
    {"uk-bends", bends_uk},
    {"uk-slope", slope_uk},
    {"trade-rise-before-elbow", rise_before_bend},
});

} // namespace

std::span<const Entry> connector_checks() {
    return connector_entries;
}

} // namespace fluewright::checking
