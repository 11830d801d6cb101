#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits seen_draft{Kind::pressure, -100.0, 200.0, "gauges for chimneys"};
constexpr Limits seen_gas{Kind::temperature, celsius(-60.0), celsius(1200.0), physics_range};
constexpr Limits seen_surface{
    Kind::temperature, celsius(-60.0), celsius(1000.0), "up to bright red heat"};
constexpr Limits seen_carbon_dioxide{Kind::fraction, 0.0, 0.21, sense};
constexpr Limits seen_oxygen{Kind::fraction, 0.0, 0.21, sense};

constexpr FieldInfo place_seen() {
    FieldInfo info = text("at",
                          {"Where: outlet, chimney top, or the number of a part, counted from 1 at "
                           "the outlet; of a part, its far end.",
                           "outlet"});
    info.may_be_whole_number = true;
    return info;
}

constexpr std::array observation_fields{
    choice_field<&Observation::smoke>(
        text("smoke",
             {"Where or when smoke comes into the room: at the joints, at the "
              "opened door, at lighting, in wind, when a fan runs; none says that "
              "it was watched for and did not come.",
              "joints"})),
    Field<Observation>{text("sluggish", {"Whether the fire burns poorly.", "true"}),
                       &Observation::sluggish},
    Field<Observation>{text("roaring", {"Whether the fire cannot be held down.", "true"}),
                       &Observation::roaring},
    Field<Observation>{text("drips", {"Whether creosote or water runs from the flue.", "true"}),
                       &Observation::drips},
    Field<Observation>{
        text("smell_when_idle", {"Whether it smells or blows cold with no fire.", "true"}),
        &Observation::smell_when_idle},
    Field<Observation>{text("co_alarm", {"Whether a carbon monoxide alarm has sounded.", "true"}),
                       &Observation::co_alarm},
    choice_field<&Observation::worse>(text("worse",
                                           {"How the trouble came: it built up over weeks, it was "
                                            "there overnight, or it has been always so.",
                                            "over weeks"})),
    Field<Observation>{text("better_with_window_open",
                            {"Whether an open window near the appliance helps.", "true"}),
                       &Observation::better_with_window_open},
    choice_field<&Observation::smoke_stick>(
        text("smoke_stick",
             {"What smoke held at a joint does: it is drawn in, blown out, or "
              "keeps still.",
              "in"})),
    choice_field<&Observation::look>(
        text("look", {"What was looked at; goes with `found`.", "cap"})),
    choice_field<&Observation::found>(text("found", {"How it was found.", "bad"})),
    choice_field<&Observation::state>(
        text("state", {"How it was fired at the time.", "high fire"})),
    Field<Observation>{
        text("weather", {"Name of one of the weathers of the site; left out, the first.", "frost"}),
        &Observation::weather},
    choice_field<&Observation::window>(
        text("window", {"Whether a window stood open at the time.", "open"})),
    choice_field<&Observation::fan>(text("fan", {"Whether exhaust fans ran at the time.", "off"})),
    choice_field<&Observation::wind>(
        text("wind", {"Whether wind blew on the chimney top at the time.", "windy"})),
    Field<Observation>{place_seen(), &Observation::at},
    Field<Observation>{quantity("draft",
                                seen_draft,
                                {"Draft measured; negative where the flue pushes out.", "3 Pa"}),
                       &Observation::draft_pa},
    Field<Observation>{
        quantity("gas_temperature", seen_gas, {"Gas temperature measured.", "210 degC"}),
        &Observation::gas_temperature_k},
    choice_field<&Observation::gas_temperature_kind>(
        text("gas_temperature_kind",
             {"What that temperature is: the reading of a bare probe, which sees the colder wall "
              "and shows less than the gas, or the true one; left out, a bare probe's.",
              "bare probe"})),
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

bool alarm_has_sounded(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), [](const Observation& entry) {
        return entry.co_alarm.value_or(false);
    });
}

bool was_too_hot(const Observation& seen) {
    const double surface_k = catalog::default_of(DefaultId::surface_far_too_hot_k).value;
    const double gas_k = catalog::default_of(DefaultId::gas_temperature_hot_k).value;
    return seen.surface_temperature_k.value_or(0.0) >= surface_k
           || seen.gas_temperature_k.value_or(0.0) > gas_k;
}

std::size_t point_of(const Word& at, std::size_t parts) {
    if (!at || *at == "outlet") {
        return 0;
    }
    if (*at == "chimney top") {
        return parts + 1;
    }
    std::size_t number = 0;
    std::from_chars(at->data(), at->data() + at->size(), number);
    return std::min(number, parts);
}

std::vector<Observation> seen_of_changed_run(const std::vector<Observation>& seen) {
    std::vector<Observation> kept;
    if (alarm_has_sounded(seen)) {
        kept.emplace_back().co_alarm = true;
    }
    for (const Observation& each : seen) {
        if (each.deposit_m) {
            kept.emplace_back().deposit_m = each.deposit_m; // wherever it is in the changed run
        }
        if (each.room_pressure_pa) {
            kept.emplace_back().room_pressure_pa = each.room_pressure_pa;
        }
    }
    for (const Observation& entry : seen) {
        if (was_too_hot(entry)) {
            Observation& hot = kept.emplace_back();
            hot.surface_temperature_k = entry.surface_temperature_k;
            hot.gas_temperature_k = entry.gas_temperature_k;
        }
    }
    return kept;
}

} // namespace fluewright
