#include "advice/sizing/size_rows.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/score.hpp"
#include "fluewright/core/constants.hpp"
#include "run_edit.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

using namespace run_edit;

using constants::foot_m;
/// Areas within this share of each other are one size.
constexpr double same_size = 0.02;
/// How many sizes beyond the present one are worth a try.
constexpr std::size_t most_sizes = 3;

/// Gathers the changes that do something to one installation.
class Offer {
public:
    Offer(const Installation& written, const Case& present)
        : before_(spelled_out(written)), case_(present) {
        settle_size_changes(before_);
    }

    std::vector<Remedy> take() && { return std::move(remedies_); }

    void passage();
    void fire();
    void shape();
    void pipe();
    void damper();

private:
    void add(Remedy remedy);

    [[nodiscard]] std::string show(double value, Kind kind) const {
        return format_quantity(value, kind, case_.units);
    }

    [[nodiscard]] bool us() const { return case_.units == UnitSystem::us; }

    void sizes(RemedyKind kind, std::size_t begin, std::size_t end, std::string_view what);
    void raise();
    void house();
    void liners();
    void caps();

    Installation before_;
    const Case& case_;
    std::vector<Remedy> remedies_;
};

std::string part_words(const std::vector<Part>& run, std::size_t index) {
    const auto& kind = run[index].part;
    return std::string{kind ? name(*kind) : "part"} + ' ' + std::to_string(index + 1);
}

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
            result.length_m += length_m(part);
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

std::string place_words(const std::vector<Part>& run, const std::vector<std::size_t>& parts) {
    constexpr std::size_t most_named = 3;
    std::string words;
    if (parts.size() > most_named) {
        return "parts " + std::to_string(parts.front() + 1) + " to "
               + std::to_string(parts.back() + 1);
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        words += i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ";
        words += part_words(run, parts[i]);
    }
    return words;
}

/// The change adds height and touches no other pipe.
bool counts_by_amount(RemedyKind kind) {
    return kind == RemedyKind::raise_top;
}

void Offer::add(Remedy remedy) {
    const std::optional<Installation> after = apply(remedy, before_);
    if (!after) {
        return;
    }
    const Touched change = touched(before_, spelled_out(*after));
    if (remedy.place.empty()) {
        remedy.place = place_words(before_.run, change.parts);
    }
    const catalog::RemedyEffort& row = effort_of(remedy.kind);
    remedy.length_m = counts_by_amount(remedy.kind) ? remedy.amount : change.length_m;
    remedy.effort = row.effort + row.effort_per_metre * remedy.length_m;
    remedies_.push_back(std::move(remedy));
}

void Offer::caps() {
    for (const Build build : {Build::plain, Build::open}) {
        for (const Part& part : before_.run) {
            const Build now = part.build.value_or(Build::plain);
            const bool more_open =
                is_a(part, PartKind::cap) && now != Build::open && now != build && !part.loss;
            if (more_open) {
                add({.kind = RemedyKind::change_cap,
                     .word = std::string{name(build)},
                     .what = build == Build::open ? "Take the cap off and leave the mouth open"
                                                  : "Fit a plain cap instead of the rain cap"});
            }
        }
    }
}

void Offer::passage() {
    const auto has = [&](PartKind kind) {
        return std::any_of(before_.run.begin(), before_.run.end(), [kind](const Part& part) {
            return is_a(part, kind);
        });
    };
    add({.kind = RemedyKind::open_damper, .what = "Turn the damper fully open"});
    add({.kind = RemedyKind::remove_damper, .what = "Take the damper out"});
    add({.kind = RemedyKind::sweep,
         .what = has(PartKind::obstruction) ? "Sweep the flue and take out what blocks it"
                                            : "Sweep the flue down to the bare wall"});
    add({.kind = RemedyKind::seal_joints,
         .what = "Close the joints: cement or new gaskets, screws, a tight clean-out"});
    constexpr double wide_mesh_m = 0.012;
    add({.kind = RemedyKind::clean_screen, .what = "Clean the screen"});
    add({.kind = RemedyKind::remove_screen, .what = "Take the screen out"});
    add({.kind = RemedyKind::wider_mesh,
         .amount = wide_mesh_m,
         .what = "Fit a clean screen with a mesh of " + show(wide_mesh_m, Kind::length)});
    caps();
}

