#include "stretches.hpp"

namespace fluewright {
namespace {

bool same_stretch(const Section& a, const Section& b) {
    return a.wall == b.wall && a.zone == b.zone && a.area_m2 == b.area_m2
           && a.diameter_m == b.diameter_m;
}

} // namespace

std::size_t chimney_section(const Case& c) {
    const std::size_t part = c.run.chimney_start();
    return part < c.run.parts.size() ? c.run.parts[part].first_section : 0;
}

std::vector<MethodStretch> stretches_of(const Case& c, LossRule rule) {
    const std::size_t start = chimney_section(c);
    std::vector<MethodStretch> stretches;
    // Losses met before there is a stretch to carry them, as loss over section area squared.
    double waiting = 0.0;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& s = c.sections[i];
        const bool connector = i < start;
        const bool fits = !stretches.empty() && stretches.back().connector == connector;
        const double loss = rule(c, i) / (s.area_m2 * s.area_m2);
        if (s.length_m > 0.0) {
            if (!fits || !same_stretch(stretches.back().at(c), s)) {
                MethodStretch next;
                next.connector = connector;
                next.section = i;
                next.first_part = s.part;
                stretches.push_back(next);
            }
            MethodStretch& now = stretches.back();
            now.length_m += s.length_m;
            now.rise_m += s.rise_m;
            now.last_part = s.part;
            now.zeta += (waiting + loss) * s.area_m2 * s.area_m2;
            waiting = 0.0;
        } else if (fits && stretches.back().at(c).area_m2 == s.area_m2) {
            stretches.back().zeta += loss * s.area_m2 * s.area_m2;
            stretches.back().last_part = s.part;
        } else {
            waiting += loss;
        }
    }
    if (waiting > 0.0 && !stretches.empty()) {
        const Section& last = stretches.back().at(c);
        stretches.back().zeta += waiting * last.area_m2 * last.area_m2;
    }
    return stretches;
}

std::string stretch_title(const MethodStretch& stretch) {
    std::string title = stretch.connector ? "connector, part " : "chimney, part ";
    title += std::to_string(stretch.first_part + 1);
    if (stretch.last_part > stretch.first_part) {
        title += " to " + std::to_string(stretch.last_part + 1);
    }
    return title;
}

double straight_behind_m(const Case& c, std::size_t section) {
    double straight_m = 0.0;
    for (std::size_t i = section + 1; i < c.sections.size(); ++i) {
        if (c.sections[i].turn_rad > 0.0) {
            break;
        }
        straight_m += c.sections[i].length_m;
    }
    return straight_m;
}

Case in_weather(const Case& resolved, const MethodWeather& weather) {
    Case c = resolved;
    WeatherCase one;
    one.name = "of the method";
    one.outdoor_temperature_k = weather.outdoor_temperature_k;
    one.room_temperature_k =
        is_open(resolved.shelter) ? weather.outdoor_temperature_k : resolved.room_temperature_k;
    one.relative_humidity = resolved.weathers.front().relative_humidity;
    c.weathers = {one};
    c.air_pressure_pa = weather.air_pressure_pa;
    c.room_pressure_burning_pa = weather.room_pressure_pa;
    return c;
}

} // namespace fluewright
