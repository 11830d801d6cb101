#include "check_parts.hpp"
#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/text/words.hpp"
#include "trade_text.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <numeric>

namespace fluewright::report {
namespace {

constexpr Indent tolerance_inset{.first = 2, .rest = 2};
constexpr double worth_naming = 0.01; ///< a smaller part of the spread is chance

/// A probability from counting runs; never rounded up to certainty.
std::string share_words(double share, std::size_t runs) {
    if (share >= 1.0) {
        return fmt::format("all {}", runs);
    }
    if (share <= 0.0) {
        return "none";
    }
    constexpr double least = 0.001;
    return share > 1.0 - least ? "over 99.9 %"
           : share < least     ? "under 0.1 %"
                               : format_number(100.0 * share, 3) + " %";
}

/// A spare as the states' table has it: a margin in draft, or how far the door may be opened.
std::string
spare_words(double spare, const StateSpread& s, const Assessment& a, const Style& style) {
    if (s.kind == Kind::pressure) {
        return signed_quantity(spare, Kind::pressure, style);
    }
    const double wanted = a.solution.states[s.state].door.opening_share - a.verdicts[s.state].spare;
    return format_quantity(std::clamp(spare + wanted, 0.0, 1.0), Kind::fraction, style.units, 2);
}

std::string states_table(const Assessment& a, const ToleranceStudy& study, const Style& style) {
    TextTable table({{.heading = "state", .wraps = true},
                     {.heading = "as\nwritten", .align = Align::right},
                     {.heading = "5 %\nare below", .align = Align::right},
                     {.heading = "5 %\nare above", .align = Align::right},
                     {.heading = "passes\nin", .align = Align::right}});
    for (const StateSpread& s : study.states) {
        table.add({{state_words(a.installation, a.solution.states[s.state])},
                   {has_figures(a.solution.states[s.state]) || s.kind != Kind::pressure
                        ? spare_words(s.as_written, s, a, style)
                        : std::string{name(a.solution.states[s.state].status)}},
                   {s.without_figures_share > 0.05 ? std::string{name(Status::cannot_vent)}
                                                   : spare_words(s.low, s, a, style)},
                   {s.without_figures_share > 0.95 ? std::string{name(Status::cannot_vent)}
                                                   : spare_words(s.high, s, a, style)},
                   {share_words(s.passing_share, study.runs)}});
    }
    return table.text(style, tolerance_inset.first)
           + paragraph(
               "Margin over the draft required; of the reload, how far the door may be opened.",
               tolerance_inset,
               style.width);
}

/// Which values the spread of the tightest state comes from, the greatest first.
std::string causes_text(const Assessment& a, const ToleranceStudy& study, const Style& style) {
    const StateSpread& s = study.states[study.tightest];
    const std::string state = state_words(a.installation, a.solution.states[s.state]);
    std::vector<std::size_t> order(study.inputs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) {
        return s.first_order[x] > s.first_order[y];
    });
    double named = 0.0;
    std::string lines;
    for (const std::size_t i : order) {
        const VariedInput& input = study.inputs[i];
        if (s.first_order[i] < worth_naming) {
            break;
        }
        named += s.first_order[i];
        lines += paragraph(
            fmt::format("- {}: {} \u00b1 {} makes {} of it",
                        keys_in_words({input.pointer}),
                        format_quantity(input.value, input.kind, style.units),
                        format_quantity(input.half_width, tolerance_kind(input.kind), style.units),
                        format_quantity(s.first_order[i], Kind::fraction, style.units, 2)),
            {.first = 4, .rest = 6},
            style.width);
    }
    if (lines.empty()) {
        return paragraph(
            fmt::format("None of them moves the condition with the smallest margin ({}).", state),
            tolerance_inset,
            style.width);
    }
    constexpr double much = 0.9;
    if (named < much) {
        lines += paragraph(
            "- the rest comes from several of them together", {.first = 4, .rest = 6}, style.width);
    } else if (order.size() > 1) {
        lines += paragraph("Measuring the first of them better narrows the range most.",
                           {.first = 4, .rest = 4},
                           style.width);
    }
    return paragraph(
               fmt::format(
                   "Where the spread of the condition with the smallest margin ({}) comes from:",
                   state),
               tolerance_inset,
               style.width)
           + lines;
}

} // namespace

std::string
tolerances_in_short(const Assessment& a, const ToleranceStudy& study, const Style& style) {
    if (study.runs == 0) {
        return {};
    }
    std::string by_harm;
    for (const HarmVerdict& v : a.verdict.harms) {
        if (v.outcome != HarmOutcome::does_not_apply) {
            const double share = study.sound_share[static_cast<std::size_t>(v.harm)];
            by_harm += fmt::format("{}{} in {}",
                                   by_harm.empty() ? "" : ", ",
                                   name(v.harm),
                                   share_words(share, study.runs));
        }
    }
    return paragraph(
        fmt::format(
            "Within the \u00b1 of the file ({} runs) it does not fall short of: {}; of what "
            "counts in {}.",
            study.runs,
            by_harm,
            share_words(study.working_share, study.runs)),
        tolerance_inset,
        style.width);
}

std::string tolerances_text(const Assessment& a, const ToleranceStudy& study, const Style& style) {
    std::string out = heading("With the \u00b1 of the file", style);
    if (study.runs == 0) {
        return out
               + paragraph(fmt::format("None of {} runs could be computed: {}.",
                                       study.refused,
                                       study.refusal ? study.refusal->message : ""),
                           tolerance_inset,
                           style.width);
    }
    out += states_table(a, study, style);
    const std::string all =
        study.working_share >= 1.0 ? fmt::format("What counts passes in all {} runs", study.runs)
        : study.working_share <= 0.0
            ? fmt::format("Something that counts is short in all of {} runs", study.runs)
            : fmt::format("What counts passes in {} of {} runs",
                          share_words(study.working_share, study.runs),
                          study.runs);
    out += paragraph(
        fmt::format("{}, each with the {} values that have a \u00b1 anywhere within it, no place "
                    "more likely than another. What is assumed keeps its value.",
                    all,
                    study.inputs.size()),
        tolerance_inset,
        style.width);
    if (study.refusal) {
        out += paragraph(fmt::format("{} further runs were left out, their values do not go "
                                     "together: {}.",
                                     study.refused,
                                     study.refusal->message),
                         tolerance_inset,
                         style.width);
    }
    return out + causes_text(a, study, style);
}

} // namespace fluewright::report
