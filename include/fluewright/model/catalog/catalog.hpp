#pragma once

#include "fluewright/model/catalog/default_id.hpp"
#include "fluewright/model/fields/vocabulary.hpp"

#include <span>
#include <string_view>

/// The tables of data/, embedded at build time. Every row carries its source (a key into sources())
/// and a mark that says how the figure is known: "looked up", "quoted", "computed", "judgement",
/// "common practice" or "from memory".
namespace fluewright::catalog {

struct Source {
    std::string_view id;
    std::string_view kind; ///< standard, law, handbook, paper, report, library, practice, memory
    std::string_view document;
    std::string_view place; ///< edition, clause, table or address
    std::string_view year;  ///< of the edition the figures are from; empty where none is known
    std::string_view newer; ///< what is known of a newer edition; empty where nothing is
    std::string_view
        used_by; ///< data (a table names it) or code (only comments, findings or tests do)
};

/// Elementary analysis as mass fractions of the dry fuel; heating values in J per kg.
struct Fuel {
    std::string_view id;
    std::string_view aliases; ///< other accepted names, separated by '|'
    Worded<FuelGroup> group;
    double carbon;
    double hydrogen;
    double oxygen;
    double nitrogen;
    double sulphur;
    double ash;
    double gross_heating_value_dry_j_kg;
    double default_moisture; ///< kg water per kg fuel as fired
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

struct Material {
    std::string_view id;
    double conductivity_w_mk;
    double conductivity_slope_w_mk2; ///< change per kelvin above 20 degC; 0 where unknown
    double density_kg_m3;
    double specific_heat_j_kgk;
    double emissivity;
    double roughness_m;
    double expansion_per_k; ///< mean linear expansion from 20 degC to working heat
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// A named wall. `layers` lists it from the inside out as "material thickness_mm", parts separated
/// by '|', air gaps as "air gap 12.5"; e.g. "stainless steel 0.5|mineral wool hot 25|stainless
/// steel 0.5".
struct Wall {
    std::string_view id;
    std::string_view aliases;
    Worded<WallKind> kind;
    std::string_view layers;
    double inner_emissivity;
    double outer_emissivity;
    double roughness_m;
    double rated_gas_temperature_k;   ///< continuous rating of the product class; 0 where none
    std::string_view unrated_because; ///< why it has none; empty where it has one
    std::string_view fuels; ///< groups of fuels it may serve, parted by '|'; empty for any
    std::string_view sizes; ///< the system of trade sizes it is made in alone; empty for any
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// Loss coefficients on the velocity head in the part's own pipe.
struct Fitting {
    std::string_view id;
    std::string_view part;  ///< elbow, tee, cap, screen, entry, ...
    std::string_view build; ///< smooth, gored, mitered, plain, ...
    double angle_deg;       ///< 0 where it has no meaning
    double loss;            ///< middle of the spread
    double loss_low;
    double loss_high;
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// Trade sizes by inside diameter; `system` is "inch" or "metric".
struct TradeSize {
    std::string_view id; ///< as the trade says it: "6 in", "150 mm"
    std::string_view system;
    double inside_diameter_m;
    /// Kinds of wall in which shops seldom stock it, parted by '|'; empty: none.
    std::string_view seldom_sold_as;
    std::string_view source;
    std::string_view mark;
};

/// Clay liners for masonry: outside name, clear inside sides.
struct ClayLiner {
    std::string_view id;
    std::string_view aliases;
    double inside_width_m;
    double inside_depth_m;  ///< equal to the width, with `round`, for a round liner
    std::string_view shape; ///< round or rectangular
    double net_area_m2; ///< the section a code or handbook allows; up to 20 % off side times side
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// What is assumed of an appliance when the file does not say.
struct ApplianceDefault {
    std::string_view id; ///< "stove/wood", "fireplace/wood", "boiler/oil", ...
    Worded<ApplianceType> type;
    Worded<FuelGroup> fuel_group;
    double air_ratio_high; ///< combustion air over stoichiometric air at high fire
    double air_ratio_low;
    double efficiency_net;      ///< useful heat over net heating value, at high fire
    double unburned_share_high; ///< share of the net heat lost as unburned gas and char
    double unburned_share_low;
    double draft_needed_high_pa;
    double draft_needed_low_pa;
    double draft_greatest_pa;  ///< above this the fire can no longer be held
    double low_fire_share;     ///< low burn rate over high burn rate
    double load_density_kg_m3; ///< fuel load per firebox volume, for unlabelled heaters
    double burn_hours_high;    ///< hours one such load lasts at high fire
    double lining_area_m2;     ///< hot surface that the air from an open door passes
    double lining_mass_kg;     ///< lining and body behind it
    double warmed_pipe_share;  ///< of the gas's rise over the room, round the pipe at the collar
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// A single assumed figure, in SI.
struct Default {
    std::string_view id; ///< snake_case, e.g. "room_temperature_k"
    double value;
    double low; ///< the ends of what is plausible for this figure
    double high;
    std::string_view unit;
    std::string_view meaning;
    std::string_view source;
    std::string_view mark;
};

/// What a change to an installation takes, on a plain scale; see data/remedy_effort.csv.
struct RemedyEffort {
    std::string_view id;
    std::string_view title;
    double effort;
    double effort_per_metre; ///< of the pipe or wall the change touches
    std::string_view may_worsen;
    std::string_view kinds; ///< kinds of heater it is offered for: applies_to()
    std::string_view source;
    std::string_view mark;
};

/// A preferred word of the trade.
struct Word {
    std::string_view id;
    std::string_view meaning;
    std::string_view aliases;  ///< further words for it that may be asked for, parted by '|'
    std::string_view not_used; ///< words that nothing a person reads may hold, parted by '|'
    std::string_view source;
    std::string_view mark;
};

[[nodiscard]] std::span<const Source> sources();
[[nodiscard]] std::span<const Word> words();
[[nodiscard]] std::span<const Fuel> fuels();
[[nodiscard]] std::span<const Material> materials();
[[nodiscard]] std::span<const Wall> walls();
[[nodiscard]] std::span<const Fitting> fittings();
[[nodiscard]] std::span<const TradeSize> trade_sizes();
[[nodiscard]] std::span<const ClayLiner> clay_liners();
[[nodiscard]] std::span<const ApplianceDefault> appliance_defaults();
[[nodiscard]] std::span<const Default> defaults();
[[nodiscard]] std::span<const RemedyEffort> remedy_efforts();

/// Look-ups by id or alias, exact after lower-casing and trimming; null when there is no such row.
/// By the word itself or one of its aliases; nullptr for no word of the glossary.
[[nodiscard]] const Word* find_word(std::string_view word);
[[nodiscard]] const Source* find_source(std::string_view id);
[[nodiscard]] const Fuel* find_fuel(std::string_view id);
[[nodiscard]] const Material* find_material(std::string_view id);
[[nodiscard]] const Wall* find_wall(std::string_view id);
[[nodiscard]] const Fitting* find_fitting(std::string_view id);
[[nodiscard]] const ClayLiner* find_clay_liner(std::string_view id);
[[nodiscard]] const TradeSize* find_trade_size(std::string_view id);
[[nodiscard]] const ApplianceDefault* find_appliance_default(ApplianceType type,
                                                             FuelGroup fuel_group);
[[nodiscard]] const Default* find_default(std::string_view id);
/// The default `id`: the build makes the enumeration from the rows of data/defaults.csv.
[[nodiscard]] const Default& default_of(DefaultId id);

} // namespace fluewright::catalog
