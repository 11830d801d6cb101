#include "edited_file.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/trial/difference.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "law.hpp"

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

// Searches are costly: most promises are single changes, of which improve makes its plans.
constexpr std::uint64_t usual_searches = 8;
constexpr std::size_t fewest_promises = 500;

std::string ids_of(const std::vector<const Matter*>& matters) {
    std::string text;
    for (const Matter* matter : matters) {
        text += std::string{text.empty() ? "" : ", "} + std::string{matter->id};
    }
    return text;
}

std::string steps_of(const Plan& plan) {
    std::string text;
    for (const Remedy& step : plan.steps) {
        text += (text.empty() ? "" : "; ") + step.what;
    }
    return text;
}

std::string
against(const std::string& what, const Differences& found, const Installation& changed) {
    return what + " promises against what check of the written file shows:\n" + found.text()
           + "of the file\n" + write_installation(changed) + "\nfor the installation";
}

} // namespace

TEST_CASE("a plan that improve promises, written and checked, shows what was promised") {
    const std::uint64_t improved = searched(usual_searches);
    std::size_t plans = 0;
    for (std::uint64_t seed = 0; seed < improved; ++seed) {
        const Installation written = random_household(seed);
        const auto made = improve(written, {});
        REQUIRE(made.has_value());
        const Assessment present = checked(written);
        for (const Plan& plan : made->plans) {
            const Assessment then = checked(through_file(plan.changed));
            Differences found = compare(plan.score, score_of(then));
            found.under("findings");
            // Of upkeep a cure may leave some, which "against" below holds to what the file shows.
            const bool met = made->goal == Goal::clear_upkeep ? plan.cures
                             : made->goal == Goal::less_draft ? plan.score.greatest_over <= 0.0
                                                              : true;
            found.number("cures",
                         plan.cures ? 1 : 0,
                         then.works() && met && !leaves_strong_draft(present, then) ? 1 : 0);
            std::vector<const Matter*> left =
                matters_against(then, made->goal == Goal::clear_upkeep);
            if (const Matter* strong = leaves_strong_draft(present, then);
                strong != nullptr && std::find(left.begin(), left.end(), strong) == left.end()) {
                left.push_back(strong);
            }
            found.word("against", ids_of(plan.against), ids_of(left));
            found.word(
                "cleared", ids_of(plan.cleared), ids_of(gone(present.findings, then.findings)));
            found.word("raised", ids_of(plan.raised), ids_of(raised_by(present, then)));
            found.word("rules", made->present.body->id, then.body->id);
            if (!found.none()) {
                fail_law(seed,
                         against("plan " + std::to_string(plan.rank) + " (" + steps_of(plan) + ")",
                                 found,
                                 plan.changed),
                         written);
            }
            ++plans;
        }
    }
    CHECK(plans > improved);
}

TEST_CASE("a change that is tried, written and checked, shows what the trial did") {
    std::size_t promises = 0;
    for (std::uint64_t seed = 0; seed < households || promises < fewest_promises; ++seed) {
        const Installation written = random_household(seed);
        const Assessment present = checked(written);
        const std::vector<Remedy> remedies = possible_remedies(written, present.installation);
        if (remedies.empty()) {
            continue;
        }
        const Remedy& remedy = remedies[(seed * 7) % remedies.size()];
        const auto trial = try_out(Change{remedy}, written);
        if (!trial) {
            continue;
        }
        const Assessment promised =
            assess(*trial, {.size_search = false, .words = false, .spread = false});
        const Differences found = compare(promised, checked(through_file(trial->changed)));
        if (!found.none()) {
            fail_law(seed, against(remedy.what, found, trial->changed), written);
        }
        ++promises;
    }
}
