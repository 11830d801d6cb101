#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Where deposit will settle, where to look first and how often to sweep.
namespace fluewright {

enum class DepositRisk : std::uint8_t { low, raised, high };

[[nodiscard]] std::string_view name(DepositRisk risk);

struct PartDeposit {
    int part{};
    std::string place;
    DepositRisk risk{};
    double coldest_low_fire_k{}; ///< inner wall, worst weather
    double coldest_high_fire_k{};
    std::string reason;
};

/// Months between sweepings in use, both ends; the nearer one holds until a look has shown better.
struct SweepInterval {
    double from_months{};
    double to_months{};
    std::string_view words;
    std::string_view source;
};

struct Maintenance {
    bool applies{}; ///< solid fuel
    DepositRisk risk{};
    std::vector<PartDeposit> parts; ///< in flow order
    std::vector<std::string> look_first;
    SweepInterval sweep;
    double clean_at_m{}; ///< deposit that calls for sweeping
    double no_fire_at_m{};
    std::string_view thickness_source;
    std::string disagreement; ///< what the studies do not agree on
};

/// Risk by inner wall against dew point and tar threshold at low and high fire, raised once by wet
/// fuel. Thresholds are trade figures; the grading is ours.
/// [theory eq. 39]
[[nodiscard]] Maintenance
maintenance(const Installation& written, const Case& resolved, const Solution& solution);

} // namespace fluewright
