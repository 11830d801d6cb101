#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "offer.hpp"
#include "run_edit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright {
namespace {

using namespace run_edit;

using constants::foot_m;
using constants::inch_m;

/// Which parts a change touches; their length by what is new in the run.
struct Touched {
    std::vector<std::size_t> parts;
    double length_m{};
};

Touched touched(const Installation& before, const Installation& after) {
    Touched result;
    std::vector<Part> left = before.run;
    for (const Part& part : after.run) {
        const auto same = std::find(left.begin(), left.end(), part);
        if (same != left.end()) {
            left.erase(same);
        } else {
            result.length_m += shape_of(part).length_m;
        }
    }
    std::vector<Part> kept = after.run;
    for (std::size_t i = 0; i < before.run.size(); ++i) {
        const auto same = std::find(kept.begin(), kept.end(), before.run[i]);
        if (same != kept.end()) {
            kept.erase(same);
        } else {
            result.parts.push_back(i);
        }
    }
    return result;
}

std::string place_words(const Run& run, const std::vector<std::size_t>& parts) {
    constexpr std::size_t most_named = 3;
    std::string words;
    if (parts.size() > most_named) {
        return "parts " + std::to_string(parts.front() + 1) + " to "
               + std::to_string(parts.back() + 1);
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        words += i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ";
        words += label(run.parts[parts[i]]);
    }
    return words;
}

/// "25 mm" of "insulated 25 mm".
std::string thickness_in(std::string_view wall) {
    constexpr std::string_view kind = "insulated ";
    return std::string{wall.substr(kind.size())};
}

bool has_level(const Installation& spelled) {
    return std::any_of(spelled.run.begin(), spelled.run.end(), is_level);
}

/// Of an air inlet: the larger it is, the longer the grille in the wall.
constexpr double grille_height_m = 0.1;

/// The change adds height and touches no other pipe.
bool counts_by_amount(RemedyKind kind) {
    return kind == RemedyKind::raise_top || kind == RemedyKind::move_heater;
}

} // namespace

std::string_view wall_of_raised_top(const Case& present) {
    // Vents of gas are no factory-built chimney.
    if (present.appliance.fuel_group == FuelGroup::gas) {
        return {};
    }
    const auto& parts = present.run.parts;
    const auto top = std::find_if(parts.rbegin(), parts.rend(), [](const RunPart& part) {
        return part.has_length() && part.rise_m > 0.0;
    });
    const bool bare = top != parts.rend() && top->wall_kind == WallKind::single
                      && top->zone.value == Zone::outdoors;
    return bare ? "insulated 25 mm" : std::string_view{};
}

Offer::Offer(const Installation& written, const Case& present)
    : before_(spelled_out(written)), case_(present) {
    settle_size_changes(before_);
    run_ = run_of(before_);
}

void Offer::add(Remedy remedy) {
    if (!applies_to(effort_of(remedy.kind).kinds, kind_of(case_.appliance))) {
        return;
    }
    const std::optional<Installation> after = apply(remedy, before_);
    if (!after) {
        return;
    }
    const Touched change = touched(before_, spelled_out(*after));
    if (remedy.place.empty() && run_) {
        remedy.place = place_words(*run_, change.parts);
    }
    const catalog::RemedyEffort& row = effort_of(remedy.kind);
    remedy.length_m = counts_by_amount(remedy.kind)          ? remedy.amount
                      : remedy.kind == RemedyKind::air_inlet ? remedy.other / grille_height_m
                                                             : change.length_m;
    remedy.effort = row.effort + row.effort_per_metre * remedy.length_m;
    if (remedy.kind == RemedyKind::fit_regulator && case_.appliance.fuel_group == FuelGroup::wood) {
        // Its air feeds a chimney fire: code and maker are to be asked first.
        constexpr double asking = 1.5;
        remedy.effort += asking;
    }
    if (remedy.kind == RemedyKind::raise_top && !remedy.word.empty()) {
        const catalog::RemedyEffort& wall = effort_of(RemedyKind::insulate_outside);
        remedy.other_length_m = change.length_m;
        remedy.effort += wall.effort + wall.effort_per_metre * change.length_m;
    }
    remedies_.push_back(std::move(remedy));
}

