#pragma once

#include "fluewright/model/march/march.hpp"
#include "fluewright/physics/warmed_pipe.hpp"

#include <array>
#include <cmath>

namespace fluewright {

/// How the state that travels along the run answers to one of the EndPressures, per pascal. What a
/// leak changes of the composition is left out.
struct FlowAnswer {
    double flow_kg_s{};
    double temperature_k{};
    double pressure_pa{};
    double room_pa{}; ///< what the room's own pressure answers
    double leak_from_room_kg_s{};
};

/// The state that travels along the run.
struct FlueModel::Flow {
    GasChoice choice{};
    const FlueGas* gas{};
    GasFit fit;
    double log_path{}; ///< dilution as a shortening of the radiating path
    double air_share{};
    double flow_kg_s{};
    double least_flow_kg_s{}; ///< joints take no more than leaves this
    double temperature_k{};
    double pressure_pa{};
    double height_m{};
    double distance_m{};
    double wall_k{};             ///< inner face at the end of the last straight; 0 before the first
    double wall_start_k{};       ///< and near its lower end
    double warmer_at_collar_k{}; ///< what is round the pipe there than the room
    double area_m2{};
    double room_pressure_pa{};
    bool wants_wall{}; ///< whether wall_k is asked for
    bool answers_asked{};
    std::array<FlowAnswer, 2> answers{}; ///< to the pressures of outlet and room
    MarchResult sums;

    void set_dilution(double share) {
        air_share = share;
        fit = gas->diluted(share);
        const GasFit& pure = gas->products();
        const double radiating = pure.carbon_dioxide + pure.water_vapour;
        log_path = share > 0.0 && radiating > 0.0
                       ? std::log((fit.carbon_dioxide + fit.water_vapour) / radiating)
                       : 0.0;
    }

    /// How much warmer than its zone it is round the pipe this far from the collar, by the heater.
    [[nodiscard]] double warmer_k(Zone zone, double from_collar_m, double gas_over_zone_k) const {
        return zone == Zone::room && warmer_at_collar_k > 0.0
                   ? warmed_pipe::around_k(warmer_at_collar_k, from_collar_m, gas_over_zone_k)
                   : 0.0;
    }

    [[nodiscard]] double enthalpy_j_kg() const {
        return fit.enthalpy_j_kg(gas_fit_range.u_of(temperature_k));
    }

    /// Of the velocity head through one area, which grows with the square of the flow and with the
    /// temperature.
    [[nodiscard]] double head_answer(const FlowAnswer& answer, double head_pa) const {
        return head_pa
               * (2.0 * answer.flow_kg_s / flow_kg_s + answer.temperature_k / temperature_k);
    }

    [[nodiscard]] double density_kg_m3(double air_pressure_pa) const {
        return air_pressure_pa / (fit.gas_constant_j_kgk * temperature_k);
    }

    [[nodiscard]] double velocity_head_pa(double air_pressure_pa, double section_m2) const {
        const double flux = flow_kg_s / section_m2;
        return 0.5 * flux * flux / density_kg_m3(air_pressure_pa);
    }
};

} // namespace fluewright
