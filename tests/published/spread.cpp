#include "spread.hpp"

#include "figures.hpp"

#include <algorithm>
#include <cmath>

namespace published {
namespace {

/// Below this a deviation is round-off, which differs from machine to machine.
double round_off(const Outcome& outcome) {
    if (outcome.row.relative) {
        return 1e-4;
    }
    return std::max(1e-6 * outcome.row.tolerance, 1e-8 * std::abs(outcome.row.expected));
}

} // namespace

std::string deviation_of(const Outcome& outcome, double deviation) {
    if (outcome.row.relative) {
        return per_cent(deviation);
    }
    const std::string unit = outcome.unit.empty() ? "" : " " + outcome.unit;
    return signed_figure(deviation, round_off(outcome)) + unit;
}

double rounded_size(const Outcome& outcome) {
    const double size = std::abs(outcome.deviation());
    if (size <= round_off(outcome)) { // none at all where tolerance and figure are 0
        return 0.0;
    }
    const double step = std::pow(10.0, std::floor(std::log10(size)) - 5.0);
    return std::round(size / step) * step;
}

double percentile(const std::vector<Outcome>& falling, double share) {
    const auto from_end =
        static_cast<std::size_t>(std::ceil(share * static_cast<double>(falling.size())));
    return rounded_size(falling[falling.size() - std::max<std::size_t>(from_end, 1)]);
}

std::string size_text(const std::vector<Outcome>& outcomes, double size) {
    const std::string text = deviation_of(outcomes.front(), size);
    return text.front() == '+' ? text.substr(1) : text;
}

Spread spread_of(const std::vector<Outcome>& outcomes) {
    std::vector<Outcome> relative;
    std::vector<Outcome> absolute;
    for (const auto& outcome : outcomes) {
        (outcome.row.relative ? relative : absolute).push_back(outcome);
    }
    auto& kept = relative.size() >= absolute.size() ? relative : absolute;
    std::stable_sort(kept.begin(), kept.end(), [](const auto& a, const auto& b) {
        return rounded_size(a) > rounded_size(b);
    });
    return {size_text(kept, percentile(kept, 0.5)), size_text(kept, percentile(kept, 0.95))};
}

} // namespace published
