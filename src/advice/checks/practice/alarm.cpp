#include "advice/checks/subject.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>

namespace fluewright::checking {
namespace {

/// The continuous rating of the wall at a place where something was measured; 0 for none.
double rating_at(const Case& resolved, const Observation& seen, std::size_t parts) {
    const auto part = static_cast<int>(point_of(seen.at, parts)) - 1;
    const auto section =
        std::find_if(resolved.sections.begin(), resolved.sections.end(), [&](const Section& each) {
            return each.part == std::max(0, part) && each.length_m > 0.0;
        });
    return section == resolved.sections.end()
               ? 0.0
               : resolved.walls[section->wall].rated_gas_temperature_k;
}

/// One temperature that was measured against the most it may be.
void hold_measured(Subject& s, std::string_view what, double measured_k, double most_k, bool met) {
    CheckResult* f = s.hold(
        own("seen-too-hot"),
        met,
        {.kind = Kind::temperature,
         .figure = measured_k,
         .limit = most_k,
         .weight = met ? (measured_k - most_k) / 100.0 : 900.0 + (measured_k - most_k) / 100.0},
        {.section = nullptr, .place = "the run"});
    if (f != nullptr && s.with_words()) {
        f->message = "The file says that " + std::string{what} + " of "
                     + s.show(measured_k, Kind::temperature) + " was measured; the limit is "
                     + s.show(most_k, Kind::temperature) + ".";
    }
}

} // namespace

void alarm(Subject& s) {
    const bool sounded = alarm_has_sounded(s.view.written.observed);
    CheckResult* f = s.hold(own("alarm-has-sounded"),
                            !sounded,
                            {.kind = Kind::number,
                             .figure = {},
                             .limit = {},
                             .weight = sounded ? 1000.0 : 0.0}, // before all other dangers
                            {.section = nullptr, .place = "the room"});
    if (f != nullptr && s.with_words()) {
        f->message = "The file says that a carbon monoxide alarm has sounded.";
    }
}

/// After the alarm, before all other dangers: what glows may be a chimney fire.
void too_hot(Subject& s) {
    const double far_too_hot_k = catalog::default_of(DefaultId::surface_far_too_hot_k).value;
    const double hot_k = catalog::default_of(DefaultId::gas_temperature_hot_k).value;
    for (const Observation& seen : s.view.written.observed) {
        if (seen.surface_temperature_k) {
            const double surface_k = *seen.surface_temperature_k;
            hold_measured(
                s, "a surface temperature", surface_k, far_too_hot_k, surface_k < far_too_hot_k);
        }
        if (seen.gas_temperature_k) {
            const double rating_k = rating_at(s.resolved, seen, s.view.written.run.size());
            const double most_k = rating_k > 0.0 ? std::min(rating_k, hot_k) : hot_k;
            const double gas_k = *seen.gas_temperature_k;
            hold_measured(s, "a gas temperature", gas_k, most_k, gas_k <= most_k);
        }
    }
}

} // namespace fluewright::checking
