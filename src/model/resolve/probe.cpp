#include "fluewright/model/march/march.hpp"
#include "fluewright/model/march/probe_reading.hpp"
#include "resolving.hpp"

#include <cmath>

namespace fluewright::resolving {
namespace {

constexpr int most_steps = 60;
constexpr double settled_k = 0.01;

/// The gas in which a bare probe at the outlet shows this, by a fixed point: the wall it sees is
/// that of the gas looked for.
double gas_behind(const FlueModel& model, GasChoice choice, double shown_k) {
    const Case& c = model.resolved();
    const bool high = choice == GasChoice::high_fire;
    const Firing& fire = high ? c.appliance.high : c.appliance.low;
    const GasFit& gas = c.gases[static_cast<std::size_t>(choice)].products();
    std::vector<Station> stations(model.station_count());
    double gas_k = shown_k;
    for (int i = 0; i < most_steps; ++i) {
        (void)model.march({.gas = choice, .flow_kg_s = fire.gas_flow_kg_s, .temperature_k = gas_k},
                          model.surroundings().room_pressure_pa - fire.draft_needed_pa,
                          stations);
        const double miss_k = shown_k
                              - probe_reading_k(gas,
                                                gas_k,
                                                wall_at_outlet_k(stations),
                                                stations.front().velocity_m_s,
                                                c.air_pressure_pa);
        gas_k += miss_k;
        if (std::abs(miss_k) < settled_k) {
            break;
        }
    }
    return gas_k;
}

} // namespace

void probe(const CaseWork& work) {
    for (std::size_t i = 0; i < work.written.observed.size(); ++i) {
        const Observation& seen = work.written.observed[i];
        if (seen.gas_temperature_k && !seen.gas_temperature_kind) {
            work.assume_word("/observed/" + std::to_string(i) + "/gas_temperature_kind",
                             "what the gas temperature observed tells",
                             name(GasReading::bare_probe),
                             "judgement",
                             "judgement");
        }
    }
    const Appliance& written = work.written.appliance;
    const HighLow& shown = written.gas_temperature_k;
    if (!shown.high && !shown.low) {
        return;
    }
    if (!written.gas_temperature_kind) {
        work.assume_word("/appliance/gas_temperature_kind",
                         "what the gas temperature at the outlet tells",
                         name(GasReading::true_gas),
                         "judgement",
                         "judgement");
    }
    if (written.gas_temperature_kind.value_or(GasReading::true_gas) != GasReading::bare_probe
        || !work.faults.empty() || work.made.weathers.empty()) {
        return;
    }
    const FlueModel model(work.made, surroundings_of(work.made, 0, Fire::burning));
    for (const GasChoice choice : {GasChoice::high_fire, GasChoice::low_fire}) {
        const bool high = choice == GasChoice::high_fire;
        if (const Given& given = high ? shown.high : shown.low) {
            const double gas_k = gas_behind(model, choice, *given);
            work.assume("/appliance", // no key takes it: the file has the reading
                        high ? "gas at the outlet at high fire, by what the bare probe shows"
                             : "gas at the outlet at low fire, by what the bare probe shows",
                        Kind::temperature,
                        gas_k,
                        "judgement",
                        "judgement");
            take_gas_temperature(work, choice, gas_k);
        }
    }
}

} // namespace fluewright::resolving
