#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits legs{Kind::length, 0.0, 2.0, "heaters that stand on a floor"};

constexpr double kilogram_per_hour = 1.0 / 3600.0;
constexpr Limits burn_rate{Kind::mass_rate,
                           0.05 * kilogram_per_hour,
                           500.0 * kilogram_per_hour,
                           "appliances this program is made for"};
constexpr Limits efficiency{
    Kind::fraction, 0.05, 1.1, "on the net heating value a condensing boiler passes 100 %"};
constexpr Limits air_ratio{
    Kind::number, 1.0, 200.0, "no excess air to a small fire on a wide hearth"};
constexpr Limits gas_flow{Kind::gas_flow, 1.0e-5, 2.0, "appliances this program is made for"};
constexpr Limits draft_needed{
    Kind::pressure, -200.0, 500.0, "a fan that pushes to a fire choked by its throat"};
constexpr Limits draft_greatest{Kind::pressure, 1.0, 200.0, "drafts that appliances allow"};
constexpr Limits charge{Kind::mass, 0.5, 200.0, "masonry heaters that people build"};
constexpr Limits charge_time{Kind::duration, 900.0, 36000.0, "masonry heaters that people build"};
constexpr Limits throat{Kind::area, 0.001, 2.0, "open hearths"};
constexpr Limits preheat{Kind::power, 20.0, 2.0e4, "a lamp to a roaring kindling fire"};
constexpr Limits outlet_height{Kind::length, 0.0, 10.0, "appliances that stand on a floor"};
constexpr Limits opening_side{Kind::length, 0.02, 5.0, "doors and fireplace fronts"};
constexpr Limits sill{Kind::length, 0.0, 5.0, "doors and fireplace fronts"};
constexpr Limits box_side{Kind::length, 0.05, 5.0, "fireboxes this program is made for"};
constexpr Limits lining_area{Kind::area, 0.0, 50.0, "fireboxes this program is made for"};
constexpr Limits lining_mass{Kind::mass, 0.0, 10000.0, "a sheet stove to a masonry heater"};
constexpr Limits warmed_pipe{
    Kind::fraction, 0.0, 0.4, "a heater in its jacket to a glowing top under the collar"};
constexpr Limits box_volume{Kind::volume, 0.001, 20.0, "fireboxes this program is made for"};

