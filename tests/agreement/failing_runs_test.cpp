#include "edited_file.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/trial/difference.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "law.hpp"

#include <algorithm>
#include <functional>
#include <optional>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

// Of each seed whose run falls short; what is tried of it by force takes most of the time.
constexpr std::uint64_t looked_at = 60;
constexpr std::uint64_t by_twos = 16;
constexpr std::uint64_t by_threes = 3;
constexpr std::size_t most_sets = 1500;

std::string steps_of(const std::vector<Remedy>& steps) {
    std::string text;
    for (const Remedy& step : steps) {
        text += (text.empty() ? "" : "; ") + step.what;
    }
    return text;
}

/// What `improve` calls a cure with nothing against it, found out from the answer of `check` alone.
bool is_clean_cure(const Assessment& present,
                   const Assessment& then,
                   const std::vector<Remedy>& steps) {
    if (!then.works()) {
        return false;
    }
    for (const Finding& finding : then.findings) {
        const bool there =
            std::any_of(present.findings.begin(),
                        present.findings.end(),
                        [&](const Finding& before) { return before.matter == finding.matter; });
        if (finding.severity <= Severity::failure && !there && !is_in_the_states(*finding.matter)) {
            return false;
        }
    }
    const HarmVerdict& before = present.verdict.of(Harm::reloading);
    const bool door_was_short = before.counts && before.outcome == HarmOutcome::falls_short;
    if (door_was_short && then.verdict.of(Harm::reloading).outcome == HarmOutcome::falls_short) {
        return false;
    }
    const bool undoes = std::all_of(
        steps.begin(), steps.end(), [](const Remedy& step) { return undoes_a_fault(step.kind); });
    constexpr double noise = 0.02;
    const double allowed = std::max(0.0, score_of(present).greatest_over + noise);
    const bool cautioned = std::any_of(
        steps.begin(), steps.end(), [](const Remedy& step) { return !step.caution.empty(); });
    return !cautioned && (undoes || score_of(then).greatest_over <= allowed);
}

/// Tries every set of so many changes that costs less than `below`; the first that cures.
class Force {
public:
    Force(const Installation& written, const Assessment& present)
        : written_(written), present_(present),
          remedies_(possible_remedies(written, present.installation)) {}

    std::optional<std::vector<Remedy>> cheaper(double below, std::size_t together) {
        tried_ = 0;
        return look(in_short(written_), {}, 0.0, 0, below, together);
    }

private:
    std::optional<std::vector<Remedy>> look(const Installation& now,
                                            const std::vector<Remedy>& steps,
                                            double cost,
                                            std::size_t from,
                                            double below,
                                            std::size_t together) {
        constexpr double rounding = 1e-9;
        for (std::size_t i = from; i < remedies_.size() && tried_ < most_sets; ++i) {
            const Remedy& more = remedies_[i];
            const bool fits = !holds_the_draft(more) && cost + more.effort < below - rounding
                              && std::all_of(steps.begin(), steps.end(), [&](const Remedy& step) {
                                     return go_together(step, more);
                                 });
            const std::optional<Installation> changed = fits ? apply(more, now) : std::nullopt;
            if (!changed) {
                continue;
            }
            std::vector<Remedy> all = steps;
            all.push_back(more);
            ++tried_;
            const auto trial = try_out(*changed);
            if (trial && trial->score.passes) {
                const Assessment then = assess(*trial,
                                               {.size_search = false,
                                                .words = false,
                                                .spread = false,
                                                .rules = std::string{present_.body->id}});
                if (is_clean_cure(present_, then, all)) {
                    return all;
                }
            }
            if (together > 1) {
                if (auto found =
                        look(*changed, all, cost + more.effort, i + 1, below, together - 1)) {
                    return found;
                }
            }
        }
        return std::nullopt;
    }

    const Installation& written_;
    const Assessment& present_;
    std::vector<Remedy> remedies_;
    std::size_t tried_{};
};

/// The cheapest plan with nothing against it; all there is where none cures.
double cost_of_best(const Improvement& made) {
    double least = 1e9;
    for (const Plan& plan : made.plans) {
        if (plan.cures && !plan.new_harm && !plan.short_of_wanted && !plan.cautioned
            && (!plan.too_strong || plan.undoes)) {
            least = std::min(least, plan.cost);
        }
    }
    return least;
}

} // namespace

TEST_CASE("of runs that fall short, plans do what they promise and force finds none better") {
    std::size_t failing = 0;
    std::size_t promised = 0;
    for (std::uint64_t seed = 0; failing < looked_at; ++seed) {
        const Installation written = random_household(seed);
        const Assessment present = checked(written);
        if (present.works()) {
            continue;
        }
        ++failing;
        const auto made = improve(written, {});
        REQUIRE(made.has_value());
        for (const Plan& plan : made->plans) {
            const Assessment then = checked(through_file(plan.changed));
            Differences found = compare(plan.score, score_of(then));
            found.number("cures", plan.cures ? 1 : 0, then.works() ? 1 : 0);
            if (!found.none()) {
                fail_law(seed, steps_of(plan.steps) + ": " + found.text(), written);
            }
            ++promised;
        }
        const std::size_t together = failing <= by_threes ? 3 : failing <= by_twos ? 2 : 1;
        Force force(written, present);
        if (const auto better = force.cheaper(cost_of_best(*made), together)) {
            double cost = 0.0;
            for (const Remedy& step : *better) {
                cost += step.effort;
            }
            fail_law(seed,
                     "cheaper than the best of improve: " + steps_of(*better) + ", effort "
                         + std::to_string(cost) + "; improve says: " + made->sentence
                         + (made->proven ? " (proven)" : " (stopped)"),
                     written);
        }
    }
    CHECK(promised > failing);
}
