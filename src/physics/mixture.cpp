#include "fluewright/physics/mixture.hpp"

#include <cmath>

namespace fluewright::mixture {
namespace {

constexpr double reference_temperature_k = 298.15;

constexpr Species nth(std::size_t i) {
    return static_cast<Species>(i);
}

/// Wilke's weighted sum of `value` over the species; viscosities give the weights.
template <class Values>
double wilke_sum(const MoleFractions& x, const Values& viscosity, const Values& value) {
    const auto& m = species::molar_mass_kg_mol;
    double sum = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        if (x[i] <= 0.0) {
            continue;
        }
        double weight = 0.0;
        for (std::size_t j = 0; j < species_count; ++j) {
            if (x[j] > 0.0) {
                const double root =
                    1.0
                    + std::sqrt(viscosity[i] / viscosity[j]) * std::sqrt(std::sqrt(m[j] / m[i]));
                weight += x[j] * root * root / std::sqrt(8.0 * (1.0 + m[i] / m[j]));
            }
        }
        sum += x[i] * value[i] / weight;
    }
    return sum;
}

MoleFractions viscosities(double temperature_k) {
    MoleFractions mu{};
    for (std::size_t i = 0; i < species_count; ++i) {
        mu[i] = species::viscosity_pa_s(nth(i), temperature_k);
    }
    return mu;
}

} // namespace

double molar_mass_kg_mol(const MoleFractions& x) {
    double sum = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        sum += x[i] * species::molar_mass_kg_mol[i];
    }
    return sum;
}

double specific_heat_j_kgk(const MoleFractions& x, double temperature_k) {
    double sum = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        sum += x[i] * species::molar_cp_j_molk(nth(i), temperature_k);
    }
    return sum / molar_mass_kg_mol(x);
}

double enthalpy_j_kg(const MoleFractions& x, double temperature_k) {
    double sum = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        sum += x[i]
               * (species::molar_enthalpy_j_mol(nth(i), temperature_k)
                  - species::molar_enthalpy_j_mol(nth(i), reference_temperature_k));
    }
    return sum / molar_mass_kg_mol(x);
}

double viscosity_pa_s(const MoleFractions& x, double temperature_k) {
    const auto mu = viscosities(temperature_k);
    return wilke_sum(x, mu, mu);
}

double conductivity_w_mk(const MoleFractions& x, double temperature_k) {
    const auto mu = viscosities(temperature_k);
    MoleFractions k{};
    for (std::size_t i = 0; i < species_count; ++i) {
        k[i] = species::conductivity_w_mk(nth(i), temperature_k);
    }
    return wilke_sum(x, mu, k);
}

MoleFractions mix_by_mass(const MoleFractions& a, const MoleFractions& b, double share) {
    const double moles_a = (1.0 - share) / molar_mass_kg_mol(a);
    const double moles_b = share / molar_mass_kg_mol(b);
    MoleFractions x{};
    for (std::size_t i = 0; i < species_count; ++i) {
        x[i] = (moles_a * a[i] + moles_b * b[i]) / (moles_a + moles_b);
    }
    return x;
}

} // namespace fluewright::mixture
