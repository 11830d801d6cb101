#include "advice/remedies/run_edit.hpp"
#include "edited_file.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "law.hpp"
#include "property/random_installation.hpp"

#include <algorithm>
#include <array>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

/// The end that goes into (or locks onto) one below it, inserted end to the heater.
PipeEnd end_for_below(PipeEnd below) {
    return below == PipeEnd::plain || below == PipeEnd::socket ? PipeEnd::crimped : below;
}

/// The end that takes one above it.
PipeEnd end_for_above(PipeEnd above) {
    return above == PipeEnd::crimped ? PipeEnd::plain
           : above == PipeEnd::plain ? PipeEnd::socket
                                     : above;
}

/// The part a fitter takes for the adapter that is named, as a file has it.
Part adapter_of(const Joint& joint, const Part& above) {
    Part part;
    part.name = joint.fit.adapter;
    part.wall = joint.upper.end == PipeEnd::locking || joint.lower.wall.empty() ? joint.upper.wall
                                                                                : joint.lower.wall;
    part.zone = above.zone;
    part.heater_end = end_for_below(joint.lower.end);
    part.chimney_end = end_for_above(joint.upper.end);
    if (joint.fit.bore == Bore::same) {
        part.part = PartKind::fitting;
        part.loss = 0.0;
        return part;
    }
    part.part = PartKind::reducer;
    part.diameter_m = above.diameter_m;
    part.width_m = above.width_m;
    part.depth_m = above.depth_m;
    part.shape = above.shape;
    part.liner = above.liner;
    return part;
}

bool joins_two_locks(const Joint& joint) {
    return joint.lower.end == PipeEnd::locking && joint.upper.end == PipeEnd::locking;
}

/// Two locks of unlike make: the adapter is of both walls, which a file says as two halves that
/// lap.
std::vector<Part> halves_of(const Joint& joint, const Part& above) {
    Part upper = adapter_of(joint, above);
    upper.wall = joint.upper.wall;
    upper.heater_end = PipeEnd::crimped;
    Part lower = upper;
    lower.part = PartKind::fitting;
    lower.loss = 0.0;
    lower.wall = joint.lower.wall;
    lower.heater_end = PipeEnd::locking;
    lower.chimney_end = PipeEnd::plain;
    lower.diameter_m = lower.width_m = lower.depth_m = {};
    lower.shape = {};
    lower.liner = {};
    return {lower, upper};
}

/// The file with the adapter in it; every part says all its own, so that nothing carries over.
Installation with_adapter(const Installation& written, const Joint& joint) {
    Installation spelled = run_edit::spelled_out(written);
    const auto at = spelled.run.begin() + joint.above;
    const Part above = *at;
    const std::vector<Part> between = joins_two_locks(joint)
                                          ? halves_of(joint, above)
                                          : std::vector<Part>{adapter_of(joint, above)};
    spelled.run.insert(at, between.begin(), between.end());
    return spelled;
}

/// Findings of the joints, counted: an adapter makes one joint into two and renames the rest.
using Counts = std::array<std::size_t, 3>;

Counts joint_findings(const Installation& written) {
    const auto resolved = resolve(written);
    REQUIRE(resolved.has_value());
    constexpr std::array<std::string_view, 3> ids{
        "ends-do-not-mate", "crimp-points-up", "diameters-do-not-match"};
    Counts counts{};
    for (const Finding& finding : check_shape(written, *resolved, {}).findings) {
        const auto* id = std::find(ids.begin(), ids.end(), finding.matter->id);
        if (id != ids.end()) {
            ++counts[static_cast<std::size_t>(id - ids.begin())];
        }
    }
    return counts;
}

/// Whether a file can say what lies there: the lock of a heater has no wall.
bool is_beyond_a_file(const Joint& joint) {
    return joint.lower.end == PipeEnd::locking && joint.lower.wall.empty();
}

/// Ends that nobody stated are held against nothing.
bool is_known(const Joint& joint) {
    return !joint.lower.assumed || !joint.upper.assumed;
}

/// Every joint of a run with ends at random.
Installation with_random_ends(std::uint64_t seed) {
    Installation made = random_household(seed);
    property::Random random(seed);
    constexpr std::array ends{
        PipeEnd::plain, PipeEnd::crimped, PipeEnd::socket, PipeEnd::flange, PipeEnd::locking};
    for (Part& part : made.run) {
        part.heater_end = random.one_of(ends);
        part.chimney_end = random.one_of(ends);
    }
    return made;
}

} // namespace

TEST_CASE("an adapter that is named, put in, clears its joint and raises nothing") {
    std::size_t adapters = 0;
    for (std::uint64_t seed = 0; seed < households; ++seed) {
        const Installation written = with_random_ends(seed);
        const auto resolved = resolve(written);
        REQUIRE(resolved.has_value());
        const JointReport report = joints_of(*resolved);
        for (const Joint& joint : report.joints) {
            const bool plainly = joint.turn_round.empty() && !joint.fit.adapter.empty()
                                 && !joint.fit.other_part && !is_beyond_a_file(joint)
                                 && is_known(joint);
            if (!plainly) {
                continue;
            }
            const Installation then = with_adapter(written, joint);
            const Counts before = joint_findings(written);
            const Counts after = joint_findings(then);
            const bool had_ends = joint.fit.mating == Mating::never;
            const bool had_bores = joint.fit.bore != Bore::same;
            Differences found;
            found.under("findings left at the joints");
            found.number("ends-do-not-mate",
                         static_cast<double>(after[0]),
                         static_cast<double>(before[0] - (had_ends ? 1 : 0)));
            found.number(
                "crimp-points-up", static_cast<double>(after[1]), static_cast<double>(before[1]));
            found.number("diameters-do-not-match",
                         static_cast<double>(after[2]),
                         static_cast<double>(before[2] - (had_bores ? 1 : 0)));
            if (!found.none()) {
                fail_law(seed,
                         "with \"" + joint.fit.adapter + "\" " + joint.place + ":\n" + found.text()
                             + "of the file\n" + write_installation(then)
                             + "\nfor the installation",
                         written);
            }
            ++adapters;
        }
    }
    CHECK(adapters > households);
}
