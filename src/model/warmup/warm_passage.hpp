#pragma once

#include "fluewright/physics/flue_gas.hpp"
#include "warm_run.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {

/// Thinner than this the path of radiating gas is carried on in proportion.
inline constexpr double least_log_path = -1.9;

/// The gas on its way up, and the sums.
struct WarmRun::Passage {
    const FlueGas* gas{};
    GasFit fit;
    double air_share{};
    double log_path{};
    double thinner{1.0};         ///< emission besides the path's
    bool turned{};               ///< a damper for strong draft is
    double started_kg_s{};       ///< flow at the outlet
    double flow_kg_s{};          ///< here
    double outlet_pa{};          ///< static pressure at the outlet the passage begins with
    double room_pa{};            ///< at the height of the outlet
    double height_m{};           ///< over the outlet
    double warmer_at_collar_k{}; ///< what is round the pipe there than the room
    double from_room_kg_s{};     ///< what joints and openings take out of the room, net
    double given_w{};            ///< by the gas, to the walls
    double temperature_k{};
    double enthalpy_j_kg{};
    double area_m2{};
    double buoyancy_pa{};
    double losses_pa{}; ///< friction, fittings and acceleration: all grow with the flow squared
    double lost_w{};
    std::vector<CellHeat> cells; ///< those passed so far
    double change_k{};           ///< greatest change of a node in this pass

    void set_dilution(double share) {
        air_share = share;
        fit = gas->diluted(share);
        const GasFit& pure = gas->products();
        const double radiating = pure.carbon_dioxide + pure.water_vapour;
        log_path = 0.0;
        thinner = 1.0;
        if (share > 0.0 && radiating > 0.0) {
            const double whole = std::log((fit.carbon_dioxide + fit.water_vapour) / radiating);
            log_path = std::max(whole, least_log_path);
            thinner = std::exp(whole - log_path);
        }
    }

    void take_heat(double heat_w) {
        given_w += heat_w;
        enthalpy_j_kg -= heat_w / flow_kg_s;
        temperature_k = fit.temperature_k(enthalpy_j_kg, temperature_k);
    }
};

} // namespace fluewright
