#include "fluewright/physics/flue_gas.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/tenth_root.hpp"
#include "fluewright/physics/gas_radiation.hpp"

#include <cmath>
#include <vector>

namespace fluewright {
namespace {

using Nodes = std::array<double, gas_fit_terms>;

/// Everything at the fit's nodes that does not depend on the mixture, so that a new mixture costs
/// additions only.
struct NodeTable {
    struct Node {
        MoleFractions molar_cp{};
        MoleFractions viscosity{};
        MoleFractions conductivity{};
        std::array<MoleFractions, species_count> weight{}; ///< Wilke's phi_ij
    };

    std::array<Node, gas_fit_terms> node{};

    NodeTable() {
        const auto& m = species::molar_mass_kg_mol;
        for (std::size_t n = 0; n < gas_fit_terms; ++n) {
            Node& here = node[n];
            const double t = gas_fit_range.x_of(chebyshev_node<gas_fit_terms>(n));
            for (std::size_t i = 0; i < species_count; ++i) {
                const auto s = static_cast<Species>(i);
                here.molar_cp[i] = species::molar_cp_j_molk(s, t);
                here.viscosity[i] = species::viscosity_pa_s(s, t);
                here.conductivity[i] = species::conductivity_w_mk(s, t);
            }
            for (std::size_t i = 0; i < species_count; ++i) {
                for (std::size_t j = 0; j < species_count; ++j) {
                    const double root = 1.0
                                        + std::sqrt(here.viscosity[i] / here.viscosity[j])
                                              * std::sqrt(std::sqrt(m[j] / m[i]));
                    here.weight[i][j] = root * root / std::sqrt(8.0 * (1.0 + m[i] / m[j]));
                }
            }
        }
    }
};

const NodeTable& node_table() {
    static const NodeTable table;
    return table;
}

/// The temperatures of the radiation fits, the same for every gas and pipe.
struct RadiationNodes {
    std::vector<gas_radiation::TemperatureTerms> of_emissivity;
    std::vector<gas_radiation::TemperatureTerms> of_path;

