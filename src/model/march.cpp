#include "fluewright/model/march.hpp"

#include "fluewright/core/root.hpp"
#include "fluewright/physics/air.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/friction.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double gravity = constants::gravity_m_s2;

/// Hausen's entry factor is held at its value a tenth of a diameter behind a disturbance, where
/// separation makes the formula's infinity meaningless.
constexpr double entry_start_over_diameter = 0.1;

/// A straight gets this many cells plus one for each step of `cell_transfer_units` in the share of
/// heat it loses; 0.1 % of draft against a 64 times finer march (tests/property/convergence).
constexpr int least_cells = 2;
constexpr int most_cells = 1000;
constexpr double cell_transfer_units = 0.5;
constexpr double typical_inside_w_m2k = 8.0;

constexpr double wall_tolerance_k = 1e-8;
constexpr int most_wall_steps = 30;

double cube(double x) {
    return x * x * x;
}

/// Groups sections that lose heat alike, so that splitting a straight changes nothing.
bool same_wall_place(const Section& a, const Section& b) {
    return a.wall == b.wall && a.zone == b.zone && a.diameter_m == b.diameter_m
           && a.rectangular == b.rectangular
           && (a.rise_m > 0.5 * a.length_m) == (b.rise_m > 0.5 * b.length_m);
}

bool has_length(const Section& section) {
    return section.length_m > 0.0;
}

} // namespace

/// The state that travels.
struct FlueModel::Flow {
    GasChoice choice{};
    const FlueGas* gas{};
    GasFit fit;
    double log_path{}; ///< dilution as a shortening of the radiating path
    double air_share{};
    double flow_kg_s{};
    double enthalpy_j_kg{};
    double temperature_k{};
    double pressure_pa{};
    double height_m{};
    double distance_m{};
    double since_disturbance_m{};
    double wall_k{};
    double area_m2{};
    MarchResult sums;

    void set_dilution(double share) {
        air_share = share;
        fit = gas->diluted(share);
        const GasFit& pure = gas->products();
        const double radiating = pure.carbon_dioxide + pure.water_vapour;
        log_path =
            radiating > 0.0 ? std::log((fit.carbon_dioxide + fit.water_vapour) / radiating) : 0.0;
    }

    [[nodiscard]] double density_kg_m3(double air_pressure_pa) const {
        return air_pressure_pa / (fit.gas_constant_j_kgk * temperature_k);
    }

    [[nodiscard]] double velocity_head_pa(double air_pressure_pa, double section_m2) const {
        const double flux = flow_kg_s / section_m2;
        return 0.5 * flux * flux / density_kg_m3(air_pressure_pa);
    }
};

/// Rates of change at one point of a straight.
struct FlueModel::Stage {
    const FlueModel* model;
    const Section* section;
    const WallHeat* heat;
    const EmissionFit* emission;
    double tall_wall_factor;

    struct Rates {
        double flux_w_m2;
        double buoyancy_pa_m;
        double friction_pa_m;
    };

    Rates at(Flow& flow, double temperature_k, double distance_m, double height_m) const;

private:
    double
    wall_temperature_k(Flow& flow, double gas_k, double forced_w_m2k, double natural_factor) const;
};

