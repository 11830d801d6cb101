#include "sizes.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace fluewright::diagnosis {
namespace {

Kind kind_named(std::string_view word) {
    for (const Kind kind : all_kinds()) {
        if (name(kind) == word) {
            return kind;
        }
    }
    return Kind::number;
}

std::string number_of(double value, Kind kind, UnitSystem units) {
    if (kind == Kind::angle) {
        constexpr double degree = 0.017453292519943295;
        return format_number(value / degree, 2) + " deg";
    }
    return format_quantity(value, kind, units, 2);
}

std::string range_words(const SizedCause& sized, UnitSystem units) {
    const Kind kind = kind_named(sized.cause->size_kind);
    const std::string low = number_of(sized.size_low, kind, units);
    const std::string high = number_of(sized.size_high, kind, units);
    const std::string what = ' ' + std::string{sized.cause->size_what};
    if (low == high) {
        return low + what;
    }
    // "60 to 80 %": the unit once where both have the same.
    const std::size_t low_unit = low.find(' ');
    const std::size_t high_unit = high.find(' ');
    const bool same = low_unit != std::string::npos && high_unit != std::string::npos
                      && low.substr(low_unit) == high.substr(high_unit);
    return (same ? low.substr(0, low_unit) : low) + " to " + high + what;
}

/// Distribution over the sizes tried, each standing for the cell round it.
struct Spread {
    const Cause& cause;
    std::map<double, double> weights; ///< by place on the scale

    /// The size below which `share` of the weight lies.
    [[nodiscard]] double quantile(double share) const {
        double total = 0.0;
        for (const auto& [at, weight] : weights) {
            total += weight;
        }
        const double step = cell();
        double below = 0.0;
        for (const auto& [at, weight] : weights) {
            if (below + weight >= share * total && weight > 0.0) {
                const double inside = (share * total - below) / weight;
                return from_scale(cause, at + step * (inside - 0.5));
            }
            below += weight;
        }
        return from_scale(cause, weights.rbegin()->first);
    }

private:
    [[nodiscard]] double cell() const {
        return weights.size() > 1 ? std::next(weights.begin())->first - weights.begin()->first
                                  : 0.0;
    }
};

} // namespace

std::vector<SizedCause> sized_causes(const Engine& engine, std::size_t row, UnitSystem units) {
    std::vector<SizedCause> result;
    const auto& causes = engine.rows()[row].causes;
    for (std::size_t k = 0; k < causes.size(); ++k) {
        Spread spread{*causes[k], {}};
        std::map<std::string, double> places;
        for (std::size_t h = 0; h < engine.hypotheses().size(); ++h) {
            const Hypothesis& hypothesis = engine.hypotheses()[h];
            if (hypothesis.row == row) {
                const double weight = engine.posterior().of(h);
                spread.weights[on_scale(*causes[k], hypothesis.causes[k].size)] += weight;
                places[hypothesis.causes[k].place.words] += weight;
            }
        }
        const auto best =
            std::max_element(places.begin(), places.end(), [](const auto& a, const auto& b) {
                return a.second < b.second;
            });
        SizedCause sized;
        sized.cause = causes[k];
        sized.place = best->first;
        sized.has_size = true;
        sized.size = spread.quantile(0.5);
        sized.size_low = std::max(causes[k]->size_low, spread.quantile(0.05));
        sized.size_high = std::min(causes[k]->size_high, spread.quantile(0.95));
        sized.size_words = range_words(sized, units);
        result.push_back(std::move(sized));
    }
    return result;
}

} // namespace fluewright::diagnosis
