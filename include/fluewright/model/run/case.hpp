#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/vocabulary.hpp"
#include "fluewright/model/run/run.hpp"
#include "fluewright/physics/combustion.hpp"
#include "fluewright/physics/flue_gas.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// An installation made complete: every value in SI, everything assumed noted. The solver reads
/// nothing else.
namespace fluewright {

/// One layer of a wall, from the inside out.
struct WallLayer {
    double thickness_m{};
    double conductivity_w_mk{};        ///< at 20 degC
    double conductivity_slope_w_mk2{}; ///< per kelvin above
    double density_kg_m3{};
    double specific_heat_j_kgk{};
    double emissivity{}; ///< of its faces, towards an air gap
    bool air_gap{};
};

inline constexpr std::size_t most_wall_layers = 8;

/// A solid that conducts less than this insulates; mineral wool and loose vermiculite do.
inline constexpr double insulation_conductivity_most_w_mk = 0.2;

struct WallBuild {
    std::string id;   ///< name and what has grown on the inside: each of its own
    std::string name; ///< in the catalog or the file
    WallKind kind{};
    std::array<WallLayer, most_wall_layers> layers{};
    std::size_t layer_count{};
    double inner_emissivity{};
    double outer_emissivity{};
    double roughness_m{};
    double rated_gas_temperature_k{}; ///< 0 where the class has none
    double fixed_resistance_m2k_w{};  ///< on the inside area, for a wall known by its resistance
    double outside_diameter_m{};      ///< 0: from the layers
    std::string inner_material;       ///< what lengthens when hot
    std::string_view fuels;           ///< groups it may serve, parted by '|'; empty for any
    std::string_view sizes; ///< the system of trade sizes it is made in alone; empty for any

    [[nodiscard]] bool may_serve(FuelGroup group) const;

    /// Whether it is a double-wall vent made for this group.
    [[nodiscard]] bool is_vent_for(FuelGroup group) const {
        return kind == WallKind::double_wall && !fuels.empty() && may_serve(group);
    }

    /// Thickness of its insulation that does not burn; an air gap is none, nor is what has grown
    /// on the inside.
    [[nodiscard]] double insulation_m() const;
};

/// One step of the march: a length of pipe, or a point where pressure is lost. Point losses act on
/// the velocity head in `area_m2`; a change of area against the section before is accounted for.
struct Section {
    int part{}; ///< index in the file's run; -1 for the collar, part count for an added top
    PartKind kind{PartKind::collar}; ///< what the user called it
    double length_m{};
    double rise_m{};
    double diameter_m{}; ///< hydraulic
    double area_m2{};
    double perimeter_m{};
    double built_diameter_m{}; ///< hydraulic, without the deposit: the size that was bought
    double built_area_m2{};
    double roughness_m{};
    double loss{};
    double loss_when_strong{};    ///< of a damper turned only while the draft is too strong; else 0
    bool loss_given{};            ///< the file gave the loss coefficient
    double turn_rad{};            ///< how far the gas turns here
    double joint_leak_m2{};       ///< leakage area of the joint at its lower end
    double opening_m2{};          ///< of a regulator's gate or a hood, at its lower end
    double opens_above_pa{};      ///< draft at which a gate begins to open
    double opens_over_pa{};       ///< further draft until it is wide open; 0: it always is
    double rated_surface_k{};     ///< of paint or wall; 0 when not stated
    double expansion_allowed_m{}; ///< movement its joint takes up; negative when not stated
    std::size_t wall{};           ///< index into Case::walls
    Zone zone{};
    Lie lie{}; ///< of a straight
    bool rectangular{};
    bool cleanout{};
    bool disturbs{}; ///< the flow develops anew behind it

