#include "fluewright/physics/atmosphere.hpp"
#include "resolving.hpp"

#include <algorithm>

namespace fluewright::resolving {
namespace {

void weathers(const CaseWork& work) {
    const auto& entries = work.written.site.weather;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Weather& entry = entries[i];
        const std::string pointer = "/site/weather/" + std::to_string(i);
        WeatherCase w;
        w.name = entry.name.value_or("weather " + std::to_string(i + 1));
        const auto& before = work.made.weathers;
        const auto same = std::find_if(before.begin(), before.end(), [&](const WeatherCase& each) {
            return each.name == w.name;
        });
        if (same != before.end()) {
            work.fault(pointer + "/name",
                       "weather " + std::to_string(same - before.begin() + 1) + " is called \""
                           + w.name + "\" too",
                       "give each weather a name of its own: answers and `observed` go by it");
        }
        w.outdoor_temperature_k = work.value_or_default(entry.outdoor_temperature_k,
                                                        pointer + "/outdoor_temperature",
                                                        "outdoor temperature, " + w.name,
                                                        Kind::temperature,
                                                        DefaultId::outdoor_temperature_mild_k);
        w.wind_m_s = work.value_or_default(entry.wind_m_s,
                                           pointer + "/wind",
                                           "wind at the chimney top, " + w.name,
                                           Kind::speed,
                                           DefaultId::wind_speed_m_s);
        w.relative_humidity = work.value_or_default(entry.relative_humidity,
                                                    pointer + "/humidity",
                                                    "humidity outdoors, " + w.name,
                                                    Kind::fraction,
                                                    DefaultId::relative_humidity_outdoor);
        w.room_temperature_k =
            is_open(work.made.shelter)
                ? w.outdoor_temperature_k
                : entry.room_temperature_k.value_or(work.made.room_temperature_k);
        work.made.weathers.push_back(std::move(w));
    }
    if (!entries.empty()) {
        return;
    }
    // Frost gives the strongest draft and the coldest walls, a mild day the weakest draft.
    const auto assumed = [&](std::string_view name, DefaultId id) {
        const double outdoor_k =
            work.value_or_default(std::nullopt,
                                  "/site/weather",
                                  std::string{"outdoor temperature, "} + std::string{name},
                                  Kind::temperature,
                                  id);
        work.made.weathers.push_back(
            {.name = std::string{name},
             .outdoor_temperature_k = outdoor_k,
             .room_temperature_k =
                 is_open(work.made.shelter) ? outdoor_k : work.made.room_temperature_k,
             .wind_m_s = catalog::default_of(DefaultId::wind_speed_m_s).value,
             .relative_humidity = catalog::default_of(DefaultId::relative_humidity_outdoor).value});
    };
    assumed("frost", DefaultId::outdoor_temperature_frost_k);
    assumed("mild", DefaultId::outdoor_temperature_mild_k);
    const catalog::Default& wind = catalog::default_of(DefaultId::wind_speed_m_s);
    work.assume("/site/weather",
                "wind at the chimney top",
                Kind::speed,
                wind.value,
                wind.source,
                wind.mark);
    const catalog::Default& damp = catalog::default_of(DefaultId::relative_humidity_outdoor);
    work.assume(
        "/site/weather", "humidity outdoors", Kind::fraction, damp.value, damp.source, damp.mark);
}

void shelter(const CaseWork& work) {
    const Site& written = work.written.site;
    work.made.shelter = written.shelter.value_or(Shelter::house);
    if (!written.shelter && !written.house.is_given()) {
        work.assume_word("/site/shelter",
                         "what the heater stands in; of a workshop or cabin of one room it is "
                         "`one room`",
                         name(Shelter::house),
                         "judgement",
                         "judgement");
    }
    if (!is_open(work.made.shelter)) {
        return;
    }
    constexpr std::string_view help =
        "leave it out, or write \"shelter\": \"house\" for a heater within walls";
    const auto refuse = [&](bool given, std::string_view pointer, std::string_view message) {
        if (given) {
            work.fault(pointer, message, help);
        }
    };
    const Room& room = written.room;
    refuse(written.house.is_given(), "/site/house", "a heater in the open has no house round it");
    refuse(room.pressure_is_given(), "/site/room", "the air in the open is at outdoor pressure");
    refuse(room.temperature_k || room.relative_humidity,
           "/site/room",
           "the air in the open is that of the weather");
    for (std::size_t i = 0; i < written.weather.size(); ++i) {
        refuse(written.weather[i].room_temperature_k.has_value(),
               "/site/weather/" + std::to_string(i) + "/room_temperature",
               "the air in the open is that of the weather");
    }
}

/// The room's air, which the fires are told for.
void room_air(const CaseWork& work) {
    const Site& written = work.written.site;
    Case& made = work.made;
    const bool each_weather_tells =
        !written.weather.empty()
        && std::all_of(written.weather.begin(), written.weather.end(), [](const Weather& w) {
               return w.room_temperature_k.has_value();
           });
    if (!is_open(made.shelter)) {
        made.room_temperature_k = each_weather_tells && !written.room.temperature_k
                                      ? *written.weather.front().room_temperature_k
                                      : work.value_or_default(written.room.temperature_k,
                                                              "/site/room/temperature",
                                                              "room temperature",
                                                              Kind::temperature,
                                                              DefaultId::room_temperature_k);
        made.room_humidity = work.value_or_default(written.room.relative_humidity,
                                                   "/site/room/humidity",
                                                   "humidity of the room",
                                                   Kind::fraction,
                                                   DefaultId::relative_humidity_room);
    }
    weathers(work);
    if (is_open(made.shelter)) {
        made.room_temperature_k = made.weathers.front().outdoor_temperature_k;
        made.room_humidity = made.weathers.front().relative_humidity;
    }
}

/// Of both a given pressure, with fans and fire as they are; of one its own. The house tells what
/// is left, and in the open there is none.
void room_pressure(const CaseWork& work) {
    const Room& room = work.written.site.room;
    Case& made = work.made;
    if (is_open(made.shelter)) {
        made.room_pressure_burning_pa = made.room_pressure_idle_pa = 0.0;
        return;
    }
    made.room_pressure_burning_pa =
        room.pressure_burning_pa ? room.pressure_burning_pa : room.pressure_pa;
    made.room_pressure_idle_pa = room.pressure_idle_pa ? room.pressure_idle_pa : room.pressure_pa;
}

/// The air of attic and chase, which without a figure lies between room and outdoors.
void hidden_air(const CaseWork& work) {
    const Site& written = work.written.site;
    Case& made = work.made;
    made.attic_temperature_k = written.attic_temperature_k.value_or(0.0);
    made.chase_temperature_k = written.chase_temperature_k.value_or(0.0);
    const auto share = [&](Zone zone, const Given& told, DefaultId id, std::string_view key) {
        const catalog::Default& row = catalog::default_of(id);
        const auto& run = work.written.run;
        const bool matters = std::any_of(
            run.begin(), run.end(), [&](const Part& part) { return part.zone == zone; });
        if (matters && !told) {
            work.assume(key,
                        "air of the " + std::string{name(zone)}
                            + ", by its share of the way from room to outdoors",
                        Kind::fraction,
                        row.value,
                        row.source,
                        row.mark);
        }
        return row.value;
    };
    made.attic_share = share(Zone::attic,
                             written.attic_temperature_k,
                             DefaultId::attic_share,
                             "/site/attic_temperature");
    made.chase_share = share(Zone::chase,
                             written.chase_temperature_k,
                             DefaultId::chase_share,
                             "/site/chase_temperature");
}

} // namespace

void site(const CaseWork& work) {
    const Site& written = work.written.site;
    Case& made = work.made;
    if (written.air_pressure_pa) {
        made.air_pressure_pa = *written.air_pressure_pa;
    } else {
        const double altitude_m = work.value_or_default(written.altitude_m,
                                                        "/site/altitude",
                                                        "altitude of the site",
                                                        Kind::length,
                                                        DefaultId::altitude_m);
        made.air_pressure_pa = atmosphere::pressure_pa(altitude_m);
    }
    shelter(work);
    room_air(work);
    room_pressure(work);
    hidden_air(work);
}

} // namespace fluewright::resolving
