#include "fluewright/advice/checks/rules.hpp"

#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace fluewright {

std::string_view name(RuleOutcome outcome) {
    constexpr std::array<std::string_view, 4> names{
        "not met", "cannot tell", "met", "does not apply"};
    return names[static_cast<std::size_t>(outcome)];
}

std::size_t RuleReport::count(RuleOutcome outcome) const {
    return static_cast<std::size_t>(std::count_if(
        results.begin(), results.end(), [&](const RuleResult& r) { return r.outcome == outcome; }));
}

std::string_view rule_set_of(const Installation& written, UnitSystem units) {
    return name(written.site.rules.value_or(units == UnitSystem::us ? RuleSet::us : RuleSet::none));
}

namespace {

rule_check::Check check_of(std::string_view id) {
    for (const auto entries : {rule_check::connector_checks(),
                               rule_check::pipe_checks(),
                               rule_check::distance_checks(),
                               rule_check::heater_checks(),
                               rule_check::flue_checks(),
                               rule_check::fireplace_checks(),
                               rule_check::chimney_checks(),
                               rule_check::mouth_checks(),
                               rule_check::mouth_abroad_checks(),
                               rule_check::air_checks(),
                               rule_check::trade_checks()}) {
        for (const rule_check::Entry& entry : entries) {
            if (entry.id == id) {
                return entry.check;
            }
        }
    }
    return nullptr;
}

} // namespace

RuleReport check_rules(const Installation& written,
                       const Case& installation,
                       const Solution& solution,
                       std::string_view body) {
    RuleReport report;
    report.body = catalog::find_rule_body(body);
    assert(report.body != nullptr);
    if (body == "none") {
        return report;
    }
    const rule_check::View view{written, installation, solution};
    for (const catalog::Rule& rule : catalog::rules()) {
        if (rule.body != body && rule.body != "any") {
            continue;
        }
        const rule_check::Check check = check_of(rule.id);
        assert(check != nullptr && "a row of rules.csv without a function");
        rule_check::Verdict v =
            check != nullptr ? check(view, rule) : rule_check::not_here("not checked");
        report.results.push_back({.rule = &rule,
                                  .outcome = v.outcome,
                                  .place = std::move(v.place),
                                  .part = v.part,
                                  .kind = v.kind,
                                  .figure = v.figure,
                                  .limit = v.limit,
                                  .message = std::move(v.message),
                                  .missing = std::move(v.missing)});
    }
    return report;
}

} // namespace fluewright
