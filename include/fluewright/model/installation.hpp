#pragma once

#include <optional>
#include <string>
#include <vector>

/// What the user wrote, in SI and nothing added: every member that may be left out is optional, and
/// no default is filled in here. resolve() turns it into a Case and notes each value it had to
/// assume. The tables in model/fields.hpp tell the key, the kind of quantity, the range and the
/// meaning of every member; reader, schema and reference are made from them.
namespace fluewright {

using Given = std::optional<double>;
using Word = std::optional<std::string>;
using Flag = std::optional<bool>;

/// A value at low and at high fire. In a file: one quantity (taken for high fire, and for low fire
/// where it does not depend on the fire) or an object with "low" and "high".
struct HighLow {
    Given low;
    Given high;
};

struct Weather {
    Word name;
    Given outdoor_temperature_k;
    Given wind_m_s;
    Given relative_humidity;
};

struct Room {
    Given temperature_k;
    Given pressure_pa; ///< room minus outdoors at the height of the outlet; negative starves the fire
    Given relative_humidity;
};

struct Site {
    Given altitude_m;
    Given air_pressure_pa;
    Given attic_temperature_k;
    Given chase_temperature_k;
    Room room;
    std::vector<Weather> weather;
};

struct FuelChoice {
    Word name;
    Given moisture; ///< kg water per kg fuel as fired (wet basis)
};

struct Outlet {
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular collar
    Given depth_m;
    Given height_m; ///< centre of the collar over the floor
};

struct Door {
    Given width_m;
    Given height_m;
    Given sill_height_m; ///< lower edge of the opening over the floor
};

struct Firebox {
    Given volume_m3;
    Given width_m;
    Given depth_m;
    Given height_m;
};

struct Appliance {
    Word type; ///< stove, fireplace, furnace, boiler or draft-hood
    Word name;
    FuelChoice fuel;
    Outlet outlet;
    HighLow burn_rate_kg_s;
    Word burn_rate_basis; ///< "as fired" or "dry"
    HighLow heat_input_w;  ///< net heat in the fuel
    HighLow heat_output_w; ///< useful heat
    HighLow efficiency;
    Word efficiency_basis; ///< "net" or "gross"
    HighLow air_ratio;
    HighLow carbon_dioxide; ///< share of the dry gas
    HighLow oxygen;         ///< share of the dry gas
    HighLow gas_flow_kg_s;
    HighLow gas_temperature_k; ///< at the outlet
    HighLow draft_needed_pa;
    Given draft_greatest_pa;
    Door door;
    Firebox firebox;
};

/// One entry of the run. Which members have a meaning depends on `part`; the field table says so.
struct Part {
    Word part; ///< straight, elbow, tee, reducer, increaser, damper, screen, cap, obstruction, fitting
    Word name;
    Given up_m;     ///< rise of a vertical straight
    Given down_m;   ///< fall of a vertical straight
    Given across_m; ///< level distance
    Given rise_m;   ///< rise that goes with across_m
    Given slope;    ///< rise over level distance, instead of rise_m
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular flue
    Given depth_m;
    Word liner;    ///< trade name of a clay liner: gives width and depth
    Word wall;
    Word zone;     ///< room, attic, chase or outdoors
    Given angle_rad;
    Word build;    ///< elbow: smooth, gored, mitred; cap: open, plain, rain
    Given radius_m; ///< centre-line radius of an elbow
    Word flow;      ///< tee: "side" (the gas turns in the tee) or "straight"
    Flag cleanout;
    Given blade_angle_rad; ///< damper: 0 is open, a right angle is shut
    Given taper_length_m;
    Given mesh_m;      ///< clear opening of a screen
    Given free_area;   ///< share of the section a screen or cap leaves open
    Given blocked;     ///< share of the section an obstruction takes
    Given deposit_m;   ///< thickness of what has grown on the inside
    Word deposit;      ///< soot, flaky creosote, glazed creosote or ash
    Word fitting;      ///< a fitting defined in the file or the catalog
    Given loss;        ///< loss coefficient, when it is known
    Given rated_surface_temperature_k; ///< of the paint or the wall
    Given expansion_allowed_m; ///< movement the joint of a straight takes up
};

/// A fuel of the user's own, dry analysis as mass shares.
struct OwnFuel {
    std::string id;
    Word group;
    Given carbon;
    Given hydrogen;
    Given oxygen;
    Given nitrogen;
    Given sulphur;
    Given ash;
    Given gross_heating_value_dry_j_kg;
    Given net_heating_value_dry_j_kg;
    Given moisture;
};

struct OwnLayer {
    Word material;
    Given thickness_m;
    Given conductivity_w_mk;
};

struct OwnWall {
    std::string id;
    Word kind;
    std::vector<OwnLayer> layers;
    Given thermal_resistance_m2k_w; ///< on the inside area, instead of layers
    Given outside_diameter_m;
    Given inner_emissivity;
    Given outer_emissivity;
    Given roughness_m;
    Given rated_gas_temperature_k;
};

struct OwnFitting {
    std::string id;
    Given loss;
};

/// Something seen or measured on the installation as it stands.
struct Observation {
    Word smoke;     ///< joints, door, lighting, wind, ...
    Word state;     ///< high fire, low fire, ...
    Word weather;   ///< name of one of the weathers
    Word at;        ///< "outlet", "mouth", or the number of a part
    Given draft_pa;
    Given gas_temperature_k;
    Given surface_temperature_k;
    Given room_pressure_pa;
    Given carbon_dioxide;
    Given oxygen;
    Given moisture;
    Given deposit_m;
};

/// A spread the user wrote behind a value: `"4.2 m ± 0.1 m"`.
struct Tolerance {
    std::string pointer; ///< of the value in the file
    double half_width;   ///< SI
};

struct Installation {
    Word title;
    Word units; ///< metric or us: how the text output shows quantities
    Site site;
    Appliance appliance;
    std::vector<Part> run;
    std::vector<OwnFuel> fuels;
    std::vector<OwnWall> walls;
    std::vector<OwnFitting> fittings;
    std::vector<Observation> observed;
    std::vector<Tolerance> tolerances;
    int us_quantities{0};     ///< how many quantities were typed in US units
    int metric_quantities{0}; ///< how many in metric units
};

} // namespace fluewright
