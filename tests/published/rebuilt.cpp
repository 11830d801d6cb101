#include "rebuilt.hpp"

#include "../outdoor_top.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <stdexcept>

namespace published::rebuilt {

using namespace fluewright;

Part up(double length_m, const std::string& wall) {
    Part part;
    part.part = PartKind::straight;
    part.up_m = length_m;
    part.wall = wall;
    return part;
}

Part across(double length_m, const std::string& wall) {
    Part part;
    part.part = PartKind::straight;
    part.across_m = length_m;
    part.slope = 1.0 / 48.0;
    part.wall = wall;
    return part;
}

Part with_loss(PartKind kind, double loss) {
    Part part;
    part.part = kind;
    part.loss = loss;
    return part;
}

Weather calm(double outdoor_k) {
    Weather weather;
    weather.outdoor_temperature_k = outdoor_k;
    weather.wind_m_s = 0.0;
    return weather;
}

Case resolved(const Installation& written) {
    auto made = resolve(with_outdoor_top(written));
    if (!made) {
        const Fault& fault = made.error().front();
        throw std::runtime_error(fault.pointer + ": " + fault.message);
    }
    return std::move(made.value());
}

void set_bore(Case& c, double diameter_m) {
    const double area_m2 = constants::pi / 4.0 * diameter_m * diameter_m;
    for (Section& section : c.sections) {
        section.diameter_m = diameter_m;
        section.area_m2 = area_m2;
        section.perimeter_m = constants::pi * diameter_m;
    }
    c.appliance.outlet_diameter_m = diameter_m;
    c.appliance.outlet_area_m2 = area_m2;
}

} // namespace published::rebuilt
