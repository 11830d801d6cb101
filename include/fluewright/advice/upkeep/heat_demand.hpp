#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string>
#include <vector>

/// Is the heater big enough, and can the flue carry what the building asks for?
namespace fluewright {

struct HeatLoss {
    std::string name;
    double area_m2{};
    double u_value_w_m2k{};
    double loss_w{};
    std::string_view source; ///< of a U value out of the catalog
};

struct HeatDemand {
    std::vector<HeatLoss> parts; ///< greatest loss first
    double ventilation_w{};
    double indoor_k{};
    double outdoor_k{};
    double total_w{};
    double with_reserve_w{};  ///< total and a share for warming up
    double heater_output_w{}; ///< at high fire
    double burn_rate_kg_s{};  ///< that gives the total
    double high_burn_rate_kg_s{};
    double low_burn_rate_kg_s{};
    std::optional<double> capacity_kg_s; ///< least of the weathers: what the flue carries
    std::string capacity_weather;
    double load_kg{};                 ///< one load of the firebox
    double load_rate_kg_s{};          ///< the rate of the total, held between low and high fire
    std::optional<double> load_hours; ///< how long a load lasts at `load_rate_kg_s`
    bool heater_carries{};
    bool flue_carries{};
    bool throttled{};                 ///< the demand lies under low fire
    std::vector<std::string> missing; ///< keys without which nothing was computed
    std::vector<std::string> assumed; ///< sentences
    std::vector<std::string> left_out;
};

/// Steady loss on a cold day,
///
///   Q = (sum U A + 0.33 n V) (Tin - Tout),   n in 1/h, V in m3
///
/// Source  home advice page on the 0.33 n V method   [u-values-note]; U values [u-values-table]
/// Empty where the file has no building.
/// [theory eq. 38]
[[nodiscard]] std::optional<HeatDemand>
heat_demand(const Installation& written, const Case& resolved, const Solution& solution);

} // namespace fluewright
