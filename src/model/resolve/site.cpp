#include "fluewright/physics/atmosphere.hpp"
#include "resolving.hpp"

namespace fluewright::resolving {
namespace {

void weathers(const CaseWork& work) {
    const auto& entries = work.written.site.weather;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Weather& entry = entries[i];
        const std::string pointer = "/site/weather/" + std::to_string(i);
        WeatherCase w;
        w.name = entry.name.value_or("weather " + std::to_string(i + 1));
        w.outdoor_temperature_k = work.value_or_default(entry.outdoor_temperature_k,
                                                        pointer + "/outdoor_temperature",
                                                        "outdoor temperature, " + w.name,
                                                        Kind::temperature,
                                                        DefaultId::outdoor_temperature_mild_k);
        w.wind_m_s = work.value_or_default(entry.wind_m_s,
                                           pointer + "/wind",
                                           "wind at the mouth, " + w.name,
                                           Kind::speed,
                                           DefaultId::wind_speed_m_s);
        w.relative_humidity = work.value_or_default(entry.relative_humidity,
                                                    pointer + "/humidity",
                                                    "humidity outdoors, " + w.name,
                                                    Kind::fraction,
                                                    DefaultId::relative_humidity_outdoor);
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
             .wind_m_s = catalog::default_of(DefaultId::wind_speed_m_s).value,
             .relative_humidity = catalog::default_of(DefaultId::relative_humidity_outdoor).value});
    };
    assumed("frost", DefaultId::outdoor_temperature_frost_k);
    assumed("mild", DefaultId::outdoor_temperature_mild_k);
    const catalog::Default& wind = catalog::default_of(DefaultId::wind_speed_m_s);
    work.assume(
        "/site/weather", "wind at the mouth", Kind::speed, wind.value, wind.source, wind.mark);
    const catalog::Default& damp = catalog::default_of(DefaultId::relative_humidity_outdoor);
    work.assume(
        "/site/weather", "humidity outdoors", Kind::fraction, damp.value, damp.source, damp.mark);
}

/// Left to the house's balance where the file tells of a house.
void room_pressure(const CaseWork& work) {
    const Room& room = work.written.site.room;
    if (work.written.site.house.is_given() && !room.pressure_is_given()) {
        return;
    }
    // Each has a key of its own, so that writing down what was assumed changes nothing.
    work.made.room_pressure_burning_pa = work.value_or_default(
        room.pressure_burning_pa ? room.pressure_burning_pa : room.pressure_pa,
        "/site/room/pressure_burning",
        "room against outdoors while the fire burns",
        Kind::pressure,
        DefaultId::room_pressure_burning_pa);
    work.made.room_pressure_standing_pa =
        work.value_or_default(room.pressure_idle_pa ? room.pressure_idle_pa : room.pressure_pa,
                              "/site/room/pressure_idle",
                              "room against outdoors with no fire",
                              Kind::pressure,
                              DefaultId::room_pressure_standing_pa);
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
    made.room_temperature_k = work.value_or_default(written.room.temperature_k,
                                                    "/site/room/temperature",
                                                    "room temperature",
                                                    Kind::temperature,
                                                    DefaultId::room_temperature_k);
    made.room_humidity = work.value_or_default(written.room.relative_humidity,
                                               "/site/room/humidity",
                                               "humidity of the room",
                                               Kind::fraction,
                                               DefaultId::relative_humidity_room);
    room_pressure(work);
    made.attic_temperature_k = written.attic_temperature_k.value_or(0.0);
    made.chase_temperature_k = written.chase_temperature_k.value_or(0.0);
    made.attic_share = catalog::default_of(DefaultId::attic_share).value;
    made.chase_share = catalog::default_of(DefaultId::chase_share).value;
    weathers(work);
}

} // namespace fluewright::resolving
