#include "altered.hpp"

#include "advice/remedies/run_edit.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/physics/fittings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fluewright::diagnosis {
namespace {

/// No reading is finer, and each run of a hundred is solved in each of its states.
constexpr double near_enough_pa = 1e-4;

constexpr double most_of_high_fire = 0.9;
constexpr double shut_rad = 0.5 * std::numbers::pi;

bool reaches(const Place& place, int part) {
    return part >= place.first && part <= place.last;
}

/// Changes that the file itself could tell.
void change_file(Installation& written, const CauseAt& change) {
    if (id_of(*change.cause) == CauseId::wet_wood) {
        written.appliance.fuel.moisture = change.size;
    }
    for (std::size_t i = 0; i < written.run.size(); ++i) {
        Part& part = written.run[i];
        const bool can_have_one = find_field<Part>("deposit_thickness", kinds_of(part)) != nullptr;
        if (id_of(*change.cause) == CauseId::deposits && can_have_one
            && reaches(change.place, static_cast<int>(i))) {
            part.deposit_m = part.deposit_m.value_or(0.0) + change.size;
        }
    }
    if (id_of(*change.cause) == CauseId::smaller_flue && change.place.first < 0) {
        for (Part& part : written.run) {
            if (part.up_m) {
                part.up_m = *part.up_m * change.size;
            }
        }
    }
}

void block(Case& c, const CauseAt& change) {
    const double loss = fittings::obstruction(1.0 - change.size);
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        if (c.sections[i].part != change.place.first) {
            continue;
        }
        if (c.sections[i].length_m <= 0.0) {
            c.sections[i].loss += loss;
            return;
        }
        // Half way up a straight.
        Section& lower = c.sections[i];
        lower.length_m *= 0.5;
        lower.rise_m *= 0.5;
        Section upper = lower;
        upper.loss = loss;
        upper.joint_leak_m2 = 0.0;
        upper.disturbs = true;
        c.sections.insert(c.sections.begin() + static_cast<std::ptrdiff_t>(i) + 1, upper);
        return;
    }
}

void clog_screen(const Installation& written, Case& c, const CauseAt& change) {
    const Part& part = written.run[static_cast<std::size_t>(change.place.first)];
    const double clean =
        part.free_area.value_or(catalog::default_of(DefaultId::screen_free_area_share).value);
    for (Section& section : c.sections) {
        if (section.part == change.place.first
            && (section.kind == PartKind::cap || section.kind == PartKind::screen)) {
            section.loss += fittings::screen(clean * (1.0 - change.size)) - fittings::screen(clean);
        }
    }
}

/// One opening at a tee, or many small ones over the joints in the room.
void leak(Case& c, const CauseAt& change) {
    std::vector<std::size_t> joints;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const bool begins_part = i == 0 || c.sections[i].part != c.sections[i - 1].part;
        if (begins_part && reaches(change.place, c.sections[i].part)) {
            joints.push_back(i);
        }
    }
    for (const std::size_t i : joints) {
        c.sections[i].joint_leak_m2 += change.size / static_cast<double>(joints.size());
    }
}

void narrow(Case& c, double share) {
    for (Section& section : c.sections) {
        if (section.kind == PartKind::collar) {
            continue;
        }
        section.diameter_m *= share;
        section.perimeter_m *= share;
        section.area_m2 *= share * share;
    }
}

/// How gas flow and heat go with the fuel burnt, read off the two fires of the file: the gas falls
/// less than the fuel, since a small fire takes more air than it needs.
struct FirePowers {
    double flow{0.8};
    double rise{0.6};

    explicit FirePowers(const Case& c) {
        const Firing& high = c.appliance.high;
        const Firing& low = c.appliance.low;
        const double fuel = std::log(high.burn_rate_kg_s / low.burn_rate_kg_s);
        const double rise_high = high.gas_temperature_k - c.room_temperature_k;
        const double rise_low = low.gas_temperature_k - c.room_temperature_k;
        constexpr double too_alike = 0.05;
        if (fuel > too_alike && rise_low > 1.0) {
            flow = std::clamp(std::log(high.gas_flow_kg_s / low.gas_flow_kg_s) / fuel, 0.3, 1.0);
            rise = std::clamp(std::log(rise_high / rise_low) / fuel, 0.0, 1.5);
        }
    }
};

void change_fire(Firing& fire, double fuel_share, const FirePowers& powers, double room_k) {
    const double flow = std::pow(fuel_share, powers.flow);
    const double rise = std::pow(fuel_share, powers.rise);
    fire.burn_rate_kg_s *= fuel_share;
    fire.gas_flow_kg_s *= flow;
    fire.draft_needed_pa *= flow * flow;
    fire.heat_to_flue_w *= flow * rise;
    fire.gas_temperature_k = room_k + rise * (fire.gas_temperature_k - room_k);
}

