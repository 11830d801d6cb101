#include "trial.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;
using namespace fluewright::property;

namespace {

constexpr int fine = 64;

/// What an error of draft is measured by: the draft itself, or the column that makes it where the
/// two sides nearly cancel.
double scale_pa(const FlueModel& model, const MarchResult& result) {
    return std::max(std::abs(model.draft_pa(result)), std::abs(result.buoyancy_pa));
}

MarchResult with_cells(Case& resolved, const FlueModel& model, const GasStream& s, int factor) {
    resolved.cells_factor = factor;
    const MarchResult result = model.solve(s);
    resolved.cells_factor = 1;
    return result;
}

} // namespace

TEST_CASE("default cells are within 0.1 % of draft and 0.5 K of cells 64 times finer") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        Trial t = trial(seed);
        const FlueModel model = burning(t.resolved);
        for (const GasChoice gas : both_fires) {
            const GasStream stream = stream_of(t.resolved, gas);
            const MarchResult coarse = model.solve(stream);
            const MarchResult exact = with_cells(t.resolved, model, stream, fine);
            const double share =
                std::abs(model.draft_pa(coarse) - model.draft_pa(exact)) / scale_pa(model, exact);
            const double kelvins = std::abs(coarse.top_temperature_k - exact.top_temperature_k);
            if (share > 1e-3 || kelvins > 0.5) {
                fail(t,
                     fmt::format("draft off by {} of itself, chimney top by {} K", share, kelvins));
            }
        }
    }
    SUCCEED();
}

// The rule itself is of sixth order; that its points are computed once, from where the slopes so
// far lead, leaves the second. The order is taken from the median over many installations: a single
// one may pass through zero error by chance.
TEST_CASE("four times the cells show the second order") {
    std::vector<double> temperature_orders;
    std::vector<double> draft_orders;
    constexpr std::uint64_t enough = 250; // most errors are too small to have an order
    for (std::uint64_t seed = 0; seed < enough; ++seed) {
        Trial t = trial(seed);
        const FlueModel model = burning(t.resolved);
        const GasStream stream = stream_of(t.resolved, GasChoice::high_fire);
        const MarchResult exact = with_cells(t.resolved, model, stream, fine);
        const MarchResult one = with_cells(t.resolved, model, stream, 1);
        const MarchResult four = with_cells(t.resolved, model, stream, 4);
        const auto order = [](double coarse, double finer) {
            return std::log2(coarse / finer) / 2.0;
        };
        const double k_one = std::abs(one.top_temperature_k - exact.top_temperature_k);
        const double k_four = std::abs(four.top_temperature_k - exact.top_temperature_k);
        // The search for the wall temperature stops within 1e-3 K: smaller errors are its own.
        constexpr double least_k = 5e-3;
        if (k_one > least_k && k_four > 0.0) {
            temperature_orders.push_back(order(k_one, k_four));
        }
        const double p_one = std::abs(model.draft_pa(one) - model.draft_pa(exact));
        const double p_four = std::abs(model.draft_pa(four) - model.draft_pa(exact));
        if (p_one > 1e-5 * scale_pa(model, exact) && p_four > 0.0) {
            draft_orders.push_back(order(p_one, p_four));
        }
    }
    const auto median = [](std::vector<double>& values) {
        std::sort(values.begin(), values.end());
        return values[values.size() / 2];
    };
    REQUIRE(temperature_orders.size() > 5);
    REQUIRE(draft_orders.size() > 5);
    CHECK(median(temperature_orders) > 1.5);
    CHECK(median(draft_orders) > 1.5);
}
