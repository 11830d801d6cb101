#pragma once

#include "fluewright/model/run/case.hpp"
#include "fluewright/model/standards/listing_basis.hpp"

#include <string>

/// The appliance and the vent that the capacity tables of the fuel-gas code stand on, rebuilt as an
/// installation of ours. What the code's text says is taken from it; what it leaves open is listed
/// here, and only `Constants` was fitted.
namespace published::gas_vents {

/// Fitted on every third row; the registry holds these values against a fresh fit.
struct Constants {
    /// Dry CO2 of the fan-assisted appliance. Between the handbook's two kinds of gas appliance:
    /// 5.3 % with a draft hood, 8.0 % without   [ashrae-chimney]
    double carbon_dioxide_fan{fluewright::listing_basis::carbon_dioxide_fan};
    /// Loss of one 90-degree elbow. Handbook 0.75, range 0.2 to 1.5; European table 1.2
    /// [ashrae-chimney, en13384-1, from memory]
    double elbow_loss{fluewright::listing_basis::elbow_loss};
    /// Darcy friction factor of the draft-hood columns of the masonry tables, connector and chimney
    /// alike. An old relation for furnace flues has 0.03 to 0.14   [furnace-gases]
    double friction_masonry_draft_hood{fluewright::listing_basis::friction_masonry_hood};
};

/// Two equal appliances: the common vent has the area of one connector and half the other.
/// Source   rule of the fuel-gas code for the size of a common vent   [from memory]
inline constexpr double common_over_connector_area = 1.5;

enum class System { fan, draft_hood };

/// One cell of a table.
struct Cell {
    System system{System::fan};
    std::string connector; ///< wall of the lateral
    std::string vent;      ///< wall of the upright
    double height_m{};
    double lateral_m{};
    double connector_diameter_m{};
    double vent_diameter_m{};
    bool common{}; ///< two equal appliances in one vent
    double room_pressure_pa{};
    bool handbook_friction{}; ///< friction factor of the handbook's 0.4 L/d instead of ours
};

/// The cell as an installation, its gas set for the system.
[[nodiscard]] fluewright::Case case_of(const Cell& cell, const Constants& constants);

/// The greatest input [W, gross] at which no pressure is left at the outlet: the fan, or the draft
/// hood, must neither help nor spill.
[[nodiscard]] double greatest_input_w(const Cell& cell, const Constants& constants);

/// The least input [W, gross] at which the inner face of the lateral stays above the water dew
/// point in steady firing.
[[nodiscard]] double least_dry_input_w(const Cell& cell, const Constants& constants);

} // namespace published::gas_vents
