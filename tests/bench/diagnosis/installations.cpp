#include "installations.hpp"

#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>

namespace bench {
namespace {

using namespace fluewright;

constexpr double celsius = 273.15;
constexpr double per_hour = 1.0 / 3600.0;
constexpr double right_angle = 1.5707963267948966;

Part straight_up(double metres) {
    Part part;
    part.part = PartKind::straight;
    part.up_m = metres;
    return part;
}

Part elbow(double angle_rad) {
    Part part;
    part.part = PartKind::elbow;
    part.angle_rad = angle_rad;
    part.build = Build::gored;
    return part;
}

void add_run(Installation& made, double diameter_m, Dice& dice) {
    Part first = straight_up(dice.between(0.8, 1.5));
    first.diameter_m = diameter_m;
    first.wall = dice.chance(0.7) ? "single-wall steel" : "double-wall connector";
    first.zone = Zone::room;
    made.run.push_back(first);
    if (dice.chance(0.35)) {
        Part damper;
        damper.part = PartKind::damper;
        damper.blade_angle_rad = 0.0;
        made.run.push_back(damper);
    }
    const std::size_t shape = dice.below(4);
    if (shape > 0) {
        made.run.push_back(elbow(shape == 1 ? 0.5 * right_angle : right_angle));
        Part across;
        across.part = PartKind::straight;
        across.across_m = dice.between(0.3, 1.0);
        across.rise_m = 0.03 * *across.across_m;
        made.run.push_back(across);
        if (shape == 3) {
            Part tee;
            tee.part = PartKind::tee;
            tee.flow = TeeFlow::side;
            tee.cleanout = true;
            made.run.push_back(tee);
        } else {
            made.run.push_back(elbow(shape == 1 ? 0.5 * right_angle : right_angle));
        }
    }
    if (dice.chance(0.3)) {
        made.run.push_back(straight_up(dice.between(0.4, 1.2)));
    }
    Part chimney = straight_up(dice.between(2.6, 4.8));
    const std::size_t kind = dice.below(3);
    chimney.wall = kind == 0 ? "insulated 25 mm" : kind == 1 ? "insulated 50 mm" : "pumice block";
    chimney.zone = dice.chance(0.6) ? Zone::outdoors : Zone::attic;
    made.run.push_back(chimney);
    Part cap;
    cap.part = PartKind::cap;
    cap.build = Build::plain;
    if (dice.chance(0.6)) {
        cap.mesh_m = 0.012;
    }
    made.run.push_back(cap);
}

Installation any_installation(Dice& dice) {
    Installation made;
    made.title = "made up";
    Weather now;
    now.name = "now";
    now.outdoor_temperature_k = celsius + dice.between(-10.0, 12.0);
    made.site.weather.push_back(now);
    made.site.room.temperature_k = celsius + dice.between(18.0, 22.0);
    made.site.room.pressure_pa = -dice.between(0.0, 1.4);
    Appliance& a = made.appliance;
    a.type = ApplianceType::stove;
    a.fuel.name = dice.chance(0.5) ? "beech" : "spruce";
    a.fuel.moisture = dice.between(0.14, 0.20);
    const double diameter_m = dice.one_of<double>({0.13, 0.15, 0.18});
    a.outlet.diameter_m = diameter_m;
    a.outlet.height_m = dice.between(0.7, 1.0);
    const double kg_h = dice.between(130.0, 190.0) * diameter_m * diameter_m;
    a.burn_rate_kg_s.high = kg_h * per_hour;
    a.burn_rate_kg_s.low = 0.3 * kg_h * per_hour;
    a.efficiency.high = dice.between(0.72, 0.82);
    a.draft_needed_pa.high = dice.between(10.0, 13.0);
    a.draft_needed_pa.low = 0.5 * *a.draft_needed_pa.high;
    a.door.width_m = 2.2 * diameter_m;
    a.door.height_m = dice.between(1.4, 1.9) * diameter_m;
    add_run(made, diameter_m, dice);
    return made;
}

/// Neither short of draft nor with so much of it that the fire runs away.
bool is_sound(const Installation& written) {
    const auto made = resolve(written);
    if (!made) {
        return false;
    }
    const Solution solution = solve(*made, Detail::totals);
    return std::all_of(
        solution.states.begin(), solution.states.end(), [&](const StateResult& state) {
            const StateVerdict verdict = judge(*made, state);
            const bool runs_away = state.kind == StateKind::high_fire
                                   && state.draft_pa > made->appliance.draft_greatest_pa - 1.0;
            return (!verdict.counts || verdict.passes) && !runs_away;
        });
}

Part& chimney_of(Installation& written) {
    return *std::find_if(written.run.rbegin(), written.run.rend(), [](const Part& part) {
        return part.up_m.has_value();
    });
}

} // namespace

bool works(const Installation& written) {
    const auto made = resolve(written);
    if (!made) {
        return false;
    }
    const Solution solution = solve(*made, Detail::totals);
    return std::all_of(
        solution.states.begin(), solution.states.end(), [&](const StateResult& state) {
            const StateVerdict verdict = judge(*made, state);
            return !verdict.counts || verdict.passes;
        });
}

Installation sound_installation(Dice& dice) {
    while (true) {
        Installation made = any_installation(dice);
        if (is_sound(made)) {
            return made;
        }
    }
}

bool put_flaw(Installation& written, std::string_view flaw, Dice& dice) {
    Part& chimney = chimney_of(written);
    const double outlet_m = *written.appliance.outlet.diameter_m;
    if (flaw == "too-short") {
        chimney.up_m = dice.between(0.5, 1.8);
    } else if (flaw == "too-narrow") {
        chimney.diameter_m = outlet_m * dice.between(0.55, 0.75);
    } else if (flaw == "too-wide") {
        chimney.diameter_m = outlet_m * dice.between(1.8, 2.4);
        chimney.wall = "unlined masonry";
    } else if (flaw == "cold-flue") {
        chimney.wall = "single-wall steel";
        chimney.zone = Zone::outdoors;
    } else if (flaw == "low-room") {
        written.site.room.pressure_pa = -dice.between(6.0, 14.0);
    } else if (flaw == "restricted") {
        Part obstruction;
        obstruction.part = PartKind::obstruction;
        obstruction.blocked = dice.between(0.6, 0.85);
        written.run.insert(written.run.begin() + 1, obstruction);
    } else if (flaw == "wide-opening") {
        written.appliance.door.width_m = outlet_m * dice.between(3.5, 5.0);
        written.appliance.door.height_m = outlet_m * dice.between(3.0, 4.0);
    } else {
        return false;
    }
    return true;
}

} // namespace bench