/// The wall temperature at which the inside gives what the outside takes.
double FlueModel::Stage::wall_temperature_k(Flow& flow,
                                            double gas_k,
                                            double forced_w_m2k,
                                            double natural_factor) const {
    const double radiating = 0.5 * (model->case_->walls[section->wall].inner_emissivity + 1.0)
                             * constants::stefan_boltzmann_w_m2k4;
    const double gas_glow =
        radiating * emission->emissivity(gas_k, flow.log_path) * gas_k * gas_k * gas_k * gas_k;
    const double forced_cubed = cube(forced_w_m2k);
    const double ambient_k = heat->ambient_k();
    double low = std::min(gas_k, ambient_k);
    double high = std::max(gas_k, ambient_k);
    double wall_k = std::clamp(flow.wall_k, low, high);
    double previous_k = wall_k;
    double previous_miss = 0.0;
    for (int step = 0; step < most_wall_steps; ++step) {
        const double difference_k = gas_k - wall_k;
        // h_N ~ |dT|^(1/3): its cube is linear, and the blend takes one root.
        const double carried = std::cbrt(forced_cubed + natural_factor * std::abs(difference_k));
        const double wall_2 = wall_k * wall_k;
        const double wall_glow =
            radiating * emission->absorptivity(gas_k, wall_k, flow.log_path) * wall_2 * wall_2;
        const WallHeat::Value outside = heat->at(wall_k);
        const double miss = carried * difference_k + gas_glow - wall_glow - outside.flux_w_m2;
        if (miss > 0.0) {
            low = wall_k;
        } else {
            high = wall_k;
        }
        double slope = -(4.0 / 3.0 * carried + 4.0 * wall_glow / wall_k + outside.slope_w_m2k);
        if (step > 0 && wall_k != previous_k) {
            slope = (miss - previous_miss) / (wall_k - previous_k);
        }
        previous_k = wall_k;
        previous_miss = miss;
        double next_k = wall_k - miss / slope;
        if (!(next_k > low && next_k < high)) {
            next_k = 0.5 * (low + high);
        }
        wall_k = next_k;
        if (std::abs(wall_k - previous_k) < wall_tolerance_k) {
            break;
        }
    }
    flow.wall_k = wall_k;
    return wall_k;
}

FlueModel::Stage::Rates
FlueModel::Stage::at(Flow& flow, double temperature_k, double distance_m, double height_m) const {
    const Surroundings& around = model->surroundings_;
    const double u = gas_fit_range.u_of(temperature_k);
    const double viscosity = flow.fit.viscosity_pa_s(u);
    const double conductivity = flow.fit.conductivity_w_mk(u);
    const double density = around.air_pressure_pa / (flow.fit.gas_constant_j_kgk * temperature_k);
    const double mass_flux = flow.flow_kg_s / section->area_m2;
    const double diameter = section->diameter_m;
    const double re = mass_flux * diameter / viscosity;
    const double pr = flow.fit.specific_heat_j_kgk(u) * viscosity / conductivity;

    const double entry = convection::entry_factor_local(
        diameter / (distance_m + entry_start_over_diameter * diameter));
    const double forced =
        entry * convection::pipe_gnielinski_gas_1976(convection::floored_reynolds(re), pr)
        * conductivity / diameter;
    // Cube of the free-convection coefficient of a tall wall, over the temperature difference.
    const double kinematic = viscosity / density;
    const double natural_factor = model->case_->inside_heat == InsideHeat::disturbed
                                      ? cube(tall_wall_factor * conductivity) * gravity * pr
                                            / (temperature_k * kinematic * kinematic)
                                      : 0.0;
    const double wall_k = wall_temperature_k(flow, temperature_k, forced, natural_factor);

    const double head = 0.5 * mass_flux * mass_flux / density;
    const double f_darcy = friction::churchill_1977(re, section->roughness_m / diameter);
    // Both columns get lighter with height by the same share; to first order.
    const double thinning =
        1.0 - around.outdoor_density_kg_m3 * gravity * height_m / around.air_pressure_pa;
    const double steepness = section->rise_m / section->length_m;
    return {.flux_w_m2 = heat->at(wall_k).flux_w_m2,
            .buoyancy_pa_m =
                (around.outdoor_density_kg_m3 - density) * thinning * gravity * steepness,
            .friction_pa_m = f_darcy / diameter * head};
}

