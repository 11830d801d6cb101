#include "gas_vents_fit.hpp"

#include "outcome.hpp"

#include <array>
#include <cmath>
#include <filesystem>

namespace published::gas_vents {
namespace {

constexpr std::size_t count = 3;
constexpr int steps = 6;

using Values = std::array<double, count>; ///< logarithms, so that none turns negative

Constants constants_of(const Values& logs) {
    return {.carbon_dioxide_fan = std::exp(logs[0]),
            .elbow_loss = std::exp(logs[1]),
            .friction_masonry_draft_hood = std::exp(logs[2])};
}

struct Known {
    Inputs inputs;
    double published;
};

std::vector<Known> rows_to_fit() {
    std::vector<Known> known;
    for (const Row& row : read_rows(std::filesystem::path(FLUEWRIGHT_TREE) / "tests/published")) {
        if (row.check == "gas_vent_capacity"
            && row.topic.find("fitted rows") != std::string::npos) {
            known.push_back({Inputs(row.inputs), row.expected});
        }
    }
    return known;
}

/// Solves the normal equations of three unknowns by Cramer's rule.
Values solved(const std::array<Values, count>& m, const Values& right) {
    const auto determinant = [](const std::array<Values, count>& a) {
        return a[0][0] * (a[1][1] * a[2][2] - a[1][2] * a[2][1])
               - a[0][1] * (a[1][0] * a[2][2] - a[1][2] * a[2][0])
               + a[0][2] * (a[1][0] * a[2][1] - a[1][1] * a[2][0]);
    };
    Values x{};
    for (std::size_t j = 0; j < count; ++j) {
        std::array<Values, count> replaced = m;
        for (std::size_t i = 0; i < count; ++i) {
            replaced[i][j] = right[i];
        }
        x[j] = determinant(replaced) / determinant(m);
    }
    return x;
}

} // namespace

Constants fitted_constants() {
    const std::vector<Known> known = rows_to_fit();
    const Constants start;
    Values logs{std::log(start.carbon_dioxide_fan),
                std::log(start.elbow_loss),
                std::log(start.friction_masonry_draft_hood)};
    const auto miss = [](const Known& row, const Values& at) {
        return std::log(input_of(row.inputs, constants_of(at)) / row.published);
    };
    for (int step = 0; step < steps; ++step) {
        std::array<Values, count> normal{};
        Values right{};
        double change = 0.0;
        for (const Known& row : known) {
            constexpr double nudge = 1e-3;
            const double here = miss(row, logs);
            Values slope{};
            for (std::size_t j = 0; j < count; ++j) {
                Values beside = logs;
                beside[j] += nudge;
                slope[j] = (miss(row, beside) - here) / nudge;
            }
            for (std::size_t i = 0; i < count; ++i) {
                right[i] -= slope[i] * here;
                for (std::size_t j = 0; j < count; ++j) {
                    normal[i][j] += slope[i] * slope[j];
                }
            }
        }
        const Values move = solved(normal, right);
        for (std::size_t j = 0; j < count; ++j) {
            logs[j] += move[j];
            change = std::max(change, std::abs(move[j]));
        }
        if (change < 1e-4) {
            break;
        }
    }
    return constants_of(logs);
}

} // namespace published::gas_vents
