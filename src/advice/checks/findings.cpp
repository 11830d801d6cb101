#include "finding_rules.hpp"

#include <algorithm>
#include <cassert>

namespace fluewright {
namespace rules {

Finding& Subject::add(std::string_view id) const {
    const FindingInfo* info = find_finding(id);
    assert(info != nullptr);
    findings.push_back({});
    findings.back().info = info;
    return findings.back();
}

std::string Subject::words(const StateResult& state) const {
    return std::string{name(state.kind)} + ", " + installation.weathers[state.weather].name;
}

std::string Subject::place_of(const Section& section) const {
    if (section.part < 0) {
        return "the outlet";
    }
    if (section.kind == PartKind::cap) {
        return "the mouth";
    }
    return std::string{name(section.kind)} + " " + std::to_string(section.part + 1);
}

} // namespace rules

namespace {

/// The same finding at the same place in several states is one finding: the worst, which names the
/// others.
Findings merged(Findings all) {
    Findings kept;
    kept.reserve(all.size());
    for (Finding& finding : all) {
        const auto twin = std::find_if(kept.begin(), kept.end(), [&](const Finding& f) {
            return f.info == finding.info && !f.state.empty()
                   && (f.part == finding.part || f.info->severity == Severity::warning);
        });
        if (twin == kept.end()) {
            kept.push_back(std::move(finding));
            continue;
        }
        const bool worse = finding.weight > twin->weight;
        std::string states =
            worse ? finding.state + "; also " + twin->state
                  : twin->state
                        + (twin->state.find("; also ") == std::string::npos ? "; also " : "; ")
                        + finding.state;
        if (worse) {
            const std::size_t also = states.find("; also ", finding.state.size() + 2);
            if (also != std::string::npos) {
                states.replace(also, 7, "; ");
            }
            *twin = std::move(finding);
        }
        twin->state = std::move(states);
    }
    return kept;
}

} // namespace

Findings find_all(const Case& installation, const Solution& solution, bool with_words) {
    constexpr std::size_t usual_count = 16;
    Findings all;
    all.reserve(usual_count);
    const rules::Subject subject{installation, solution, all, with_words};
    rules::draft(subject);
    rules::sizes(subject);
    rules::heat(subject);
    rules::shape(subject);
    rules::house(subject);
    rules::doubtful(subject);
    Findings kept = merged(std::move(all));
    std::stable_sort(kept.begin(), kept.end(), [](const Finding& a, const Finding& b) {
        return a.info->severity != b.info->severity ? a.info->severity < b.info->severity
                                                    : a.weight > b.weight;
    });
    return kept;
}

} // namespace fluewright
