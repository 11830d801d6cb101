#pragma once

#include "fluewright/model/fields/given.hpp"

/// The heater, as the user wrote it.
namespace fluewright {

struct FuelChoice {
    Word name;
    Given moisture; ///< kg water per kg fuel as fired (wet basis)

    bool operator==(const FuelChoice&) const = default;
};

struct Outlet {
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular or oval collar
    Given depth_m;
    Choice<SectionShape> shape; ///< rectangular or oval; left out, rectangular
    Choice<PipeEnd> end;        ///< plain, crimped, socket, flange or locking
    Given height_m;             ///< centre of the collar over the floor

    bool operator==(const Outlet&) const = default;
};

struct Door {
    Given width_m;
    Given height_m;
    Given sill_height_m; ///< lower edge of the opening over the floor
    Given open_width_m;  ///< of all open sides of a hearth together; left out, width_m
    Given throat_m2;     ///< free area of the throat or open damper of an open hearth
    Choice<SmokeChamber> smoke_chamber{}; ///< between that and the flue

    bool operator==(const Door&) const = default;
};

struct Firebox {
    Given volume_m3;
    Given width_m;
    Given depth_m;
    Given height_m;
    Given lining_area_m2; ///< hot surface that the air from an open door passes
    Given lining_mass_kg; ///< lining and body that hold heat

    bool operator==(const Firebox&) const = default;
};

/// Distances around the heater: as they stand, or as its plate lists them.
struct Clearances {
    Given side_m;
    Given back_m;
    Given corner_m;
    Given front_m;
    Given above_m;
    Choice<Shield> shield; ///< what stands between heater and wall
    Given shield_gap_m;

    bool operator==(const Clearances&) const = default;
};

struct FloorProtection {
    Given front_m; ///< how far it reaches beyond the heater
    Given sides_m;
    Given back_m;
    Choice<FloorBuild> build; ///< sheet, close masonry, hollow masonry, slab

    bool operator==(const FloorProtection&) const = default;
};

/// The wall that does not burn, beside a heater on its hearth.
struct HearthWall {
    Given distance_m;
    Given thickness_m; ///< of solid masonry

    bool operator==(const HearthWall&) const = default;
};

struct Appliance {
    Flag listed;
    Choice<ApplianceStyle>
        style;    ///< radiant, jacketed, ...: for the table of heaters that are not listed
    Given legs_m; ///< clear height under the heater
    Choice<FloorKind> floor; ///< burnable or noncombustible
    Flag damper_allowed;
    Flag draft_regulator; ///< built into it; one in the pipe is a part of the run
    Flag smoke_exempt;
    Clearances clearances;
    Clearances listed_clearances;
    FloorProtection floor_protection;
    HearthWall hearth_wall;
    Choice<ApplianceType> type; ///< stove, fireplace, furnace, ...
    Flag insert;                ///< a closed heater set into that fireplace
    Word name;
    FuelChoice fuel;
    Outlet outlet;
    HighLow burn_rate_kg_s;
    Choice<BurnRateBasis> burn_rate_basis; ///< "as fired" or "dry"
    HighLow heat_input_w;                  ///< net heat in the fuel
    HighLow heat_output_w;                 ///< useful heat
    HighLow efficiency;
    Choice<EfficiencyBasis> efficiency_basis; ///< "net" or "gross"
    HighLow air_ratio;
    HighLow carbon_dioxide; ///< share of the dry gas
    HighLow oxygen;         ///< share of the dry gas
    HighLow gas_flow_kg_s;
    HighLow gas_temperature_k;               ///< at the outlet
    Choice<GasReading> gas_temperature_kind; ///< "true gas" or "bare probe"
    HighLow draft_needed_pa;
    HighLow fan_pressure_pa; ///< what its fan gives above the room at the outlet
    Given charge_kg;         ///< fuel of one firing of a heater that stores its heat, as fired
    Given burn_time_s;       ///< how long that charge burns
    Given preheat_w;         ///< heat sent up the flue before lighting
    Given draft_greatest_pa;
    Given warmed_pipe_share; ///< of the gas's rise over the room, round the pipe at the collar
    Door door;
    Firebox firebox;

    bool operator==(const Appliance&) const = default;
};

/// What kind of heater burns; none where the file says none. An insert in a fireplace is a closed
/// one, as a stove is.
[[nodiscard]] inline Choice<ApplianceType> burning_type(const Appliance& written) {
    const bool insert = written.type == ApplianceType::fireplace && written.insert.value_or(false);
    return insert ? ApplianceType::stove : written.type;
}

} // namespace fluewright