void Offer::caps() {
    for (const Build build : {Build::plain, Build::open}) {
        for (const Part& part : before_.run) {
            const Build now = part.build.value_or(Build::plain);
            // The cap of a listed gas vent belongs to it.
            const bool more_open = is_a(part, PartKind::cap) && now != Build::open && now != build
                                   && !part.loss && case_.appliance.fuel_group != FuelGroup::gas;
            if (more_open) {
                add({.kind = RemedyKind::change_cap,
                     .word = std::string{name(build)},
                     .what = build == Build::open ? "Take the cap off and leave the top open"
                                                  : "Fit a plain cap instead of the rain cap"});
            }
        }
    }
}

void Offer::passage() {
    add({.kind = RemedyKind::open_damper,
         .what = before_.appliance.door.throat_m2
                     ? "Open the throat and its damper to the width of the flue"
                     : "Turn the damper fully open"});
    add({.kind = RemedyKind::remove_damper, .what = "Take the damper out"});
    const bool glazed = std::any_of(before_.run.begin(), before_.run.end(), [](const Part& part) {
        return part.deposit == DepositKind::glazed_creosote;
    });
    add({.kind = RemedyKind::sweep,
         .what = has_part(before_.run, PartKind::obstruction)
                     ? "Sweep the flue and take out what blocks it"
                 : glazed ? "Have a sweep take out the glaze, which no brush moves, and look "
                            "for cracks below it"
                          : "Sweep the flue down to the bare wall"});
    add({.kind = RemedyKind::seal_joints,
         .what = is_fed_by_hand(case_.appliance)
                     ? "Close the joints: cement or new gaskets, screws, a tight clean-out"
                     : "Close the joints: new gaskets or sealant made for this vent, screws"});
    add({.kind = RemedyKind::turn_round,
         .what = "Turn the pipe round that lies upside down, its crimped end towards the heater"});
    constexpr double wide_mesh_m = 0.012;
    add({.kind = RemedyKind::clean_screen, .what = "Clean the screen"});
    add({.kind = RemedyKind::remove_screen, .what = "Take the screen out"});
    add({.kind = RemedyKind::wider_mesh,
         .amount = wide_mesh_m,
         .what = "Fit a clean screen with a mesh of " + show(wide_mesh_m, Kind::length)});
    caps();
}

void Offer::moved_by(double away_m) {
    add({.kind = RemedyKind::move_heater,
         .amount = away_m,
         .place = "the heater",
         .what = "Move the heater " + show(away_m, Kind::length)
                 + " further from the walls, and the pipe with it"});
}

/// Against a wall that burns: by the plate, or nearer than what has no plate may stand anywhere.
void Offer::near_heater() {
    const Clearances& now = before_.appliance.clearances;
    const Clearances& listed = before_.appliance.listed_clearances;
    constexpr double far_enough_m = 1.2; // the most that a body asks for; judgement
    const auto too_near = [far_enough_m](const Given& there, const Given& least) {
        return there && *there < least.value_or(far_enough_m);
    };
    if (!too_near(now.side_m, listed.side_m) && !too_near(now.back_m, listed.back_m)
        && !too_near(now.corner_m, listed.corner_m)) {
        return;
    }
    const std::array<double, 4> steps =
        us() ? std::array{6.0 * inch_m, 12.0 * inch_m, 18.0 * inch_m, 30.0 * inch_m}
             : std::array{0.15, 0.3, 0.5, 0.8};
    for (const double step_m : steps) {
        moved_by(step_m);
    }
    add({.kind = RemedyKind::shield_heater,
         .place = "the heater",
         .what =
             "Fit a shield of sheet steel, 1 in (25 mm) off the wall, between heater and wall"});
}

void Offer::raise_by(double height_m) {
    const std::string wall{wall_of_raised_top(case_)};
    const std::string what = "Raise the top by " + show(height_m, Kind::length);
    add({.kind = RemedyKind::raise_top,
         .amount = height_m,
         .word = wall,
         .place = "the chimney top",
         .what = wall.empty() ? what
                              : what + ", with insulated pipe (" + thickness_in(wall)
                                    + ") in place of bare pipe outside the warm room"});
}

