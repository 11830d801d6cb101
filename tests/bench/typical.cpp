#include "typical.hpp"

namespace fluewright::bench {
namespace {

Weather weather(const char* name, double outdoor_k, double wind_m_s) {
    Weather w;
    w.name = name;
    w.outdoor_temperature_k = outdoor_k;
    w.wind_m_s = wind_m_s;
    return w;
}

Part part(PartKind kind) {
    Part p;
    p.part = kind;
    return p;
}

} // namespace

Installation typical() {
    constexpr double per_hour = 1.0 / 3600.0;
    Installation in;
    in.site.altitude_m = 310.0;
    in.site.room.temperature_k = 292.15;
    in.site.room.pressure_pa = -1.0;
    in.site.weather = {weather("frost", 261.15, 2.0), weather("mild", 285.15, 0.0)};
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.fuel.moisture = 0.18;
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 0.75;
    in.appliance.burn_rate_kg_s = {1.1 * per_hour, 3.8 * per_hour};
    in.appliance.efficiency.high = 0.68;
    in.appliance.draft_needed_pa.high = 12.0;
    in.appliance.door = {0.42, 0.30, {}, {}, {}};

    Part pipe = part(PartKind::straight);
    pipe.up_m = 1.2;
    pipe.diameter_m = 0.15;
    pipe.wall = "single-wall steel";
    pipe.zone = Zone::room;
    Part level = part(PartKind::straight);
    level.across_m = 0.8;
    level.rise_m = 0.017;
    Part chimney = part(PartKind::straight);
    chimney.up_m = 4.5;
    chimney.wall = "insulated 25 mm";
    chimney.zone = Zone::outdoors;
    in.run = {
        pipe, part(PartKind::elbow), level, part(PartKind::tee), chimney, part(PartKind::cap)};
    return in;
}

} // namespace fluewright::bench