    RadiationNodes() {
        for (std::size_t n = 0; n < gas_fit_terms; ++n) {
            of_emissivity.emplace_back(gas_fit_range.x_of(chebyshev_node<gas_fit_terms>(n)));
        }
        for (std::size_t n = 0; n < path_fit_terms; ++n) {
            of_path.emplace_back(gas_fit_range.x_of(chebyshev_node<path_fit_terms>(n)));
        }
    }
};

const RadiationNodes& radiation_nodes() {
    static const RadiationNodes nodes;
    return nodes;
}

GasFit fit_mixture(const MoleFractions& x) {
    const double molar_mass = mixture::molar_mass_kg_mol(x);
    Nodes cp{};
    Nodes mu{};
    Nodes k{};
    for (std::size_t n = 0; n < gas_fit_terms; ++n) {
        const auto& node = node_table().node[n];
        for (std::size_t i = 0; i < species_count; ++i) {
            if (x[i] <= 0.0) {
                continue;
            }
            double weight = 0.0;
            for (std::size_t j = 0; j < species_count; ++j) {
                weight += x[j] * node.weight[i][j];
            }
            cp[n] += x[i] * node.molar_cp[i] / molar_mass;
            mu[n] += x[i] * node.viscosity[i] / weight;
            k[n] += x[i] * node.conductivity[i] / weight;
        }
    }
    GasFit fit;
    fit.gas_constant_j_kgk = constants::gas_constant_j_molk / molar_mass;
    fit.carbon_dioxide = x[at(Species::co2)];
    fit.water_vapour = x[at(Species::h2o)];
    fit.specific_heat = through_chebyshev_nodes(cp);
    fit.enthalpy = integral(fit.specific_heat);
    for (double& c : fit.enthalpy) {
        c *= gas_fit_range.half_width();
    }
    fit.viscosity = through_chebyshev_nodes(mu);
    fit.conductivity = through_chebyshev_nodes(k);
    Nodes with_prandtl{};
    for (std::size_t n = 0; n < gas_fit_terms; ++n) {
        const double root = tenth_root(cp[n] * mu[n] / k[n]);
        with_prandtl[n] = k[n] * root * root * root * root;
    }
    fit.conductivity_prandtl = through_chebyshev_nodes(with_prandtl);
    return fit;
}

} // namespace

double GasFit::temperature_k(double wanted_j_kg, double guess_k) const {
    double t = guess_k;
    for (int step = 0; step < 20; ++step) {
        const double u = gas_fit_range.u_of(t);
        const double change = (wanted_j_kg - enthalpy_j_kg(u)) / specific_heat_j_kgk(u);
        t += change;
        if (std::abs(change) < 1e-9) {
            break;
        }
    }
    return t;
}

FlueGas::FlueGas(const MoleFractions& products, const MoleFractions& air)
    : products_(products),
      air_(air), at_share_{fit_mixture(products),
                           fit_mixture(mixture::mix_by_mass(products, air, 0.5)),
                           fit_mixture(air)} {}

GasFit FlueGas::diluted(double air_share) const {
    if (air_share <= 0.0) {
        return at_share_[0];
    }
    const double s = air_share;
    // Lagrange weights of the parabola through shares 0, 1/2 and 1.
    const double w0 = (1.0 - 2.0 * s) * (1.0 - s);
    const double w1 = 4.0 * s * (1.0 - s);
    const double w2 = s * (2.0 * s - 1.0);
    const auto& [a, half, b] = at_share_;
    GasFit fit;
    fit.gas_constant_j_kgk = (1.0 - s) * a.gas_constant_j_kgk + s * b.gas_constant_j_kgk;
    // Mole fractions follow from moles by mass: moles per kg are the gas constant over R.
    const double moles_a = (1.0 - s) * a.gas_constant_j_kgk / fit.gas_constant_j_kgk;
    const double moles_b = s * b.gas_constant_j_kgk / fit.gas_constant_j_kgk;
    fit.carbon_dioxide = moles_a * a.carbon_dioxide + moles_b * b.carbon_dioxide;
    fit.water_vapour = moles_a * a.water_vapour + moles_b * b.water_vapour;
    for (std::size_t i = 0; i < gas_fit_terms; ++i) {
        fit.specific_heat[i] = (1.0 - s) * a.specific_heat[i] + s * b.specific_heat[i];
        fit.viscosity[i] = w0 * a.viscosity[i] + w1 * half.viscosity[i] + w2 * b.viscosity[i];
        fit.conductivity[i] =
            w0 * a.conductivity[i] + w1 * half.conductivity[i] + w2 * b.conductivity[i];
        fit.conductivity_prandtl[i] = w0 * a.conductivity_prandtl[i]
                                      + w1 * half.conductivity_prandtl[i]
                                      + w2 * b.conductivity_prandtl[i];
    }
    for (std::size_t i = 0; i < fit.enthalpy.size(); ++i) {
        fit.enthalpy[i] = (1.0 - s) * a.enthalpy[i] + s * b.enthalpy[i];
    }
    return fit;
}

EmissionFit::EmissionFit(double carbon_dioxide,
                         double water_vapour,
                         double diameter_m,
                         double pressure_pa) {
    constexpr double clear_limit = 1e-5;
    if (carbon_dioxide + water_vapour < clear_limit) {
        return;
    }
    clear_ = false;
    const double length_m = gas_radiation::beam_length_over_diameter * diameter_m;
    const auto path = [&](double factor) {
        return gas_radiation::PathTerms{{.carbon_dioxide = carbon_dioxide,
                                         .water_vapour = water_vapour,
                                         .length_m = length_m * factor,
                                         .pressure_pa = pressure_pa}};
    };
    const auto log_at = [](const gas_radiation::PathTerms& along,
                           const gas_radiation::TemperatureTerms& temperature) {
        return std::log(gas_radiation::emissivity(along, temperature) + 1e-12);
    };
    const RadiationNodes& nodes = radiation_nodes();
    const gas_radiation::PathTerms full = path(1.0);
    Nodes log_emissivity{};
    for (std::size_t n = 0; n < log_emissivity.size(); ++n) {
        log_emissivity[n] = log_at(full, nodes.of_emissivity[n]);
    }
    log_emissivity_ = through_chebyshev_nodes(log_emissivity);

    // The wall sees the gas over a path shortened by T_wall/T_gas, and dilution shortens it
    // further. Leckner's ln eps is a parabola in ln L but for the pressure term: three points give
    // it.
    constexpr double shorter = 0.5;
    constexpr double shortest = 0.15;
    const double l1 = std::log(shorter);
    const double l2 = std::log(shortest);
    const gas_radiation::PathTerms short_path = path(shorter);
    const gas_radiation::PathTerms shortest_path = path(shortest);
    std::array<double, path_fit_terms> exponent{};
    std::array<double, path_fit_terms> curve{};
    for (std::size_t n = 0; n < exponent.size(); ++n) {
        const gas_radiation::TemperatureTerms& here = nodes.of_path[n];
        const double e0 = log_at(full, here);
        const double s1 = (log_at(short_path, here) - e0) / l1;
        const double s2 = (log_at(shortest_path, here) - e0) / l2;
        curve[n] = (s2 - s1) / (l2 - l1);
        exponent[n] = s1 - curve[n] * l1;
    }
    path_exponent_ = through_chebyshev_nodes(exponent);
    path_curve_ = through_chebyshev_nodes(curve);
}

double EmissionFit::emissivity(double temperature_k, double log_path) const {
    if (clear_) {
        return 0.0;
    }
    const double u = gas_fit_range.u_of(temperature_k);
    if (log_path == 0.0) {
        return std::exp(evaluate(log_emissivity_, u));
    }
    return std::exp(evaluate(log_emissivity_, u)
                    + log_path
                          * (evaluate(path_exponent_, u) + evaluate(path_curve_, u) * log_path));
}

double EmissionFit::absorptivity(double gas_temperature_k,
                                 double wall_temperature_k,
                                 double log_path) const {
    return absorbed(gas_temperature_k, wall_temperature_k, log_path).absorptivity;
}

EmissionFit::Absorbed
EmissionFit::absorbed(double gas_temperature_k, double wall_temperature_k, double log_path) const {
    if (clear_) {
        return {0.0, 0.0, 0.0};
    }
    const double u = gas_fit_range.u_of(wall_temperature_k);
    const double log_shortening = std::log(wall_temperature_k / gas_temperature_k);
    const double log_length = log_shortening + log_path;
    const ValueSlope at_full = evaluate_with_slope(log_emissivity_, u);
    const ValueSlope exponent = evaluate_with_slope(path_exponent_, u);
    const ValueSlope curve = evaluate_with_slope(path_curve_, u);
    const double log_value = at_full.value - 0.5 * log_shortening
                             + log_length * (exponent.value + curve.value * log_length);
    const double slope_in_u =
        at_full.slope + log_length * (exponent.slope + curve.slope * log_length);
    const double by_shortening = exponent.value + 2.0 * curve.value * log_length - 0.5;
    return {.absorptivity = std::exp(log_value),
            .log_slope_per_k =
                slope_in_u / gas_fit_range.half_width() + by_shortening / wall_temperature_k,
            .log_slope_per_gas_k = -by_shortening / gas_temperature_k};
}

double EmissionFit::flux_w_m2(double wall_emissivity,
                              double gas_temperature_k,
                              double wall_temperature_k) const {
    const double gas_2 = gas_temperature_k * gas_temperature_k;
    const double wall_2 = wall_temperature_k * wall_temperature_k;
    return 0.5 * (wall_emissivity + 1.0) * constants::stefan_boltzmann_w_m2k4
           * (emissivity(gas_temperature_k) * gas_2 * gas_2
              - absorptivity(gas_temperature_k, wall_temperature_k) * wall_2 * wall_2);
}

} // namespace fluewright