constexpr std::array appliance_fields{
    choice_field<&Appliance::type>(
        required(text("type",
                      {"What kind of heater it is; draft-hood is a gas appliance "
                       "with a draft hood, masonry-heater burns one charge of wood at a time and "
                       "stores its heat.",
                       "stove"}))),
    Field<Appliance>{text("insert",
                          {"Whether a closed insert stands in the fireplace: it is judged as a "
                           "stove, with its own outlet and door, on a liner of its outlet's size.",
                           "true"}),
                     &Appliance::insert},
    Field<Appliance>{text("name", {"What the heater is called in the report.", "iron heater"}),
                     &Appliance::name},
    Field<Appliance>{quantity("burn_rate", burn_rate, {"Fuel burned per hour.", "3.8 kg/h"}),
                     &Appliance::burn_rate_kg_s},
    choice_field<&Appliance::burn_rate_basis>(text(
        "burn_rate_basis", {"Whether the burn rate counts the water in the fuel.", "as fired"})),
    Field<Appliance>{
        quantity("heat_input", power, {"Heat in the fuel burned, by net heating value.", "14 kW"}),
        &Appliance::heat_input_w},
    Field<Appliance>{quantity("heat_output", power, {"Useful heat given off.", "9 kW"}),
                     &Appliance::heat_output_w},
    Field<Appliance>{
        quantity("efficiency", efficiency, {"Useful heat over the heat in the fuel.", "68 %"}),
        &Appliance::efficiency},
    choice_field<&Appliance::efficiency_basis>(
        text("efficiency_basis",
             {"The heating value the efficiency is counted on; gross holds the heat of the water "
              "vapor too.",
              "net"})),
    Field<Appliance>{
        quantity("air_ratio",
                 air_ratio,
                 {"Combustion air over the least the fuel needs; a plain number.", "2.2"}),
        &Appliance::air_ratio},
    Field<Appliance>{quantity("carbon_dioxide",
                              carbon_dioxide,
                              {"CO2 measured in the dry flue gas; gives the air ratio.", "9 %"}),
                     &Appliance::carbon_dioxide},
    Field<Appliance>{quantity("oxygen",
                              oxygen,
                              {"O2 measured in the dry flue gas; gives the air ratio.", "11.5 %"}),
                     &Appliance::oxygen},
    Field<Appliance>{
        quantity("gas_flow",
                 gas_flow,
                 {"Flue gas leaving the outlet, as measured or from the label.", "9 g/s"}),
        &Appliance::gas_flow_kg_s},
    Field<Appliance>{
        quantity("gas_temperature",
                 gas_temperature,
                 {"Gas temperature at the outlet, as measured or from the label.", "280 degC"}),
        &Appliance::gas_temperature_k},
    choice_field<&Appliance::gas_temperature_kind>(
        text("gas_temperature_kind",
             {"What that temperature is: the true one, as labels and tests have it, or the reading "
              "of a bare probe, which sees the colder wall and shows less; left out, the true one.",
              "true gas"})),
    Field<Appliance>{quantity("draft_needed",
                              draft_needed,
                              {"Draft the appliance requires at its outlet, written positive; "
                               "negative where its own push is left there.",
                               "12 Pa"}),
                     &Appliance::draft_needed_pa},
    Field<Appliance>{
        quantity("fan_pressure",
                 draft,
                 {"Pressure above the room that its own fan gives at the outlet; instead of "
                  "draft_needed.",
                  "15 Pa"}),
        &Appliance::fan_pressure_pa},
    Field<Appliance>{quantity("charge",
                              charge,
                              {"Fuel of one firing of a masonry heater, as fired; goes with "
                               "burn_time.",
                               "16 kg"}),
                     &Appliance::charge_kg},
    Field<Appliance>{quantity("burn_time",
                              charge_time,
                              {"How long a charge of a masonry heater burns.", "90 min"}),
                     &Appliance::burn_time_s},
    Field<Appliance>{
        quantity("preheat",
                 preheat,
                 {"Heat sent up a flue that does not draw before the fire is lit; left "
                  "out, that of a kindling fire.",
                  "1.5 kW"}),
        &Appliance::preheat_w},
    Field<Appliance>{quantity("draft_greatest",
                              draft_greatest,
                              {"Draft above which the fire can no longer be held.", "30 Pa"}),
                     &Appliance::draft_greatest_pa},
    Field<Appliance>{text("listed", {"Whether a test laboratory has listed it.", "true"}),
                     &Appliance::listed},
    choice_field<&Appliance::style>(
        text("style",
             {"How it gives off its heat, for distances of heaters that are not "
              "listed.",
              "radiant"})),
    Field<Appliance>{quantity("legs", legs, {"Clear height under the heater.", "150 mm"}),
                     &Appliance::legs_m},
    choice_field<&Appliance::floor>(text("floor", {"What the heater is on.", "combustible"})),
    Field<Appliance>{
        quantity(
            "warmed_pipe",
            warmed_pipe,
            {"How much of the gas's rise over the room the heater's top and the air that rises "
             "from it add to the room's temperature round the pipe at the collar; half of it is "
             "left half a meter on. Left out, what heaters of this kind do.",
             "16 %"}),
        &Appliance::warmed_pipe_share},
    Field<Appliance>{
        text("damper_allowed", {"Whether its maker allows a damper in the pipe.", "true"}),
        &Appliance::damper_allowed},
    Field<Appliance>{text("draft_regulator",
                          {"Whether a draft regulator (stabilizer) is built into it; one in the "
                           "pipe is a part of the run.",
                           "false"}),
                     &Appliance::draft_regulator},
    Field<Appliance>{text("smoke_exempt",
                          {"Whether it, or its fuel, is exempt in smoke control areas.", "true"}),
                     &Appliance::smoke_exempt},
};

constexpr std::array fuel_fields{
    Field<FuelChoice>{
        name_from("name", Words::fuels, {"A fuel of the catalog or of this file.", "beech"}),
        &FuelChoice::name},
    Field<FuelChoice>{
        quantity("moisture",
                 moisture,
                 {"Water in the fuel as fired, as a share of its whole weight.", "18 %"}),
        &FuelChoice::moisture},
};

