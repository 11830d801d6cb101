#include "gas_vents.hpp"

#include "gas_vents_fit.hpp"
#include "registry.hpp"

#include <cmath>
#include <stdexcept>

namespace published {
namespace {

constexpr double foot_m = 0.3048;
constexpr double inch_m = 0.0254;
constexpr double thousand_btu_per_hour_w = 1055.05585262e3 / 3600.0;
constexpr double inch_of_water_pa = 249.089;

std::string wall_of(const std::string& word) {
    if (word == "type-b") {
        return "type b vent";
    }
    if (word == "single-wall") {
        return "single-wall galvanized";
    }
    if (word == "masonry") {
        return "clay-lined masonry";
    }
    throw std::runtime_error("no such wall: " + word);
}

/// The fitted constants, or others that the row asks for.
gas_vents::Constants constants_of(const Inputs& in) {
    const gas_vents::Constants fitted;
    return {.carbon_dioxide_fan =
                in.number_or("fan_co2_pct", 100.0 * fitted.carbon_dioxide_fan) / 100.0,
            .elbow_loss = in.number_or("elbow_loss", fitted.elbow_loss),
            .friction_masonry_draft_hood =
                in.number_or("masonry_friction", fitted.friction_masonry_draft_hood)};
}

double with_constants(const Inputs& in, const gas_vents::Constants& constants) {
    return gas_vents::greatest_input_w(gas_vents::cell_of(in), constants) / thousand_btu_per_hour_w;
}

double share_left(const Inputs& in) {
    gas_vents::Cell cell = gas_vents::cell_of(in);
    const double whole = gas_vents::greatest_input_w(cell, {});
    cell.room_pressure_pa = -in.number("suction_inh2o") * inch_of_water_pa;
    return gas_vents::greatest_input_w(cell, {}) / whole;
}

/// The tables speak of an appliance that cycles. Steady dryness is asked of its mean over a cycle
/// of the furnace test, 3.87 min on and 13.3 min off   [from memory].
double least_input(const Inputs& in) {
    constexpr double share_on = 3.87 / (3.87 + 13.3);
    return gas_vents::least_dry_input_w(gas_vents::cell_of(in), {}) / share_on
           / thousand_btu_per_hour_w;
}

double fitted_constant(const Inputs& in) {
    static const gas_vents::Constants fitted = gas_vents::fitted_constants();
    const std::string& name = in.text("constant");
    if (name == "carbon_dioxide_pct") {
        return 100.0 * fitted.carbon_dioxide_fan;
    }
    if (name == "elbow_loss") {
        return fitted.elbow_loss;
    }
    if (name == "friction") {
        return fitted.friction_masonry_draft_hood;
    }
    throw std::runtime_error("no such constant: " + name);
}

} // namespace

namespace gas_vents {

Cell cell_of(const Inputs& in) {
    Cell cell;
    const std::string& system = in.text("system");
    if (system != "fan" && system != "hood") {
        throw std::runtime_error("no such system: " + system);
    }
    cell.system = system == "fan" ? System::fan : System::draft_hood;
    cell.connector = wall_of(in.text("connector"));
    cell.vent = wall_of(in.text("vent"));
    cell.height_m = in.number("height_ft") * foot_m;
    cell.vent_diameter_m = in.number("diameter_in") * inch_m;
    cell.common = in.number_or("common", 0.0) > 0.0;
    cell.connector_diameter_m = cell.common
                                    ? cell.vent_diameter_m / std::sqrt(common_over_connector_area)
                                    : cell.vent_diameter_m;
    cell.lateral_m = cell.common ? 0.0 : in.number("lateral_ft") * foot_m;
    cell.handbook_friction = in.number_or("handbook_friction", 1.0) > 0.0;
    if (const double area = in.number_or("flue_area_in2", 0.0); area > 0.0) {
        cell.vent_diameter_m = std::sqrt(area / 0.785398163397448) * inch_m;
    }
    return cell;
}

double input_of(const Inputs& in, const Constants& constants) {
    return with_constants(in, constants);
}

} // namespace gas_vents

void add_gas_vent_checks(Registry& registry) {
    registry["gas_vent_capacity"] = {"greatest input", "1000 Btu/h", [](const Inputs& in) {
                                         return with_constants(in, constants_of(in));
                                     }};
    registry["gas_vent_share_left"] = {"share of the capacity left", "", share_left};
    registry["gas_vent_least_input"] = {"least input", "1000 Btu/h", least_input};
    registry["gas_vent_fit"] = {"fitted constant", "", fitted_constant};
}

} // namespace published
