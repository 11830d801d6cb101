#include "resolving.hpp"

namespace fluewright::resolving {
namespace {

/// A heater that stores its heat burns one charge, as long as the file says or such heaters take.
void one_charge(const CaseWork& work) {
    const ApplianceCase& a = work.made.appliance;
    const catalog::ApplianceDefault* defaults =
        catalog::find_appliance_default(a.type, a.fuel_group);
    if (defaults == nullptr) {
        return; // told as a fault already
    }
    constexpr double hour_s = 3600.0;
    double burns_s = work.written.appliance.burn_time_s.value_or(0.0);
    if (burns_s <= 0.0) {
        burns_s = defaults->burn_hours_high * hour_s;
        work.assume("/appliance/burn_time",
                    "how long a charge burns",
                    Kind::duration,
                    burns_s,
                    defaults->source,
                    "judgement");
    }
    const double high = a.high.burn_rate_kg_s;
    const double kindling = catalog::default_of(DefaultId::kindling_burn_share).value * high;
    work.made.burn = {
        {.name = "lighting",
         .duration_s = catalog::default_of(DefaultId::lighting_s).value,
         .start_kg_s = kindling,
         .end_kg_s = kindling},
        {.name = "the charge", .duration_s = burns_s, .start_kg_s = high, .end_kg_s = high}};
}

} // namespace

void burn(const CaseWork& work) {
    const auto& entries = work.written.burn;
    const ApplianceCase& a = work.made.appliance;
    if (entries.empty() && a.type == ApplianceType::masonry_heater) {
        one_charge(work);
        return;
    }
    const bool dry = work.written.appliance.burn_rate_basis == BurnRateBasis::dry;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const BurnEntry& entry = entries[i];
        const double rate = entry.burn_rate_kg_s.value_or(0.0) / (dry ? 1.0 - a.moisture : 1.0);
        const bool out = rate == 0.0;
        BurnPhase phase;
        phase.name = entry.name.value_or(out ? "fire out" : "phase " + std::to_string(i + 1));
        phase.duration_s = entry.duration_s.value_or(0.0);
        phase.start_kg_s = phase.end_kg_s = rate;
        phase.out = out;
        work.made.burn.push_back(std::move(phase));
    }
}

} // namespace fluewright::resolving