FlueModel::FlueModel(const Case& installation, const Surroundings& surroundings)
    : case_(&installation), surroundings_(surroundings) {
    const auto& sections = installation.sections;
    prepared_.resize(sections.size());
    std::vector<std::size_t> heat_owner;
    std::vector<double> diameters;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const Section& section = sections[i];
        has_leaks_ = has_leaks_ || section.joint_leak_m2 > 0.0;
        if (!has_length(section)) {
            continue;
        }
        const auto known_heat =
            std::find_if(heat_owner.begin(), heat_owner.end(), [&](std::size_t o) {
                return same_wall_place(sections[o], section);
            });
        prepared_[i].heat = static_cast<std::size_t>(known_heat - heat_owner.begin());
        if (known_heat == heat_owner.end()) {
            heat_owner.push_back(i);
        }
        const auto known_diameter =
            std::find(diameters.begin(), diameters.end(), section.diameter_m);
        prepared_[i].emission = static_cast<std::size_t>(known_diameter - diameters.begin());
        if (known_diameter == diameters.end()) {
            diameters.push_back(section.diameter_m);
        }
    }
    heats_.reserve(heat_owner.size());
    for (const std::size_t owner : heat_owner) {
        const Section& section = sections[owner];
        double height_m = 0.0;
        for (const Section& other : sections) {
            if (has_length(other) && same_wall_place(section, other)) {
                height_m += other.length_m;
            }
        }
        heats_.emplace_back(WallPlace{
            .wall = &installation.walls[section.wall],
            .inside_diameter_m = section.diameter_m,
            .ambient_k = surroundings_.temperature_k[static_cast<std::size_t>(section.zone)],
            .air_pressure_pa = surroundings_.air_pressure_pa,
            .wind_m_s = section.zone == Zone::outdoors ? surroundings_.wind_m_s : 0.0,
            .height_m = height_m,
            .upright = section.rise_m > 0.5 * section.length_m,
            .rectangular = section.rectangular});
    }
    for (std::size_t gas = 0; gas < emissions_.size(); ++gas) {
        const GasFit& pure = installation.gases[gas].products();
        for (const double diameter_m : diameters) {
            emissions_[gas].emplace_back(
                pure.carbon_dioxide, pure.water_vapour, diameter_m, surroundings_.air_pressure_pa);
        }
    }
}

void FlueModel::march_straight(Flow& flow, const Section& section, const Prepared& prepared) const {
    static const double wall_factor = convection::tall_wall_factor(0.72);
    const Stage stage{.model = this,
                      .section = &section,
                      .heat = &heats_[prepared.heat],
                      .emission =
                          &emissions_[static_cast<std::size_t>(flow.choice)][prepared.emission],
                      .tall_wall_factor = wall_factor};
    const double heated_m2_kg_s = section.perimeter_m / flow.flow_kg_s;
    const double cp = flow.fit.specific_heat_j_kgk(gas_fit_range.u_of(flow.temperature_k));
    const double outside = stage.heat->at(flow.temperature_k).slope_w_m2k;
    const double transfer_units = heated_m2_kg_s * section.length_m / cp * typical_inside_w_m2k
                                  * outside / (typical_inside_w_m2k + outside);
    const int cells =
        case_->cells_factor
        * std::clamp(least_cells
                         + static_cast<int>(std::fmin(transfer_units, 1e3) / cell_transfer_units),
                     least_cells,
                     most_cells);

    const double start = entry_start_over_diameter * section.diameter_m + flow.since_disturbance_m;
    const double xi_start = std::cbrt(start);
    const double xi_step =
        (std::cbrt(start + section.length_m) - xi_start) / static_cast<double>(cells);
    const double offset = start - flow.since_disturbance_m;
    const double steepness = section.rise_m / section.length_m;
    const double specific_volume_before = 1.0 / flow.density_kg_m3(surroundings_.air_pressure_pa);
    const double height_start = flow.height_m;
    if (flow.wall_k == 0.0) {
        flow.wall_k = 0.5 * (flow.temperature_k + stage.heat->ambient_k());
    }

    double temperature_k = flow.temperature_k;
    const auto rates_at = [&](double enthalpy, double xi) {
        temperature_k = flow.fit.temperature_k(enthalpy, temperature_k);
        const double x = cube(xi);
        auto rates =
            stage.at(flow, temperature_k, x - offset, height_start + steepness * (x - start));
        const double stretch = 3.0 * xi * xi;
        rates.flux_w_m2 *= stretch;
        rates.buoyancy_pa_m *= stretch;
        rates.friction_pa_m *= stretch;
        return rates;
    };
    for (int cell = 0; cell < cells; ++cell) {
        const double xi = xi_start + xi_step * cell;
        const double h = flow.enthalpy_j_kg;
        const auto k1 = rates_at(h, xi);
        const auto k2 =
            rates_at(h - 0.5 * xi_step * heated_m2_kg_s * k1.flux_w_m2, xi + 0.5 * xi_step);
        const auto k3 =
            rates_at(h - 0.5 * xi_step * heated_m2_kg_s * k2.flux_w_m2, xi + 0.5 * xi_step);
        const auto k4 = rates_at(h - xi_step * heated_m2_kg_s * k3.flux_w_m2, xi + xi_step);
        const auto sum = [&](double Stage::Rates::*rate) {
            return xi_step / 6.0 * (k1.*rate + 2.0 * (k2.*rate + k3.*rate) + k4.*rate);
        };
        const double heat_w_m = sum(&Stage::Rates::flux_w_m2);
        const double buoyancy = sum(&Stage::Rates::buoyancy_pa_m);
        const double friction = sum(&Stage::Rates::friction_pa_m);
        flow.enthalpy_j_kg -= heated_m2_kg_s * heat_w_m;
        flow.sums.heat_loss_w += heat_w_m * section.perimeter_m;
        flow.sums.buoyancy_pa += buoyancy;
        flow.sums.friction_pa += friction;
        flow.pressure_pa += buoyancy - friction;
    }
    flow.temperature_k = flow.fit.temperature_k(flow.enthalpy_j_kg, temperature_k);
    const double mass_flux = flow.flow_kg_s / section.area_m2;
    const double acceleration =
        mass_flux * mass_flux
        * (1.0 / flow.density_kg_m3(surroundings_.air_pressure_pa) - specific_volume_before);
    flow.pressure_pa -= acceleration;
    flow.sums.acceleration_pa += acceleration;
    flow.distance_m += section.length_m;
    flow.height_m += section.rise_m;
    flow.since_disturbance_m += section.length_m;
}

