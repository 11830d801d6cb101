#include "advice/remedies/run_edit.hpp"
#include "edited_file.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "law.hpp"
#include "property/random_installation.hpp"

#include <algorithm>
#include <array>
#include <utility>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

/// The part a fitter takes for the adapter that is named, as a file has it.
Part adapter_of(const Joint& joint, const Fit& fit, const Part& above) {
    Part part;
    part.name = fit.adapter;
    const bool as_above = fit.adapter_chimney_end == PipeEnd::locking || joint.lower.wall.empty();
    part.wall = as_above ? joint.upper.wall : joint.lower.wall;
    part.zone = above.zone;
    part.heater_end = fit.adapter_heater_end;
    part.chimney_end = fit.adapter_chimney_end;
    if (fit.bore == Bore::same) {
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

bool joins_two_locks(const Fit& fit) {
    return fit.adapter_heater_end == PipeEnd::locking
           && fit.adapter_chimney_end == PipeEnd::locking;
}

/// Two locks of unlike make: the adapter is of both walls, which a file says as two halves that
/// lap.
std::vector<Part> halves_of(const Joint& joint, const Fit& fit, const Part& above) {
    Part upper = adapter_of(joint, fit, above);
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

void put_in(Installation& spelled, const Joint& joint, const Fit& fit) {
    const auto at = spelled.run.begin() + joint.above;
    const Part above = *at;
    const std::vector<Part> between = joins_two_locks(fit)
                                          ? halves_of(joint, fit, above)
                                          : std::vector<Part>{adapter_of(joint, fit, above)};
    spelled.run.insert(at, between.begin(), between.end());
}

/// The file with the adapter in it; every part says all its own, so that nothing carries over.
Installation with_adapter(const Installation& written, const Joint& joint) {
    Installation spelled = run_edit::spelled_out(written);
    put_in(spelled, joint, joint.fit);
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

/// Whether nothing that can be put between cures a joint.
bool is_beyond_cure(const Joint& joint) {
    return joint.turned.other_part || is_beyond_a_file(joint);
}

/// Whether `label` is one of the parts of "straight 1 and elbow 2".
bool names(const std::string& parts, const std::string& label) {
    constexpr std::string_view link = " and ";
    const std::size_t middle = parts.find(link);
    return parts.substr(0, middle) == label
           || (middle != std::string::npos && parts.substr(middle + link.size()) == label);
}

/// The file once everything was done that is said of its joints: parts turned round, ends crimped,
/// adapters put in.
Installation
with_every_cure(const Installation& written, const Case& resolved, const JointReport& report) {
    Installation made = run_edit::spelled_out(written);
    for (const RunPart& part : resolved.run.parts) {
        const bool turns =
            std::any_of(report.joints.begin(), report.joints.end(), [&](const Joint& joint) {
                const bool beside = joint.above == part.index || joint.below == part.index;
                return beside && names(joint.turn_round, label(part));
            });
        if (turns) {
            Part& turned = made.run[static_cast<std::size_t>(part.index)];
            std::swap(turned.heater_end, turned.chimney_end);
        }
    }
    for (auto joint = report.joints.rbegin(); joint != report.joints.rend(); ++joint) {
        if (joint->turned.crimps) {
            made.run[static_cast<std::size_t>(joint->above)].heater_end = PipeEnd::crimped;
        } else if (!joint->turned.adapter.empty() && !is_beyond_cure(*joint)) {
            put_in(made, *joint, joint->turned);
        }
    }
    return made;
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

TEST_CASE("once all is done that is said of the joints, nothing of them is found") {
    constexpr std::uint64_t runs = 1000;
    std::size_t cured = 0;
    std::size_t crimped = 0;
    for (std::uint64_t seed = 0; seed < runs; ++seed) {
        // Every fourth has the ends that a file leaves out, and those of its own.
        const Installation written =
            seed % 4 == 3 ? random_household(seed) : with_random_ends(seed);
        const auto resolved = resolve(written);
        REQUIRE(resolved.has_value());
        const JointReport report = joints_of(*resolved);
        Counts left{};
        for (const Joint& joint : report.joints) {
            const Fit& fit = joint.turned;
            if (is_beyond_cure(joint)) {
                left[0] += fit.mating == Mating::never ? 1U : 0U;
                left[1] += fit.mating == Mating::points_up ? 1U : 0U;
                left[2] += fit.bore != Bore::same ? 1U : 0U;
                continue;
            }
            cured += joint.needs_something() ? 1U : 0U;
            crimped += fit.crimps ? 1U : 0U;
            // Both sides of an adapter are named as they are made.
            if (!fit.adapter.empty()) {
                const std::string below = std::string{name(fit.adapter_heater_end)} + " below, ";
                const std::string above = std::string{name(fit.adapter_chimney_end)} + " above";
                CHECK(fit.adapter.find(below) != std::string::npos);
                CHECK(fit.adapter.ends_with(above));
            }
        }
        const Installation then = with_every_cure(written, *resolved, report);
        const Counts found = joint_findings(then);
        if (found != left) {
            Differences differ;
            differ.under("findings left at the joints");
            differ.number(
                "ends-do-not-mate", static_cast<double>(found[0]), static_cast<double>(left[0]));
            differ.number(
                "crimp-points-up", static_cast<double>(found[1]), static_cast<double>(left[1]));
            differ.number("diameters-do-not-match",
                          static_cast<double>(found[2]),
                          static_cast<double>(left[2]));
            fail_law(seed,
                     differ.text() + "of the file\n" + write_installation(then)
                         + "\nfor the installation",
                     written);
        }
    }
    CHECK(cured > runs);
    CHECK(crimped > runs / 20);
}
