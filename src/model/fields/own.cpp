#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits heating_value{Kind::heating_value, 1.0e6, 1.5e8, "peat to hydrogen"};
constexpr Limits layer_thickness{Kind::length, 1.0e-4, 1.0, "foil to a thick chimney breast"};
constexpr Limits conductivity{Kind::conductivity, 0.01, 500.0, "still gas to copper"};
constexpr Limits resistance{Kind::thermal_resistance, 0.0, 10.0, "bare metal to thick wool"};
constexpr Limits outside_diameter{Kind::length, 0.05, 3.0, "walls around flues of up to 1 m"};
constexpr Limits roughness{Kind::length, 0.0, 0.02, "glass to rough brick"};
constexpr Limits gas_rating{
    Kind::temperature, celsius(50.0), celsius(1400.0), "ratings of chimney classes"};

constexpr std::array own_fuel_fields{
    choice_field<&OwnFuel::group>(
        required(text("group", {"Decides what is assumed about how it burns.", "wood"}))),
    Field<OwnFuel>{quantity("carbon", share, {"Carbon in the dry fuel, by weight.", "50 %"}),
                   &OwnFuel::carbon},
    Field<OwnFuel>{quantity("hydrogen", share, {"Hydrogen in the dry fuel, by weight.", "6.1 %"}),
                   &OwnFuel::hydrogen},
    Field<OwnFuel>{quantity("oxygen", share, {"Oxygen in the dry fuel, by weight.", "43 %"}),
                   &OwnFuel::oxygen},
    Field<OwnFuel>{quantity("nitrogen", share, {"Nitrogen in the dry fuel, by weight.", "0.2 %"}),
                   &OwnFuel::nitrogen},
    Field<OwnFuel>{quantity("sulfur", share, {"Sulfur in the dry fuel, by weight.", "0.02 %"}),
                   &OwnFuel::sulphur},
    Field<OwnFuel>{quantity("ash", share, {"Ash in the dry fuel, by weight.", "0.7 %"}),
                   &OwnFuel::ash},
    Field<OwnFuel>{
        quantity(
            "gross_heating_value",
            heating_value,
            {"Heat of the dry fuel with its water vapor condensed; one of gross and net is enough.",
             "20 MJ/kg"}),
        &OwnFuel::gross_heating_value_dry_j_kg},
    Field<OwnFuel>{quantity("net_heating_value",
                            heating_value,
                            {"Heat of the dry fuel with its water left as vapor.", "18.6 MJ/kg"}),
                   &OwnFuel::net_heating_value_dry_j_kg},
    Field<OwnFuel>{quantity("moisture",
                            moisture,
                            {"Water in the fuel as fired, where the appliance does not say "
                             "otherwise.",
                             "20 %"}),
                   &OwnFuel::moisture},
};

constexpr std::array own_wall_fields{
    choice_field<&OwnWall::kind>(
        text("kind", {"The class of wall, for rules and names.", "insulated"})),
    Field<OwnWall>{quantity("thermal_resistance",
                            resistance,
                            {"Resistance of the whole wall on its inside area, instead of layers.",
                             "0.4 m2K/W"}),
                   &OwnWall::thermal_resistance_m2k_w},
    Field<OwnWall>{quantity("outside_diameter",
                            outside_diameter,
                            {"Outside diameter, where layers do not give it.", "200 mm"}),
                   &OwnWall::outside_diameter_m},
    Field<OwnWall>{
        quantity("inner_emissivity",
                 emissivity,
                 {"How well the inside takes up radiation, 0 to 1; a plain number.", "0.9"}),
        &OwnWall::inner_emissivity},
    Field<OwnWall>{
        quantity("outer_emissivity",
                 emissivity,
                 {"How well the outside gives off radiation, 0 to 1; a plain number.", "0.3"}),
        &OwnWall::outer_emissivity},
    Field<OwnWall>{
        quantity("roughness", roughness, {"Mean height of the bumps on the inside.", "1 mm"}),
        &OwnWall::roughness_m},
    Field<OwnWall>{quantity("rated_gas_temperature",
                            gas_rating,
                            {"Gas temperature the wall is rated for in lasting use.", "450 degC"}),
                   &OwnWall::rated_gas_temperature_k},
};

constexpr std::array own_layer_fields{
    Field<OwnLayer>{name_from("material",
                              Words::materials,
                              {"A material of the catalog, or air gap; with a conductivity of its "
                               "own, any name.",
                               "mineral wool"}),
                    &OwnLayer::material},
    Field<OwnLayer>{
        required(quantity("thickness", layer_thickness, {"Thickness of the layer.", "25 mm"})),
        &OwnLayer::thickness_m},
    Field<OwnLayer>{quantity("conductivity",
                             conductivity,
                             {"Conductivity, instead of that of the material.", "0.08 W/mK"}),
                    &OwnLayer::conductivity_w_mk},
};

constexpr std::array own_fitting_fields{
    Field<OwnFitting>{required(quantity("loss",
                                        loss,
                                        {"Loss coefficient on the velocity head in the pipe; a "
                                         "plain number.",
                                         "1.4"})),
                      &OwnFitting::loss},
};

} // namespace

template <>
std::span<const Field<OwnFuel>> fields() {
    return own_fuel_fields;
}

template <>
std::span<const Field<OwnWall>> fields() {
    return own_wall_fields;
}

template <>
std::span<const Field<OwnLayer>> fields() {
    return own_layer_fields;
}

template <>
std::span<const Field<OwnFitting>> fields() {
    return own_fitting_fields;
}

} // namespace fluewright
