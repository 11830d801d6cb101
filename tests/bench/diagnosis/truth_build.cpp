#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/warmup/tended.hpp"
#include "truth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace bench {

using namespace fluewright;

namespace {

void vary(Installation& real, Dice& dice) {
    Appliance& a = real.appliance;
    const double burn = 1.0 + 0.08 * dice.bell();
    a.burn_rate_kg_s.high = *a.burn_rate_kg_s.high * burn;
    a.burn_rate_kg_s.low = *a.burn_rate_kg_s.low * burn;
    a.efficiency.high = std::clamp(*a.efficiency.high + 0.02 * dice.bell(), 0.5, 0.88);
    a.fuel.moisture = std::clamp(*a.fuel.moisture + 0.012 * dice.bell(), 0.1, 0.3);
    real.site.weather.front().outdoor_temperature_k =
        *real.site.weather.front().outdoor_temperature_k + 1.5 * dice.bell();
    real.site.room.pressure_pa = *real.site.room.pressure_pa + 0.5 * dice.bell();
    for (Part& part : real.run) {
        if (part.up_m) {
            part.up_m = *part.up_m * (1.0 + 0.02 * dice.bell());
        }
    }
}

/// Less fuel; gas flow and heat go down about as between the two fires of the file.
void burn_share(Case& c, double share, Dice& dice) {
    const Firing high = c.appliance.high;
    const Firing low = c.appliance.low;
    const double room_k = c.room_temperature_k;
    const double steps = std::log(high.burn_rate_kg_s / low.burn_rate_kg_s);
    const double flow_power =
        std::log(high.gas_flow_kg_s / low.gas_flow_kg_s) / steps * (1.0 + 0.1 * dice.bell());
    const double rise_power =
        std::log((high.gas_temperature_k - room_k) / (low.gas_temperature_k - room_k)) / steps
        * (1.0 + 0.15 * dice.bell());
    for (Firing* fire : {&c.appliance.high, &c.appliance.low}) {
        const double flow = std::pow(share, flow_power);
        const double rise = std::pow(share, rise_power);
        fire->gas_flow_kg_s *= flow;
        fire->burn_rate_kg_s *= share;
        fire->draft_needed_pa *= flow * flow;
        fire->heat_to_flue_w *= flow * rise;
        fire->gas_temperature_k = room_k + rise * (fire->gas_temperature_k - room_k);
    }
}

void build_in(Installation& real, std::vector<std::size_t>& place, const Planted& planted) {
    const auto part = static_cast<std::size_t>(std::max(0, planted.part));
    if (planted.cause == "blockage") {
        Part obstruction;
        obstruction.part = PartKind::obstruction;
        obstruction.blocked = planted.size;
        const bool at_top = real.run[part].part == PartKind::cap;
        const std::size_t at = at_top ? part : part + 1;
        real.run.insert(real.run.begin() + static_cast<std::ptrdiff_t>(at), obstruction);
        for (std::size_t& index : place) {
            index += index >= at ? 1U : 0U;
        }
    } else if (planted.cause == "deposits") {
        for (std::size_t i = part; i < real.run.size(); ++i) {
            if (find_field<Part>("deposit_thickness", kinds_of(real.run[i])) != nullptr) {
                real.run[i].deposit_m = planted.size;
            }
        }
    } else if (planted.cause == "clogged-screen") {
        real.run[part].free_area = 0.72 * (1.0 - planted.size);
    } else if (planted.cause == "shut-damper") {
        real.run[part].blade_angle_rad = 0.5 * std::numbers::pi;
        real.run[part].free_area = 1.0 - planted.size;
    } else if (planted.cause == "clogged-passages") {
        real.appliance.draft_needed_pa.high = *real.appliance.draft_needed_pa.high * planted.size;
        real.appliance.draft_needed_pa.low = *real.appliance.draft_needed_pa.low * planted.size;
    } else if (planted.cause == "wet-wood") {
        real.appliance.fuel.moisture = planted.size;
    } else if (planted.cause == "smaller-flue") {
        for (Part& each : real.run) {
            if (planted.part >= 0 && each.diameter_m) {
                each.diameter_m = *each.diameter_m * planted.size;
            }
            if (planted.part < 0 && each.up_m) {
                each.up_m = *each.up_m * planted.size;
            }
        }
    }
}

} // namespace

Truth::Truth(const Installation& written, const Planted& planted, Dice& dice)
    : planted_(planted), written_(written), dice_(dice), person_(dice.bell()) {
    Installation real = written;
    real.observed.clear();
    for (std::size_t i = 0; i < real.run.size(); ++i) {
        place_of_part_.push_back(i);
    }
    const auto as_written = resolve(written);
    if (!as_written) {
        return;
    }
    written_flow_kg_s_ = as_written->appliance.high.gas_flow_kg_s;
    vary(real, dice);
    build_in(real, place_of_part_, planted);
    auto made = resolve(real);
    if (!made) {
        return;
    }
    Case& c = *made;
    moisture_ = c.appliance.moisture;
    c.inside_heat = dice.chance(0.25) ? InsideHeat::european_floor : InsideHeat::disturbed;
    for (Section& section : c.sections) {
        section.loss *= std::clamp(1.0 + 0.15 * dice.bell(), 0.6, 1.5);
    }
    c.kindling.gas_flow_kg_s *= 1.0 + 0.15 * dice.bell();
    c.kindling.gas_temperature_k +=
        0.15 * dice.bell() * (c.kindling.gas_temperature_k - c.room_temperature_k);
    if (planted.cause == "leaky-joints") {
        const int part = planted.part;
        std::vector<Section*> joints;
        for (Section& section : c.sections) {
            if (part >= 0 ? section.part == part
                          : section.zone == Zone::room && section.part >= 0) {
                joints.push_back(&section);
            }
        }
        for (Section* section : joints) {
            section->joint_leak_m2 = planted.size / static_cast<double>(joints.size());
        }
    } else if (planted.cause == "low-fire") {
        burn_share(c, planted.size, dice);
        effects_.heat_share = planted.size;
    } else if (planted.cause == "wet-wood") {
        const double wetter = std::max(0.0, moisture_ - as_written->appliance.moisture);
        const double slower = std::max(0.4, 1.0 - 1.1 * wetter);
        burn_share(c, slower, dice);
        effects_.heat_share = slower * c.appliance.net_heating_value_j_kg
                              / as_written->appliance.net_heating_value_j_kg;
    } else if (planted.cause == "leaky-stove") {
        effects_.past_control = planted.size;
    } else if (planted.cause == "fan") {
        effects_.fan_pa = planted.size;
    } else if (planted.cause == "house-suction") {
        effects_.house_pa = planted.size;
    } else if (planted.cause == "starved-house") {
        effects_.starved_pa = planted.size;
    } else if (planted.cause == "downdraft") {
        effects_.wind_pa = planted.size;
    }
    solved_ = std::move(made).value();
    dice_ = Dice(static_cast<std::uint64_t>(dice.even() * 9e15));
}

} // namespace bench
