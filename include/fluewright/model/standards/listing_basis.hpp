#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <optional>
#include <string_view>

/// The assumptions behind the capacity tables of the fuel-gas codes, as far as they are known. On
/// this basis a gas appliance gets the verdict that its table gives; as built, what the weather and
/// the house of the file do to it.
namespace fluewright::listing_basis {

/// Cool weather of a heating season: 42 degF   [from memory]
inline constexpr double outdoor_k = 278.7;
inline constexpr double room_k = 293.15;
/// Steady, on the gross heating value; fan-assisted appliances have 0.80 to 0.83   [from memory]
inline constexpr double efficiency_fan_gross = 0.82;
/// Dry, of a fan-assisted appliance: a fit to every third row of the tables, between the handbook's
/// two kinds of gas appliance, 5.3 % with a draft hood and 8.0 % without   [ashrae-chimney]
inline constexpr double carbon_dioxide_fan = 0.0655;
/// Dry, behind a draft hood   [ashrae-chimney]
inline constexpr double carbon_dioxide_hood = 0.053;
/// Gas behind a draft hood   [ashrae-chimney]
inline constexpr double gas_temperature_hood_k = 453.15;
/// Of one elbow of 90 degrees, by the same fit; handbook 0.75, range 0.2 to 1.5   [ashrae-chimney]
inline constexpr double elbow_loss = 0.87;
/// Darcy friction factor of draft hoods on masonry chimneys, connector and chimney alike, by the
/// same fit; an old relation for furnace flues has 0.03 to 0.14   [furnace-gases]
inline constexpr double friction_masonry_hood = 0.136;
/// What the walls of the catalog come to there: the handbook's 0.4 L/d in feet and inches
/// [ashrae-chimney]
inline constexpr double friction_of_walls = 0.4 / 12.0;
/// Middle of the handbook's low-resistance cap, 0.5, and the European rain cap, 1.0
/// [ashrae-chimney]
inline constexpr double cap_loss = 0.75;
/// Capacity of a corrugated liner over that of the table   [mechanical-code-ca-2013]
inline constexpr double corrugated_share = 0.80;

/// The installation with the appliance, air and fittings of the tables: its own sizes, heights and
/// walls stay, and what the file measures of the gas gives way. A sea-level input counts at any
/// altitude. Empty where it burns no gas of the catalog.
[[nodiscard]] std::optional<Installation> of(const Installation& written);

} // namespace fluewright::listing_basis
