#include "installation_rows.hpp"

#include "finding_rows.hpp"
#include "io/text/words.hpp"

namespace fluewright::results {
namespace {

struct RoomUnderstood {
    const Case& of;
};

struct SectionRow {
    const Case& of;
    std::size_t at;

    [[nodiscard]] const Section& section() const { return of.sections[at]; }

    [[nodiscard]] bool is_in_file() const {
        const bool added = at + 1 == of.sections.size() && report::has_added_top(of);
        return section().part >= 0 && !added;
    }
};

struct OutletRow {
    const ApplianceCase& of;
};

std::vector<SectionRow> sections_of(const Case& c) {
    std::vector<SectionRow> rows;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        rows.push_back({c, i});
    }
    return rows;
}

} // namespace

template <>
const Record<Firing>& record_of<Firing>() {
    static const Record<Firing> record{
        "firing",
        "what the fire sends up",
        {{"burn_rate", Kind::mass_rate, "fuel as fired", &Firing::burn_rate_kg_s},
         {"air_ratio", "air over the least air that burns it", &Firing::air_ratio},
         {"gas_flow", Kind::gas_flow, "flue gas", &Firing::gas_flow_kg_s},
         {"gas_temperature", Kind::temperature, "at the outlet", &Firing::gas_temperature_k},
         {"heat_in_fuel", Kind::power, "net", &Firing::heat_in_fuel_w},
         {"heat_output", Kind::power, "useful", &Firing::heat_output_w},
         {"heat_to_flue",
          Kind::power,
          "sensible heat of the gas above the room",
          &Firing::heat_to_flue_w},
         {"draft_needed", Kind::pressure, "at the outlet", &Firing::draft_needed_pa},
         {"carbon_dioxide_dry",
          Kind::fraction,
          "share of the dry gas",
          &Firing::carbon_dioxide_dry},
         {"oxygen_dry", Kind::fraction, "share of the dry gas", &Firing::oxygen_dry}}};
    return record;
}

template <>
const Record<OutletRow>& record_of<OutletRow>() {
    static const Record<OutletRow> record{
        "outlet",
        "where the run begins",
        {{"diameter",
          Kind::length,
          "of the circle of equal area",
          [](const OutletRow& o) { return o.of.outlet_diameter_m; }},
         {"area",
          Kind::area,
          "of the opening",
          [](const OutletRow& o) { return o.of.outlet_area_m2; }},
         {"height", Kind::length, "above the floor", [](const OutletRow& o) {
              return o.of.outlet_height_m;
          }}}};
    return record;
}

template <>
const Record<DoorOpening>& record_of<DoorOpening>() {
    static const Record<DoorOpening> record{
        "door_opening",
        "the opening of the door",
        {{"width", Kind::length, "of the opening", &DoorOpening::width_m},
         {"height", Kind::length, "of the opening", &DoorOpening::height_m},
         {"top_below_outlet",
          Kind::length,
          "from its top edge up to the outlet; negative where the edge is higher",
          &DoorOpening::top_below_outlet_m}}};
    return record;
}

template <>
const Record<ApplianceCase>& record_of<ApplianceCase>() {
    static const Record<ApplianceCase> record{
        "appliance",
        "the heater",
        {{"type", "of heater", &ApplianceCase::type},
         {"fuel", "its name", &ApplianceCase::fuel},
         {"moisture", Kind::moisture, "of the fuel", &ApplianceCase::moisture},
         {"net_heating_value",
          Kind::heating_value,
          "of the fuel as fired",
          &ApplianceCase::net_heating_value_j_kg},
         {"outlet", "where the run begins", [](const ApplianceCase& a) { return OutletRow{a}; }},
         {"high_fire", "at the high burn rate", &ApplianceCase::high},
         {"low_fire", "at the low burn rate", &ApplianceCase::low},
         {"draft_greatest",
          Kind::pressure,
          "the most the appliance holds",
          [](const ApplianceCase& a) { return if_finite(a.draft_greatest_pa); }},
         {"door", "null where none is known", [](const ApplianceCase& a) {
              return a.has_door ? &a.door : nullptr;
          }}}};
    return record;
}

