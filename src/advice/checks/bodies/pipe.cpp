#include "fluewright/core/constants.hpp"
#include "fluewright/model/run/run.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// The pipe itself: sheet, joints, dampers.
namespace fluewright::checking {
namespace {

constexpr std::string_view no_pipe = "there is no such pipe before the chimney";
constexpr std::string_view not_solid = "for solid fuel only";

std::string material_of(const Piece& piece) {
    return piece.wall->inner_material;
}

/// The pieces with a joint at their heater end that slips together.
std::vector<const Piece*> jointed(const View& view) {
    std::vector<const Piece*> list;
    for (const Piece* piece : view.connector()) {
        const PartKind kind = piece->section->kind;
        const bool has_ends = piece->has_length() || kind == PartKind::elbow
                              || kind == PartKind::tee || kind == PartKind::reducer
                              || kind == PartKind::increaser;
        if (has_ends && piece->is_single()) {
            list.push_back(piece);
        }
    }
    return list;
}

Verdict lap(const View& view, const catalog::Rule& rule) {
    Fold fold{"there are no slip joints before the chimney"};
    for (const Piece* piece : jointed(view)) {
        fold.add(at(view,
                    *piece,
                    given_at_least(view,
                                   piece->part->lap_m,
                                   rule.figure,
                                   Kind::length,
                                   "lap of its lower joint",
                                   piece->key("lap"))));
    }
    return fold.result();
}

Verdict screws(const View& view, const catalog::Rule& rule) {
    Fold fold{"there are no slip joints before the chimney"};
    for (const Piece* piece : jointed(view)) {
        fold.add(at(view,
                    *piece,
                    given_at_least(view,
                                   piece->part->screws,
                                   rule.figure,
                                   Kind::number,
                                   "screws in its lower joint:",
                                   piece->key("screws"))));
    }
    return fold.result();
}

/// The joint into which the inserted end of a piece goes.
const Joint* joint_of_inserted(const View& view, const Piece& piece) {
    const bool upper = piece.part->chimney_end == PipeEnd::crimped;
    for (const Joint& joint : view.joints().joints) {
        if ((upper ? joint.below : joint.above) == piece.index) {
            return &joint;
        }
    }
    return nullptr;
}

/// Liquid that runs down must meet the lip of the lower piece from inside.
Verdict inserted_end_down(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"there are no slip joints before the chimney"};
    for (const Piece* piece : jointed(view)) {
        const Part& part = *piece->part;
        if (!part.heater_end && !part.chimney_end) {
            fold.add(unknown({piece->key("heater_end"), piece->key("chimney_end")},
                             "crimped end towards the heater"));
            continue;
        }
        const bool up = part.chimney_end == PipeEnd::crimped || part.heater_end == PipeEnd::socket;
        Verdict v =
            at(view,
               *piece,
               decided(!up,
                       up ? "its crimped end points to the chimney: liquid runs out at the joint"
                          : "its crimped end points to the heater"));
        // The trade's check speaks of the same joint: one place for both.
        if (const Joint* joint = up ? joint_of_inserted(view, *piece) : nullptr) {
            v.place = joint->place;
            v.part = joint->above;
        }
        fold.add(std::move(v));
    }
    return fold.result();
}

/// The thinnest sheet that may be sold as a gauge [m]: that of the manufacturers' standard gauge,
/// for galvanized sheet with its zinc, less what the mill may roll it thinner.
///
/// Source  [memory]: the zinc of both faces, 0.0037 in; the mill's 0.05 mm, the normal tolerance of
///         thin cold-rolled sheet
double least_sheet_m(double gauge, bool galvanized) {
    constexpr double zinc_m = 0.0037 * constants::inch_m;
    constexpr double mill_m = 0.00005;
    return sheet_gauge_m(gauge) + (galvanized ? zinc_m : 0.0) - mill_m;
}

/// A sheet against a gauge: a lower number is thicker. Gauge and thickness come to one verdict.
Verdict sheet_of_gauge(const View& view, const Piece& piece, double gauge) {
    const Part& part = *piece.part;
    const double least_m = least_sheet_m(gauge, material_of(piece) == "galvanized steel");
    const std::string asked = "gauge " + format_number(gauge) + " or a lower number, at least "
                              + view.show(least_m, Kind::length);
    if (part.thickness_m) {
        Verdict v = decided(view.reaches(*part.thickness_m, least_m, Kind::length),
                            "sheet of " + view.show(*part.thickness_m, Kind::length) + "; " + asked
                                + " is required");
        v.kind = Kind::length;
        v.figure = part.thickness_m;
        v.limit = least_m;
        return at(view, piece, std::move(v));
    }
    if (part.gauge) {
        Verdict v = decided(*part.gauge <= gauge,
                            "gauge " + format_number(*part.gauge) + "; " + asked + " is required");
        v.figure = part.gauge;
        v.limit = gauge;
        return at(view, piece, std::move(v));
    }
    return unknown({piece.key("gauge"), piece.key("thickness")}, "sheet of " + asked);
}

Verdict sheet_us(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{no_pipe};
    for (const Piece* piece : view.connector()) {
        if (!piece->is_single() || !piece->has_length() || piece->section->rectangular) {
            continue;
        }
        const double diameter_m = piece->section->built_diameter_m;
        const auto rows = catalog::connector_thicknesses();
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& r) {
            // Two inch-and-metric sizes of one class differ by a few millimetres.
            return r.use == "low" && diameter_m > r.over_m + 5e-4 && diameter_m <= r.to_m + 5e-4;
        });
        if (row != rows.end()) {
            fold.add(sheet_of_gauge(view, *piece, row->gauge));
        }
    }
    return fold.result();
}

