#include "edited_file.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "law.hpp"

#include <algorithm>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

std::string named(const Assumption& assumption) {
    return assumption.pointer + " (" + assumption.what + ")";
}

/// Whether the case still assumes what was written into its file.
bool still_assumed(const Case& resolved, const Assumption& assumption) {
    return std::any_of(
        resolved.assumptions.begin(), resolved.assumptions.end(), [&](const Assumption& other) {
            return other.pointer == assumption.pointer && other.what == assumption.what;
        });
}

/// The first assumption of which the file with all of them written is not the same any more.
std::string told_by_itself(const Installation& written, const Assessment& before) {
    for (const Assumption& assumption : before.installation.assumptions) {
        const auto file = with_written(written, {assumption});
        if (file && !has_no_key(assumption) && assumption.pointer != "/site/weather") {
            const Differences found = compare(before, checked(*file, Words::with));
            if (!found.none()) {
                return named(assumption) + " alone:\n" + found.text();
            }
        }
    }
    return "no assumption alone differs\n";
}

} // namespace

TEST_CASE("writing assumed values into the file changes no figure and no finding") {
    std::size_t written_values = 0;
    for (std::uint64_t seed = 0; seed < households; ++seed) {
        const Installation written = random_household(seed);
        const Assessment before = checked(written, Words::with);
        const auto& assumptions = before.installation.assumptions;
        const auto file = with_written(written, assumptions);
        if (!file) {
            for (const Assumption& assumption : assumptions) {
                if (!has_no_key(assumption) && !with_written(written, {assumption})) {
                    fail_law(seed, "the reader does not take " + named(assumption), written);
                }
            }
            fail_law(seed, "the reader does not take all assumptions together", written);
        }
        const Assessment after = checked(*file, Words::with);
        const Differences found = compare(before, after);
        if (!found.none()) {
            fail_law(seed,
                     "with all that was assumed written down:\n" + found.text()
                         + told_by_itself(written, before),
                     written);
        }
        for (const Assumption& assumption : assumptions) {
            if (!has_no_key(assumption)) {
                ++written_values;
                if (still_assumed(after.installation, assumption)) {
                    fail_law(seed, named(assumption) + " is assumed though it is written", *file);
                }
            }
        }
    }
    CHECK(written_values > 5 * households);
}
