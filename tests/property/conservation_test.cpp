#include "trial.hpp"

#include <cmath>

using namespace fluewright;
using namespace fluewright::property;

namespace {

constexpr double closed = 1e-9;

/// Joints that leak as ordinary to loose ones do.
void add_leaks(Case& resolved, Random& random) {
    for (Section& section : resolved.sections) {
        if (random.chance(0.6)) {
            section.joint_leak_m2 = section.perimeter_m * random.between_by_ratio(1e-5, 3e-4);
        }
    }
}

void require_closed(const Trial& t, const FlueModel& model, const GasStream& stream) {
    std::vector<Station> stations(model.station_count());
    const MarchResult m = model.solve(stream, stations);

    const double mass_miss = stream.flow_kg_s + m.leak_in_kg_s - m.leak_out_kg_s - m.top_flow_kg_s;
    if (std::abs(mass_miss) > closed * m.top_flow_kg_s) {
        fail(t, fmt::format("mass {} kg/s", mass_miss));
    }
    for (std::size_t i = 1; i < stations.size(); ++i) {
        const double step =
            stations[i].flow_kg_s - stations[i - 1].flow_kg_s - stations[i].leak_kg_s;
        if (std::abs(step) > closed * stream.flow_kg_s) {
            fail(t, fmt::format("mass at joint {}: {} kg/s", i, step));
        }
    }

    const double energy_miss =
        m.enthalpy_in_w + m.enthalpy_leak_w - m.heat_loss_w - m.enthalpy_out_w;
    const double energy = std::abs(m.enthalpy_in_w) + std::abs(m.heat_loss_w)
                          + std::abs(m.enthalpy_leak_w) + std::abs(m.enthalpy_out_w);
    if (std::abs(energy_miss) > closed * energy) {
        fail(t, fmt::format("energy {} W of {}", energy_miss, energy));
    }

    const double pressure_miss = m.outlet_pressure_pa + m.buoyancy_pa - m.friction_pa
                                 - m.fittings_pa - m.acceleration_pa - m.top_pressure_pa;
    const double pressure = std::abs(m.buoyancy_pa) + m.friction_pa + std::abs(m.fittings_pa)
                            + std::abs(m.acceleration_pa);
    if (std::abs(pressure_miss) > closed * pressure) {
        fail(t, fmt::format("pressure {} Pa of {}", pressure_miss, pressure));
    }
    const double loop_miss = m.top_pressure_pa - model.surroundings().top_pressure_pa;
    if (std::abs(loop_miss) > closed * pressure) {
        fail(t, fmt::format("loop {} Pa of {}", loop_miss, pressure));
    }
    if (std::abs(stations.front().pressure_pa - m.outlet_pressure_pa) > closed * pressure
        || std::abs(stations.back().pressure_pa - m.top_pressure_pa) > closed * pressure) {
        fail(t, "the profile does not end where the sums do");
    }
}

} // namespace

TEST_CASE("mass, energy and pressure close on tight runs") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        const FlueModel model = burning(t.resolved);
        for (const GasChoice gas : both_fires) {
            require_closed(t, model, stream_of(t.resolved, gas));
        }
    }
    SUCCEED();
}

TEST_CASE("mass, energy and pressure close on leaking runs") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        Trial t = trial(seed);
        Random random(seed + 77U);
        add_leaks(t.resolved, random);
        const FlueModel model = burning(t.resolved);
        for (const GasChoice gas : both_fires) {
            require_closed(t, model, stream_of(t.resolved, gas));
        }
    }
    SUCCEED();
}
