#pragma once

#include "fluewright/model/catalog/default_id.hpp"
#include "fluewright/model/run/case.hpp"

#include <string>
#include <vector>

/// What burns when: the course of one fire from the match to the cold stove.   [theory eq. 55]
namespace fluewright {

/// What the fire asks of the flue at one moment.
struct FireDemand {
    double burn_rate_kg_s{};
    double gas_flow_kg_s{};
    double air_share{}; ///< room air in the gas beyond that of high fire, kg per kg
    double aim_k{};     ///< gas temperature at the outlet once the appliance is as warm as the fire
    bool door_ajar{};
    bool out{};
    std::size_t phase{};
};

class BurnPlan {
public:
    /// The phases of the file, or else the default course of lighting, high fire and burn-down;
    /// then the time after the fire, so long that the whole takes `total_s` (0: a default time).
    /// `room_k`: of the air the fire takes in the weather looked at.
    BurnPlan(const Case& resolved, double total_s, double room_k);

    [[nodiscard]] const std::vector<BurnPhase>& phases() const { return phases_; }

    /// What was supplied because the file did not.
    [[nodiscard]] const std::vector<Assumption>& assumptions() const { return assumptions_; }

    /// Demand `into_s` seconds into a phase.
    ///
    /// Between no fire, low fire and high fire the gas flow, the air in it and the temperature it
    /// aims at are straight lines over the burn rate; above high fire flow goes on in proportion.
    [[nodiscard]] FireDemand at(std::size_t phase, double into_s) const;

    /// Gas temperature that a fire of this burn rate aims at.
    [[nodiscard]] double aim_k(double burn_rate_kg_s) const;

    /// Gas at the outlet in the first minutes: of paper and kindling, in a plan that begins with a
    /// fire in an appliance lit by hand; else the room's air.
    [[nodiscard]] double lighting_k() const;

    /// How fast the gas at the outlet follows its aim [s]: the appliance's own warmth. With its
    /// fire out a heater that stores heat warms what is drawn through it, until its mass is cold.
    /// [theory eq. 55]
    [[nodiscard]] double appliance_time_s(bool out, double flow_kg_s) const;

private:
    void add_default_phases();
    void assume(std::string_view what, Kind kind, DefaultId default_id);

    const Case* case_;
    std::vector<BurnPhase> phases_;
    std::vector<Assumption> assumptions_;
    double appliance_time_s_{};
    double room_k_;
};

} // namespace fluewright