template <>
const Record<WeatherCase>& record_of<WeatherCase>() {
    static const Record<WeatherCase> record{
        "weather",
        "in which every condition is solved",
        {{"name", "of the weather", &WeatherCase::name},
         {"outdoor_temperature",
          Kind::temperature,
          "of the air outdoors",
          &WeatherCase::outdoor_temperature_k},
         {"wind", Kind::speed, "at the chimney top", &WeatherCase::wind_m_s},
         {"relative_humidity",
          Kind::fraction,
          "of the air outdoors",
          &WeatherCase::relative_humidity}}};
    return record;
}

template <>
const Record<RoomUnderstood>& record_of<RoomUnderstood>() {
    static const Record<RoomUnderstood> record{
        "room",
        "the room the heater stands in",
        {{"temperature",
          Kind::temperature,
          "of its air",
          [](const RoomUnderstood& r) { return r.of.room_temperature_k; }},
         {"pressure_burning",
          Kind::pressure,
          "against outdoors while a fire burns; null where a house tells it in each state",
          [](const RoomUnderstood& r) { return r.of.room_pressure_burning_pa; }},
         {"pressure_idle",
          Kind::pressure,
          "against outdoors with no fire; null where a house tells it in each state",
          [](const RoomUnderstood& r) { return r.of.room_pressure_idle_pa; }},
         {"relative_humidity", Kind::fraction, "of its air", [](const RoomUnderstood& r) {
              return r.of.room_humidity;
          }}}};
    return record;
}

template <>
const Record<SectionRow>& record_of<SectionRow>() {
    static const Record<SectionRow> record{
        "section",
        "a length of pipe, or a point where pressure is lost",
        {{"place",
          "in words",
          [](const SectionRow& s) { return report::section_words(s.of, s.at); }},
         {"part",
          "number of the part in the file, from 1; null where it is no part of it",
          [](const SectionRow& s) {
              return s.is_in_file() ? part_number(s.section().part) : std::optional<int>{};
          }},
         {"kind", "of part", [](const SectionRow& s) { return s.section().kind; }},
         {"length",
          Kind::length,
          "along the pipe",
          [](const SectionRow& s) { return s.section().length_m; }},
         {"rise", Kind::length, "upwards", [](const SectionRow& s) { return s.section().rise_m; }},
         {"hydraulic_diameter",
          Kind::length,
          "of the clear inside",
          [](const SectionRow& s) { return s.section().diameter_m; }},
         {"area",
          Kind::area,
          "of the clear inside",
          [](const SectionRow& s) { return s.section().area_m2; }},
         {"rectangular", "not round", [](const SectionRow& s) { return s.section().rectangular; }},
         {"loss",
          "coefficient, of the velocity head in this area",
          [](const SectionRow& s) { return s.section().loss; }},
         {"turn",
          Kind::angle,
          "how far the gas turns",
          [](const SectionRow& s) { return s.section().turn_rad; }},
         {"roughness",
          Kind::length,
          "of the inner face",
          [](const SectionRow& s) { return s.section().roughness_m; }},
         {"wall",
          "id of its wall",
          [](const SectionRow& s) -> const std::string* {
              const std::size_t wall = s.section().wall;
              return wall < s.of.walls.size() ? &s.of.walls[wall].id : nullptr;
          }},
         {"zone", "what is round it", [](const SectionRow& s) { return s.section().zone; }},
         {"cleanout", "can be swept from here", [](const SectionRow& s) {
              return s.section().cleanout;
          }}}};
    return record;
}

template <>
const Record<Case>& record_of<Case>() {
    static constexpr std::array<std::string_view, 2> systems{"us", "metric"};
    static const Record<Case> record{
        "installation",
        "what the file was understood to say, complete",
        {{"units",
          Kind::number,
          "in which its texts are",
          [](const Case& c) { return c.units == UnitSystem::us ? systems[0] : systems[1]; },
          systems},
         {"air_pressure", Kind::pressure, "at the site", &Case::air_pressure_pa},
         {"room", "the heater stands in", [](const Case& c) { return RoomUnderstood{c}; }},
         {"weathers", "in the order of the file", &Case::weathers},
         {"appliance", "the heater", &Case::appliance},
         {"run",
          "from the outlet to the chimney top",
          [](const Case& c) { return sections_of(c); }},
         {"total_rise", Kind::length, "chimney top above outlet", [](const Case& c) {
              return c.total_rise_m();
          }}}};
    return record;
}

} // namespace fluewright::results
