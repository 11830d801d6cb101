#include "design.hpp"

#include "advice/diagnosis/seen/too_much.hpp"
#include "cures.hpp"

#include <algorithm>
#include <iterator>
#include <map>

namespace fluewright::diagnosis {
namespace {

constexpr double least_gain = 0.05;

/// How far a run falls short of what is required of it, 0 to 1.
double lacking(const Score& scored) {
    constexpr double any_lack = 0.3; // a run that fails by little fails all the same
    return scored.passes ? 0.0 : std::min(1.0, any_lack + std::max(0.0, -scored.least_spare));
}

std::vector<Evidence> complaints_of(const std::vector<Evidence>& evidence) {
    std::vector<Evidence> complaints;
    std::copy_if(evidence.begin(),
                 evidence.end(),
                 std::back_inserter(complaints),
                 [](const Evidence& e) { return e.complains() && e.aside == Aside::no; });
    return complaints;
}

/// How likely each complaint is with an installation without hidden causes; empty where that cannot
/// be solved.
std::vector<double> chances_of(const std::vector<Evidence>& complaints,
                               const Installation& written,
                               const Case& resolved) {
    auto altered = alter(written, resolved, {});
    if (!altered || complaints.empty()) {
        return {};
    }
    Solver solver(std::move(*altered), {1.0, 1.0});
    std::map<Situation, Predictions> known;
    std::vector<double> chances;
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
        chances.push_back(likelihood(complaint, x, solver.altered()));
    }
    return chances;
}

/// How much of each complaint an installation without hidden causes accounts for, 0 to 1; none
/// where only readings were taken.
std::vector<double> accounted_for(const Installation& written,
                                  const Case& resolved,
                                  const std::vector<Evidence>& evidence) {
    const std::vector<Evidence> complaints = complaints_of(evidence);
    std::vector<double> shares = chances_of(complaints, written, resolved);
    shares.resize(complaints.size());
    for (std::size_t i = 0; i < shares.size(); ++i) {
        // Some report it where nothing is wrong: what is left is the share that is not of that
        // kind.
        shares[i] = shares[i] > 0.0 ? 1.0 - reported_anyway(complaints[i].seen) / shares[i] : 0.0;
    }
    return shares;
}

/// How much of the trouble the run predicts, by the share of each complaint.
double trouble_of(const std::vector<double>& shares, bool passes, TooMuch too_much) {
    // A run that falls short as it is described is what one would look at first, whatever was
    // complained of; judgement.
    constexpr double short_run = 0.85;
    const double by_complaints =
        shares.empty() ? 0.0 : *std::max_element(shares.begin(), shares.end());
    if (too_much != TooMuch::no) {
        // A gauge alone, where nobody complains, says that it may become trouble.
        constexpr double only_measured = 0.45; // judgement
        return too_much != TooMuch::measured ? by_complaints : shares.empty() ? only_measured : 1.0;
    }
    if (shares.empty()) {
        return passes ? 0.0 : 1.0;
    }
    return passes ? by_complaints : std::max(by_complaints, short_run);
}

/// What a cure takes away: of each complaint, and of what the run lacks. Of two that make the run
/// pass, the one that leaves more to spare has mended more.
double gain_of(const Trial& better,
               const std::vector<double>& before,
               const Score& scored,
               TooMuch too_much,
               const std::vector<Evidence>& evidence) {
    constexpr double spare_weight = 0.5;
    const std::vector<double> after = accounted_for(better.changed, better.resolved, evidence);
    double gain = 0.0;
    if (too_much == TooMuch::no) {
        gain = std::max(0.0, lacking(scored) - lacking(better.score));
        if (!scored.passes) {
            gain += spare_weight * std::clamp(better.score.least_spare, 0.0, 1.0);
        }
    }
    for (std::size_t i = 0; i < before.size() && i < after.size(); ++i) {
        gain += std::max(0.0, before[i] - after[i]);
    }
    return gain;
}

std::vector<DesignCause> causes_of(const Installation& written,
                                   const Case& resolved,
                                   const std::vector<double>& before,
                                   const Score& scored,
                                   TooMuch too_much,
                                   const std::vector<Evidence>& evidence) {
    std::vector<DesignCause> found;
    double most = 0.0; // of what a flaw of the run itself accounts for
    for (const FoundFlaw& shown : flaws_of(written, resolved)) {
        const Cause& cause = *shown.cause;
        DesignCause flaw{.cause = &cause, .cured = std::nullopt, .share = 0.0};
        for (Trial& better : cured(cause, written, resolved)) {
            const bool measured =
                too_much == TooMuch::measured && id_of(cause) == CauseId::strong_draft;
            const double gain =
                gain_of(better, before, scored, too_much, evidence) + (measured ? 1.0 : 0.0);
            if (gain > flaw.share) {
                flaw.share = gain;
                flaw.cured = std::move(better);
            }
        }
        if (is_no_fault_of_the_run(cause)) {
            found.push_back(std::move(flaw));
        } else if (flaw.share > least_gain) {
            most = std::max(most, flaw.share);
            found.push_back(std::move(flaw));
        }
    }
    for (DesignCause& flaw : found) {
        if (is_no_fault_of_the_run(*flaw.cause)) {
            flaw.share = std::max(0.0, flaw.share - most);
        }
    }
    std::erase_if(found, [](const DesignCause& flaw) { return flaw.share <= least_gain; });
    if (found.empty()) {
        return {{&cause_of(CauseId::design_whole), std::nullopt, 1.0}};
    }
    double sum = 0.0;
    for (DesignCause& flaw : found) {
        // Squared: the flaw whose cure takes most away is the likelier cause.
        flaw.share *= flaw.share;
        sum += flaw.share;
    }
    for (DesignCause& flaw : found) {
        flaw.share /= sum;
    }
    std::stable_sort(found.begin(), found.end(), [](const DesignCause& a, const DesignCause& b) {
        return a.share > b.share;
    });
    return found;
}

} // namespace

Design design_of(const Installation& written,
                 const Case& resolved,
                 const std::vector<Evidence>& evidence) {
    const std::vector<double> before = accounted_for(written, resolved, evidence);
    const Score scored = score(resolved);
    // What a run lacks is no reason for too much.
    const TooMuch too_much = too_much_in(evidence, resolved.appliance);
    std::vector<DesignCause> causes =
        causes_of(written, resolved, before, scored, too_much, evidence);
    const bool none_named = id_of(*causes.front().cause) == CauseId::design_whole;
    return {.trouble = too_much != TooMuch::no && none_named
                           ? 0.0
                           : trouble_of(before, scored.passes, too_much),
            .causes = std::move(causes)};
}

std::vector<LeftTrouble> troubles_left(const Installation& written,
                                       const Case& resolved,
                                       const std::vector<Evidence>& evidence) {
    constexpr double worth_telling = 0.25; // judgement: one in four
    const std::vector<Evidence> complaints = complaints_of(evidence);
    const std::vector<double> chances = chances_of(complaints, written, resolved);
    std::vector<LeftTrouble> left;
    for (std::size_t i = 0; i < chances.size(); ++i) {
        if (chances[i] >= worth_telling) {
            left.push_back({words(complaints[i], resolved), chances[i]});
        }
    }
    std::stable_sort(left.begin(), left.end(), [](const LeftTrouble& a, const LeftTrouble& b) {
        return a.share > b.share;
    });
    return left;
}

} // namespace fluewright::diagnosis
