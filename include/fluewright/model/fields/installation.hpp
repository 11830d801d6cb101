#pragma once

#include "fluewright/model/fields/vocabulary.hpp"

#include <optional>
#include <string>
#include <vector>

/// What the user wrote, in SI and nothing added: every member that may be left out is optional, and
/// no default is filled in here. resolve() turns it into a Case and notes each value it had to
/// assume. The tables in model/fields/fields.hpp tell the key, the kind of quantity, the range and
/// the meaning of every member; reader, schema and reference are made from them.
namespace fluewright {

using Given = std::optional<double>;
using Word = std::optional<std::string>;
using Flag = std::optional<bool>;

/// A value of a closed vocabulary, where it is given.
template <Vocabulary E>
using Choice = std::optional<E>;

/// A value at low and at high fire. In a file: one quantity (taken for high fire, and for low fire
/// where it does not depend on the fire) or an object with "low" and "high".
struct HighLow {
    Given low;
    Given high;

    bool operator==(const HighLow&) const = default;
};

struct Weather {
    Word name;
    Given outdoor_temperature_k;
    Given wind_m_s;
    Given relative_humidity;

    bool operator==(const Weather&) const = default;
};

/// What stands near the mouth.
struct NearThing {
    Choice<NearThingKind> what; ///< building, opening or tree
    Given distance_m;           ///< level, from the mouth
    Given below_mouth_m; ///< how far its top lies under the mouth; negative where it is taller

    bool operator==(const NearThing&) const = default;
};

/// The roof the chimney leaves through.
struct Roof {
    Given pitch_rad;
    Given distance_to_ridge_m;     ///< level
    Given mouth_above_roof_m;      ///< over the highest place where the chimney leaves the roof
    Choice<RoofCovering> covering; ///< tiles, metal, felt, thatch or shingles
    Flag braced;
    std::vector<NearThing> near;

    bool operator==(const Roof&) const = default;
};

struct Alarms {
    Flag carbon_monoxide;
    Flag smoke;
    Given distance_m; ///< level, from the heater to the carbon monoxide alarm

    bool operator==(const Alarms&) const = default;
};

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

struct Site {
    Given altitude_m;
    Given air_pressure_pa;
    Given attic_temperature_k;
    Given chase_temperature_k;
    Given air_inlet_m2;   ///< opening for air from outdoors
    Given flue_shared_by; ///< heaters on the flue, this one counted
    Given year_fitted;
    Flag tight_house;
    Choice<RuleSet> rules; ///< us, uk, ca, au, de or none
    Roof roof;
    Alarms alarms;
    Choice<ChimneyTopPosition> mouth_position; ///< clear, near ridge or adverse
    Room room;
    House house;
    std::vector<Weather> weather;

    bool operator==(const Site&) const = default;
};

struct FuelChoice {
    Word name;
    Given moisture; ///< kg water per kg fuel as fired (wet basis)

    bool operator==(const FuelChoice&) const = default;
};

struct Outlet {
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular collar
    Given depth_m;
    Choice<PipeEnd> end; ///< plain, crimped, socket, flange or locking
    Given height_m;      ///< centre of the collar over the floor

    bool operator==(const Outlet&) const = default;
};

struct Door {
    Given width_m;
    Given height_m;
    Given sill_height_m; ///< lower edge of the opening over the floor

    bool operator==(const Door&) const = default;
};

struct Firebox {
    Given volume_m3;
    Given width_m;
    Given depth_m;
    Given height_m;

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

struct Appliance {
    Flag listed;
    Choice<ApplianceStyle>
        style;    ///< radiant, jacketed, ...: for the table of heaters that are not listed
    Given legs_m; ///< clear height under the heater
    Choice<FloorKind> floor; ///< burnable or noncombustible
    Flag damper_allowed;
    Flag smoke_exempt;
    Clearances clearances;
    Clearances listed_clearances;
    FloorProtection floor_protection;
    Choice<ApplianceType> type; ///< stove, fireplace, furnace, boiler or draft-hood
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
    HighLow gas_temperature_k; ///< at the outlet
    HighLow draft_needed_pa;
    Given preheat_w; ///< heat sent up the flue before lighting
    Given draft_greatest_pa;
    Door door;
    Firebox firebox;

