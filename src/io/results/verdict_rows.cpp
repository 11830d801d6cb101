#include "verdict_rows.hpp"

#include "finding_rows.hpp"

namespace fluewright::results {
namespace {

const Finding* finding_of(const HarmRow& row) {
    return row.verdict.finding ? &row.of.findings[*row.verdict.finding] : nullptr;
}

const StateResult* state_of(const HarmRow& row) {
    return row.verdict.state ? &row.of.solution.states[*row.verdict.state] : nullptr;
}

} // namespace

template <>
const Record<HarmRow>& record_of<HarmRow>() {
    static const Record<HarmRow> record{
        "harm",
        "what one kind of harm came to, with the worst figure and its place",
        {{"harm",
          Kind::number,
          "kind of harm",
          [](const HarmRow& h) { return h.verdict.harm; },
          harm_words},
         {"outcome",
          Kind::number,
          "what it came to; cannot tell: nothing was found, but a check or a state is undecided",
          [](const HarmRow& h) { return h.verdict.outcome; },
          harm_outcome_words},
         {"counts",
          "whether exit status and `works` hang on it",
          [](const HarmRow& h) { return h.verdict.counts; }},
         {"sentence",
          "the line, with figure and place",
          [](const HarmRow& h) -> decltype(auto) { return (h.verdict.sentence); }},
         {"first",
          "what to do first; null where nothing falls short",
          [](const HarmRow& h) { return unless_empty(h.verdict.first); }},
         {"falling_short",
          "states and findings that make it fall short",
          [](const HarmRow& h) { return h.verdict.short_of; }},
         {"mentioned",
          "further findings of the kind, which do not",
          [](const HarmRow& h) { return h.verdict.mentioned; }},
         {"undetermined",
          "rules of the kind that lack a value of the file; advice is not counted",
          [](const HarmRow& h) { return h.verdict.open; }},
         {"state",
          "condition that is worst or tightest; null where no state decides",
          [](const HarmRow& h) {
              const StateResult* state = state_of(h);
              return state == nullptr ? std::nullopt : std::optional{state->kind};
          }},
         {"weather",
          "its weather",
          [](const HarmRow& h) -> const std::string* {
              const StateResult* state = state_of(h);
              return state == nullptr ? nullptr : &h.of.installation.weathers[state->weather].name;
          }},
         {"finding",
          "id of the worst finding of the kind; null where there is none",
          [](const HarmRow& h) {
              const Finding* finding = finding_of(h);
              return finding == nullptr ? std::nullopt : std::optional{finding->matter->id};
          }},
         {"place",
          "of that finding, in words; empty where it is about the whole",
          [](const HarmRow& h) -> const std::string* {
              const Finding* finding = finding_of(h);
              return finding == nullptr ? nullptr : &finding->place;
          }},
         {"check",
          "id of the first of them; null where there is none",
          [](const HarmRow& h) {
              return h.verdict.check ? std::optional{h.of.checks[*h.verdict.check].check->id}
                                     : std::nullopt;
          }},
         {"figure",
          "of that state, or else of that finding where it falls short, in `unit`",
          [](const HarmRow& h) { return if_finite(h.verdict.figure); }},
         {"limit",
          "what it is held against, in `unit`",
          [](const HarmRow& h) { return if_finite(h.verdict.limit); }},
         {"unit", "SI unit of figure and limit; empty for a plain number", [](const HarmRow& h) {
              return si_unit(h.verdict.kind);
          }}}};
    return record;
}

std::vector<HarmRow> harm_rows(const Assessment& assessment) {
    std::vector<HarmRow> rows;
    for (const HarmVerdict& verdict : assessment.verdict.harms) {
        rows.push_back({assessment, verdict});
    }
    return rows;
}

std::vector<std::string_view> what_counts(const Assessment& assessment) {
    std::vector<std::string_view> names;
    for (const HarmVerdict& verdict : assessment.verdict.harms) {
        if (verdict.counts) {
            names.push_back(name(verdict.harm));
        }
    }
    return names;
}

} // namespace fluewright::results