Verdict gauge_24(const View& view, const catalog::Rule& rule) {
    constexpr double from_m = 0.149;
    constexpr double to_m = 0.204;
    Fold fold{"no single-wall pipe of 150 to 200 mm"};
    for (const Piece* piece : view.connector()) {
        const double d = piece->section->built_diameter_m;
        if (piece->is_single() && piece->has_length() && d >= from_m && d <= to_m) {
            fold.add(sheet_of_gauge(view, *piece, rule.figure));
        }
    }
    return fold.result();
}

Verdict not_galvanized(const View& view, const catalog::Rule& /*rule*/) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    Fold fold{no_pipe};
    for (const Piece* piece : view.connector()) {
        if (piece->has_sheet()) {
            const bool zinc = material_of(*piece) == "galvanized steel";
            fold.add(at(
                view, *piece, decided(!zinc, zinc ? "it is galvanized" : "it is not galvanized")));
        }
    }
    return fold.result();
}

Verdict no_gas_vent(const View& view, const catalog::Rule& /*rule*/) {
    if (view.heater().fuel_group == FuelGroup::gas) {
        return not_here("for other fuels than gas");
    }
    Fold fold{"the run has no pipe"};
    for (const Piece& piece : view.pieces) {
        if (piece.has_sheet()) {
            const bool melts = material_of(piece) == "aluminum";
            const bool made_for_it = piece.wall->may_serve(view.heater().fuel_group);
            Verdict v = decided(!melts && made_for_it,
                                melts         ? "its inner pipe is aluminum, as in a gas vent"
                                : made_for_it ? "its wall is made for this fire"
                                              : piece.wall->name + " is not made for "
                                                    + std::string{name(view.heater().fuel_group)});
            constexpr double not_for_it = 10.0; // before any pipe that is too near or too long
            constexpr double gone_in_a_fire = 20.0;
            v.weight = melts ? gone_in_a_fire : not_for_it;
            fold.add(at(view, piece, std::move(v)));
        }
    }
    return fold.result();
}

