#include "design.hpp"

#include "cures.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>
#include <iterator>
#include <map>

namespace fluewright::diagnosis {
namespace {

constexpr double least_gain = 0.05;

bool is_complaint(const Evidence& e) {
    switch (e.seen) {
    case Seen::smoke_joints:
    case Seen::smoke_door:
    case Seen::smoke_lighting:
    case Seen::smoke_wind:
    case Seen::smoke_fan:
    case Seen::sluggish:
    case Seen::roaring:
    case Seen::drips:
    case Seen::smell:
    case Seen::co_alarm:
        return e.answer == Answer::yes;
    default:
        return false;
    }
}

} // namespace

namespace {

/// How much of each complaint an installation without hidden causes accounts for, 0 to 1; where
/// only readings were taken, one figure: whether the run falls short.
std::vector<double> accounted_for(const Installation& written,
                                  const Case& resolved,
                                  const Score& scored,
                                  const std::vector<Evidence>& evidence) {
    std::vector<Evidence> complaints;
    std::copy_if(evidence.begin(), evidence.end(), std::back_inserter(complaints), is_complaint);
    if (complaints.empty()) {
        return {scored.passes ? 0.0 : 1.0};
    }
    auto altered = alter(written, resolved, {});
    if (!altered) {
        return std::vector<double>(complaints.size(), 0.0);
    }
    Solver solver(std::move(*altered), {1.0, 1.0});
    std::map<Situation, Predictions> known;
    std::vector<double> shares;
    for (const Evidence& complaint : complaints) {
        for (const Situation& situation : needs(complaint, resolved)) {
            if (!known.contains(situation)) {
                known.emplace(situation, solver.predict(situation));
            }
        }
        const double x =
            predicted(complaint, solver.altered(), [&](const Situation& s) -> const Prediction& {
                return known.at(s).front();
            });
        // Some report it where nothing is wrong: what is left is the share that is not of that
        // kind.
        shares.push_back(
            1.0 - reported_anyway(complaint.seen) / likelihood(complaint, x, solver.altered()));
    }
    return shares;
}

} // namespace

double trouble_of(const Installation& written,
                  const Case& resolved,
                  const std::vector<Evidence>& evidence) {
    const std::vector<double> shares = accounted_for(written, resolved, score(resolved), evidence);
    return *std::max_element(shares.begin(), shares.end());
}

std::vector<DesignCause> design_causes(const Installation& written,
                                       const Case& resolved,
                                       const std::vector<Evidence>& evidence) {
    const std::vector<double> before = accounted_for(written, resolved, score(resolved), evidence);
    std::vector<DesignCause> found;
    double sum = 0.0;
    for (const Cause& cause : causes()) {
        if (cause.kind != "design" || !applies_to(cause.kinds, kind_of(resolved.appliance))) {
            continue;
        }
        auto better = cured(cause, written, resolved);
        if (!better) {
            continue;
        }
        const std::vector<double> after =
            accounted_for(better->changed, better->resolved, better->score, evidence);
        double gain = 0.0;
        for (std::size_t i = 0; i < before.size() && i < after.size(); ++i) {
            gain += std::max(0.0, before[i] - after[i]);
        }
        if (gain > least_gain) {
            // Squared: the flaw whose cure takes most away is the likelier cause.
            found.push_back({&cause, std::move(better), gain * gain});
            sum += gain * gain;
        }
    }
    if (found.empty()) {
        return {{&cause_of(CauseId::design_whole), std::nullopt, 1.0}};
    }
    for (DesignCause& cause : found) {
        cause.share /= sum;
    }
    std::stable_sort(found.begin(), found.end(), [](const DesignCause& a, const DesignCause& b) {
        return a.share > b.share;
    });
    return found;
}

} // namespace fluewright::diagnosis
