#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/physics/convection.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Groups sections that lose heat alike, so that splitting a straight changes nothing.
bool same_wall_place(const Section& a, const Section& b) {
    return a.wall == b.wall && a.zone == b.zone && a.diameter_m == b.diameter_m
           && a.rectangular == b.rectangular && (a.lie == Lie::level) == (b.lie == Lie::level);
}

bool has_length(const Section& section) {
    return section.length_m > 0.0;
}

/// Whether the wall loses heat alike in both places.
bool same_place(const WallPlace& a, const WallPlace& b) {
    return a.ambient_k == b.ambient_k && a.wind_m_s == b.wind_m_s
           && a.air_pressure_pa == b.air_pressure_pa;
}

} // namespace

FlueModel::FlueModel(const Case& resolved, const Surroundings& surroundings)
    : case_(&resolved), surroundings_(surroundings),
      layout_(std::make_shared<const Layout>(layout_of(resolved))),
      heats_(std::make_shared<const Heats>(heats_of(nullptr))) {}

FlueModel::FlueModel(const FlueModel& model, const Surroundings& surroundings)
    : case_(model.case_), surroundings_(surroundings), layout_(model.layout_),
      heats_(std::make_shared<const Heats>(heats_of(model.heats_.get()))) {}

double FlueModel::uniform_lift_pa(double density_kg_m3) const {
    return surroundings_.room_pressure_pa - surroundings_.top_pressure_pa
           + (surroundings_.outdoor_density_kg_m3 - density_kg_m3) * constants::gravity_m_s2
                 * case_->total_rise_m();
}

FlueModel::Layout FlueModel::layout_of(const Case& resolved) {
    const auto& sections = resolved.sections;
    Layout layout;
    layout.sections.resize(sections.size());
    double since_disturbance_m = 0.0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const Section& section = sections[i];
        layout.has_leaks = layout.has_leaks || section.leaks();
        since_disturbance_m = section.disturbs ? 0.0 : since_disturbance_m;
        if (!has_length(section)) {
            continue;
        }
        Prepared& prepared = layout.sections[i];
        prepared.start_m =
            convection::entry_start_over_diameter * section.diameter_m + since_disturbance_m;
        prepared.xi_start = cube_root(prepared.start_m);
        prepared.xi_length = cube_root(prepared.start_m + section.length_m) - prepared.xi_start;
        prepared.entry_scale =
            convection::entry_scale * cube_root(section.diameter_m * section.diameter_m);
        since_disturbance_m += section.length_m;
        auto& owners = layout.heat_owners;
        const auto known = std::find_if(owners.begin(), owners.end(), [&](std::size_t owner) {
            return same_wall_place(sections[owner], section);
        });
        prepared.heat = static_cast<std::size_t>(known - owners.begin());
        if (known == owners.end()) {
            owners.push_back(i);
        }
    }
    add_emissions(resolved, layout);
    return layout;
}

FlueModel::FlueModel(const FlueModel& model, std::vector<WallMemory> memory) : FlueModel(model) {
    memory_ = std::move(memory);
}

/// Gas enters no colder than the room and cools no further than the coldest air it has passed, so
/// that only a section in warmer air than that can have a wall colder than the air.
bool FlueModel::wall_may_be_colder(std::size_t owner) const {
    const auto air_k = [&](const Section& section) {
        return surroundings_.temperature_k[static_cast<std::size_t>(section.zone)];
    };
    const double ambient_k = air_k(case_->sections[owner]);
    bool colder = ambient_k > surroundings_.temperature_k[static_cast<std::size_t>(Zone::room)];
    for (const Section& section : case_->sections) {
        colder = colder || air_k(section) < ambient_k;
        if (same_wall_place(section, case_->sections[owner]) && has_length(section) && colder) {
            return true;
        }
    }
    return false;
}

/// No gas enters hotter than that of the hotter fire, in the warmest room.
double FlueModel::hottest_gas_k() const {
    constexpr double warmer_room_k = 60.0;
    const ApplianceCase& a = case_->appliance;
    return std::max({a.high.gas_temperature_k,
                     a.low.gas_temperature_k,
                     case_->kindling.gas_temperature_k})
           + warmer_room_k;
}

/// Walls that the model before has in the same air are shared with it.
FlueModel::Heats FlueModel::heats_of(const Heats* before) const {
    Heats heats;
    heats.reserve(layout_->heat_owners.size());
    for (std::size_t i = 0; i < layout_->heat_owners.size(); ++i) {
        const std::size_t owner = layout_->heat_owners[i];
        const Section& section = case_->sections[owner];
        double height_m = 0.0;
        for (const Section& other : case_->sections) {
            if (has_length(other) && same_wall_place(section, other)) {
                height_m += other.length_m;
            }
        }
        const WallPlace place{
            .wall = &case_->walls[section.wall],
            .inside_diameter_m = section.diameter_m,
            .ambient_k = surroundings_.temperature_k[static_cast<std::size_t>(section.zone)],
            .air_pressure_pa = surroundings_.air_pressure_pa,
            .wind_m_s = section.zone == Zone::outdoors ? surroundings_.wind_m_s : 0.0,
            .height_m = height_m,
            .upright = section.lie != Lie::level,
            .rectangular = section.rectangular};
        if (before != nullptr && same_place((*before)[i]->place(), place)) {
            heats.push_back((*before)[i]);
        } else {
            heats.push_back(std::make_shared<const WallHeat>(
                place, wall_may_be_colder(owner), hottest_gas_k()));
        }
    }
    return heats;
}

void FlueModel::add_emissions(const Case& resolved, Layout& layout) {
    std::vector<double> diameters;
    for (std::size_t i = 0; i < resolved.sections.size(); ++i) {
        const Section& section = resolved.sections[i];
        if (!has_length(section)) {
            continue;
        }
        const auto known = std::find(diameters.begin(), diameters.end(), section.diameter_m);
        layout.sections[i].emission = static_cast<std::size_t>(known - diameters.begin());
        if (known == diameters.end()) {
            diameters.push_back(section.diameter_m);
        }
    }
    for (std::size_t gas = 0; gas < layout.emissions.size(); ++gas) {
        const GasFit& pure = resolved.gases[gas].products();
        layout.emissions[gas].reserve(diameters.size());
        for (const double diameter_m : diameters) {
            layout.emissions[gas].emplace_back(
                pure.carbon_dioxide, pure.water_vapour, diameter_m, resolved.air_pressure_pa);
        }
    }
}

} // namespace fluewright
