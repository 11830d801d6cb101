#include "advice/checks/physics/odd.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright::checking {
namespace {

/// A range outside of which a value is so rare that it is more likely a slip.
struct Usual {
    double value;
    Kind kind;
    double low;
    double high;
    std::string_view what;
    std::string_view place; ///< the same in a word or two
};

void wet_wood(Subject& s) {
    const double most = catalog::default_of(DefaultId::moisture_limit_wet).value;
    const ApplianceCase& a = s.resolved.appliance;
    if (a.fuel_group != FuelGroup::wood) {
        return;
    }
    CheckResult* f = s.hold(own("fuel-too-wet"),
                            a.moisture <= most,
                            {.kind = Kind::moisture,
                             .figure = a.moisture,
                             .limit = most,
                             .weight = a.moisture / most - 1.0},
                            {.section = nullptr, .place = "the fuel"});
    if (f != nullptr && s.with_words()) {
        f->message = "The wood has " + s.show(a.moisture, Kind::moisture) + " moisture; "
                     + s.show(most, Kind::moisture) + " is the most that burns cleanly.";
    }
}

/// A room far colder than the air outdoors is a slip of the sign.
void cold_room(Subject& s) {
    constexpr double most_below_k = 15.0;
    for (const WeatherCase& weather : s.resolved.weathers) {
        const double below_k = weather.outdoor_temperature_k - weather.room_temperature_k;
        odd(s, below_k <= most_below_k, "the room", [&] {
            return "Unusual: the room is at "
                   + s.show(weather.room_temperature_k, Kind::temperature) + " with "
                   + s.show(weather.outdoor_temperature_k, Kind::temperature) + " outdoors ("
                   + weather.name + "), so that a flue there pushes down.";
        });
    }
}

void opening_and_flue(Subject& s) {
    const Case& c = s.resolved;
    if (!has_open_front(c.appliance)) {
        return;
    }
    const double share = flue_over_opening(c);
    odd(s, share < 0.5, "the opening", [&] {
        return "Unusual: the flue has " + s.show(share, Kind::fraction)
               + " of the opening; hearths have a tenth to a sixth.";
    });
    constexpr double most_kg_s = 30.0 / 3600.0;
    const Appliance& w = s.view.written.appliance;
    odd(s,
        w.burn_rate_kg_s.high || w.heat_input_w.high || w.heat_output_w.high
            || c.appliance.high.burn_rate_kg_s <= most_kg_s,
        "the burn rate",
        [&] {
            return "Unusual: from the size of the opening the fire was taken to burn "
                   + s.show(c.appliance.high.burn_rate_kg_s, Kind::mass_rate)
                   + "; give `burn_rate` or check the opening.";
        });
}

/// Heat that no stove of that outlet gives: a figure of another heater, or a slip of the unit.
void heat_and_outlet(Subject& s) {
    const ApplianceCase& a = s.resolved.appliance;
    const bool solid = a.fuel_group == FuelGroup::wood || a.fuel_group == FuelGroup::coal;
    if (a.type != ApplianceType::stove || a.pushed_by_fan || !solid || a.outlet_area_m2 <= 0.0
        || a.high.heat_output_w <= 0.0) {
        return;
    }
    const double least_w =
        catalog::default_of(DefaultId::stove_heat_per_outlet_least_w_m2).value * a.outlet_area_m2;
    const double most_w =
        catalog::default_of(DefaultId::stove_heat_per_outlet_most_w_m2).value * a.outlet_area_m2;
    const double heat_w = a.high.heat_output_w;
    const bool above = heat_w > most_w;
    CheckResult* f = s.hold(
        own("unusual-input"),
        heat_w >= least_w && !above,
        {.kind = Kind::power, .figure = heat_w, .limit = above ? most_w : least_w, .weight = 0.0},
        {.section = nullptr, .place = "the outlet"});
    if (f != nullptr && s.with_words()) {
        f->message = "Unusual: the stove gives " + s.show(heat_w, Kind::power)
                     + " at high fire; stoves with that outlet give " + s.show(least_w, Kind::power)
                     + " to " + s.show(most_w, Kind::power)
                     + ". Compare outlet, burn rate and efficiency with its plate.";
    }
}

/// Gas that is led down on its way up.
void goes_down(Subject& s) {
    for (const Section& section : s.resolved.sections) {
        if (section.length_m <= 0.0) {
            continue;
        }
        const std::string place = s.resolved.run.label_at(section.part);
        odd(s, section.rise_m >= -0.05, place, [&] {
            return "Unusual: " + place + " leads the gas down by "
                   + s.show(std::max(0.0, -section.rise_m), Kind::length)
                   + "; no natural draft starts over that by itself.";
        });
    }
}

/// Elbows are made for 15, 30, 45, 60 and 90 degrees (common practice, no source); less than half
/// of the least is more likely a slip.
void slight_elbow(Subject& s) {
    constexpr double least_rad = 7.5 * constants::pi / 180.0;
    for (const Piece& piece : s.view.pieces) {
        if (piece.section->kind != PartKind::elbow) {
            continue;
        }
        const double turn_rad = piece.run_part->turn_rad;
        const std::string place = s.view.place_of(piece);
        odd(s, turn_rad >= least_rad, place, [&] {
            return "Unusual: " + place + " turns by " + s.show(turn_rad, Kind::angle)
                   + " only; elbows are made for 15, 30, 45, 60 and 90 degrees.";
        });
    }
}

/// Whether a piece goes through a wall of which the file says that it can burn.
bool passes_combustible_wall(const Piece& piece) {
    const auto& way = piece.part->pass_through;
    return piece.part->passes == Passage::wall && way && *way != PassThrough::noncombustible_wall;
}

double level_m(const Piece& piece) {
    const Section& section = *piece.section;
    return std::sqrt(
        std::max(0.0, section.length_m * section.length_m - section.rise_m * section.rise_m));
}

/// An upright and what it keeps from combustibles on the side of a wall.
double keeps_m(const Piece& upright) {
    return 0.5 * outside_diameter_m(*upright.wall, upright.section->diameter_m)
           + upright.part->clearance_m.value_or(0.0);
}

/// The clearances of pipe and chimney on both sides of a combustible wall must have room on the
/// level between them, even if the wall had no thickness.
void room_for_clearances(Subject& s) {
    constexpr double rounding_m = 0.01;
    const Piece* upright = nullptr; // before the level run
    double across_m = 0.0;
    bool through = false;
    for (const Piece& piece : s.view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        if (piece.level()) {
            across_m += level_m(piece);
            through = through || passes_combustible_wall(piece);
            continue;
        }
        if (upright != nullptr && through && upright->part->clearance_m) {
            const double needed_m = keeps_m(*upright) + keeps_m(piece);
            const std::string place = s.view.place_of(*upright);
            odd(s, needed_m <= across_m + rounding_m, place, [&] {
                return "Unusual: " + place + " is said to be "
                       + s.show(*upright->part->clearance_m, Kind::length)
                       + " from combustibles. But " + s.view.place_of(piece)
                       + ", on the other side of a combustible wall, is "
                       + s.show(across_m, Kind::length)
                       + " away, center to center, where these clearances need "
                       + s.show(needed_m, Kind::length) + ": measure again.";
            });
        }
        upright = &piece;
        across_m = 0.0;
        through = false;
    }
}

/// The thickest pipe that is sold, of cast iron, has half an inch.
void thick_sheet(Subject& s) {
    constexpr double most_m = 0.0127;
    for (const Piece& piece : s.view.pieces) {
        if (!piece.is_single() || !piece.run_part->thickness_given) {
            continue;
        }
        const double thick_m = piece.run_part->thickness_m;
        const std::string place = s.view.place_of(piece);
        odd(s, thick_m <= most_m, place, [&] {
            return "Unusual: the sheet of " + place + " is " + s.show(thick_m, Kind::length)
                   + " thick; a gauge is given by the key `gauge`.";
        });
    }
}

void shorter_than_tables(Subject& s) {
    constexpr double least_m = 6.0 * constants::foot_m; // where the fuel-gas tables begin
    if (s.resolved.appliance.fuel_group != FuelGroup::gas) {
        return;
    }
    const double rise_m = s.resolved.total_rise_m();
    odd(s, rise_m >= least_m - 1e-6, "the vent", [&] {
        return "Unusual: the vent rises " + s.show(rise_m, Kind::length)
               + "; the tables of gas vents begin at " + s.show(least_m, Kind::length)
               + ", and below that the maker's instructions rule alone.";
    });
}

/// A vent that is made in the sizes of one market alone.
void sizes_made(Subject& s) {
    for (const Piece& piece : s.view.pieces) {
        if (piece.wall->sizes.empty() || !piece.has_length() || !piece.run_part->bore.round()) {
            continue;
        }
        constexpr double makers_share = 0.01;
        const double diameter_m = piece.run_part->bore.diameter_m;
        const auto sizes = catalog::trade_sizes();
        const bool made = std::any_of(sizes.begin(), sizes.end(), [&](const auto& size) {
            const double size_m = size.inside_diameter_m;
            return size.system == piece.wall->sizes
                   && (std::abs(size_m - diameter_m) < makers_share * size_m
                       || catalog::are_trade_equivalents(size_m, diameter_m));
        });
        const std::string place = s.view.place_of(piece);
        odd(s, made, place, [&] {
            return "Unusual: " + place + " is a " + piece.wall->name + " of "
                   + s.show(diameter_m, Kind::length)
                   + ", which is made in the trade sizes of inches alone; none of them is that.";
        });
        if (!made) {
            return; // once for all of the vent
        }
    }
}

/// A chimney top cannot stand farther above the roof than the run rises outdoors.
void top_above_what_is_there(Subject& s) {
    constexpr double flashing_m = 0.1; // of the piece that passes the roof; judgement
    const Given& told_m = s.view.written.site.roof.top_above_roof_m;
    double outdoors_m = 0.0;
    bool outdoors = false;
    for (const Section& section : s.resolved.sections) {
        const bool out = section.zone == Zone::outdoors;
        outdoors = outdoors || out;
        outdoors_m += out ? std::max(0.0, section.rise_m) : 0.0;
    }
    if (!told_m || !outdoors) {
        return;
    }
    odd(s, *told_m <= outdoors_m + flashing_m, "the roof", [&] {
        return "Unusual: the file has the chimney top " + s.show(*told_m, Kind::length)
               + " above the roof, and only " + s.show(outdoors_m, Kind::length)
               + " of the run outdoors. Measure both again.";
    });
}

} // namespace

