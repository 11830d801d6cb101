#include "wrong_figures.hpp"

#include "core/quantity/unit_table.hpp"
#include "fit.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/fields/words_at.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <functional>
#include <limits>
#include <optional>
#include <set>

namespace fluewright::diagnosis {
namespace {

/// How a figure comes to be written wrong: by a factor, or with one unit where another was meant.
struct Slip {
    Kind kind;
    std::string_view words;
    double factor{1.0};
    std::string_view typed{};
    std::string_view meant{};
};

constexpr std::string_view point = "a decimal point";

constexpr std::array slips{
    Slip{Kind::length, point, 10.0},
    Slip{Kind::length, point, 0.1},
    Slip{Kind::length, "meters written where feet were meant", 1.0, "m", "ft"},
    Slip{Kind::length, "feet written where meters were meant", 1.0, "ft", "m"},
    Slip{Kind::length, "inches written where centimeters were meant", 1.0, "in", "cm"},
    Slip{Kind::length, "centimeters written where inches were meant", 1.0, "cm", "in"},
    Slip{Kind::mass_rate, point, 10.0},
    Slip{Kind::mass_rate, point, 0.1},
    Slip{Kind::mass_rate, "kilograms written where pounds were meant", 1.0, "kg/h", "lb/h"},
    Slip{Kind::mass_rate, "pounds written where kilograms were meant", 1.0, "lb/h", "kg/h"},
    Slip{Kind::power, point, 10.0},
    Slip{Kind::power, point, 0.1},
    Slip{Kind::power, "watts written where Btu/h were meant", 1.0, "W", "Btu/h"},
    Slip{Kind::pressure, point, 10.0},
    Slip{Kind::pressure, point, 0.1},
    Slip{Kind::pressure, "pascals written where inches of water were meant", 1.0, "Pa", "inH2O"},
    Slip{Kind::temperature, "Celsius written where Fahrenheit was meant", 1.0, "degC", "degF"},
    Slip{Kind::temperature, "Fahrenheit written where Celsius was meant", 1.0, "degF", "degC"},
    Slip{Kind::moisture, "the dry basis of a meter taken for the wet", 1.0, "% wet", "% dry"}};

double meant_by(const Slip& slip, double written) {
    if (slip.typed.empty()) {
        return slip.factor * written;
    }
    const unit_table::Unit* typed = unit_table::by_symbol(slip.typed, slip.kind);
    const unit_table::Unit* meant = unit_table::by_symbol(slip.meant, slip.kind);
    assert(typed != nullptr && meant != nullptr);
    return unit_table::to_si(std::pow(10.0, meant->power) * unit_table::from_si(written, *typed),
                             *meant);
}

/// Whether a figure may be such a slip: nobody takes 4 m for 4 in, but for 4 ft.
bool can_be(const Slip& slip, double written) {
    constexpr double long_m = 0.6; ///< from here on in meters or feet, below in inches or less
    const bool of_small_units = slip.typed == "in" || slip.typed == "cm";
    return slip.kind != Kind::length || slip.typed.empty()
           || of_small_units == (std::abs(written) < long_m);
}

/// Keys whose figures change what a run shows.
constexpr std::array<std::string_view, 14> keys{"up",
                                                "across",
                                                "diameter",
                                                "burn_rate",
                                                "heat_input",
                                                "heat_output",
                                                "gas_flow",
                                                "gas_temperature",
                                                "draft_needed",
                                                "moisture",
                                                "outdoor_temperature",
                                                "draft",
                                                "surface_temperature",
                                                "pressure"};

bool is_of_a_key(std::string_view pointer) {
    return std::any_of(keys.begin(), keys.end(), [&](std::string_view key) {
        const auto at = pointer.find(std::string{'/'} + std::string{key});
        const auto end = at == pointer.npos ? at : at + 1 + key.size();
        return at != pointer.npos && (end == pointer.size() || pointer[end] == '/');
    });
}

/// The fire may be this much off at most, as a share of the weight of what the file says; beyond
/// it a wrong figure would be a second coincidence.
constexpr double least_heat_weight = 0.3;

/// The log of nothing.
double impossible() {
    return -std::numeric_limits<double>::infinity();
}

/// Of a run without hidden causes: evidence with what it should have been, at every heat of the
/// fire. False: ask no further.
using Visit = std::function<bool(
    const Evidence&, const std::array<double, heat_steps>& figures, const Altered&)>;

/// Holds a file against what was seen; false where its run cannot be built.
bool hold_against(const Installation& file, const HeatGrid& grid, const Visit& visit) {
    const auto resolved = resolve(file);
    auto altered = resolved ? alter(file, *resolved, {}) : std::nullopt;
    if (!altered) {
        return false;
    }
    Solver solver(std::move(*altered), grid.factors);
    SolvedSituations solved;
    for (const Evidence& evidence : evidence_in(file, *resolved)) {
        solve_for(evidence, *resolved, solver, solved);
        if (!visit(
                evidence, figures_of(evidence, solver.altered(), solved, grid), solver.altered())) {
            break;
        }
    }
    return true;
}

bool is_likely(const HeatGrid& grid, std::size_t heat) {
    return grid.weight[heat] >= least_heat_weight * grid.weight[heat_steps / 2];
}

/// By how much a run without hidden causes fits all that was seen: the log of its likelihood at the
/// best heat of the fire; nothing where it contradicts something.
std::optional<double> fit_of(const Installation& file, const HeatGrid& grid) {
    std::array<double, heat_steps> log_fit{};
    for (std::size_t i = 0; i < heat_steps; ++i) {
        log_fit[i] = is_likely(grid, i) ? std::log(grid.weight[i]) : impossible();
    }
    const auto best = [&] { return *std::max_element(log_fit.begin(), log_fit.end()); };
    const bool built = hold_against(
        file, grid, [&](const Evidence& evidence, const auto& figures, const Altered& altered) {
            for (std::size_t i = 0; i < heat_steps; ++i) {
                log_fit[i] += contradicts(evidence, figures[i], altered)
                                  ? impossible()
                                  : std::log(likelihood(evidence, figures[i], altered));
            }
            return best() > impossible();
        });
    return built && best() > impossible() ? std::optional{best()} : std::nullopt;
}

/// The entries of "observed" that hold the one thing a run without hidden causes contradicts, at
/// some heat of the fire: a slip in any other reading leaves that contradiction.
std::set<std::size_t> lone_contradictions(const Installation& file, const HeatGrid& grid) {
    std::array<std::vector<std::size_t>, heat_steps> against;
    hold_against(
        file, grid, [&](const Evidence& evidence, const auto& figures, const Altered& altered) {
            bool any_lone = false;
            for (std::size_t i = 0; i < heat_steps; ++i) {
                if (contradicts(evidence, figures[i], altered)) {
                    against[i].push_back(evidence.observation);
                }
                any_lone = any_lone || (is_likely(grid, i) && against[i].size() <= 1);
            }
            return any_lone;
        });
    std::set<std::size_t> lone;
    for (std::size_t i = 0; i < heat_steps; ++i) {
        if (is_likely(grid, i) && against[i].size() == 1) {
            lone.insert(against[i].front());
        }
    }
    return lone;
}

struct Fitting {
    WrongFigure figure;
    double log_fit;
};

/// Where the figures stand whose slip alone may explain what was seen.
std::vector<std::string> suspects(const Installation& written, const HeatGrid& grid) {
    std::set<std::string> readings;
    for (const std::size_t entry : lone_contradictions(written, grid)) {
        readings.insert("/observed/" + std::to_string(entry) + '/');
    }
    std::vector<std::string> pointers = value_pointers(written);
    std::erase_if(pointers, [&](const std::string& pointer) {
        const bool is_seen = pointer.starts_with("/observed/")
                             && !readings.contains(pointer.substr(0, pointer.rfind('/') + 1));
        return is_seen || !is_of_a_key(pointer) || !number_at(written, pointer);
    });
    return pointers;
}

} // namespace

std::vector<WrongFigure> wrong_figures(const Installation& written) {
    constexpr std::size_t most_told = 3;
    constexpr double much_worse = 3.0; ///< e^3, or twenty times less likely than the best
    constexpr int most_tries = 200;    ///< each solves the run; a usual file has fewer
    const HeatGrid grid;
    std::vector<Fitting> found;
    int tries = 0;
    for (const std::string& pointer : suspects(written, grid)) {
        const FieldInfo& field = *field_at(written, pointer);
        const double figure = *number_at(written, pointer);
        for (const Slip& slip : slips) {
            if (slip.kind != field.kind || !can_be(slip, figure) || tries == most_tries) {
                continue;
            }
            const double other = meant_by(slip, figure);
            if (!is_in_range(other, field) || other == figure) {
                continue;
            }
            ++tries;
            Installation meant = written;
            *find_value(meant, pointer).value = other;
            if (const auto log_fit = fit_of(meant, grid)) {
                found.push_back({.figure = {.pointer = pointer,
                                            .kind = slip.kind,
                                            .written = figure,
                                            .meant = other,
                                            .slip = slip.words},
                                 .log_fit = *log_fit});
            }
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Fitting& a, const Fitting& b) {
        return a.log_fit > b.log_fit;
    });
    std::vector<WrongFigure> told;
    for (const Fitting& each : found) {
        if (told.size() < most_told && each.log_fit > found.front().log_fit - much_worse) {
            told.push_back(each.figure);
        }
    }
    return told;
}

} // namespace fluewright::diagnosis
