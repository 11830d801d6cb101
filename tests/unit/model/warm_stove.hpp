#pragma once

#include "../written_parts.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/warmup/warmup.hpp"

#include <string>

/// A stove under pipe and chimney, and its warm-up.
namespace fluewright::warm_stove {

inline Installation stove_on(std::string pipe, std::string chimney) {
    Installation written;
    written.site.weather = {{.name = "cool",
                             .outdoor_temperature_k = 275.15,
                             .wind_m_s = 0.0,
                             .relative_humidity = 0.8,
                             .room_temperature_k = {}}};
    written.site.room.pressure_pa = 0.0;
    written.appliance.type = ApplianceType::stove;
    written.appliance.outlet.diameter_m = 0.15;
    written.appliance.burn_rate_kg_s = {.low = 1.0 / 3600.0, .high = 2.5 / 3600.0};
    Part elbow;
    elbow.part = PartKind::elbow;
    elbow.angle_rad = 0.2;
    Part cap;
    cap.part = PartKind::cap;
    written.run = {pipe_up(1.0, std::move(pipe), Zone::room),
                   elbow,
                   pipe_up(1.5, chimney, Zone::room),
                   pipe_up(2.5, std::move(chimney), Zone::outdoors),
                   cap};
    return written;
}

inline BurnEntry burn(double minutes, double kg_h) {
    return {.name = {}, .duration_s = 60.0 * minutes, .burn_rate_kg_s = kg_h / 3600.0};
}

inline Warmup warm(const Installation& written, double step_s, double total_s = 0.0) {
    return warm_up(*resolve(written), {.total_s = total_s, .step_s = step_s});
}

} // namespace fluewright::warm_stove