void FlueModel::pass_joint(Flow& flow, const Section& section) const {
    const auto zone = static_cast<std::size_t>(section.zone);
    const double excess_pa =
        flow.pressure_pa - surroundings_.pressure_pa(section.zone, flow.height_m);
    constexpr double discharge = 0.6;
    const double area_m2 = discharge * section.joint_leak_m2;
    if (excess_pa >= 0.0) {
        const double out = std::fmin(
            area_m2
                * std::sqrt(2.0 * flow.density_kg_m3(surroundings_.air_pressure_pa) * excess_pa),
            0.999 * flow.flow_kg_s);
        flow.flow_kg_s -= out;
        flow.sums.leak_out_kg_s += out;
        flow.sums.enthalpy_leak_w -= out * flow.enthalpy_j_kg;
        return;
    }
    const double in = area_m2 * std::sqrt(-2.0 * surroundings_.density_kg_m3[zone] * excess_pa);
    const double u = gas_fit_range.u_of(surroundings_.temperature_k[zone]);
    const double air_enthalpy = flow.gas->air().enthalpy_j_kg(u);
    const double total = flow.flow_kg_s + in;
    const double mixed = (flow.flow_kg_s * flow.enthalpy_j_kg + in * air_enthalpy) / total;
    flow.sums.leak_in_kg_s += in;
    flow.sums.enthalpy_leak_w += in * air_enthalpy;
    flow.set_dilution((flow.flow_kg_s * flow.air_share + in) / total);
    flow.flow_kg_s = total;
    flow.enthalpy_j_kg = mixed;
    flow.temperature_k = flow.fit.temperature_k(mixed, flow.temperature_k);
}

void FlueModel::pass_fitting(Flow& flow, const Section& section) const {
    const double air_pa = surroundings_.air_pressure_pa;
    const double head_before = flow.velocity_head_pa(air_pa, flow.area_m2);
    const double head_after = flow.velocity_head_pa(air_pa, section.area_m2);
    const double lost = section.loss * head_after;
    const double acceleration = head_after - head_before;
    flow.pressure_pa -= lost + acceleration;
    flow.sums.fittings_pa += lost;
    flow.sums.acceleration_pa += acceleration;
    flow.area_m2 = section.area_m2;
    if (section.disturbs) {
        flow.since_disturbance_m = 0.0;
    }
}

Station FlueModel::station_at(const Flow& flow, std::size_t index) const {
    const Section& section = case_->sections[index];
    Station s;
    s.section = index;
    s.distance_m = flow.distance_m;
    s.height_m = flow.height_m;
    s.gas_temperature_k = flow.temperature_k;
    s.flow_kg_s = flow.flow_kg_s;
    s.velocity_m_s =
        flow.flow_kg_s / (section.area_m2 * flow.density_kg_m3(surroundings_.air_pressure_pa));
    s.reynolds = flow.flow_kg_s / section.area_m2 * section.diameter_m
                 / flow.fit.viscosity_pa_s(gas_fit_range.u_of(flow.temperature_k));
    s.pressure_pa = flow.pressure_pa;
    s.pressure_in_zone_pa =
        flow.pressure_pa - surroundings_.pressure_pa(section.zone, flow.height_m);
    s.inner_wall_k = flow.wall_k;
    s.outer_wall_k = flow.wall_k;
    if (has_length(section) && flow.wall_k > 0.0) {
        s.outer_wall_k =
            wall_state_from_inner(heats_[prepared_[index].heat].place(), flow.wall_k).outer_k;
    }
    return s;
}

