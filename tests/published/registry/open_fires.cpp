#include "fluewright/advice/score.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/states/states.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace published {
namespace {

using namespace fluewright;

// What the tables leave open.
constexpr double outdoor_k = 288.15;       ///< the mild day of the European method
constexpr double throat_m = 0.3;           ///< from the top of the opening up to the flue
constexpr double width_over_height = 1.25; ///< of the opening, where its area alone is given
constexpr double entry_and_velocity = 1.5; ///< heads lost between room and flue
constexpr double smallest_flue_m = 0.05;
constexpr double largest_flue_m = 2.0;

struct OpenFire {
    double width_m;
    double height_m;
    double chimney_m; ///< chimney top over hearth
};

OpenFire fire_of(const Inputs& in) {
    const double area = in.number("opening_m2");
    const double ratio = in.number_or("width_over_height", width_over_height);
    return {.width_m = std::sqrt(area * ratio),
            .height_m = std::sqrt(area / ratio),
            .chimney_m = in.number("chimney_m")};
}

Case fireplace(const OpenFire& fire, double flue_m) {
    Installation written;
    written.site.room.pressure_pa = 0.0; // openings enough
    written.site.weather.push_back(rebuilt::calm(outdoor_k));
    written.appliance.type = ApplianceType::fireplace;
    written.appliance.fuel.name = "wood";
    written.appliance.door.width_m = fire.width_m;
    written.appliance.door.height_m = fire.height_m;
    written.appliance.door.sill_height_m = 0.0;
    written.appliance.outlet.diameter_m = std::fmin(flue_m, rebuilt::widest_in_a_file_m);
    written.appliance.outlet.height_m = fire.height_m + throat_m;
    Part flue = rebuilt::up(fire.chimney_m - fire.height_m - throat_m, "clay-lined masonry");
    flue.zone = Zone::chase;
    written.run.push_back(flue);
    Case c = rebuilt::resolved(written);
    if (flue_m > rebuilt::widest_in_a_file_m) {
        rebuilt::set_bore(c, flue_m);
    }
    return c;
}

/// The flue at which `surplus` of the fireplace turns positive [mm].
template <class Surplus>
double least_flue_mm(const OpenFire& fire, const Surplus& surplus) {
    const auto miss = [&](double flue_m) {
        const Case c = fireplace(fire, flue_m);
        const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
        return surplus(model, flue_m);
    };
    const Root root = find_root(
        miss, smallest_flue_m, largest_flue_m, {.x_tolerance = 1e-5, .residual_tolerance = 1e-9});
    return 1e3 * root.x;
}

/// Air enters at the mean face velocity of the handbook, which is what the library takes as high
/// fire of a fireplace; the draft must carry it into the flue.
double flue_by_face_velocity(const Inputs& in) {
    return least_flue_mm(fire_of(in), [](const FlueModel& model, double) {
        const StateResult state = solve_state(model, StateKind::high_fire, Detail::totals);
        const Case& c = model.resolved();
        const double flux = state.gas_flow_kg_s / c.appliance.outlet_area_m2;
        const double density =
            c.air_pressure_pa
            / (c.gas_high().products().gas_constant_j_kgk * state.gas_temperature_k);
        return state.draft_pa - entry_and_velocity * 0.5 * flux * flux / density;
    });
}

/// Room exceeds firebox over the whole opening, the box evenly hot.
double flue_by_top_edge(const Inputs& in) {
    return least_flue_mm(fire_of(in), [](const FlueModel& model, double) {
        return solve_state(model, StateKind::door_open_high, Detail::totals).door.opening_share
               - 1.0;
    });
}

/// Masonry and its liners come in sizes of whole inches: round ones two inches apart and more.
constexpr std::array<double, 12> trade_sizes_m{
    0.1016, 0.127, 0.1524, 0.1778, 0.2032, 0.2286, 0.254, 0.3048, 0.3556, 0.4064, 0.4572, 0.508};

/// The size nearest to a flue, and so many sizes less.
double sizes_less(double flue_m, int less) {
    if (less == 0) {
        return flue_m;
    }
    const auto* const nearest =
        std::min_element(trade_sizes_m.begin(), trade_sizes_m.end(), [&](double a, double b) {
            return std::abs(a - flue_m) < std::abs(b - flue_m);
        });
    return *(nearest - std::min<std::ptrdiff_t>(less, nearest - trade_sizes_m.begin()));
}

/// Share of the table's openings and heights whose fireplace `check` passes, at the table's
/// greatest flue or at one so many trade sizes less.
double share_that_draws(const Inputs& in) {
    const int less = static_cast<int>(in.number("trade_sizes_less"));
    constexpr std::array<double, 4> middle_m{3.75, 5.2, 7.4, 10.45};
    int all = 0;
    int drawing = 0;
    for (const catalog::FireplaceFlue& row : catalog::fireplace_flues()) {
        const std::array<double, 4> most_m{row.most_1_m, row.most_2_m, row.most_3_m, row.most_4_m};
        for (std::size_t i = 0; i < most_m.size(); ++i) {
            if (most_m[i] <= 0.0) {
                continue;
            }
            const double area_m2 = row.over_m2 > 0.0 ? 0.5 * (row.over_m2 + row.to_m2) : 0.1;
            const OpenFire fire{.width_m = std::sqrt(area_m2 * width_over_height),
                                .height_m = std::sqrt(area_m2 / width_over_height),
                                .chimney_m = middle_m[i]};
            ++all;
            drawing += score(fireplace(fire, sizes_less(most_m[i], less))).passes ? 1 : 0;
        }
    }
    return static_cast<double>(drawing) / all;
}

/// Whether an opening draws with a round flue of that share of its area: 1 or 0.
double draws(const Inputs& in) {
    const OpenFire fire = fire_of(in);
    const double area_m2 = fire.width_m * fire.height_m / in.number("opening_over_flue");
    return score(fireplace(fire, circle_diameter_m(area_m2))).passes ? 1.0 : 0.0;
}

} // namespace

void add_open_fire_checks(Registry& registry) {
    registry["open_fires_that_draw"] = {"share that draws", "1", share_that_draws};
    registry["open_fire_draws"] = {"draws", "1", draws};
    registry["open_fire_flue_by_face_velocity"] = {"flue diameter", "mm", flue_by_face_velocity};
    registry["open_fire_flue_by_top_edge"] = {"flue diameter", "mm", flue_by_top_edge};
}

} // namespace published
