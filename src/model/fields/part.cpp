#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>
#include <bit>
#include <numbers>

namespace fluewright {

namespace part_kind {

std::string list(unsigned kinds) {
    std::string text;
    int left = std::popcount(kinds & any);
    for (std::size_t i = 0; i < names().size(); ++i) {
        if ((kinds & (1U << i)) != 0U) {
            text += names()[i];
            --left;
            text += left > 1 ? ", " : left == 1 ? " or " : "";
        }
    }
    return text;
}

} // namespace part_kind

namespace {

using namespace field_limits;
namespace pk = part_kind;

constexpr Limits sheet{Kind::length, 0.0001, 0.1, "foil to cast iron"};
constexpr Limits gauges{Kind::number, 8.0, 32.0, "sheet the trade sells"};

constexpr double degree = std::numbers::pi / 180.0;
constexpr Limits rise{Kind::length, -20.0, 100.0, "a run may dip a little on its way"};
constexpr Limits slope{Kind::slope, -1.0, 10.0, "steeper than this is a vertical part"};
constexpr Limits turn{Kind::angle, 5.0 * degree, 180.0 * degree, "elbows that can be made"};
constexpr Limits blade{Kind::angle, 0.0, 90.0 * degree, "0 deg is open, 90 deg is shut"};
constexpr Limits bend_radius{Kind::length, 0.01, 5.0, trade_range};
constexpr Limits taper{Kind::length, 0.0, 5.0, trade_range};
constexpr Limits mesh{Kind::length, 0.001, 0.1, trade_range};
constexpr Limits free_area{Kind::fraction, 0.01, 1.0, sense};
constexpr Limits blocked{Kind::fraction, 0.0, 0.99, "something must be left to flow through"};
constexpr Limits expansion{Kind::length, 0.0, 0.2, trade_range};

constexpr Limits gap{Kind::length, 0.0, 0.02, "slits between parts that fit into each other"};
constexpr Limits leakage_area{Kind::area, 0.0, 0.05, "holes smaller than the flue"};
constexpr Limits setting{Kind::pressure, 1.0, 100.0, "drafts that regulators hold"};
constexpr Limits gate{Kind::length, 0.03, 1.0, trade_range};
constexpr Limits open_area{Kind::area, 0.0001, 1.0, trade_range};

constexpr unsigned turning = pk::elbow | pk::tee;
constexpr unsigned with_length = pk::straight | pk::elbow | pk::tee;

constexpr std::array part_fields{
    choice_field<&Part::part>(required(text("part", {"What the part is.", "straight"})),
                              pk::names()),
    Field<Part>{text("name", {"What the part is called in the report.", "first pipe"}),
                &Part::name},
    Field<Part>{of_parts(pk::straight,
                         quantity("up", run_length, {"Length of a vertical straight.", "1.2 m"})),
                &Part::up_m},
    Field<Part>{of_parts(pk::straight,
                         quantity("down",
                                  run_length,
                                  {"Length of a straight in which the gas goes down.", "0.4 m"})),
                &Part::down_m},
    Field<Part>{
        of_parts(pk::straight,
                 quantity("across", run_length, {"Level distance the straight covers.", "0.8 m"})),
        &Part::across_m},
    Field<Part>{of_parts(pk::straight,
                         quantity("rise",
                                  rise,
                                  {"Height gained over the distance across; negative where the "
                                   "run falls.",
                                   "17 mm"})),
                &Part::rise_m},
    Field<Part>{of_parts(pk::straight,
                         quantity("slope",
                                  slope,
                                  {"Rise over the distance across, instead of rise.", "20 mm/m"})),
                &Part::slope},
    Field<Part>{carried(quantity("diameter",
                                 flue_side,
                                 {"Inside diameter; of a reducer or increaser, that of its far "
                                  "end.",
                                  "150 mm"})),
                &Part::diameter_m},
    Field<Part>{carried(quantity(
                    "width",
                    flue_side,
                    {"Inside width of a rectangular or oval flue; goes with depth.", "200 mm"})),
                &Part::width_m},
    Field<Part>{carried(quantity(
                    "depth", flue_side, {"Inside depth of a rectangular or oval flue.", "200 mm"})),
                &Part::depth_m},
    choice_field<&Part::shape>(carried(text(
        "shape",
        {"Section of a flue with width and depth. Oval: two half circles and the straights between "
         "them; its size is width and depth, or one of them with the diameter of the round pipe it "
         "was pressed from.",
         "oval"}))),
    Field<Part>{
        carried(name_from("liner",
                          Words::clay_liners,
                          {"Trade name of a clay liner, which gives its clear inside.", "8x8"})),
        &Part::liner},
    Field<Part>{carried(name_from("wall",
                                  Words::walls,
                                  {"What the pipe or chimney is made of: a wall of the catalog or "
                                   "of this file.",
                                   "single-wall steel"})),
                &Part::wall},
    choice_field<&Part::zone>(carried(text("zone", {"What surrounds the part.", "room"}))),
    choice_field<&Part::belongs_to>(carried(
        text("belongs_to",
             {"Whether the part is connector or chimney. Left out, by what it is: "
              "factory-built chimney, masonry and liners are chimney, stovepipe is connector "
              "wherever it passes, and the tee that turns up into a chimney belongs to it.",
              "chimney"}))),
    Field<Part>{of_parts(turning,
                         quantity("angle",
                                  turn,
                                  {"By how much an elbow turns the gas, or the branch of "
                                   "a tee leaves it.",
                                   "90 deg"})),
                &Part::angle_rad},
    choice_field<&Part::build>(of_parts(pk::elbow,
                                        text("build",
                                             {"Smooth: one curved piece; gored: adjustable or of "
                                              "segments; mitered: one sharp corner.",
                                              "gored"})),
                               words_between(Build::smooth, Build::mitered)),
    choice_field<&Part::build>(
        of_parts(pk::cap,
                 text("build",
                      {"Open: the bare end; plain: a flat plate on legs; rain: "
                       "a hood.",
                       "plain"})),
        words_between(Build::open, Build::rain)),
    Field<Part>{of_parts(pk::elbow,
                         quantity("radius",
                                  bend_radius,
                                  {"Radius of a smooth elbow along its center line.", "150 mm"})),
                &Part::radius_m},
    choice_field<&Part::flow>(
        of_parts(pk::tee,
                 text("flow",
                      {"Side: the gas turns in the tee; straight: it passes by "
                       "the branch.",
                       "side"}))),
    Field<Part>{
        of_parts(turning,
                 text("cleanout", {"Whether the part has an opening for sweeping.", "true"})),
        &Part::cleanout},
    Field<Part>{of_parts(pk::damper,
                         quantity("blade_angle",
                                  blade,
                                  {"Position of the blade: 0 deg open, 90 deg shut.", "0 deg"})),
                &Part::blade_angle_rad},
    Field<Part>{of_parts(pk::damper,
                         text("only_when_strong",
                              {"Whether the blade is turned to blade_angle only while the draft is "
                               "more than the appliance holds, and stands open otherwise.",
                               "true"})),
                &Part::only_when_strong},
    Field<Part>{
        of_parts(pk::reducer | pk::increaser,
                 quantity("taper_length",
                          taper,
                          {"Length over which the section changes; 0 mm is a step.", "100 mm"})),
        &Part::taper_length_m},
    Field<Part>{
        of_parts(pk::screen, quantity("mesh", mesh, {"Clear opening of the mesh.", "12 mm"})),
        &Part::mesh_m},
    Field<Part>{
        of_parts(
            pk::cap,
            quantity("screen", mesh, {"Clear opening of the spark screen in the cap.", "12 mm"})),
        &Part::mesh_m},
    Field<Part>{of_parts(pk::screen | pk::cap | pk::damper,
                         quantity("free_area",
                                  free_area,
                                  {"Share of the section that is open to the gas; of a damper, "
                                   "when it is shut.",
                                   "70 %"})),
                &Part::free_area},
    Field<Part>{of_parts(pk::obstruction | pk::screen | pk::cap,
                         quantity("blocked",
                                  blocked,
                                  {"Share of the section that something takes away.", "30 %"})),
                &Part::blocked},
    Field<Part>{of_parts(with_length,
                         quantity("deposit_thickness",
                                  deposit,
                                  {"Thickness of what has grown on the inside.", "3 mm"})),
                &Part::deposit_m},
    choice_field<&Part::deposit>(
        of_parts(with_length, text("deposit", {"What has grown on the inside.", "soot"}))),
    Field<Part>{of_parts(pk::fitting,
                         name_from("fitting",
                                   Words::fittings,
                                   {"A fitting of the catalog or of this file.", "breeching"})),
                &Part::fitting},
    Field<Part>{quantity("loss",
                         loss,
                         {"Loss coefficient on the velocity head in the part, where it is known; a "
                          "plain number.",
                          "1.2"}),
                &Part::loss},
    Field<Part>{
        quantity("rated_surface_temperature",
                 surface_temperature,
                 {"Highest surface temperature its paint or wall is rated for.", "300 degC"}),
        &Part::rated_surface_temperature_k},
    choice_field<&Part::joint>(
        carried(text("joint",
                     {"Fit of the joint at the lower end of the part; N1 to H1: a wall "
                      "that leaks as much as its European tightness class allows. Left "
                      "out on every part, the joints are taken as sealed.",
                      "ordinary"}))),
    Field<Part>{carried(quantity("joint_gap",
                                 gap,
                                 {"Width of the slit all round the joint at the lower end, "
                                  "instead of a fit.",
                                  "0.3 mm"})),
                &Part::joint_gap_m},
    Field<Part>{quantity("leakage_area",
                         leakage_area,
                         {"Leakage area of the joint at the lower end of this part alone, or of a "
                          "hole there.",
                          "1.5 cm2"}),
                &Part::leakage_area_m2},
    Field<Part>{of_parts(pk::draft_regulator,
                         quantity("setting",
                                  setting,
                                  {"Draft in the flue against the air round it at which the gate "
                                   "begins to open.",
                                   "15 Pa",
                                   DefaultId::regulator_setting_pa})),
                &Part::setting_pa},
    Field<Part>{of_parts(pk::draft_regulator,
                         quantity("opening_diameter",
                                  gate,
                                  {"Diameter of the gate; left out, that of the flue.", "150 mm"})),
                &Part::opening_diameter_m},
    Field<Part>{of_parts(pk::draft_hood,
                         quantity("open_area",
                                  open_area,
                                  {"Area through which the hood is open to the room; left out, "
                                   "that of the flue.",
                                   "180 cm2"})),
                &Part::open_area_m2},
    Field<Part>{of_parts(pk::straight,
                         quantity("expansion_allowed",
                                  expansion,
                                  {"Movement the joints of a straight take up when it grows hot.",
                                   "10 mm"})),
                &Part::expansion_allowed_m},
    Field<Part>{quantity("clearance", distance, {"Distance to combustibles.", "460 mm"}),
                &Part::clearance_m},
    Field<Part>{quantity("listed_clearance",
                         distance,
                         {"Distance its label requires; it goes before general figures.", "50 mm"}),
                &Part::listed_clearance_m},
    choice_field<&Part::shield>(
        text("shield", {"Shield between it and combustibles.", "sheet steel"})),
    Field<Part>{quantity("shield_gap", short_distance, {"Air gap behind the shield.", "25 mm"}),
                &Part::shield_gap_m},
    Field<Part>{quantity("shield_reach",
                         distance,
                         {"How far the shield reaches to each side of the pipe.", "400 mm"}),
                &Part::shield_reach_m},
    choice_field<&Part::passes>(text("passes", {"What it goes through.", "nothing"})),
    choice_field<&Part::pass_through>(
        text("pass_through", {"How it goes through a wall.", "ventilated thimble"})),
    Field<Part>{quantity("pass_through_clearance",
                         distance,
                         {"In a combustible wall: from the pipe, the liner or the thimble to the "
                          "wood, through what fills it.",
                          "150 mm"}),
                &Part::pass_through_clearance_m},
    Field<Part>{text("attic_shield",
                     {"Whether a shield keeps insulation off it where it passes a ceiling or an "
                      "attic.",
                      "true"}),
                &Part::attic_shield},
    Field<Part>{quantity("thickness", sheet, {"Thickness of the sheet.", "0.6 mm"}),
                &Part::thickness_m},
    Field<Part>{whole(quantity("gauge", gauges, {"Gauge number of the sheet.", "24"})),
                &Part::gauge},
    choice_field<&Part::heater_end>(text("heater_end", {"Its end towards the heater.", "crimped"}),
                                    words_between(PipeEnd::plain, PipeEnd::locking)),
    choice_field<&Part::chimney_end>(
        text("chimney_end", {"Its end towards the chimney top.", "plain"}),
        words_between(PipeEnd::plain, PipeEnd::locking)),
    Field<Part>{whole(quantity("screws", count, {"Screws in the joint at its heater end.", "3"})),
                &Part::screws},
    Field<Part>{quantity("lap",
                         short_distance,
                         {"How far the joint at its heater end goes together.", "40 mm"}),
                &Part::lap_m},
    Field<Part>{whole(quantity("supports", count, {"Supports along it.", "1"})), &Part::supports},
    Field<Part>{
        of_parts(pk::straight,
                 text("slip_joint", {"Whether it telescopes or has a slip joint.", "true"})),
        &Part::slip_joint},
    choice_field<&Part::rating>(
        text("rating", {"Class a factory-built chimney is marked with.", "HT"})),
    Field<Part>{of_parts(pk::cap,
                         quantity("gap",
                                  short_distance,
                                  {"Height of the opening under a plain cap.", "150 mm"})),
                &Part::cap_gap_m},
};

} // namespace

template <>
std::span<const Field<Part>> fields() {
    return part_fields;
}

} // namespace fluewright
