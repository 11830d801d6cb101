#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr std::array<std::string_view, 6> smoke_places{
    "joints", "door", "lighting", "wind", "fan", "none"};
constexpr std::array<std::string_view, 7> states{"high fire",
                                                 "low fire",
                                                 "free burn",
                                                 "door open, high fire",
                                                 "door open, embers",
                                                 "cold start",
                                                 "standing"};
constexpr std::array<std::string_view, 3> courses{"over weeks", "overnight", "steady"};
constexpr std::array<std::string_view, 3> stick_moves{"in", "out", "still"};
constexpr std::array<std::string_view, 7> sights{
    "cap", "flue", "joints", "damper", "door seal", "baffle", "sizes"};
constexpr std::array<std::string_view, 2> verdicts{"good", "bad"};
constexpr std::array<std::string_view, 2> window_words{"open", "shut"};
constexpr std::array<std::string_view, 2> fan_words{"running", "off"};
constexpr std::array<std::string_view, 2> wind_words{"windy", "calm"};

constexpr Limits seen_draft{Kind::pressure, -100.0, 200.0, "gauges for chimneys"};
constexpr Limits seen_gas{Kind::temperature, celsius(-60.0), celsius(1200.0), physics_range};
constexpr Limits seen_surface{
    Kind::temperature, celsius(-60.0), celsius(1000.0), "up to bright red heat"};
constexpr Limits seen_carbon_dioxide{Kind::fraction, 0.0, 0.21, sense};
constexpr Limits seen_oxygen{Kind::fraction, 0.0, 0.21, sense};

constexpr FieldInfo place_seen() {
    FieldInfo info = text("at",
                          {"Where: outlet, mouth, or the number of a part, counted from 1 at "
                           "the outlet; of a part, its far end.",
                           "outlet"});
    info.may_be_whole_number = true;
    return info;
}

constexpr std::array observation_fields{
    Field<Observation>{choice("smoke",
                              smoke_places,
                              {"Where or when smoke comes into the room: at the joints, at the "
                               "opened door, at lighting, in wind, when a fan runs; none says that "
                               "it was watched for and did not come.",
                               "joints"}),
                       &Observation::smoke},
    Field<Observation>{text("sluggish", {"Whether the fire burns poorly.", "true"}),
                       &Observation::sluggish},
    Field<Observation>{text("roaring", {"Whether the fire cannot be held down.", "true"}),
                       &Observation::roaring},
    Field<Observation>{text("drips", {"Whether tar or water runs from the flue.", "true"}),
                       &Observation::drips},
    Field<Observation>{
        text("smell_when_idle", {"Whether it smells or blows cold with no fire.", "true"}),
        &Observation::smell_when_idle},
    Field<Observation>{text("co_alarm", {"Whether a carbon monoxide alarm has sounded.", "true"}),
                       &Observation::co_alarm},
    Field<Observation>{choice("worse",
                              courses,
                              {"How the trouble came: it grew over weeks, it was there overnight, "
                               "or it has been the same all along.",
                               "over weeks"}),
                       &Observation::worse},
    Field<Observation>{text("better_with_window_open",
                            {"Whether an open window near the appliance helps.", "true"}),
                       &Observation::better_with_window_open},
    Field<Observation>{choice("smoke_stick",
                              stick_moves,
                              {"What smoke held at a joint does: it is drawn in, blown out, or "
                               "keeps still.",
                               "in"}),
                       &Observation::smoke_stick},
    Field<Observation>{choice("look", sights, {"What was looked at; goes with `found`.", "cap"}),
                       &Observation::look},
    Field<Observation>{choice("found", verdicts, {"How it was found.", "bad"}),
                       &Observation::found},
    Field<Observation>{choice("state", states, {"How it was fired at the time.", "high fire"}),
                       &Observation::state},
    Field<Observation>{
        text("weather", {"Name of one of the weathers of the site; left out, the first.", "frost"}),
        &Observation::weather},
    Field<Observation>{
        choice("window", window_words, {"Whether a window stood open at the time.", "open"}),
        &Observation::window},
    Field<Observation>{choice("fan", fan_words, {"Whether exhaust fans ran at the time.", "off"}),
                       &Observation::fan},
    Field<Observation>{
        choice("wind", wind_words, {"Whether wind blew on the mouth at the time.", "windy"}),
        &Observation::wind},
    Field<Observation>{place_seen(), &Observation::at},
    Field<Observation>{quantity("draft",
                                seen_draft,
                                {"Draft measured; negative where the flue pushes out.", "3 Pa"}),
                       &Observation::draft_pa},
    Field<Observation>{
        quantity("gas_temperature", seen_gas, {"Gas temperature measured.", "210 degC"}),
        &Observation::gas_temperature_k},
    Field<Observation>{quantity("surface_temperature",
                                seen_surface,
                                {"Surface temperature measured.", "190 degC"}),
                       &Observation::surface_temperature_k},
    Field<Observation>{quantity("room_pressure",
                                room_pressure,
                                {"Pressure of the room minus that outdoors, measured.", "-4 Pa"}),
                       &Observation::room_pressure_pa},
    Field<Observation>{quantity("carbon_dioxide",
                                seen_carbon_dioxide,
                                {"CO2 measured in the dry flue gas.", "7 %"}),
                       &Observation::carbon_dioxide},
    Field<Observation>{
        quantity("oxygen", seen_oxygen, {"O2 measured in the dry flue gas.", "13 %"}),
        &Observation::oxygen},
    Field<Observation>{quantity("moisture", moisture, {"Moisture measured in the fuel.", "27 %"}),
                       &Observation::moisture},
    Field<Observation>{
        quantity("deposit_thickness", deposit, {"Deposit found on the inside.", "4 mm"}),
        &Observation::deposit_m},
};

} // namespace

template <>
std::span<const Field<Observation>> fields() {
    return observation_fields;
}

} // namespace fluewright