    bool operator==(const Appliance&) const = default;
};

/// One entry of the run. Which members have a meaning depends on `part`; the field table says so.
struct Part {
    Choice<PartKind> part; ///< straight, elbow, tee, reducer, increaser, damper, screen, cap,
                           ///< obstruction, fitting
    Word name;
    Given up_m;     ///< rise of a vertical straight
    Given down_m;   ///< fall of a vertical straight
    Given across_m; ///< level distance
    Given rise_m;   ///< rise that goes with across_m
    Given slope;    ///< rise over level distance, instead of rise_m
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular flue
    Given depth_m;
    Word liner; ///< trade name of a clay liner: gives width and depth
    Word wall;
    Choice<Zone> zone;          ///< room, attic, chase or outdoors
    Choice<Stretch> belongs_to; ///< connector or chimney; left out, by what the pipe is
    Given angle_rad;
    Choice<Build> build;  ///< elbow: smooth, gored, mitred; cap: open, plain, rain
    Given radius_m;       ///< centre-line radius of an elbow
    Choice<TeeFlow> flow; ///< tee: "side" (the gas turns in the tee) or "straight"
    Flag cleanout;
    Given blade_angle_rad; ///< damper: 0 is open, a right angle is shut
    Flag only_when_strong; ///< damper: turned so only while the draft is too strong, open else
    Given taper_length_m;
    Given mesh_m;                      ///< clear opening of a screen
    Given free_area;                   ///< share of the section a screen or cap leaves open
    Given blocked;                     ///< share of the section an obstruction takes
    Given deposit_m;                   ///< thickness of what has grown on the inside
    Choice<DepositKind> deposit;       ///< soot, flaky creosote, glazed creosote or ash
    Word fitting;                      ///< a fitting defined in the file or the catalog
    Given loss;                        ///< loss coefficient, when it is known
    Given rated_surface_temperature_k; ///< of the paint or the wall
    Choice<JointFit> joint;    ///< fit of the joint at its lower end: sealed ... loose, or a class
    Given joint_gap_m;         ///< width of the slit all round that joint
    Given leakage_area_m2;     ///< of that joint alone
    Given setting_pa;          ///< draft regulator: the draft at which it opens
    Given opening_diameter_m;  ///< draft regulator: of its gate
    Given open_area_m2;        ///< draft hood: of its opening to the room
    Given expansion_allowed_m; ///< movement the joint of a straight takes up
    Given clearance_m;         ///< to what burns
    Given listed_clearance_m;
    Choice<Shield> shield;
    Given shield_gap_m;
    Given shield_reach_m;   ///< how far the shield reaches past the pipe's axis on each side
    Choice<Passage> passes; ///< what it goes through
    Choice<PassThrough> pass_through; ///< how it goes through a wall that burns
    Given thickness_m;                ///< of the sheet
    Given gauge;
    Choice<PipeEnd> heater_end; ///< plain, crimped, socket, flange or locking
    Choice<PipeEnd> chimney_end;
    Given screws; ///< in the joint at its lower end
    Given lap_m;
    Given supports; ///< along it
    Flag slip_joint;
    Choice<ChimneyRating> rating; ///< HT, 650 degC or other
    Given cap_gap_m;

    bool operator==(const Part&) const = default;
};

/// A part of the building that loses heat.
struct BuildingPart {
    Word name;
    Word element; ///< a row of the catalog
    Given area_m2;
    Given u_value_w_m2k;
    Given thermal_resistance_m2k_w;

    bool operator==(const BuildingPart&) const = default;
};

struct Building {
    std::vector<BuildingPart> parts;
    Given volume_m3;
    Given air_changes_per_s;
    Given outdoor_temperature_k; ///< to design for
    Given indoor_temperature_k;

    bool operator==(const Building&) const = default;
};

/// Pipe at hand, or a length the shop sells.
struct StockPiece {
    Word wall;
    Given diameter_m;
    Given length_m;
    Given shortest_m; ///< of a telescoping piece
    Given count;      ///< left out: as many as wanted, to be bought

