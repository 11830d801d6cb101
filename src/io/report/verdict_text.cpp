#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/text/words.hpp"

#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr std::size_t verdict_inset = 2;

std::string lines_text(const Assessment& a, const Style& style) {
    TextTable table({{}, {}, {.wraps = true}});
    for (const HarmVerdict& v : a.verdict.harms) {
        if (v.outcome == HarmOutcome::does_not_apply) {
            continue;
        }
        table.add({{std::string{label_of(v.harm)}}, outcome_cell(v), {v.sentence}});
        if (!v.first.empty()) {
            table.add({{}, {}, {"First: " + v.first}});
        }
    }
    return table.text(style, verdict_inset);
}

} // namespace

std::string_view label_of(Harm harm) {
    return harm == Harm::fire ? "Fire, CO" : title(harm);
}

TableCell outcome_cell(const HarmVerdict& v) {
    switch (v.outcome) {
    case HarmOutcome::passes:
        return {"ok", Ink::good};
    case HarmOutcome::falls_short:
        if (v.harm == Harm::fire) {
            return {"DANGER", Ink::bad};
        }
        return v.counts ? TableCell{"SHORT", Ink::bad} : TableCell{"short", Ink::warning};
    case HarmOutcome::cannot_tell:
        return {"open", Ink::warning};
    case HarmOutcome::does_not_apply:
        break;
    }
    return {"-", Ink::quiet};
}

std::string verdict_lines(const Assessment& a, const Style& style) {
    std::string out = lines_text(a, style);
    // Who asks for it by name is told of it; a heater without a door is not told of the door.
    Required required = a.required;
    required.narrow_door = required.narrow_door
                           && a.verdict.of(Harm::reloading).outcome != HarmOutcome::does_not_apply;
    out += paragraph(fmt::format("What counts: {}.", in_words(required)),
                     {.first = verdict_inset, .rest = verdict_inset},
                     style.width);
    return out;
}

std::string verdict_text(const Assessment& a, const Style& style) {
    std::string out;
    for (const StateResult& state : a.solution.states) {
        if (state.status == Status::no_answer) {
            out += inked_paragraph(fmt::format("The solver found no answer for {}; do not build on "
                                               "the figures below. Please report it.",
                                               state_words(a.installation, state)),
                                   flush_left,
                                   Ink::bad,
                                   style);
        }
    }
    out += inked_paragraph(a.sentence, flush_left, a.works() ? Ink::good : Ink::bad, style);
    if (!a.installation.title.empty()) {
        out += paragraph("Installation: " + a.installation.title, flush_left, style.width);
    }
    return out + '\n' + verdict_lines(a, style);
}

} // namespace fluewright::report