void Offer::raise() {
    // What ends level, out of a wall, has no top to raise: it wants a chimney.
    const RunPart* last = case_.run.last_straight();
    if (last == nullptr || last->level()) {
        return;
    }
    const std::array<double, 4> steps =
        us() ? std::array{2.0 * foot_m, 4.0 * foot_m, 6.0 * foot_m, 8.0 * foot_m}
             : std::array{0.5, 1.0, 1.5, 2.0};
    for (const double step_m : steps) {
        raise_by(step_m);
    }
}

void Offer::shape() {
    const std::string way{way_out(kind_of(case_.appliance))};
    const double slope = catalog::default_of(DefaultId::level_run_slope).value;
    add({.kind = RemedyKind::give_slope,
         .amount = slope,
         .what =
             "Slope the horizontal run by " + show(slope, Kind::slope) + " towards the " + way});
    add({.kind = RemedyKind::smooth_elbows, .what = "Fit smooth swept elbows"});
    add({.kind = RemedyKind::two_45,
         .what = "Run the offset at 45 degrees, with two 45 degree elbows"});
    constexpr double half = 0.5;
    add({.kind = RemedyKind::shorten_level,
         .amount = half,
         .what = "Bring the heater closer to the " + way + ": half the horizontal run"});
    near_heater();
    add({.kind = RemedyKind::straighten_level, .what = "Run it straight across, without the turn"});
    const auto moved = apply(Remedy{.kind = RemedyKind::remove_level}, before_);
    const bool more_level = moved && has_level(spelled_out(*moved));
    add({.kind = RemedyKind::remove_level,
         .what = more_level ? std::string{"Move the heater to where the first horizontal run ends: "
                                          "straight up to the next one, two turns less"}
                            : "Set the heater under the " + way
                                  + ": straight up, no horizontal run, no turns"});
    raise();
}

void Offer::damper() {
    if (before_.appliance.damper_allowed == Flag{false}) {
        return;
    }
    const bool has_one = has_part(before_.run, PartKind::damper);
    // Neither blade nor regulator goes into a chimney or its liner, out of everybody's reach.
    const auto is_connector = [](const RunPart& part) {
        return part.has_length() && !part.in_chimney();
    };
    if (!has_one && std::none_of(case_.run.parts.begin(), case_.run.parts.end(), is_connector)) {
        return;
    }
    constexpr double degree = constants::pi / 180.0;
    for (const double angle_deg : {30.0, 45.0, 60.0, 75.0}) {
        const std::string angle = format_quantity(angle_deg * degree, Kind::angle, case_.units)
                                  + " when the draft is strong";
        add({.kind = RemedyKind::fit_damper,
             .amount = angle_deg * degree,
             .place = has_one ? "" : "the connector",
             .what = has_one ? "Keep the damper open, and turn it to " + angle
                             : "Fit a damper and turn it to " + angle});
    }
    const double greatest_pa = case_.appliance.draft_greatest_pa;
    const double needed_pa =
        std::max(case_.appliance.high.draft_needed_pa, case_.appliance.low.draft_needed_pa);
    double last_pa = needed_pa;
    for (const double share : {0.75, 0.5, 0.25}) {
        const double setting_pa = std::floor(needed_pa + share * (greatest_pa - needed_pa));
        if (setting_pa > needed_pa && setting_pa != last_pa) {
            last_pa = setting_pa;
            regulator_at(setting_pa);
        }
    }
}

void Offer::regulator_at(double setting_pa) {
    add({.kind = RemedyKind::fit_regulator,
         .amount = setting_pa,
         .place = "the connector",
         .what = "Fit a draft regulator, set to " + show(setting_pa, Kind::pressure)});
}

std::vector<Remedy> possible_remedies(const Installation& written, const Case& present) {
    Offer offer(written, present);
    offer.passage();
    offer.fire();
    offer.shape();
    offer.pipe();
    offer.damper();
    std::vector<Remedy> remedies = std::move(offer).take();
    std::stable_sort(remedies.begin(), remedies.end(), [](const Remedy& a, const Remedy& b) {
        return a.kind < b.kind;
    });
    return remedies;
}

} // namespace fluewright