    bool operator==(const StockPiece&) const = default;
};

/// A fuel of the user's own, dry analysis as mass shares.
struct OwnFuel {
    std::string id;
    Choice<FuelGroup> group;
    Given carbon;
    Given hydrogen;
    Given oxygen;
    Given nitrogen;
    Given sulphur;
    Given ash;
    Given gross_heating_value_dry_j_kg;
    Given net_heating_value_dry_j_kg;
    Given moisture;

    bool operator==(const OwnFuel&) const = default;
};

struct OwnLayer {
    Word material;
    Given thickness_m;
    Given conductivity_w_mk;

    bool operator==(const OwnLayer&) const = default;
};

struct OwnWall {
    std::string id;
    Choice<WallKind> kind;
    std::vector<OwnLayer> layers;
    Given thermal_resistance_m2k_w; ///< on the inside area, instead of layers
    Given outside_diameter_m;
    Given inner_emissivity;
    Given outer_emissivity;
    Given roughness_m;
    Given rated_gas_temperature_k;

    bool operator==(const OwnWall&) const = default;
};

struct OwnFitting {
    std::string id;
    Given loss;

    bool operator==(const OwnFitting&) const = default;
};

/// A stretch of time of one fire, for the warm-up.
struct BurnEntry {
    Word name;
    Given duration_s;
    Given burn_rate_kg_s; ///< 0: the fire is out

    bool operator==(const BurnEntry&) const = default;
};

/// Something seen, tried or measured on the installation as it stands. Several readings taken at
/// one time and place may share an entry; each counts by itself.
struct Observation {
    Choice<SmokePlace>
        smoke;     ///< joints, door, lighting, wind, fan or none: where or when smoke comes out
    Flag sluggish; ///< the fire burns poorly
    Flag roaring;  ///< the fire cannot be held down
    Flag drips;    ///< tar or water runs from the flue
    Flag smell_when_idle;
    Flag co_alarm;               ///< a carbon monoxide alarm sounded
    Choice<TroubleCourse> worse; ///< over weeks, overnight or steady
    Flag better_with_window_open;
    Choice<SmokeStick> smoke_stick; ///< in, out or still: what smoke held at a joint does
    Choice<LookedAt> look;          ///< what was looked at: cap, flue, damper, ...
    Choice<FoundState> found;       ///< good or bad, of what was looked at
    Choice<StateKind> state;        ///< high fire, low fire, ...
    Word weather;                   ///< name of one of the weathers
    Choice<WindowState> window;     ///< open or shut
    Choice<FanState> fan;           ///< running or off
    Choice<WindState> wind;         ///< windy or calm
    Word at;                        ///< "outlet", "mouth", or the number of a part
    Given draft_pa;
    Given gas_temperature_k;
    Given surface_temperature_k;
    Given room_pressure_pa;
    Given carbon_dioxide;
    Given oxygen;
    Given moisture;
    Given deposit_m;

    bool operator==(const Observation&) const = default;
};

/// A spread the user wrote behind a value: `"4.2 m ± 0.1 m"`.
struct Tolerance {
    std::string pointer; ///< of the value; a bare value of low and high fire is /high
    double half_width;   ///< SI

    bool operator==(const Tolerance&) const = default;
};

struct Installation {
    Word id; ///< what a batch calls the record, so that results can be joined to it
    Word title;
    Choice<FileUnits> units; ///< metric or us: how the text output shows quantities
    Site site;
    Appliance appliance;
    std::vector<Part> run;
    std::vector<OwnFuel> fuels;
    std::vector<OwnWall> walls;
    std::vector<OwnFitting> fittings;
    std::vector<Observation> observed;
    std::vector<BurnEntry> burn;
    Building building;
    std::vector<StockPiece> stock;
    std::vector<Tolerance> tolerances;
    int us_quantities{0};     ///< how many quantities were typed in US units
    int metric_quantities{0}; ///< how many in metric units

    bool operator==(const Installation&) const = default;
};

} // namespace fluewright
