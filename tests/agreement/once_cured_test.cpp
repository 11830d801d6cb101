#include "edited_file.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/score.hpp"
#include "fluewright/advice/trial/trial.hpp"
#include "law.hpp"

#include <algorithm>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

// A diagnosis is the costliest answer there is.
#ifdef NDEBUG
constexpr std::uint64_t usual_diagnoses = 30;
#else
constexpr std::uint64_t usual_diagnoses = 8;
#endif

/// What someone may have seen of a run that draws less than it should.
std::vector<Observation> complaint(const Assessment& present, std::uint64_t seed) {
    Observation smoke;
    smoke.smoke = seed % 2 == 0 ? SmokePlace::door : SmokePlace::joints;
    Observation reading;
    reading.draft_pa = std::max(0.5, 0.4 * present.solution.states.front().draft_pa);
    reading.at = "outlet";
    reading.state = StateKind::high_fire;
    return {smoke, reading};
}

/// The tightest of the states that decide, as the file once cured has it.
void compare_cured(const Cured& cured, const Assessment& then, Differences& found) {
    const Score score = score_of(then);
    const StateResult& tightest = score.states[score.limiting];
    found.number("works", cured.works ? 1 : 0, then.works() ? 1 : 0);
    found.word("state", cured.state, state_name(then.installation, tightest));
    found.number("draft_pa", cured.draft_pa, tightest.draft_pa);
    found.number("draft_needed_pa", cured.draft_needed_pa, tightest.draft_needed_pa);
    found.number("opening_share", cured.opening_share, tightest.door.opening_share);
}

} // namespace

TEST_CASE("what a cause promises once cured is what check shows of the cured file") {
    const std::uint64_t diagnosed = searched(usual_diagnoses);
    std::size_t promises = 0;
    for (std::uint64_t seed = 0; seed < diagnosed; ++seed) {
        Installation written = random_household(seed);
        written.observed = complaint(checked(written), seed);
        const auto made = diagnose(written);
        if (!made) {
            fail_law(seed, made.error().front().message, written);
        }
        for (const Explanation& explanation : made->explanations) {
            if (!explanation.cured) {
                continue;
            }
            const Cured& cured = *explanation.cured;
            Differences found;
            found.under(explanation.title);
            compare_cured(cured, checked(through_file(cured.installation)), found);
            if (!found.none()) {
                fail_law(seed,
                         found.text() + "of the cured file\n"
                             + write_installation(cured.installation) + "\nfor the installation",
                         written);
            }
            ++promises;
        }
    }
    CHECK(promises > diagnosed);
}
