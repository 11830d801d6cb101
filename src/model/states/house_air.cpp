#include "fluewright/model/states/house_air.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/openings.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

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
    crack_ = {.in_kg_m3 = openings::leakage_kg_s(1.0, exponent_, 1.0, outdoor_density_kg_m3_),
              .out_kg_m3 = openings::leakage_kg_s(1.0, exponent_, 1.0, room_density_kg_m3_)};
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
    return balance(room_pa, taken_kg_s, fans).surplus_kg_s;
}

HouseAir::Balance HouseAir::balance(double room_pa, double taken_kg_s, Fans fans) const {
    const double lift_pa_m =
        (outdoor_density_kg_m3_ - room_density_kg_m3_) * constants::gravity_m_s2;
    Balance sum{-taken_kg_s, 0.0};
    if (fans == Fans::running) {
        sum.surplus_kg_s += supply_kg_s_ - exhaust_kg_s_;
    }
    for (const Gap& gap : gaps_) {
        const double inwards_pa = gap.wind_pa - room_pa - lift_pa_m * gap.height_m;
        const bool inwards = inwards_pa > 0.0;
        if (gap.area_m2 > 0.0) {
            const double density = inwards ? outdoor_density_kg_m3_ : room_density_kg_m3_;
            sum.surplus_kg_s += openings::flow_kg_s(gap.area_m2, inwards_pa, density);
            sum.slope_kg_s_pa -= openings::flow_slope_kg_s_pa(gap.area_m2, inwards_pa, density);
        } else if (inwards_pa != 0.0) {
            const double flow =
                (inwards ? crack_.in_kg_m3 : crack_.out_kg_m3)
                * openings::leakage_m3_s(gap.coefficient_m3_s, exponent_, inwards_pa);
            sum.surplus_kg_s += flow;
            sum.slope_kg_s_pa -= exponent_ * flow / inwards_pa;
        }
    }
    return sum;
}

/// Newton inside a bracket: between two pressures at which a gap turns, the surplus is smooth, and
/// a small step leaves next to nothing.
double HouseAir::room_pressure_pa(double taken_kg_s, Fans fans, double near_pa) const {
    constexpr int most_steps = 200;
    constexpr double last_step_pa = 1e-6;
    constexpr double last_width_pa = 1e-10;
    constexpr double unknown = std::numeric_limits<double>::infinity();
    double low = -unknown; // surplus there
    double high = unknown;
    double pa = near_pa;
    double step_before_pa = unknown;
    double reach_pa = 1.0;
    for (int step = 0; step < most_steps; ++step) {
        const Balance here = balance(pa, taken_kg_s, fans);
        if (here.surplus_kg_s == 0.0) {
            return pa;
        }
        (here.surplus_kg_s > 0.0 ? low : high) = pa;
        const double width = high - low;
        double next = here.slope_kg_s_pa < 0.0 ? pa - here.surplus_kg_s / here.slope_kg_s_pa
                                               : std::copysign(unknown, here.surplus_kg_s);
        const bool is_inside = next >= low && next <= high;
        if (is_inside && std::abs(next - pa) <= last_step_pa && !turns_between(pa, next)) {
            return next;
        }
        if (width < unknown) {
            // A corner between may send it from side to side: halve then.
            const bool closing = std::abs(next - pa) < 0.5 * step_before_pa;
            next = closing && is_inside ? next : 0.5 * (low + high);
            step_before_pa = std::abs(next - pa);
        } else if (!(std::abs(next - pa) <= reach_pa)) {
            next = pa + std::copysign(reach_pa, here.surplus_kg_s);
            reach_pa = std::min(4.0 * reach_pa, 1e9);
        } else {
            step_before_pa = std::abs(next - pa);
        }
        if (width <= last_width_pa) {
            return next;
        }
        pa = next;
    }
    return pa;
}

bool HouseAir::turns_between(double one_pa, double other_pa) const {
    constexpr double near_pa = 1e-4; // where the flow through cracks is steep
    const double lift_pa_m =
        (outdoor_density_kg_m3_ - room_density_kg_m3_) * constants::gravity_m_s2;
    return std::any_of(gaps_.begin(), gaps_.end(), [&](const Gap& gap) {
        const double still_pa = gap.wind_pa - lift_pa_m * gap.height_m;
        return std::min(std::abs(one_pa - still_pa), std::abs(other_pa - still_pa)) < near_pa;
    });
}

double HouseAir::inlet_area_m2(double room_pa, double taken_kg_s) const {
    const double missing = -surplus_kg_s(room_pa, taken_kg_s);
    return known() && missing > 0.0 ? openings::area_m2(missing, -room_pa, outdoor_density_kg_m3_)
                                    : 0.0;
}

double HouseAir::neutral_height_m(double room_pa) const {
    const double lift_pa_m =
        (outdoor_density_kg_m3_ - room_density_kg_m3_) * constants::gravity_m_s2;
    constexpr double no_lift_pa_m = 1e-9;
    return std::abs(lift_pa_m) > no_lift_pa_m ? -room_pa / lift_pa_m : 0.0;
}

} // namespace fluewright
