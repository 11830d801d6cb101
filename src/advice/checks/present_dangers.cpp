#include "fluewright/advice/checks/present_dangers.hpp"

#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/advice/checks/told.hpp"

#include <algorithm>

namespace fluewright {

Checked
checks_of_file(const Installation& written, const Case& resolved, const Solution& solution) {
    CheckOptions options;
    options.body = rule_set_of(written, resolved.units);
    return check_all(written, resolved, solution, options);
}

std::vector<PresentDanger> present_dangers(const Checked& checked) {
    std::vector<PresentDanger> dangers;
    for (const Finding& finding : checked.findings) {
        if (finding.severity == Severity::danger) {
            dangers.push_back({.id = std::string{finding.matter->id},
                               .part = finding.part,
                               .title = std::string{finding.matter->title},
                               .place = finding.place,
                               .message = finding.message,
                               .remedy = std::string{finding.what_to_do()}});
        }
    }
    return dangers;
}

std::string open_dangers_words(const CheckResults& results, UnitSystem units) {
    // What was seen is told by the file: it lacks no figure, but its cause.
    const auto is_seen = [](const CheckResult& result) {
        return is_open_danger(result) && result.check->matter->id == "trouble-seen";
    };
    const auto lacks_figure = [&](const CheckResult& result) {
        return is_open_danger(result) && !is_seen(result);
    };
    const auto seen = std::find_if(results.begin(), results.end(), is_seen);
    std::string trouble =
        seen == results.end()
            ? std::string{}
            : "Trouble was seen (" + keys_in_words(seen->missing) + "): its cause comes first.";
    const auto count = std::count_if(results.begin(), results.end(), lacks_figure);
    if (count == 0) {
        return trouble;
    }
    // The table has the weightiest first.
    const CheckResult& first = *std::find_if(results.begin(), results.end(), lacks_figure);
    return trouble + (trouble.empty() ? "" : " ") + std::to_string(count)
           + (count == 1 ? " check is" : " checks are")
           + " undetermined, as the file does not say; first: " + keys_in_words(first.missing)
           + "; required: " + rule_words(*first.check, units) + '.';
}

std::string fire_not_decided(const CheckResults& results, UnitSystem units) {
    const std::string open = open_dangers_words(results, units);
    return open.empty() ? open : "Not decided: fire and carbon monoxide. " + open;
}

std::string fire_not_decided(const Checked& checked, UnitSystem units) {
    const bool danger =
        std::any_of(checked.findings.begin(), checked.findings.end(), [](const Finding& finding) {
            return finding.severity == Severity::danger;
        });
    return danger ? std::string{} : fire_not_decided(checked.results, units);
}

} // namespace fluewright