void burn_less(Case& c, double share) {
    const FirePowers powers(c);
    change_fire(c.appliance.high, share, powers, c.room_temperature_k);
    change_fire(c.appliance.low, share, powers, c.room_temperature_k);
}

/// Wet wood burns slower, by more than its lost heating value: 1 % for each 1 % of water.
void burn_wet(Altered& altered, const Case& before) {
    const ApplianceCase& a = altered.made.appliance;
    const double wetter = std::max(0.0, a.moisture - before.appliance.moisture);
    const double slower = std::max(0.4, 1.0 - wetter);
    altered.heat_share *=
        slower * a.net_heating_value_j_kg / before.appliance.net_heating_value_j_kg;
    burn_less(altered.made, slower);
}

void change_solved(const Installation& written, const CauseAt& change, Altered& altered) {
    Case& c = altered.made;
    const CauseId id = id_of(*change.cause);
    const double size = change.size;
    if (id == CauseId::blockage) {
        block(c, change);
    } else if (id == CauseId::clogged_screen) {
        clog_screen(written, c, change);
    } else if (id == CauseId::leaky_joints) {
        leak(c, change);
    } else if (id == CauseId::shut_damper) {
        const Part& part = written.run[static_cast<std::size_t>(change.place.first)];
        for (Section& section : c.sections) {
            if (section.kind == PartKind::damper && section.part == change.place.first) {
                // How much a shut blade leaves open is told by few files and differs by blade.
                section.loss = fittings::disc_damper(
                    shut_rad, std::max(1.0 - size, part.free_area.value_or(0.0)));
            }
        }
    } else if (id == CauseId::clogged_passages) {
        c.appliance.high.draft_needed_pa *= size;
        c.appliance.low.draft_needed_pa *= size;
    } else if (id == CauseId::leaky_stove) {
        altered.uncontrolled_share = size;
        const FirePowers powers(c);
        const double flow_share = std::min(size, most_of_high_fire) * c.appliance.high.gas_flow_kg_s
                                  / c.appliance.low.gas_flow_kg_s;
        if (flow_share > 1.0) {
            change_fire(c.appliance.low,
                        std::pow(flow_share, 1.0 / powers.flow),
                        powers,
                        c.room_temperature_k);
        }
    } else if (id == CauseId::fan) {
        altered.air.fan_pa += size;
    } else if (id == CauseId::house_suction) {
        altered.air.house_at_20_k_pa += size;
    } else if (id == CauseId::starved_house) {
        altered.air.starved_pa += size;
    } else if (id == CauseId::downdraft) {
        altered.air.wind_pa += size;
    } else if (id == CauseId::low_fire) {
        burn_less(c, size);
        altered.heat_share *= size;
    } else if (id == CauseId::smaller_flue && change.place.first >= 0) {
        narrow(c, size);
    }
}

bool changes_file(const CauseAt& change) {
    return id_of(*change.cause) == CauseId::wet_wood || id_of(*change.cause) == CauseId::deposits
           || (id_of(*change.cause) == CauseId::smaller_flue && change.place.first < 0);
}

} // namespace

std::optional<Altered>
alter(const Installation& written, const Case& resolved, const std::vector<CauseAt>& causes) {
    Altered altered;
    altered.written_flow_kg_s = resolved.appliance.high.gas_flow_kg_s;
    altered.causes = causes;
    if (std::any_of(causes.begin(), causes.end(), changes_file)) {
        Installation changed = written;
        for (const CauseAt& change : causes) {
            change_file(changed, change);
        }
        auto made = resolve(changed);
        if (!made) {
            return std::nullopt;
        }
        altered.made = std::move(made).value();
        for (const Part& part : changed.run) {
            altered.deposit_m.push_back(part.deposit_m.value_or(0.0));
        }
        if (altered.made.appliance.moisture > resolved.appliance.moisture) {
            burn_wet(altered, resolved);
        }
    } else {
        altered.made = resolved;
        for (const Part& part : written.run) {
            altered.deposit_m.push_back(part.deposit_m.value_or(0.0));
        }
    }
    altered.made.top_tolerance_pa = near_enough_pa;
    for (const CauseAt& change : causes) {
        change_solved(written, change, altered);
    }
    return altered;
}

bool is_elsewhere(const Altered& altered, std::size_t point) {
    const auto& parts = altered.made.run.parts;
    const auto joins = [&](std::size_t part) {
        return part >= 1 && part <= parts.size()
               && run_edit::lies_upside_down(parts[part - 1].written);
    };
    return altered.flaw != nullptr && id_of(*altered.flaw) == CauseId::crimps_up && point > 0
           && !joins(point) && !joins(point + 1);
}

} // namespace fluewright::diagnosis
