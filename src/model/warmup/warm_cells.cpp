#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/physics/convection.hpp"
#include "warm_run.hpp"

#include <cmath>

/// The run cut into cells, and what their walls hold.
namespace fluewright {
namespace {

constexpr double longest_cell_m = 0.15;
constexpr int least_cells = 3;

} // namespace

WarmRun::WarmRun(const Case& resolved, const Surroundings& surroundings, int cells_factor)
    : case_(&resolved), around_(surroundings) {
    const auto& sections = resolved.sections;
    const GasFit& pure = resolved.gas_high().products();
    wall_of_section_.resize(sections.size());
    emission_of_section_.resize(sections.size());
    double height_m = 0.0;
    double since_m = 0.0;
    double distance_m = 0.0;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const Section& s = sections[i];
        leaks_ = leaks_ || s.leaks();
        damper_for_strong_draft_ = damper_for_strong_draft_ || s.loss_when_strong > s.loss;
        if (s.disturbs) {
            since_m = 0.0;
        }
        if (s.length_m <= 0.0) {
            continue;
        }
        const auto zone = static_cast<std::size_t>(s.zone);
        const bool upright = s.lie != Lie::level;
        double wetted_m = 0.0;
        for (const Section& other : sections) {
            const bool alike = other.wall == s.wall && other.zone == s.zone
                               && other.diameter_m == s.diameter_m
                               && (other.lie != Lie::level) == upright;
            wetted_m += alike ? other.length_m : 0.0;
        }
        wall_of_section_[i] = walls_.size();
        walls_.emplace_back(WallPlace{.wall = &resolved.walls[s.wall],
                                      .inside_diameter_m = s.diameter_m,
                                      .ambient_k = around_.temperature_k[zone],
                                      .air_pressure_pa = around_.air_pressure_pa,
                                      .wind_m_s = s.zone == Zone::outdoors ? around_.wind_m_s : 0.0,
                                      .height_m = wetted_m,
                                      .upright = upright,
                                      .rectangular = s.rectangular});
        emission_of_section_[i] = emissions_.size();
        emissions_.emplace_back(
            pure.carbon_dioxide, pure.water_vapour, s.diameter_m, around_.air_pressure_pa);
        add_cells(i, {since_m, height_m, distance_m}, cells_factor);
        distance_m += s.length_m;
        height_m += s.rise_m;
        since_m += s.length_m;
    }
}

void WarmRun::add_cells(std::size_t index, const Start& start, int factor) {
    const Section& s = case_->sections[index];
    const int count =
        factor
        * std::max(least_cells, static_cast<int>(std::ceil(s.length_m / longest_cell_m - 1e-9)));
    const double start_m =
        convection::entry_start_over_diameter * s.diameter_m + start.since_disturbance_m;
    const double root_start = cube_root(start_m);
    const double root_step = (cube_root(start_m + s.length_m) - root_start) / count;
    const double scale =
        (convection::entry_factor_local(1.0) - 1.0) * cube_root(s.diameter_m * s.diameter_m);
    // Short cells where the entry effect is steep: half way between even steps of the length and
    // even steps of its cube root.
    const auto place = [&](int i) {
        const double even = start_m + s.length_m * i / count;
        return 0.5 * (even + cube(root_start + root_step * i));
    };
    double before_m = start_m;
    for (int i = 0; i < count; ++i) {
        const double behind_m = i + 1 == count ? start_m + s.length_m : place(i + 1);
        const double length_m = behind_m - before_m;
        // The mean of 1 + scale x^(-2/3) over the cell.
        const double entry =
            1.0 + 3.0 * scale * (cube_root(behind_m) - cube_root(before_m)) / length_m;
        const double steepness = s.rise_m / s.length_m;
        cells_.push_back(
            {.section = index,
             .wall = wall_of_section_[index],
             .first_node = node_count_,
             .length_m = length_m,
             .rise_m = steepness * length_m,
             .entry = entry,
             .height_m = start.height_m + steepness * (0.5 * (before_m + behind_m) - start_m),
             .distance_m = start.distance_m + 0.5 * (before_m + behind_m) - start_m});
        node_count_ += walls_[wall_of_section_[index]].node_count();
        before_m = behind_m;
    }
}

std::vector<double> WarmRun::cold() const {
    std::vector<double> nodes_k;
    nodes_k.reserve(node_count_);
    for (const Cell& cell : cells_) {
        const StoringWall& wall = walls_[cell.wall];
        nodes_k.insert(nodes_k.end(), wall.node_count(), wall.place().ambient_k);
    }
    return nodes_k;
}

double WarmRun::heat_j(const std::vector<double>& nodes_k) const {
    double sum = 0.0;
    for (const Cell& cell : cells_) {
        const StoringWall& wall = walls_[cell.wall];
        const std::span<const double> own{&nodes_k[cell.first_node], wall.node_count()};
        sum += wall.heat_j_m2(own) * cell.length_m * case_->sections[cell.section].perimeter_m;
    }
    return sum;
}

} // namespace fluewright
