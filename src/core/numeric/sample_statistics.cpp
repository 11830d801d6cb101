#include "fluewright/core/numeric/sample_statistics.hpp"

#include <algorithm>
#include <numeric>

namespace fluewright {
namespace {

constexpr std::size_t fewest_runs = 8;
constexpr std::size_t runs_per_bin = 32;
constexpr std::size_t fewest_bins = 4;
constexpr std::size_t most_bins = 32;

constexpr int turns = 4; ///< over all inputs; two settle nearly independent ones

/// What one input does to the outcome by itself: a step for each bin.
class Effect {
public:
    Effect(const std::vector<double>& place, std::size_t bins)
        : bin_(place.size()), count_(bins), step_(bins) {
        for (std::size_t run = 0; run < place.size(); ++run) {
            bin_[run] = std::min(static_cast<std::size_t>(place[run] * static_cast<double>(bins)),
                                 bins - 1);
            count_[bin_[run]] += 1.0;
        }
    }

    /// Takes from `left` what goes with this input; what it took before is given back first.
    void fit(std::vector<double>& left) {
        std::vector<double> sum(step_.size());
        for (std::size_t run = 0; run < left.size(); ++run) {
            left[run] += step_[bin_[run]];
            sum[bin_[run]] += left[run];
        }
        for (std::size_t bin = 0; bin < step_.size(); ++bin) {
            step_[bin] = count_[bin] > 0.0 ? sum[bin] / count_[bin] : 0.0;
        }
        for (std::size_t run = 0; run < left.size(); ++run) {
            left[run] -= step_[bin_[run]];
        }
    }

    [[nodiscard]] double sum_of_squares() const {
        double sum = 0.0;
        for (std::size_t bin = 0; bin < step_.size(); ++bin) {
            sum += count_[bin] * step_[bin] * step_[bin];
        }
        return sum;
    }

    /// How many steps can be chosen when their mean is given.
    [[nodiscard]] double freedom() const {
        return static_cast<double>(
                   std::count_if(count_.begin(), count_.end(), [](double n) { return n > 0.0; }))
               - 1.0;
    }

private:
    std::vector<std::size_t> bin_; ///< of each run
    std::vector<double> count_;    ///< runs in each bin
    std::vector<double> step_;
};

} // namespace

double quantile(std::span<const double> sorted, double share) {
    const double place = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    const double part = place - static_cast<double>(below);
    return sorted[below] + part * (sorted[above] - sorted[below]);
}

std::vector<double> first_order_indices(const std::vector<std::vector<double>>& places,
                                        std::span<const double> outcome) {
    const std::size_t runs = outcome.size();
    std::vector<double> indices(places.size());
    if (runs < fewest_runs || places.empty()) {
        return indices;
    }
    const double mean =
        std::accumulate(outcome.begin(), outcome.end(), 0.0) / static_cast<double>(runs);
    std::vector<double> left(runs);
    double total = 0.0;
    for (std::size_t run = 0; run < runs; ++run) {
        left[run] = outcome[run] - mean;
        total += left[run] * left[run];
    }
    // Rounding alone makes a constant outcome vary by this much.
    if (total <= 1e-24 * mean * mean * static_cast<double>(runs)) {
        return indices;
    }
    const std::size_t bins = std::clamp(runs / runs_per_bin, fewest_bins, most_bins);
    std::vector<Effect> effects;
    effects.reserve(places.size());
    for (const std::vector<double>& place : places) {
        effects.emplace_back(place, bins);
    }
    for (int turn = 0; turn < turns; ++turn) {
        for (Effect& effect : effects) {
            effect.fit(left);
        }
    }
    double freedom = static_cast<double>(runs) - 1.0;
    for (const Effect& effect : effects) {
        freedom -= effect.freedom();
    }
    const double rest = std::inner_product(left.begin(), left.end(), left.begin(), 0.0);
    const double mean_rest = rest / std::max(1.0, freedom);
    // The effects' own squares and what is left: unlike `total` free of chance correlation.
    double whole = rest + mean_rest;
    for (const Effect& effect : effects) {
        whole += effect.sum_of_squares();
    }
    for (std::size_t i = 0; i < effects.size(); ++i) {
        indices[i] = std::clamp(
            (effects[i].sum_of_squares() - effects[i].freedom() * mean_rest) / whole, 0.0, 1.0);
    }
    return indices;
}

} // namespace fluewright