Verdict room_to_grow(const View& view, const catalog::Rule& /*rule*/) {
    bool bend = false;
    bool slip = false;
    std::vector<std::string> missing;
    for (const Piece* piece : view.connector()) {
        bend = bend || piece->section->turn_rad > 0.1;
        if (piece->has_length()) {
            slip = slip || piece->part->slip_joint.value_or(false)
                   || piece->part->expansion_allowed_m.value_or(0.0) > 0.0;
            if (!piece->part->slip_joint && !piece->part->expansion_allowed_m) {
                missing.push_back(piece->key("slip_joint"));
            }
        }
    }
    if (view.connector().empty()) {
        return not_here(no_pipe);
    }
    if (bend || slip) {
        return decided(true,
                       bend ? "an elbow takes its expansion" : "a slip joint takes its expansion");
    }
    return missing.empty()
               ? decided(false, "no elbow and no slip joint takes its expansion")
               : unknown(std::move(missing), "an elbow, a slip joint or a telescoping length");
}

Verdict supported(const View& view, const catalog::Rule& rule) {
    Fold fold{"no part runs level"};
    for (const Piece* piece : view.connector()) {
        if (!piece->level()) {
            continue;
        }
        const double needed =
            std::max(0.0, std::ceil(piece->section->length_m / rule.figure - 1e-6) - 1.0);
        if (needed <= 0.0) {
            fold.add(at(view, *piece, decided(true, "it is short enough")));
        } else {
            fold.add(at(view,
                        *piece,
                        given_at_least(view,
                                       piece->part->supports,
                                       needed,
                                       Kind::number,
                                       "supports:",
                                       piece->key("supports"))));
        }
    }
    return fold.result();
}

Verdict damper_allowed(const View& view, const catalog::Rule& /*rule*/) {
    for (const Piece* piece : view.connector()) {
        if (piece->section->kind == PartKind::damper) {
            const Flag& allowed = view.written.appliance.damper_allowed;
            return allowed ? at(
                       view,
                       *piece,
                       decided(*allowed,
                               *allowed ? "the maker allows it" : "the maker does not allow it"))
                           : unknown({"/appliance/damper_allowed"},
                                     "the heater maker's word that it is allowed");
        }
    }
    return not_here("there is no damper in the pipe");
}

Verdict damper_leaves_open(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"there is no damper in the flue"};
    for (const Piece& piece : view.pieces) {
        if (piece.section->kind == PartKind::damper) {
            const std::optional<double>& open = piece.run_part->open_when_shut;
            fold.add(
                open ? at(view,
                          piece,
                          decided(*open > 0.02,
                                  "shut, it leaves " + view.show(*open, Kind::fraction) + " open"))
                     : unknown({piece.key("free_area")}, "part of the flue left open when shut"));
        }
    }
    return fold.result();
}

constexpr auto pipe_entries = std::to_array<Entry>({
    {"connector-overlap", lap},
    {"ca-overlap", lap},
    {"au-overlap", lap},
    {"connector-fasteners", screws},
    {"connector-three-screws", screws},
    {"ca-three-screws", screws},
    {"au-three-screws", screws},
    {"connector-male-end", inserted_end_down},
    {"ca-male-end", inserted_end_down},
    {"au-male-end", inserted_end_down},
    {"de-male-end", inserted_end_down},
    {"uk-pipe-socket-up", inserted_end_down},
    {"connector-thickness", sheet_us},
    {"ca-thickness", gauge_24},
    {"connector-not-galvanized", not_galvanized},
    {"ca-not-galvanized", not_galvanized},
    {"uk-not-galvanized", not_galvanized},
    {"au-not-galvanized", not_galvanized},
    {"de-not-galvanized", not_galvanized},
    {"trade-no-gas-vent", no_gas_vent},
    {"connector-expansion", room_to_grow},
    {"ca-expansion", room_to_grow},
    {"ca-unsupported", supported},
    {"connector-damper", damper_allowed},
    {"au-no-full-shut", damper_leaves_open},
    {"trade-damper-leaves-open", damper_leaves_open},
});

} // namespace

std::span<const Entry> pipe_checks() {
    return pipe_entries;
}

} // namespace fluewright::checking