void doubtful(Subject& s) {
    wet_wood(s);
    const ApplianceCase& a = s.resolved.appliance;
    const bool burns_wood = a.fuel_group == FuelGroup::wood || a.fuel_group == FuelGroup::pellets;
    const bool closed_stove = a.type == ApplianceType::stove;
    const double outlet_flux =
        a.high.gas_flow_kg_s / a.outlet_area_m2; // kg/(m2 s), about the velocity of the cold gas
    const std::array<Usual, 8> checks{{
        {a.moisture,
         Kind::moisture,
         burns_wood ? 0.04 : 0.0,
         0.4,
         "the moisture of the fuel",
         "the fuel"},
        {a.high.air_ratio,
         Kind::number,
         1.0,
         closed_stove ? 6.0 : 60.0,
         "the air ratio at high fire",
         "the air ratio"},
        {a.high.gas_temperature_k,
         Kind::temperature,
         323.15,
         1073.15,
         "the gas temperature at the outlet",
         "the gas temperature"},
        {outlet_flux,
         Kind::number,
         0.1,
         6.0,
         "the gas flow per area of the outlet, in kg/(m2 s),",
         "the gas flow"},
        {std::max(0.0, a.high.draft_needed_pa),
         Kind::pressure,
         0.0,
         40.0,
         "the draft the appliance requires",
         "the required draft"},
        {s.resolved.total_rise_m(),
         Kind::length,
         a.pushed_by_fan ? -1.0 : 1.0,
         25.0,
         "the height of the chimney top above the outlet",
         "the height"},
        {a.outlet_height_m,
         Kind::length,
         0.05,
         3.0,
         "the height of the outlet above the floor",
         "the outlet"},
        {s.view.written.appliance.door.height_m.value_or(0.0),
         Kind::length,
         0.0,
         has_open_front(a) ? 2.5 : 1.2,
         "the height of the door opening",
         "the door"},
    }};
    for (const Usual& check : checks) {
        // Gas flow and draft of an open front follow from its opening, which has a doubt of its
        // own.
        const bool by_opening =
            check.place == "the gas flow" || check.place == "the required draft";
        if (by_opening && has_open_front(a)) {
            continue;
        }
        const bool above = check.value > check.high;
        const double limit = above ? check.high : check.low;
        CheckResult* f =
            s.hold(own("unusual-input"),
                   check.value >= check.low && check.value <= check.high,
                   {.kind = check.kind, .figure = check.value, .limit = limit, .weight = 0.0},
                   {.section = nullptr, .place = check.place});
        if (f == nullptr || !s.with_words()) {
            continue;
        }
        f->message = "Unusual: " + std::string{check.what} + " is "
                     + s.show(check.value, check.kind) + (above ? ", more than " : ", less than ")
                     + s.show(limit, check.kind) + ".";
    }
    cold_room(s);
    opening_and_flue(s);
    heat_and_outlet(s);
    goes_down(s);
    slight_elbow(s);
    room_for_clearances(s);
    thick_sheet(s);
    doubtful_surroundings(s);
    doubtful_combustion(s);
    shorter_than_tables(s);
    sizes_made(s);
    top_above_what_is_there(s);
}

} // namespace fluewright::checking
