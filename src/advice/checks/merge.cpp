#include "subject.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace fluewright::checking {
namespace {

/// Adds the state of a twin: "high fire, frost; also high fire, mild; low fire, frost".
std::string states_of(const CheckResult& worse, const CheckResult& better) {
    constexpr std::string_view also = "; also ";
    std::string states =
        worse.state + std::string{worse.state.find(also) == std::string::npos ? also : "; "};
    std::string others = better.state;
    if (const std::size_t at = others.find(also); at != std::string::npos) {
        others.replace(at, also.size(), "; ");
    }
    return states + others;
}

bool is_twin(const CheckResult& a, const CheckResult& b) {
    return a.check == b.check && a.outcome == b.outcome && !a.state.empty()
           && (a.part == b.part || !a.check->matter->per_place);
}

/// Whether a check goes before another in a finding: what harms more, then the physics, then the
/// trade, then a body's rule, then what is farther past its limit.
bool weighs_more(const CheckResult& a, const CheckResult& b) {
    const auto rank = [](const CheckResult& r) {
        return std::pair{r.check->severity, r.check->basis};
    };
    return rank(a) != rank(b) ? rank(a) < rank(b) : a.weight > b.weight;
}

bool about_the_whole(int part, const std::string& place) {
    return part < 0 && place.empty();
}

/// Whether a result is about what a finding is about.
bool same_thing(const Finding& finding, const CheckResult& result) {
    if (finding.matter != result.check->matter) {
        return false;
    }
    if (!finding.matter->per_place || about_the_whole(finding.part, finding.place)
        || about_the_whole(result.part, result.place)) {
        return true;
    }
    return finding.part >= 0 || result.part >= 0 ? finding.part == result.part
                                                 : finding.place == result.place;
}

/// Of checks that harm alike and hold the same figure against a limit, the one that asks most comes
/// first: who goes by the line that is shown meets them all.
void let_the_strictest_lead(CheckResults& sources) {
    const CheckResult& lead = sources.front();
    const auto asks = [&](const CheckResult& r) {
        const bool alike = r.check->severity == lead.check->severity && r.kind == lead.kind
                           && r.figure && lead.figure && *r.figure == *lead.figure && r.limit;
        return alike ? std::abs(*r.limit - *r.figure) : -1.0;
    };
    const auto strictest = std::max_element(
        sources.begin(), sources.end(), [&](const CheckResult& a, const CheckResult& b) {
            return asks(a) < asks(b);
        });
    std::rotate(sources.begin(), strictest, strictest + 1);
}

/// What the finding says is what its weightiest check says.
void take_lead(Finding& finding) {
    std::stable_sort(finding.sources.begin(), finding.sources.end(), weighs_more);
    let_the_strictest_lead(finding.sources);
    const CheckResult& lead = finding.sources.front();
    finding.severity = lead.check->severity;
    finding.place = lead.place;
    finding.part = lead.part;
    finding.state = lead.state;
    finding.message = lead.message;
    finding.kind = lead.kind;
    finding.figure = lead.figure;
    finding.limit = lead.limit;
    // Two checks may measure the same thing from two limits; how bad it is tells the greater.
    finding.weight = lead.weight;
    for (const CheckResult& source : finding.sources) {
        finding.weight = std::max(finding.weight, source.weight);
        if (finding.remedy.empty()) {
            finding.remedy = source.remedy;
        }
        if (about_the_whole(finding.part, finding.place)) {
            finding.part = source.part;
            finding.place = source.place;
        }
    }
}

} // namespace

CheckResults one_for_all_states(CheckResults results) {
    CheckResults kept;
    kept.reserve(results.size());
    for (CheckResult& result : results) {
        const auto twin = std::find_if(
            kept.begin(), kept.end(), [&](const CheckResult& r) { return is_twin(r, result); });
        if (twin == kept.end()) {
            kept.push_back(std::move(result));
            continue;
        }
        const bool worse = result.weight > twin->weight;
        std::string states = worse ? states_of(result, *twin) : states_of(*twin, result);
        if (worse) {
            *twin = std::move(result);
        }
        twin->state = std::move(states);
    }
    return kept;
}

Findings findings_of(const CheckResults& results) {
    Findings findings;
    for (const CheckResult& result : results) {
        if (result.outcome != CheckOutcome::not_met || result.check->local) {
            continue;
        }
        const auto known = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) {
            return same_thing(f, result);
        });
        if (known != findings.end()) {
            known->sources.push_back(result);
            continue;
        }
        Finding& finding = findings.emplace_back();
        finding.matter = result.check->matter;
        finding.part = result.part;
        finding.place = result.place;
        finding.sources.push_back(result);
    }
    for (Finding& finding : findings) {
        take_lead(finding);
        // What another check of the matter lets pass stands beside it with its own figure.
        std::copy_if(results.begin(),
                     results.end(),
                     std::back_inserter(finding.sources),
                     [&](const CheckResult& result) {
                         return result.outcome == CheckOutcome::met && !result.check->local
                                && result.figure && result.limit && same_thing(finding, result);
                     });
    }
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return a.severity != b.severity ? a.severity < b.severity : a.weight > b.weight;
    });
    return findings;
}

} // namespace fluewright::checking
