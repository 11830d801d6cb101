#pragma once

#include "fluewright/model/fields/given.hpp"

#include <vector>

/// The building round the appliance, as the user wrote it.
namespace fluewright {

struct Room {
    Given volume_m3;
    Given temperature_k;
    Given pressure_pa; ///< room minus outdoors at the height of the outlet, whatever the fire
    Given pressure_burning_pa; ///< the same while the fire burns
    Given pressure_idle_pa;    ///< the same with no fire
    Given relative_humidity;

    /// Whether the file gives a pressure, so that none follows from the house.
    [[nodiscard]] bool pressure_is_given() const {
        return pressure_pa || pressure_burning_pa || pressure_idle_pa;
    }

    bool operator==(const Room&) const = default;
};

/// A fan that takes air out of the house, or brings it in where the flow is negative.
struct Fan {
    Word name;
    Given flow_m3_s;

    bool operator==(const Fan&) const = default;
};

/// A window set open or an air inlet.
struct HouseOpening {
    Word name;
    Given area_m2;          ///< clear area
    Choice<HouseSide> side; ///< windward or lee
    Given height_m;         ///< centre over the floor the appliance stands on

    bool operator==(const HouseOpening&) const = default;
};

/// The building round the appliance, from which its room pressure follows.
struct House {
    Given storeys;
    Given height_m;          ///< of the heated shell
    Given appliance_level_m; ///< floor of the appliance over the lowest floor of the shell
    Given volume_m3;
    Given air_changes_50_pa_1_s;
    Given leakage_area_m2; ///< equivalent opening, instead of air changes
    Given leakage_exponent;
    Given neutral_level_m; ///< over the lowest floor of the shell, with fans and fire off
    Flag outdoor_air;      ///< the fire takes its air from outdoors through a duct
    std::vector<Fan> fans;
    std::vector<HouseOpening> openings;

    /// Whether the file says anything about the house.
    [[nodiscard]] bool is_given() const {
        return storeys || height_m || appliance_level_m || volume_m3 || air_changes_50_pa_1_s
               || leakage_area_m2 || leakage_exponent || neutral_level_m || outdoor_air
               || !fans.empty() || !openings.empty();
    }

    bool operator==(const House&) const = default;
};

} // namespace fluewright