    [[nodiscard]] bool leaks() const { return joint_leak_m2 > 0.0 || opening_m2 > 0.0; }
};

/// What the fire sends up in one way of firing.
struct Firing {
    double burn_rate_kg_s{}; ///< fuel as fired
    double air_ratio{};
    double gas_flow_kg_s{};
    double gas_temperature_k{};   ///< at the outlet
    bool gas_temperature_given{}; ///< measured, else from the balance of heat
    double heat_in_fuel_w{};      ///< net
    double heat_to_flue_w{};      ///< sensible heat of the gas above the room
    double heat_output_w{};       ///< useful
    double heat_unburned_w{};     ///< leaves as gas and char that did not burn
    double draft_needed_pa{};
    double carbon_dioxide_dry{};
    double oxygen_dry{};
    double gas_per_fuel_kg_kg{};
};

struct DoorOpening {
    double width_m{};
    double height_m{};
    double top_below_outlet_m{}; ///< from the top edge up to the outlet; negative if the edge is
                                 ///< higher
    double throat_m2{};          ///< of an open hearth, between opening and outlet; 0: no narrower
    double entry_loss{0.5};      ///< velocity heads lost on entering throat or outlet of a hearth
};

/// What in the firebox stays hot when the door is opened.
struct FireboxLining {
    double transfer_w_k{}; ///< to the air that passes it
    double heat_j_k{};     ///< held per kelvin; 0 where nothing is
};

struct ApplianceCase {
    ApplianceType type{};
    std::string fuel;
    FuelGroup fuel_group{};
    combustion::FuelAnalysis analysis{};
    double moisture{};
    double net_heating_value_j_kg{};
    Firing high;
    Firing low;
    bool has_low_fire{true}; ///< it can be held below its high fire; else `low` is no condition
    bool pushed_by_fan{};    ///< a fan carries the gas through the heater
    double draft_greatest_pa{};
    double outlet_area_m2{};
    double outlet_diameter_m{}; ///< of the circle of equal area
    double outlet_height_m{};
    bool has_door{};
    DoorOpening door;
    FireboxLining lining;
    double door_passage_share{}; ///< of the appliance's resistance that stays with the door open
    double embers_share{};       ///< burn rate over embers over that of high fire
    double warmed_pipe_share{};  ///< of the gas's rise over the room, round the pipe at the collar
    double dew_point_acid_share{}; ///< SO3 over SO2
};

struct WeatherCase {
    std::string name;
    double outdoor_temperature_k{};
    double
        room_temperature_k{}; ///< round the appliance; that of outdoors where it is not in a house
    double wind_m_s{};
    double relative_humidity{};
};

/// A stretch of time of one fire, for the warm-up.
struct BurnPhase {
    std::string name; ///< "lighting", "high fire", "burn-down", "fire out"
    double duration_s{};
    double start_kg_s{}; ///< burn rate as fired, straight between the two ends
    double end_kg_s{};
    bool door_ajar{}; ///< the loading door stands ajar, so that the fire gets air past the controls
    bool out{};       ///< no fire: room air follows the draft through the appliance
};

/// A window set open or an air inlet.
struct HouseOpeningCase {
    double area_m2{};
    double height_m{};         ///< over the outlet
    double wind_coefficient{}; ///< pressure outside it over the wind head at the house
};

/// The building, where the file tells of one and gives no room pressure.
struct HouseCase {
    bool known{}; ///< there is one, and some pressure of the room is left for it to tell
    double height_m{};
    double outlet_level_m{};     ///< the outlet over the lowest floor of the shell
    double leak_m3_s{};          ///< C of Q = C dp^n
    double leak_exponent{};      ///< n
    double neutral_level_m{-1.}; ///< over the lowest floor; negative: from even leaks
    double exhaust_m3_s{};       ///< fans that take air out
    double supply_m3_s{};        ///< fans that bring air in
    bool outdoor_air{};          ///< the fire has an air duct of its own
    double wind_share{};         ///< wind at the house over wind at the chimney top
    double wind_coefficient_windward{};
    double wind_coefficient_lee{};
    double wind_coefficient_sides{};
    std::vector<HouseOpeningCase> openings;

    /// Whether a fan may be what holds the room down: not where the file describes a house
    /// without.
    [[nodiscard]] bool fans_may_run() const { return !known || exhaust_m3_s > 0.0; }
};

/// The first minutes of a fire, and what warms the flue before it.
struct Kindling {
    double gas_flow_kg_s{};
    double gas_temperature_k{};
    double burn_rate_kg_s{};
    double preheat_w{}; ///< heat that goes up the flue
};

/// A value supplied because the file did not; always listed.
struct Assumption {
    std::string pointer; ///< where the file could have said it
    std::string what;    ///< in words
    Kind kind{Kind::number};
    double value{};
    std::string word; ///< instead of a value, for words
    std::string_view source;
    std::string_view mark;
};

/// Which inside coefficient is used; see theory eq. 21, 22.
enum class InsideHeat : std::uint8_t {
    disturbed,      ///< floored forced flow and free convection of the cooled layer: the middle
    european_floor, ///< floored forced flow alone: the least that can be defended
    opposed_upper,  ///< forced flow times convection::opposed_factor(): the most
};

struct Case {
    std::string title;
    UnitSystem units{};
    ApplianceCase appliance;
    double air_pressure_pa{};
    double room_temperature_k{}; ///< that the gas temperatures of the fires are told for
    double room_humidity{};
    std::optional<double> room_pressure_burning_pa; ///< given; else the house tells it
    std::optional<double> room_pressure_idle_pa;
    Shelter shelter{};
    HouseCase house;
    Kindling kindling;
    double top_wind_coefficient{}; ///< wind pressure at the chimney top over the wind head
    bool top_is_adverse{};         ///< the file says so, whether or not it tells of wind
    double attic_temperature_k{};  ///< 0: between room and outdoors by attic_share
    double chase_temperature_k{};
    double attic_share{};
    double chase_share{};
    std::vector<WeatherCase> weathers;
    std::vector<WallBuild> walls;
    Run run;               ///< what every part is and where it stands
    bool walls_outdoors{}; ///< has_walls_outdoors(run, ...)
    std::vector<Section>
        sections;                ///< from the outlet to the chimney top: what the march goes along
    std::vector<FlueGas> gases;  ///< of high and low fire
    std::vector<BurnPhase> burn; ///< as the file has it; empty when it does not say
    std::vector<Assumption> assumptions;
    InsideHeat inside_heat{InsideHeat::disturbed};
    int cells_factor{1};            ///< multiplies the number of cells of every straight
    double top_tolerance_pa{1e-10}; ///< how near a run with leaks must meet the pressure outdoors

    /// Whether the file tells of wind.
    [[nodiscard]] bool has_wind() const {
        return std::any_of(weathers.begin(), weathers.end(), [](const WeatherCase& weather) {
            return weather.wind_m_s > 0.0;
        });
    }

    /// Gas at the outlet of a fire that takes air of `room_k`: what the balance of heat gives is
    /// told over that air, a measured temperature is itself.
    [[nodiscard]] double gas_temperature_k(const Firing& fire, double room_k) const {
        return fire.gas_temperature_k
               + (fire.gas_temperature_given ? 0.0 : room_k - room_temperature_k);
    }

    [[nodiscard]] const FlueGas& gas_high() const { return gases[0]; }

    [[nodiscard]] const FlueGas& gas_low() const { return gases[1]; }

    /// Height of the chimney top over the outlet.
    [[nodiscard]] double total_rise_m() const;
};

} // namespace fluewright
