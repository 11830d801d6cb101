#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <fmt/core.h>

/// The sections of the short report, where they differ from the long one.
namespace fluewright::report {
namespace {

constexpr int told_in_full = 2; ///< findings; of further warnings only the figures

/// "high fire, frost" of "high fire, frost; also low fire, mild".
std::string worst_state(const Finding& finding) {
    return finding.state.substr(0, finding.state.find("; also "));
}

/// The places of further findings of the same matter and severity.
std::string other_places(const Findings& findings, std::size_t first) {
    std::string places;
    for (std::size_t i = first + 1; i < findings.size(); ++i) {
        if (is_same_matter(findings[first], findings[i]) && !findings[i].place.empty()) {
            places += (places.empty() ? "" : ", ") + findings[i].place;
        }
    }
    return places;
}

/// Whether a line of the verdict says all of a finding.
bool is_in_verdict(const Assessment& a, std::size_t index) {
    return std::any_of(a.verdict.harms.begin(), a.verdict.harms.end(), [&](const HarmVerdict& v) {
        return v.outcome == HarmOutcome::falls_short && v.finding == index;
    });
}

/// "26.1 degC, limit 39.3 degC"; what it says where it has no figures.
std::string figures_words(const Finding& finding, const Style& style) {
    if (!finding.figure || !finding.limit) {
        return finding.message;
    }
    const std::string figure = quantity(*finding.figure, finding.kind, style);
    const std::string limit = quantity(*finding.limit, finding.kind, style);
    if (figure != limit) {
        return fmt::format("{}, limit {}", figure, limit);
    }
    const ShownApart both =
        format_apart(*finding.figure, *finding.limit, finding.kind, style.units);
    return fmt::format("{}, limit {}", both.figure, both.limit);
}

std::string finding_text(int number,
                         const Finding& finding,
                         const std::string& other_places,
                         bool in_full,
                         const Style& style) {
    const std::string state = worst_state(finding);
    std::string words = finding.place.empty() ? "" : ", " + finding.place;
    words += other_places.empty() ? "" : "; " + other_places;
    words += state.empty() ? "" : " (" + state + ')';
    if (!in_full) {
        return finding_title(number, finding, words + ": " + figures_words(finding, style), style);
    }
    words += ". " + finding.message;
    words += fmt::format(" What to do: {}", finding.what_to_do());
    return finding_title(number, finding, words, style);
}

} // namespace

bool is_same_matter(const Finding& one, const Finding& other) {
    return one.matter == other.matter && one.severity == other.severity;
}

std::string findings_in_short(const Assessment& a, const Style& style) {
    if (a.findings.empty()) {
        return heading("Findings", style) + "  None.\n";
    }
    std::string out;
    int number = 0;
    int shortened = 0;
    for (std::size_t i = 0; i < a.findings.size(); ++i) {
        const Finding& finding = a.findings[i];
        const auto begin = a.findings.begin();
        const bool said =
            is_in_verdict(a, i)
            || std::any_of(begin, begin + static_cast<std::ptrdiff_t>(i), [&](const Finding& f) {
                   return is_same_matter(f, finding);
               });
        if (said) {
            continue;
        }
        ++number;
        const bool in_full = finding.severity <= Severity::failure || number <= told_in_full;
        out += finding_text(number, finding, other_places(a.findings, i), in_full, style);
        shortened += in_full ? 0 : 1;
    }
    if (number == 0) {
        return {};
    }
    if (shortened > 0) {
        out += paragraph(fmt::format("What to do about the last {}: --details.", shortened),
                         hung_in,
                         style.width);
    }
    return heading("Other findings", style) + out;
}

std::string checks_in_short(const Assessment& a, const Style& style) {
    if (a.body == nullptr) {
        return {};
    }
    const std::string words =
        fmt::format("Checks: {} not met, {} undetermined, {} met; by physics, trade practice{}.",
                    count_of(a.checks, CheckOutcome::not_met),
                    count_of(a.checks, CheckOutcome::undetermined),
                    count_of(a.checks, CheckOutcome::met),
                    a.body->id == "none" ? "" : fmt::format(" and rules, {}", a.body->name));
    const std::string how = how_to_ask_rules(a);
    return paragraph(words, hung_in, style.width)
           + (how.empty() ? how : paragraph(how, hung_in, style.width));
}

std::string joints_in_short(const JointReport& report, const Style& style) {
    const auto& joints = report.joints;
    const auto needing =
        std::count_if(joints.begin(), joints.end(), [](const fluewright::Joint& joint) {
            return joint.needs_something();
        });
    return paragraph(needing == 0 ? "Joints: none needs an adapter or a part turned round."
                                  : fmt::format("Joints: {} of {} need{} something; --details says "
                                                "what.",
                                                needing,
                                                joints.size(),
                                                needing == 1 ? "s" : ""),
                     hung_in,
                     style.width);
}

std::string assumptions_in_short(const Assessment& a, const Style& style) {
    const std::size_t count = a.installation.assumptions.size();
    return paragraph(count == 0 ? "Assumed: nothing, the file gives all that was used."
                                : fmt::format("Assumed: {} value{} the file does not give; "
                                              "--details lists {} with source.",
                                              count,
                                              count == 1 ? "" : "s",
                                              count == 1 ? "it" : "them"),
                     hung_in,
                     style.width);
}

std::string hint_text(const Assessment& a, const Style& style) {
    std::string words = "More: --details";
    if (!a.findings.empty()) {
        words += fmt::format("; `fluewright explain {}`", a.findings.front().matter->id);
    }
    words += a.works() ? "" : "; `fluewright improve`";
    return '\n' + paragraph(words, flush_left, style.width);
}

} // namespace fluewright::report
