#include "fluewright/model/states/house_air.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/physics/openings.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// Share of the shell's leakage at its top; the rest is at the bottom. Even leaks, or the split
/// that puts the neutral level where the file says: what comes in below must go out above,
///
///   C_low (rho_in h)^n = C_top (rho_out (H - h))^n
double top_share(const HouseCase& house, double outdoor_density, double room_density) {
    if (house.neutral_level_m < 0.0) {
        return 0.5;
    }
    const bool warm_inside = outdoor_density >= room_density;
    const double into_low = warm_inside ? outdoor_density : room_density;
    const double out_of_top = warm_inside ? room_density : outdoor_density;
    const double low = std::pow(into_low * house.neutral_level_m, house.leak_exponent);
    const double top =
        std::pow(out_of_top * (house.height_m - house.neutral_level_m), house.leak_exponent);
    return low / (low + top);
}

} // namespace

HouseAir::HouseAir(const HouseCase& house, const HouseWeather& weather)
    : known_(house.known), outdoor_density_kg_m3_(weather.outdoor_density_kg_m3),
      room_density_kg_m3_(weather.room_density_kg_m3), exponent_(house.leak_exponent),
      exhaust_kg_s_(house.exhaust_m3_s * weather.room_density_kg_m3),
      supply_kg_s_(house.supply_m3_s * weather.outdoor_density_kg_m3) {
    if (!known_) {
        return;
    }
    const double wind_m_s = house.wind_share * weather.wind_m_s;
    const double head_pa = 0.5 * outdoor_density_kg_m3_ * wind_m_s * wind_m_s;
    add_shell(house, head_pa);
    for (const HouseOpeningCase& opening : house.openings) {
        add_gap({.height_m = opening.height_m,
                 .coefficient_m3_s = 0.0,
                 .area_m2 = opening.area_m2,
                 .wind_pa = opening.wind_coefficient * head_pa});
    }
}

/// Gaps at one height with the same air outside pass as one; in a calm that leaves two of a shell.
void HouseAir::add_gap(const Gap& gap) {
    for (Gap& other : gaps_) {
        if (other.height_m == gap.height_m && other.wind_pa == gap.wind_pa
            && (other.area_m2 > 0.0) == (gap.area_m2 > 0.0)) {
            other.area_m2 += gap.area_m2;
            other.coefficient_m3_s += gap.coefficient_m3_s;
            return;
        }
    }
    gaps_.push_back(gap);
}

/// Half the walls look along the wind, a quarter into it and a quarter away from it.
void HouseAir::add_shell(const HouseCase& house, double wind_head_pa) {
    struct Wall {
        double share;
        double coefficient;
    };

    const std::array<Wall, 3> walls{{{0.25, house.wind_coefficient_windward},
                                     {0.25, house.wind_coefficient_lee},
                                     {0.5, house.wind_coefficient_sides}}};
    const double top = top_share(house, outdoor_density_kg_m3_, room_density_kg_m3_);
    for (const auto& [level_m, share] : {std::pair{0.0, 1.0 - top}, {house.height_m, top}}) {
        for (const Wall& wall : walls) {
            add_gap({.height_m = level_m - house.outlet_level_m,
                     .coefficient_m3_s = house.leak_m3_s * share * wall.share,
                     .area_m2 = 0.0,
                     .wind_pa = wall.coefficient * wind_head_pa});
        }
    }
}

double HouseAir::surplus_kg_s(double room_pa, double taken_kg_s, Fans fans) const {
    const double lift_pa_m =
        (outdoor_density_kg_m3_ - room_density_kg_m3_) * constants::gravity_m_s2;
    double surplus = -taken_kg_s;
    if (fans == Fans::running) {
        surplus += supply_kg_s_ - exhaust_kg_s_;
    }
    for (const Gap& gap : gaps_) {
        const double inwards_pa = gap.wind_pa - room_pa - lift_pa_m * gap.height_m;
        const double density = inwards_pa > 0.0 ? outdoor_density_kg_m3_ : room_density_kg_m3_;
        surplus +=
            gap.area_m2 > 0.0
                ? openings::flow_kg_s(gap.area_m2, inwards_pa, density)
                : openings::leakage_kg_s(gap.coefficient_m3_s, exponent_, inwards_pa, density);
    }
    return surplus;
}

double HouseAir::room_pressure_pa(double taken_kg_s, Fans fans) const {
    const auto surplus = [&](double pa) { return surplus_kg_s(pa, taken_kg_s, fans); };
    constexpr int most_doublings = 40;
    double low = 0.0;
    double f_low = surplus(low);
    double high = low;
    double f_high = f_low;
    double step = 1.0;
    for (int i = 0; i < most_doublings && f_low < 0.0; ++i, step *= 2.0) {
        high = low;
        f_high = f_low;
        low -= step;
        f_low = surplus(low);
    }
    for (int i = 0; i < most_doublings && f_high > 0.0; ++i, step *= 2.0) {
        low = high;
        f_low = f_high;
        high += step;
        f_high = surplus(high);
    }
    return find_root(
               surplus, low, high, f_low, f_high, {.x_tolerance = 1e-10, .residual_tolerance = 0.0})
        .x;
}

double HouseAir::inlet_area_m2(double room_pa, double taken_kg_s) const {
    const double missing = -surplus_kg_s(room_pa, taken_kg_s);
    return missing > 0.0 ? openings::area_m2(missing, -room_pa, outdoor_density_kg_m3_) : 0.0;
}

double HouseAir::neutral_height_m(double room_pa) const {
    const double lift_pa_m =
        (outdoor_density_kg_m3_ - room_density_kg_m3_) * constants::gravity_m_s2;
    constexpr double no_lift_pa_m = 1e-9;
    return std::abs(lift_pa_m) > no_lift_pa_m ? -room_pa / lift_pa_m : 0.0;
}

} // namespace fluewright
