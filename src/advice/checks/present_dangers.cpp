#include "fluewright/advice/checks/present_dangers.hpp"

#include "fluewright/advice/checks/told.hpp"

namespace fluewright {

Checked
checks_of_file(const Installation& written, const Case& resolved, const Solution& solution) {
    CheckOptions options;
    options.body = rule_set_of(written, resolved.units);
    return check_all(written, resolved, solution, options);
}

std::vector<PresentDanger>
present_dangers(const Installation& written, const Case& resolved, const Solution& solution) {
    return present_dangers(checks_of_file(written, resolved, solution), resolved.units);
}

std::vector<PresentDanger> present_dangers(const Checked& checked, UnitSystem units) {
    std::vector<PresentDanger> dangers;
    for (const Finding& finding : checked.findings) {
        if (finding.severity == Severity::danger) {
            dangers.push_back({.id = std::string{finding.matter->id},
                               .part = finding.part,
                               .title = std::string{finding.matter->title},
                               .place = finding.place,
                               .message = finding.message,
                               .remedy = what_to_do(finding, units)});
        }
    }
    return dangers;
}

std::vector<std::string> open_dangers(const Checked& checked, UnitSystem units) {
    std::vector<std::string> open;
    for (const CheckResult& result : checked.results) {
        if (is_open_danger(result)) {
            open.push_back(rule_words(*result.check, units));
        }
    }
    return open;
}

} // namespace fluewright
