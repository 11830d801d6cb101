#include "fluewright/physics/species.hpp"

#include "fluewright/core/constants.hpp"

#include <cmath>

namespace fluewright::species {
namespace {

struct Thermo {
    std::array<double, 7> a;
    double b1;
};

constexpr double range_split_k = 1000.0;

// NASA TP-2002-211556; rows in the order of Species, first 200-1000 K, then 1000-6000 K.
constexpr std::array<Thermo, species_count> thermo_low{{
    {{2.210371497e+04,
      -3.818461820e+02,
      6.082738360e+00,
      -8.530914410e-03,
      1.384646189e-05,
      -9.625793620e-09,
      2.519705809e-12},
     7.108460860e+02},
    {{-3.425563420e+04,
      4.847000970e+02,
      1.119010961e+00,
      4.293889240e-03,
      -6.836300520e-07,
      -2.023372700e-09,
      1.039040018e-12},
     -3.391454870e+03},
    {{4.943650540e+04,
      -6.264116010e+02,
      5.301725240e+00,
      2.503813816e-03,
      -2.127308728e-07,
      -7.689988780e-10,
      2.849677801e-13},
     -4.528198460e+04},
    {{-3.947960830e+04,
      5.755731020e+02,
      9.317826530e-01,
      7.222712860e-03,
      -7.342557370e-06,
      4.955043490e-09,
      -1.336933246e-12},
     -3.303974310e+04},
    {{0.0, 0.0, 2.5, 0.0, 0.0, 0.0, 0.0}, -7.453750000e+02},
    {{-5.310842140e+04,
      9.090311670e+02,
      -2.356891244e+00,
      2.204449885e-02,
      -2.510781471e-05,
      1.446300484e-08,
      -3.369070940e-12},
     -4.113752080e+04},
}};

constexpr std::array<Thermo, species_count> thermo_high{{
    {{5.877124060e+05,
      -2.239249073e+03,
      6.066949220e+00,
      -6.139685500e-04,
      1.491806679e-07,
      -1.923105485e-11,
      1.061954386e-15},
     1.283210415e+04},
    {{-1.037939022e+06,
      2.344830282e+03,
      1.819732036e+00,
      1.267847582e-03,
      -2.188067988e-07,
      2.053719572e-11,
      -8.193467050e-16},
     -1.689010929e+04},
    {{1.176962419e+05,
      -1.788791477e+03,
      8.291523190e+00,
      -9.223156780e-05,
      4.863676880e-09,
      -1.891053312e-12,
      6.330036590e-16},
     -3.908350590e+04},
    {{1.034972096e+06,
      -2.412698562e+03,
      4.646110780e+00,
      2.291998307e-03,
      -6.836830480e-07,
      9.426468930e-11,
      -4.822380530e-15},
     -1.384286509e+04},
    {{2.010538475e+01,
      -5.992661070e-02,
      2.500069401e+00,
      -3.992141160e-08,
      1.205272140e-11,
      -1.819015576e-15,
      1.078576636e-19},
     -7.449939610e+02},
    {{-1.127640116e+05,
      -8.252261380e+02,
      7.616178630e+00,
      -1.999327610e-04,
      5.655631430e-08,
      -5.454316610e-12,
      2.918294102e-16},
     -3.351308690e+04},
}};

struct LogFit {
    double a;
    double b;
    double c;
    double d;
};

constexpr std::array<LogFit, species_count> viscosity_fit{{
    {0.62526577, -31.779652, -1640.7983, 1.7454992},
    {0.60916180, -52.244847, -599.74009, 2.0410801},
    {0.51137258, -229.51321, 13710.678, 2.7075538},
    {0.50019557, -697.12796, 88163.892, 3.0836508},
    {0.61205763, -67.714354, 190.40660, 2.1588272},
    {0.53157084, -295.89873, 21224.840, 2.5975549},
}};

constexpr std::array<std::array<double, 4>, species_count> conductivity_fit{{
    {1.5120, 93.3542, -43.8546, 14.3804},
    {0.3373, 97.4012, -37.9844, 11.8072},
    {-6.4553, 72.5173, 19.6585, -15.0520},
    {4.4019, 18.4418, 104.4173, -31.5140},
    {0.6653, 66.3728, -33.7374, 10.2940},
    {0.6560, 9.9413, 80.9461, -48.6312},
}};

constexpr double conductivity_fit_end_k = 1100.0;
constexpr double conductivity_growth = 0.75;

const Thermo& thermo_of(Species s, double temperature_k) {
    return temperature_k <= range_split_k ? thermo_low[at(s)] : thermo_high[at(s)];
}

} // namespace

double molar_cp_j_molk(Species s, double temperature_k) {
    const auto& a = thermo_of(s, temperature_k).a;
    const double t = temperature_k;
    const double reduced =
        (a[0] / t + a[1]) / t + a[2] + t * (a[3] + t * (a[4] + t * (a[5] + t * a[6])));
    return constants::gas_constant_j_molk * reduced;
}

double molar_enthalpy_j_mol(Species s, double temperature_k) {
    const auto& [a, b1] = thermo_of(s, temperature_k);
    const double t = temperature_k;
    const double reduced_times_t =
        -a[0] / t + a[1] * std::log(t) + b1
        + t * (a[2] + t * (a[3] / 2 + t * (a[4] / 3 + t * (a[5] / 4 + t * a[6] / 5))));
    return constants::gas_constant_j_molk * reduced_times_t;
}

double viscosity_pa_s(Species s, double temperature_k) {
    const auto& fit = viscosity_fit[at(s)];
    const double t = temperature_k;
    return 1e-7 * std::exp(fit.a * std::log(t) + (fit.b + fit.c / t) / t + fit.d);
}

double conductivity_w_mk(Species s, double temperature_k) {
    const auto& c = conductivity_fit[at(s)];
    const double t = std::fmin(temperature_k, conductivity_fit_end_k) / 1000.0;
    const double inside = 1e-3 * (c[0] + t * (c[1] + t * (c[2] + t * c[3])));
    return temperature_k <= conductivity_fit_end_k
               ? inside
               : inside * std::pow(temperature_k / conductivity_fit_end_k, conductivity_growth);
}

} // namespace fluewright::species