void Offer::fire() {
    const ApplianceCase& a = case_.appliance;
    constexpr double near_outdoors_pa = -1.0;
    if (case_.house.known) {
        house();
    } else if (case_.room_pressure_burning_pa < near_outdoors_pa - 0.05) {
        add({.kind = RemedyKind::air_inlet,
             .amount = near_outdoors_pa,
             .place = "the room",
             .what = "Let air in beside the heater, or run fewer fans, until the room is no more "
                     "than "
                     + show(-near_outdoors_pa, Kind::pressure) + " below outdoors"});
    }
    const double wet = catalog::default_of(DefaultId::moisture_limit_wet).value;
    constexpr double dry_moisture = 0.16;
    if (a.fuel_group == FuelGroup::wood && a.moisture > wet) {
        add({.kind = RemedyKind::dry_fuel,
             .amount = dry_moisture,
             .place = "the fuel",
             .what = "Burn wood of " + show(dry_moisture, Kind::moisture) + " moisture, not "
                     + show(a.moisture, Kind::moisture)});
    }
    if (a.fuel_group == FuelGroup::gas || a.fuel_group == FuelGroup::oil) {
        return;
    }
    constexpr double brisker = 1.5;
    constexpr double smaller = 0.75;
    const double low_kg_s = std::min(a.low.burn_rate_kg_s * brisker, a.high.burn_rate_kg_s);
    add({.kind = RemedyKind::brisk_low_fire,
         .amount = a.high.burn_rate_kg_s,
         .other = low_kg_s,
         .place = "the fire",
         .what = "Do not throttle below " + show(low_kg_s, Kind::mass_rate)
                 + ": smaller loads, burned brighter"});
    const double high_kg_s = a.high.burn_rate_kg_s * smaller;
    add({.kind = RemedyKind::smaller_fire,
         .amount = high_kg_s,
         .other = std::min(a.low.burn_rate_kg_s, high_kg_s),
         .place = "the fire",
         .what = "Burn no more than " + show(high_kg_s, Kind::mass_rate)
                 + ": smaller loads, or bricks that make the firebox smaller"});
    if (a.has_door) {
        for (const double share : {0.85, 0.7}) {
            const double height_m = share * a.door.height_m;
            add({.kind = RemedyKind::lower_door_opening,
                 .amount = height_m,
                 .place = "the door",
                 .what = "Lower the opening to " + show(height_m, Kind::length)
                         + " with a fixed strip at its top"});
        }
    }
}

/// Inlets that bring the room near outdoors in the state that takes most of its air, and fans off.
void Offer::house() {
    std::string fans;
    for (const Fan& fan : before_.site.house.fans) {
        if (fan.flow_m3_s.value_or(0.0) > 0.0) {
            fans += (fans.empty() ? "" : ", ") + fan.name.value_or("the fan");
        }
    }
    add({.kind = RemedyKind::stop_fans,
         .place = fans,
         .what = "Run no fan that takes air out while the fire burns, or let a window contact "
                 "switch it"});
    std::vector<double> taken_kg_s(case_.weathers.size());
    for (const StateResult& state : score(case_).states) {
        double& most = taken_kg_s[state.weather];
        most = std::max(most, state.room.taken_kg_s);
    }
    for (const double target_pa : {-4.0, -2.0, -1.0}) {
        double area_m2 = 0.0;
        for (std::size_t weather = 0; weather < case_.weathers.size(); ++weather) {
            const Surroundings around = surroundings_of(case_, weather, Fire::burning);
            area_m2 = std::max(area_m2, around.house.inlet_area_m2(target_pa, taken_kg_s[weather]));
        }
        constexpr double step_m2 = 0.001;
        if (area_m2 > 0.0) {
            area_m2 = std::ceil(area_m2 / step_m2) * step_m2;
            add({.kind = RemedyKind::air_inlet,
                 .amount = target_pa,
                 .other = area_m2,
                 .place = "the room",
                 .what = "Open an air inlet of " + show(area_m2, Kind::area)
                         + " clear area near the heater"});
        }
    }
}

void Offer::raise() {
    const std::array<double, 4> steps =
        us() ? std::array{2.0 * foot_m, 4.0 * foot_m, 6.0 * foot_m, 8.0 * foot_m}
             : std::array{0.5, 1.0, 1.5, 2.0};
    for (const double step_m : steps) {
        add({.kind = RemedyKind::raise_top,
             .amount = step_m,
             .place = "the mouth",
             .what = "Raise the top by " + show(step_m, Kind::length)});
    }
}

void Offer::shape() {
    const double slope = catalog::default_of(DefaultId::level_run_slope).value;
    add({.kind = RemedyKind::give_slope,
         .amount = slope,
         .what = "Let the level run rise " + show(slope, Kind::slope) + " towards the chimney"});
    add({.kind = RemedyKind::smooth_elbows, .what = "Fit smooth swept elbows"});
    add({.kind = RemedyKind::two_45,
         .what = "Lead the offset up at 45 degrees, with two 45 degree elbows"});
    constexpr double half = 0.5;
    add({.kind = RemedyKind::shorten_level,
         .amount = half,
         .what = "Bring the heater closer to the chimney: half the level run"});
    add({.kind = RemedyKind::straighten_level,
         .what = "Lead the level run straight, without the turn in it"});
    add({.kind = RemedyKind::remove_level,
         .what = "Set the heater under the chimney: straight up, no level run, no turns"});
    raise();
}

