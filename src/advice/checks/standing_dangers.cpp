#include "fluewright/advice/checks/standing_dangers.hpp"

#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/checks/told.hpp"

namespace fluewright {

std::vector<StandingDanger>
standing_dangers(const Installation& written, const Case& resolved, const Solution& solution) {
    std::vector<StandingDanger> dangers;
    CheckOptions options;
    options.body = rule_set_of(written, resolved.units);
    for (const Finding& finding : check_all(written, resolved, solution, options).findings) {
        if (finding.severity == Severity::danger) {
            dangers.push_back({.id = std::string{finding.matter->id},
                               .part = finding.part,
                               .title = std::string{finding.matter->title},
                               .place = finding.place,
                               .message = finding.message,
                               .remedy = finding.remedy.empty()
                                             ? std::string{finding.matter->remedy}
                                             : finding.remedy});
        }
    }
    return dangers;
}

std::vector<std::string>
open_dangers(const Installation& written, const Case& resolved, const Solution& solution) {
    std::vector<std::string> open;
    CheckOptions options;
    options.body = rule_set_of(written, resolved.units);
    const Checked checked = check_all(written, resolved, solution, options);
    for (const CheckResult& result : checked.results) {
        if (result.outcome == CheckOutcome::undetermined && !waits_for_deposit(result)
            && result.check->severity == Severity::danger) {
            open.emplace_back(result.check->rule);
        }
    }
    return open;
}

} // namespace fluewright
