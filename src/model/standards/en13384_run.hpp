#pragma once

#include "fluewright/model/standards/en13384.hpp"
#include "stretches.hpp"

/// The run of a case under one set of the standard's conditions.
namespace fluewright::european {

/// Which of its two checks the standard makes.
enum class Purpose : std::uint8_t { draught, wall_dry, wall_wet };

struct Conditions {
    Purpose purpose{};
    double outdoor_k{};             ///< TL and Tuo
    double air_pressure_pa{};       ///< pL
    double outdoor_density_kg_m3{}; ///< rhoL
    double warm_factor{};           ///< SH
};

[[nodiscard]] Conditions conditions_of(const Case& resolved, Purpose purpose);

struct RunTerms {
    Conditions conditions;
    std::vector<MethodStretch> parts;
    std::vector<Stretch> given;
    std::vector<StretchTerms> found;
    std::vector<double> velocity_change_pa; ///< PG of each
    double draught_pa{};                    ///< PH of the chimney
    double resistance_pa{};                 ///< PR of the chimney
    double connector_draught_pa{};          ///< PHV
    double connector_resistance_pa{};       ///< PRV
    double chimney_entry_k{};               ///< Te
    double outlet_k{};                      ///< Tob
    double last_overall_w_m2k{};            ///< kob
    double inner_wall_k{};                  ///< Tiob
};

/// What was chosen where the file or the standard is silent, in words.
[[nodiscard]] std::vector<std::string> notes_on(const Case& resolved);

[[nodiscard]] RunTerms
run_terms(const Case& resolved, const Firing& firing, const GasFit& gas, Purpose purpose);

/// SE PE + SEG PG of one stretch; SEG is SE where the gas speeds up, else 1.
[[nodiscard]] double resistance_with_safety_pa(double resistance_pa, double velocity_change_pa);

} // namespace fluewright::european