constexpr std::array outlet_fields{
    Field<Outlet>{quantity("diameter", flue_side, {"Inside diameter of the collar.", "180 mm"}),
                  &Outlet::diameter_m},
    Field<Outlet>{
        quantity("width",
                 flue_side,
                 {"Inside width of a rectangular or oval collar; goes with depth.", "200 mm"}),
        &Outlet::width_m},
    Field<Outlet>{
        quantity("depth", flue_side, {"Inside depth of a rectangular or oval collar.", "140 mm"}),
        &Outlet::depth_m},
    choice_field<&Outlet::shape>(text(
        "shape",
        {"Section of a collar with width and depth. Oval: two half circles and the straights "
         "between "
         "them; its size is width and depth, or one of them with the diameter of the round pipe it "
         "takes once that is pressed oval.",
         "oval"})),
    choice_field<&Outlet::end>(
        text("end",
             {"How the collar takes the pipe: a socket takes a crimped or plain end "
              "inside.",
              "socket"}),
        words_between(PipeEnd::plain, PipeEnd::locking)),
    Field<Outlet>{
        quantity("height",
                 outlet_height,
                 {"Center of the collar above the floor.", "0.75 m", DefaultId::outlet_height_m}),
        &Outlet::height_m},
};

constexpr std::array door_fields{
    Field<Door>{quantity("width",
                         opening_side,
                         {"Clear width of the opening.", "420 mm", DefaultId::door_width_m}),
                &Door::width_m},
    Field<Door>{quantity("height",
                         opening_side,
                         {"Clear height of the opening.", "300 mm", DefaultId::door_height_m}),
                &Door::height_m},
    Field<Door>{quantity("sill", sill, {"Lower edge of the opening above the floor.", "350 mm"}),
                &Door::sill_height_m},
    Field<Door>{quantity("open_width",
                         opening_side,
                         {"Clear width of all open sides together, of a hearth open on more than "
                          "one; left out, the width.",
                          "1.1 m"}),
                &Door::open_width_m},
    Field<Door>{quantity("throat",
                         throat,
                         {"Free area of the throat or the open damper between an open hearth and "
                          "its flue; left out, no narrower than the flue.",
                          "450 cm2"}),
                &Door::throat_m2},
    choice_field<&Door::smoke_chamber>(
        text("smoke_chamber",
             {"How throat and smoke chamber of an open hearth lead into its flue: tapered and "
              "smooth, corbelled in steps, or none, a sharp edge; left out, none.",
              "tapered"})),
};

constexpr std::array firebox_fields{
    Field<Firebox>{
        quantity("volume", box_volume, {"Inside volume, instead of the three sides.", "45 L"}),
        &Firebox::volume_m3},
    Field<Firebox>{quantity("width", box_side, {"Inside width.", "380 mm"}), &Firebox::width_m},
    Field<Firebox>{quantity("depth", box_side, {"Inside depth.", "340 mm"}), &Firebox::depth_m},
    Field<Firebox>{quantity("height", box_side, {"Inside height.", "350 mm"}), &Firebox::height_m},
    Field<Firebox>{quantity("lining_area",
                            lining_area,
                            {"Hot surface of lining and body that the air from an open door "
                             "passes; left out, what heaters of this kind have.",
                             "0.8 m2"}),
                   &Firebox::lining_area_m2},
    Field<Firebox>{quantity("lining_mass",
                            lining_mass,
                            {"Mass of the lining and body that hold their heat while the door is "
                             "open.",
                             "60 kg"}),
                   &Firebox::lining_mass_kg},
};

} // namespace

template <>
std::span<const Field<Appliance>> fields() {
    return appliance_fields;
}

template <>
std::span<const Field<FuelChoice>> fields() {
    return fuel_fields;
}

template <>
std::span<const Field<Outlet>> fields() {
    return outlet_fields;
}

template <>
std::span<const Field<Door>> fields() {
    return door_fields;
}

template <>
std::span<const Field<Firebox>> fields() {
    return firebox_fields;
}

} // namespace fluewright
