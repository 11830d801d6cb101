#include "bodies/rule_check.hpp"
#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/core/quantity/one_system.hpp"
#include "fluewright/core/sentence.hpp"
#include "subject.hpp"

#include <algorithm>
#include <cassert>
#include <charconv>
#include <cmath>

namespace fluewright {
namespace {

using checking::Subject;
using checking::View;

/// Every check of physics and trade that the view allows.
CheckResults own_results(const View& view) {
    constexpr std::size_t usual_count = 32;
    CheckResults results;
    results.reserve(usual_count);
    Subject subject(view, results);
    if (view.has_solution()) {
        checking::draft(subject);
        checking::joint_pressure(subject);
        checking::heat(subject);
        checking::top(subject);
        checking::house(subject);
    }
    checking::alarm(subject);
    checking::too_hot(subject);
    checking::sizes(subject);
    checking::shape(subject);
    checking::joints(subject);
    checking::heat_balance(subject);
    checking::doubtful(subject);
    if (view.with_words) {
        for (std::size_t i = 0; i < checking::own_checks.size(); ++i) {
            const Check& check = checks()[i];
            if (!subject.made(i) && (view.has_solution() || !check.needs_solution)) {
                results.emplace_back().check = &check;
            }
        }
    }
    results = checking::one_for_all_states(std::move(results));
    // A check that fails at one place is not also met at another.
    std::stable_sort(
        results.begin(), results.end(), [](const CheckResult& a, const CheckResult& b) {
            return a.check != b.check       ? a.check < b.check
                   : a.outcome != b.outcome ? a.outcome < b.outcome
                                            : a.weight > b.weight;
        });
    results.erase(std::unique(results.begin(),
                              results.end(),
                              [](const CheckResult& first, const CheckResult& next) {
                                  return first.check == next.check
                                         && next.outcome == CheckOutcome::met;
                              }),
                  results.end());
    return results;
}

double weight_of(const checking::Verdict& v) {
    if (v.outcome != CheckOutcome::not_met) {
        return 0.0;
    }
    if (v.weight) {
        return *v.weight;
    }
    return v.figure && v.limit && *v.limit != 0.0 ? std::abs(*v.figure / *v.limit - 1.0) : 1.0;
}

/// Where on the run a key of the file is.
void place_by_key(const View& view, Asked& asked) {
    constexpr std::string_view run = "/run/";
    const std::string_view key =
        asked.missing.empty() ? std::string_view{} : std::string_view{asked.missing.front()};
    if (key.starts_with(run)) {
        int index = -1;
        std::from_chars(key.data() + run.size(), key.data() + key.size(), index);
        asked.part = index;
        asked.place = view.resolved.run.label_at(index);
    } else if (key.starts_with("/appliance")) {
        asked.place = "the heater";
    } else if (key.starts_with("/site/roof")) {
        asked.place = "the chimney top";
    } else {
        asked.place = "the house";
    }
}

/// What a rule asks where the file does not tell, with its place; the words of the row stand in for
/// those the rule does not find.
std::vector<Asked> asked_of(const View& view, std::vector<Asked> asked, const Check& row) {
    for (Asked& one : asked) {
        if (one.words.empty()) {
            one.words = rule_words(row, view.resolved.units);
        }
        place_by_key(view, one);
    }
    return asked;
}

/// "Distance to what burns at least 457 mm; ..." of an open check.
std::string words_of_asked(const std::vector<Asked>& asked) {
    std::string words;
    std::vector<std::string_view> said;
    for (const Asked& one : asked) {
        if (std::find(said.begin(), said.end(), one.words) == said.end()) {
            said.emplace_back(one.words);
            words += (words.empty() ? "required: " : "; ") + one.words;
        }
    }
    return words;
}

/// The rows of data/rules.csv that are of the body asked or of all.
void add_rule_results(const View& view, CheckResults& results) {
    const std::span<const Check> rows = checks().subspan(checking::own_checks.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Check& row = rows[i];
        if ((row.body != view.body && row.body != "any")
            || (row.needs_solution && !view.has_solution())) {
            continue;
        }
        const checking::Entry* entry = checking::rule_entries()[i];
        assert(entry != nullptr && "a row of rules.csv without a function");
        checking::Verdict v = entry->check(view, catalog::rules()[i]);
        const bool open_danger =
            v.outcome == CheckOutcome::undetermined && row.severity == Severity::danger;
        if (!view.with_words && v.outcome != CheckOutcome::not_met && !open_danger) {
            continue;
        }
        const double weight = weight_of(v);
        std::vector<Asked> asked =
            view.with_words ? asked_of(view, std::move(v.asked), row) : std::vector<Asked>{};
        if (v.outcome == CheckOutcome::undetermined) {
            v.message = words_of_asked(asked);
        }
        results.push_back({.check = &row,
                           .outcome = v.outcome,
                           .place = std::move(v.place),
                           .part = v.part,
                           .state = {},
                           .kind = v.kind,
                           .figure = v.figure,
                           .limit = v.limit,
                           .weight = weight,
                           .message = sentence_of(std::move(v.message)),
                           .remedy = {},
                           .missing = std::move(v.missing),
                           .asked = std::move(asked)});
    }
}

Checked run(const View& view) {
    Checked checked;
    checked.body = catalog::find_rule_body(view.body);
    assert(checked.body != nullptr);
    checked.results = own_results(view);
    add_rule_results(view, checked.results);
    checked.findings = checking::findings_of(checked.results);
    for (Finding& finding : checked.findings) {
        finding.matter = &matter_for(*finding.matter, kind_of(view.resolved.appliance));
        finding.harm = harm_of(*finding.matter, finding.severity);
        if (view.with_words) {
            finding.remedy = in_one_system(finding.what_to_do(), view.resolved.units);
        }
    }
    return checked;
}

} // namespace

std::size_t count_of(const CheckResults& results, CheckOutcome outcome) {
    return static_cast<std::size_t>(
        std::count_if(results.begin(), results.end(), [&](const CheckResult& r) {
            return r.outcome == outcome && !r.check->local;
        }));
}

Harm harm_of(const Matter& matter, Severity severity) {
    if (severity == Severity::danger) {
        return Harm::fire;
    }
    return severity == Severity::failure ? std::min(matter.harm, Harm::draft) : matter.harm;
}

std::string_view rule_set_of(const Installation& written, UnitSystem units) {
    return name(written.site.rules.value_or(units == UnitSystem::us ? RuleSet::us : RuleSet::none));
}

Checked check_all(const Installation& written,
                  const Case& resolved,
                  const Solution& solution,
                  const CheckOptions& options) {
    View view{written, resolved, &solution, options.with_words, options.body};
    view.one_charge = options.one_charge;
    return run(view);
}

Checked
check_shape(const Installation& written, const Case& resolved, const CheckOptions& options) {
    return run(View{written, resolved, nullptr, options.with_words, options.body});
}

} // namespace fluewright
