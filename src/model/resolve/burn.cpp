#include "resolving.hpp"

namespace fluewright::resolving {

void burn(const CaseWork& work) {
    const auto& entries = work.written.burn;
    const ApplianceCase& a = work.made.appliance;
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
