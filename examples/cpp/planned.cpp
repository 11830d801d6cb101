// Builds an installation in code and prints whether it draws.
#include <fluewright/fluewright.hpp>
#include <iostream>

using namespace fluewright;

int main() {
    Installation planned;
    planned.title = "Chandlery, stove by the counter";
    Weather frost;
    frost.name = "frost";
    frost.outdoor_temperature_k = 265.15;
    Weather mild;
    mild.name = "mild";
    mild.outdoor_temperature_k = 285.15;
    planned.site.weather = {frost, mild};

    Appliance& stove = planned.appliance;
    stove.type = ApplianceType::stove;
    stove.fuel.name = "beech";
    stove.fuel.moisture = 0.18;
    stove.outlet.diameter_m = 0.15;
    stove.outlet.height_m = 0.75;
    stove.burn_rate_kg_s = {.low = 1.1 / 3600.0, .high = 2.7 / 3600.0};
    stove.efficiency.high = 0.72;
    stove.draft_needed_pa.high = 12.0;
    stove.door.width_m = 0.33;
    stove.door.height_m = 0.25;

    Part connector;
    connector.part = PartKind::straight;
    connector.up_m = 1.2;
    connector.diameter_m = 0.15;
    connector.wall = "single-wall steel";
    connector.zone = Zone::room;

    Part chimney;
    chimney.part = PartKind::straight;
    chimney.up_m = 4.5;
    chimney.wall = "insulated 25 mm";
    chimney.zone = Zone::outdoors;

    Part cap;
    cap.part = PartKind::cap;

    planned.run = {connector, chimney, cap};

    const auto answer = assess(planned, {});
    if (!answer) {
        for (const Fault& fault : answer.error()) {
            std::cerr << fault.pointer << ": " << fault.message << '\n';
        }
        return 2;
    }
    std::cout << answer->sentence << '\n';
    for (const HarmVerdict& line : answer->verdict.harms) {
        std::cout << title(line.harm) << ": " << line.sentence << '\n';
    }
    for (const Finding& finding : answer->findings) {
        std::cout << finding.message << '\n';
    }
    return answer->works() ? 0 : 1;
}