MarchResult FlueModel::march(const GasStream& stream,
                             double outlet_pressure_pa,
                             std::span<Station> stations) const {
    Flow flow;
    flow.choice = stream.gas;
    flow.gas = &case_->gases[static_cast<std::size_t>(stream.gas)];
    flow.set_dilution(stream.air_share);
    flow.flow_kg_s = stream.flow_kg_s;
    flow.temperature_k = stream.temperature_k;
    flow.enthalpy_j_kg = flow.fit.enthalpy_j_kg(gas_fit_range.u_of(stream.temperature_k));
    flow.pressure_pa = outlet_pressure_pa;
    flow.area_m2 = case_->appliance.outlet_area_m2;
    flow.sums.outlet_pressure_pa = outlet_pressure_pa;
    flow.sums.enthalpy_in_w = flow.flow_kg_s * flow.enthalpy_j_kg;

    if (!stations.empty()) {
        stations[0] = station_at(flow, 0);
        stations[0].inner_wall_k = stations[0].outer_wall_k = flow.temperature_k;
    }
    for (std::size_t i = 0; i < case_->sections.size(); ++i) {
        const Section& section = case_->sections[i];
        const double leaked_before = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s;
        if (section.joint_leak_m2 > 0.0) {
            pass_joint(flow, section);
        }
        const double leak = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s - leaked_before;
        pass_fitting(flow, section);
        if (has_length(section)) {
            march_straight(flow, section, prepared_[i]);
        }
        if (!stations.empty()) {
            stations[i + 1] = station_at(flow, i);
            stations[i + 1].leak_kg_s = leak;
        }
    }
    flow.sums.mouth_pressure_pa = flow.pressure_pa;
    flow.sums.mouth_temperature_k = flow.temperature_k;
    flow.sums.mouth_flow_kg_s = flow.flow_kg_s;
    flow.sums.mouth_air_share = flow.air_share;
    flow.sums.mouth_velocity_m_s =
        flow.flow_kg_s / (flow.area_m2 * flow.density_kg_m3(surroundings_.air_pressure_pa));
    flow.sums.enthalpy_out_w = flow.flow_kg_s * flow.enthalpy_j_kg;
    return flow.sums;
}

MarchResult FlueModel::solve(const GasStream& stream, std::span<Station> stations) const {
    const double wanted_pa = surroundings_.mouth_pressure_pa;
    if (!has_leaks_) {
        const MarchResult trial = march(stream, 0.0);
        const double outlet_pa = wanted_pa - trial.mouth_pressure_pa;
        if (!stations.empty()) {
            return march(stream, outlet_pa, stations);
        }
        MarchResult result = trial;
        result.outlet_pressure_pa = outlet_pa;
        result.mouth_pressure_pa = wanted_pa;
        return result;
    }
    // Leaks let air in where the flue is below its surroundings, which holds the pressure up: the
    // mouth follows the outlet, rising. Widen a bracket round the tight run's answer.
    const auto miss = [&](double outlet_pa) {
        return march(stream, outlet_pa).mouth_pressure_pa - wanted_pa;
    };
    double low = wanted_pa - march(stream, 0.0).mouth_pressure_pa;
    double high = low;
    double f_low = miss(low);
    double f_high = f_low;
    double step = 4.0;
    for (int i = 0; i < 40 && f_low > 0.0; ++i, step *= 2.0) {
        low -= step;
        f_low = miss(low);
    }
    for (int i = 0; i < 40 && f_high < 0.0; ++i, step *= 2.0) {
        high += step;
        f_high = miss(high);
    }
    const Root root = find_root(
        miss, low, high, f_low, f_high, {.x_tolerance = 1e-11, .residual_tolerance = 1e-10});
    return march(stream, root.x, stations);
}

} // namespace fluewright
