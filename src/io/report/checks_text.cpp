#include "check_parts.hpp"
#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright::report {
namespace {

/// "at least", "at most": on which side of the limit the figure should lie where it does not
/// lie on it.
std::string_view side_of(const CheckResult& result) {
    const bool met = result.outcome == CheckOutcome::met;
    if (*result.figure == *result.limit) {
        return "limit";
    }
    return (*result.figure > *result.limit) == met ? "at least" : "at most";
}

/// Figure and limit of a result that has no words of its own.
std::string figures_of(const CheckResult& result, const Style& style) {
    if (!result.figure) {
        return std::string{name(result.outcome)};
    }
    if (!result.limit) {
        return format_quantity(*result.figure, result.kind, style.units);
    }
    const ShownApart both =
        result.outcome == CheckOutcome::not_met
            ? format_apart(*result.figure, *result.limit, result.kind, style.units)
            : ShownApart{.figure = format_quantity(*result.figure, result.kind, style.units),
                         .limit = format_quantity(*result.limit, result.kind, style.units)};
    return fmt::format("{}, {} {}", both.figure, side_of(result), both.limit);
}

std::string result_words(const CheckResult& result, const Style& style) {
    std::string words = fmt::format("{}: {}{}{}: ",
                                    name(result.outcome),
                                    result.check->id,
                                    result.place.empty() ? "" : ", " + result.place,
                                    result.state.empty() ? "" : " (" + result.state + ')');
    if (!result.message.empty()) {
        words += result.message;
        if (result.outcome == CheckOutcome::met) {
            words.pop_back();
            words += fmt::format(" [{}].", origin_of(*result.check));
        }
        return words;
    }
    return words
           + (result.outcome == CheckOutcome::does_not_apply
                  ? fmt::format("for {}.", result.check->applies)
                  : fmt::format("{} [{}].", figures_of(result, style), origin_of(*result.check)));
}

/// What would be asked, and the keys that are missing.
std::string open_words(const CheckResult& result, const Style& style) {
    std::string asked =
        result.message.empty() ? rule_words(*result.check, style.units) + '.' : result.message;
    asked.pop_back();
    return fmt::format("- {}, {}: {} [{}].",
                       keys_in_words(result.missing),
                       result.check->id,
                       asked,
                       origin_of(*result.check));
}

/// What is undetermined, with what it asks.
std::string left_open(const Assessment& a, const Style& style) {
    std::string out;
    for (const CheckResult& result : a.checks) {
        if (result.outcome == CheckOutcome::undetermined && !result.check->local
            && is_told_to(result, kind_of(a.installation.appliance))) {
            out += paragraph(open_words(result, style), hung_in, style.width);
        }
    }
    return out.empty() ? out
                       : paragraph("Undetermined, because the file does not say (--requirements "
                                   "lists it along the run):",
                                   {.first = 2, .rest = 2},
                                   style.width)
                             + out;
}

/// Old figures of one town, which decide nothing.
std::string told_by_towns(const Assessment& a, const Style& style) {
    std::string out;
    for (const CheckResult& result : a.checks) {
        if (result.check->local && result.outcome != CheckOutcome::does_not_apply) {
            std::string words = result_words(result, style);
            if (result.outcome != CheckOutcome::met) {
                words.pop_back();
                words += fmt::format(" [{}].", origin_of(*result.check));
            }
            out += paragraph(words, hung_in, style.width);
        }
    }
    return out.empty() ? out
                       : paragraph("Trade, local: old figures of one town. They decide nothing "
                                   "here; ask where they are law:",
                                   {.first = 2, .rest = 2},
                                   style.width)
                             + out;
}

} // namespace

std::string checks_text(const Assessment& a, const Style& style) {
    if (a.body == nullptr) {
        return {};
    }
    const bool no_body = a.body->id == "none";
    std::string out = heading("Checks", style);
    const std::string held =
        no_body ? "physics and trade practice; no rules are chosen (--rules us, uk, ca, au or de, "
                  "or `site.rules` in the file)"
                : fmt::format("physics, trade practice and the rules of {}", a.body->name);
    out += paragraph(
        fmt::format("By {}: {} not met, {} undetermined, {} met, {} do not apply. Met means that a "
                    "figure of this file meets that of a check; {}. The listing and instructions "
                    "of heater and pipe come first, then local law, then these.",
                    held,
                    count_of(a.checks, CheckOutcome::not_met),
                    count_of(a.checks, CheckOutcome::undetermined),
                    count_of(a.checks, CheckOutcome::met),
                    count_of(a.checks, CheckOutcome::does_not_apply),
                    no_body ? "each body of rules names who decides locally"
                            : fmt::format("{} decides", a.body->decides)),
        {.first = 2, .rest = 2},
        style.width);
    out += left_open(a, style);
    out += told_by_towns(a, style);
    for (const CheckOutcome outcome : {CheckOutcome::met, CheckOutcome::does_not_apply}) {
        for (const CheckResult& result : a.checks) {
            if (result.outcome == outcome && !result.check->local
                && is_told_to(result, kind_of(a.installation.appliance))) {
                out += paragraph(result_words(result, style), hung_in, style.width);
            }
        }
    }
    return out;
}

} // namespace fluewright::report