void Offer::sizes(RemedyKind kind, std::size_t begin, std::size_t end, std::string_view what) {
    const double outlet_m2 = outlet_area_m2(before_);
    double least_m2 = 1e9;
    double most_m2 = 0.0;
    for (std::size_t i = begin; i < end; ++i) {
        if (is_resizable(before_, before_.run[i])) {
            least_m2 = std::min(least_m2, area_m2(before_, before_.run[i]));
            most_m2 = std::max(most_m2, area_m2(before_, before_.run[i]));
        }
    }
    if (most_m2 <= 0.0) {
        return;
    }
    std::size_t wider = 0;
    for (const catalog::TradeSize* size : sizing::trade_sizes(sizing::usual_sizes(case_.units))) {
        const double d = size->inside_diameter_m;
        const double size_m2 = constants::pi / 4.0 * d * d;
        if (!sizing::rule_against(case_, d).empty()) {
            continue;
        }
        const bool helps_narrow = size_m2 > least_m2 * (1.0 + same_size);
        const bool helps_wide =
            size_m2 < most_m2 * (1.0 - same_size) && most_m2 > outlet_m2 * (1.0 + same_size);
        if ((!helps_narrow && !helps_wide) || (!helps_wide && wider >= most_sizes)) {
            continue;
        }
        wider += helps_wide ? 0U : 1U;
        add({.kind = kind,
             .amount = d,
             .what = "Use " + std::string{size->id} + " pipe for " + std::string{what}});
    }
}

void Offer::liners() {
    const double outlet_m = case_.appliance.outlet_diameter_m;
    double masonry_m2 = 0.0;
    for (const Part& part : before_.run) {
        if (wall_kind(before_, part) == WallKind::masonry) {
            masonry_m2 = std::max(masonry_m2, area_m2(before_, part));
        }
    }
    std::size_t offered = 0;
    for (const catalog::TradeSize* size : sizing::trade_sizes(sizing::usual_sizes(case_.units))) {
        const double d = size->inside_diameter_m;
        const bool fits = d >= outlet_m * (1.0 - 0.5 * same_size)
                          && constants::pi / 4.0 * d * d < 0.9 * masonry_m2;
        if (!fits || offered >= most_sizes) {
            continue;
        }
        ++offered;
        const std::string of_size = " of " + std::string{size->id};
        add({.kind = RemedyKind::line_flue,
             .amount = d,
             .word = "flexible liner",
             .what = "Line the masonry flue with a flexible liner" + of_size});
        add({.kind = RemedyKind::line_flue,
             .amount = d,
             .word = "rigid liner insulated",
             .what = "Line the masonry flue with an insulated rigid liner" + of_size});
    }
}

void Offer::pipe() {
    if (case_.appliance.fuel_group != FuelGroup::gas) {
        add({.kind = RemedyKind::double_wall_connector,
             .word = "double-wall connector",
             .what = "Use double-wall pipe for the connector"});
        for (const std::string_view wall : {"insulated 25 mm", "insulated 50 mm"}) {
            add({.kind = RemedyKind::insulate_outside,
                 .word = std::string{wall},
                 .what = "Use insulated pipe (" + std::string{wall.substr(10)}
                         + ") where the flue leaves the warm room"});
        }
    }
    add({.kind = RemedyKind::enclose_outside,
         .what = "Enclose the part outdoors in a chase, up to below the mouth"});
    add({.kind = RemedyKind::remove_reducer,
         .what = "Take the reducer out: full size from there on"});
    const std::size_t chimney = chimney_start(before_);
    const std::size_t end = before_.run.size();
    if (chimney > 0 && chimney < end) {
        sizes(RemedyKind::connector_size, 0, chimney, "the connector");
        sizes(RemedyKind::chimney_size, chimney, end, "the chimney");
    }
    sizes(RemedyKind::pipe_size, 0, end, "the whole run");
    liners();
}

void Offer::damper() {
    constexpr double degree = constants::pi / 180.0;
    for (const double angle_deg : {30.0, 45.0, 60.0, 75.0}) {
        add({.kind = RemedyKind::fit_damper,
             .amount = angle_deg * degree,
             .place = "the connector",
             .what = "Fit a damper and turn it to "
                     + format_quantity(angle_deg * degree, Kind::angle, case_.units)
                     + " when the draft is strong"});
    }
    const double greatest_pa = case_.appliance.draft_greatest_pa;
    const double needed_pa =
        std::max(case_.appliance.high.draft_needed_pa, case_.appliance.low.draft_needed_pa);
    const double setting_pa = std::floor(0.5 * (needed_pa + greatest_pa));
    if (setting_pa > needed_pa) {
        add({.kind = RemedyKind::fit_regulator,
             .amount = setting_pa,
             .place = "the connector",
             .what = "Fit a draft regulator, set to " + show(setting_pa, Kind::pressure)});
    }
}

} // namespace

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
