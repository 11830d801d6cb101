#include "fluewright/advice/sizing/height_steps.hpp"
#include "fluewright/core/constants.hpp"
#include "offer.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// Multiples of a step up to below an amount.
template <class Take>
void each_step(double step, double amount, const Take& take) {
    constexpr double most_steps = 200.0; // beyond that the steps grow
    constexpr double rounding = 1e-6;
    const double wider = step * std::max(1.0, std::ceil(amount / step / most_steps));
    for (int i = 1; static_cast<double>(i) * wider < amount * (1.0 - rounding); ++i) {
        take(static_cast<double>(i) * wider);
    }
}

} // namespace

void Offer::less_than(const Remedy& remedy) {
    using constants::inch_m;
    if (remedy.kind == RemedyKind::move_heater) {
        constexpr double metric_m = 0.025;
        each_step(us() ? inch_m : metric_m, remedy.amount, [&](double m) { moved_by(m); });
    } else if (remedy.kind == RemedyKind::raise_top) {
        each_step(height_step_m(case_.units), remedy.amount, [&](double m) { raise_by(m); });
    } else if (remedy.kind == RemedyKind::air_inlet && remedy.other > 0.0) {
        constexpr double metric_m2 = 0.001;
        each_step(us() ? 2.0 * inch_m * inch_m : metric_m2, remedy.other, [&](double m2) {
            inlet_of(m2, remedy.amount);
        });
    } else if (remedy.kind == RemedyKind::lower_door_opening) {
        constexpr double metric_m = 0.01;
        const double now_m = case_.appliance.door.height_m;
        each_step(us() ? 0.5 * inch_m : metric_m, now_m - remedy.amount, [&](double lower_m) {
            open_up_to(now_m - lower_m);
        });
    } else if (remedy.kind == RemedyKind::air_inlet && case_.room_pressure_burning_pa) {
        // The nearer the room stays to what it was, the less air is let in.
        const double now_pa = *case_.room_pressure_burning_pa;
        constexpr double step_pa = 1.0;
        each_step(step_pa, remedy.amount - now_pa, [&](double pa) {
            room_at(std::ceil(now_pa) + pa - step_pa);
        });
    } else if (remedy.kind == RemedyKind::insulate_outside && remedy.word == "insulated 50 mm") {
        insulated("insulated 25 mm");
    } else if (remedy.kind == RemedyKind::smaller_fire) {
        const double least_share = remedy.amount / case_.appliance.high.burn_rate_kg_s;
        constexpr double step = 0.05;
        each_step(step, 1.0 - least_share, [&](double less) { no_more_than(1.0 - less); });
    } else if (remedy.kind == RemedyKind::fit_regulator) {
        // The higher it is set, the less it takes from the draft.
        const double most_pa = std::floor(case_.appliance.draft_greatest_pa);
        constexpr double step_pa = 1.0;
        each_step(step_pa, most_pa - remedy.amount, [&](double less_pa) {
            regulator_at(most_pa - less_pa);
        });
    }
}

std::vector<Remedy>
lesser_remedies(const Remedy& remedy, const Installation& written, const Case& present) {
    Offer offer(written, present);
    offer.less_than(remedy);
    return std::move(offer).take();
}

} // namespace fluewright
