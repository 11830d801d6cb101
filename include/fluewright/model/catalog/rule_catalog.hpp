#pragma once

#include "fluewright/model/catalog/rule_id.hpp"
#include "fluewright/model/fields/vocabulary.hpp"

#include <span>
#include <string_view>

/// The tables of the trade, embedded at build time like those of model/catalog/catalog.hpp: rules
/// of installation, clearances, sizes in which things are sold, heat through parts of a building.
namespace fluewright::catalog {

/// One rule of installation. `figure` and `second` are its limits in SI, 0 where it has none.
struct Rule {
    std::string_view id;
    std::string_view body; ///< us, uk, ca, au, de, or any
    /// rule; advice: trade practice, or a figure nobody has looked up; local: one town's old
    /// figure, which is told and decides nothing
    std::string_view strength;
    std::string_view matter;   ///< the bad thing it speaks of; an id of matters() in advice/checks
    std::string_view severity; ///< danger, fault, warning or note
    double figure;
    double second;
    std::string_view unit;      ///< of the figures
    std::string_view says;      ///< what is asked, as a person would say it
    std::string_view applies;   ///< when
    std::string_view source;    ///< key into sources()
    std::string_view clause;    ///< where in it; empty where only its place in sources() is known
    std::string_view mark;      ///< how the figure is known
    std::string_view disagrees; ///< what another source says
    /// Kinds of heater to whom it is told where it does not apply, parted by '|'; empty for any.
    std::string_view kinds;
};

/// A set of rules and who decides on the spot.
struct RuleBody {
    std::string_view id;
    std::string_view name;
    std::string_view decides;
    std::string_view source;
    std::string_view mark;
};

/// Distance left in front of a shield, by the distance needed without it: `above` over a heater or
/// a level pipe, `side` beside a heater or an upright pipe. 0 where the shield gives no reduction.
struct ShieldClearance {
    std::string_view id;
    std::string_view build;
    std::string_view ventilated; ///< yes or no
    double above_36_m;
    double side_36_m;
    double above_18_m;
    double side_18_m;
    double above_12_m;
    double side_12_m;
    double above_9_m;
    double side_9_m;
    double above_6_m;
    double side_6_m;
    std::string_view source;
    std::string_view mark;
};

/// The same as a share taken off the distance needed.
struct ShieldShare {
    std::string_view id; ///< body/shield
    std::string_view body;
    std::string_view build;
    double air_gap_m;
    double side;
    double above;
    std::string_view source;
    std::string_view mark;
};

/// Distances around heaters without a listing.
struct UnlistedClearance {
    std::string_view id;
    std::string_view appliance;
    double above_m;
    double front_m;
    double back_m;
    double firing_side_m;
    double side_m;
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// Least sheet of a connector over a diameter `over_m` up to `to_m`; 0 where the table has no
/// thickness or no gauge.
struct ConnectorThickness {
    std::string_view id;
    std::string_view use; ///< solid, low, medium or vent
    std::string_view applies;
    double over_m;
    double to_m;
    double thickness_m;
    double gauge;
    std::string_view source;
    std::string_view mark;
};

/// A system by which a connector goes through a wall that burns.
struct WallPass {
    std::string_view id; ///< the word of PassThrough
    double round_m;      ///< liner, insulation or air channels, round the flue of the pipe
    double kept_m;       ///< from their outside to the wood
    double deep_m;       ///< least depth through the wall; 0: the wall's own
    std::string_view source;
    std::string_view clause;
    std::string_view mark;
    std::string_view note;
};

/// Least and greatest round flue of an open fireplace, for chimneys from 3, 4.5, 5.9 and 8.9 m.
struct FireplaceFlue {
    std::string_view id;
    double over_m2;
    double to_m2;
    double least_1_m;
    double most_1_m;
    double least_2_m;
    double most_2_m;
    double least_3_m;
    double most_3_m;
    double least_4_m;
    double most_4_m;
    std::string_view source;
    std::string_view mark;
};

struct FlueSizeUk {
    std::string_view id;
    std::string_view heater;
    double over_w;
    double to_w;
    double round_m;
    double side_m;
    std::string_view source;
    std::string_view mark;
};

/// U value of a part of a building [W/(m2 K)], or air changes per hour.
struct BuildingElement {
    std::string_view id;
    std::string_view kind; ///< wall, roof, floor, window, door or air changes
    double value;
    std::string_view source;
    std::string_view mark;
    std::string_view note;
};

/// A length in which pipe or chimney is sold.
struct StockLength {
    std::string_view id;
    Worded<WallKind> kind;   ///< of the wall
    std::string_view system; ///< inch or metric
    double length_m;
    double least_m;       ///< of a telescoping piece; else as length_m
    double lap_m;         ///< how far it goes into the next piece
    std::string_view cut; ///< yes or no: whether it may be cut
    std::string_view source;
    std::string_view mark;
};

[[nodiscard]] std::span<const Rule> rules();
[[nodiscard]] std::span<const RuleBody> rule_bodies();
[[nodiscard]] std::span<const ShieldClearance> shield_clearances();
[[nodiscard]] std::span<const ShieldShare> shield_shares();
[[nodiscard]] std::span<const UnlistedClearance> unlisted_clearances();
[[nodiscard]] std::span<const ConnectorThickness> connector_thicknesses();
[[nodiscard]] std::span<const WallPass> wall_passes();
[[nodiscard]] std::span<const FireplaceFlue> fireplace_flues();
[[nodiscard]] std::span<const FlueSizeUk> flue_sizes_uk();
[[nodiscard]] std::span<const BuildingElement> building_elements();
[[nodiscard]] std::span<const StockLength> stock_lengths();

/// The row of an id; null when there is none.
[[nodiscard]] const Rule* find_rule(std::string_view id);
[[nodiscard]] const Rule& rule_of(RuleId id);
[[nodiscard]] const RuleBody* find_rule_body(std::string_view id);
[[nodiscard]] const ShieldClearance* find_shield(std::string_view id);
[[nodiscard]] const WallPass* find_wall_pass(std::string_view id);
[[nodiscard]] const UnlistedClearance* find_unlisted(std::string_view id);
[[nodiscard]] const BuildingElement* find_building_element(std::string_view id);

} // namespace fluewright::catalog
