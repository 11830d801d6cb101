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

void loosen(Installation& in) {
    for (Part& p : in.run) {
        p.joint = JointFit::loose;
    }
}

/// The room follows from the house: a storey and a half of 320 m3 with a hood over the range.
void put_in_house(Installation& in) {
    in.site.room.pressure_pa = {};
    in.site.house.storeys = 2.0;
    in.site.house.height_m = 5.0;
    in.site.house.volume_m3 = 320.0;
    in.site.house.air_changes_50_pa_1_s = 4.0 / 3600.0;
    Fan hood;
    hood.name = "range hood";
    hood.flow_m3_s = 0.03;
    in.site.house.fans = {hood};
}

/// A gas heater of the trade with its hood, on a vent of its own size.
Installation with_draft_hood() {
    Installation in = typical();
    in.appliance = {};
    in.appliance.type = ApplianceType::draft_hood;
    in.appliance.fuel.name = "natural gas";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 1.5;
    in.appliance.heat_input_w.high = 24e3;
    for (Part& p : in.run) {
        if (p.part == PartKind::straight) {
            p.wall = "type b vent";
        }
    }
    return in;
}

/// A gas boiler whose hood is a part of the run.
Installation with_hood_part() {
    Installation in = with_draft_hood();
    in.appliance.type = ApplianceType::boiler;
    in.appliance.efficiency.high = 0.8;
    in.run.insert(in.run.begin(), part(PartKind::draft_hood));
    return in;
}

Installation with_regulator() {
    Installation in = typical();
    Part regulator = part(PartKind::draft_regulator);
    regulator.setting_pa = 14.0;
    regulator.opening_diameter_m = 0.15;
    in.run.insert(in.run.begin() + 1, regulator);
    return in;
}

/// The chimney in fifteen lengths of 0.3 m, every joint loose.
Installation with_twenty_parts() {
    constexpr int lengths = 15;
    Installation in = typical();
    Part chimney = in.run[4];
    chimney.up_m = 0.3;
    in.run.erase(in.run.begin() + 4);
    in.run.insert(in.run.begin() + 4, lengths, chimney);
    in.site.weather = {weather("hard frost", 253.15, 3.0),
                       weather("frost", 261.15, 2.0),
                       weather("thaw", 273.15, 5.0),
                       weather("cool", 281.15, 1.0),
                       weather("mild", 285.15, 0.0),
                       weather("warm", 291.15, 0.0)};
    loosen(in);
    put_in_house(in);
    return in;
}

} // namespace

std::vector<Kin> kin_of_typical() {
    Installation loose = typical();
    loosen(loose);
    Installation house = typical();
    put_in_house(house);
    Installation both = loose;
    put_in_house(both);
    return {{"loose", "with loose joints", loose},
            {"house", "in a house", house},
            {"loose_house", "loose joints in a house", both},
            {"regulator", "with a draft regulator", with_regulator()},
            {"hood", "gas heater with a draft hood", with_draft_hood()},
            {"hood_part", "gas boiler, draft hood in the run", with_hood_part()},
            {"twenty", "20 loose parts, house, six weathers", with_twenty_parts()}};
}

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
