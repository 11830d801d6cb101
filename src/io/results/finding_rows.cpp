#include "finding_rows.hpp"

#include "verdict_rows.hpp"

#include <array>

namespace fluewright::results {
namespace {

constexpr std::array<std::string_view, 4> severity_words{"danger", "fault", "warning", "note"};
constexpr std::array<std::string_view, 3> basis_words{"physics", "trade", "body"};
constexpr std::array<std::string_view, 4> outcome_words{
    "not met", "undetermined", "met", "does not apply"};

constexpr std::string_view figure_meaning = "of the installation, in `unit`";
constexpr std::string_view limit_meaning = "what it is held against, in `unit`";
constexpr std::string_view unit_meaning = "SI unit of figure and limit; empty for a plain number";
constexpr std::string_view state_meaning =
    "condition and weather in which it is worst; empty where it holds always";
constexpr std::string_view part_meaning =
    "number of the part in the file, from 1; null where it is about no single part";

} // namespace

template <>
const Record<CheckResult>& record_of<CheckResult>() {
    static const Record<CheckResult> record{
        "check_result",
        "one thing held against one limit",
        {{"check",
          "id; `fluewright explain` has its page",
          [](const CheckResult& r) { return r.check->id; }},
         {"matter",
          "id of what is bad where it is not met",
          [](const CheckResult& r) { return r.check->matter->id; }},
         {"basis",
          Kind::number,
          "who requires it: the physics, the trade, or a body of rules",
          [](const CheckResult& r) { return r.check->basis; },
          basis_words},
         {"body",
          "of rules; null for physics and trade",
          [](const CheckResult& r) {
              return unless_empty(r.check->basis == Basis::body ? r.check->body
                                                                : std::string_view{});
          }},
         {"advice",
          "a habit of the trade, or a figure nobody has looked up; not a rule",
          [](const CheckResult& r) { return r.check->advice; }},
         {"local",
          "an old figure of one town, which decides nothing",
          [](const CheckResult& r) { return r.check->local; }},
         {"severity",
          Kind::number,
          "of the check where it is not met",
          [](const CheckResult& r) { return r.check->severity; },
          severity_words},
         {"outcome",
          Kind::number,
          "what it came to",
          [](const CheckResult& r) { return r.outcome; },
          outcome_words},
         {"place", "in words; empty where it is about the whole", &CheckResult::place},
         {"part", part_meaning, [](const CheckResult& r) { return part_number(r.part); }},
         {"state", state_meaning, &CheckResult::state},
         {"message",
          "one sentence with the figures, or why it does not apply; where undetermined, what would "
          "be asked",
          &CheckResult::message},
         {"figure", figure_meaning, [](const CheckResult& r) { return if_finite(r.figure); }},
         {"limit", limit_meaning, [](const CheckResult& r) { return if_finite(r.limit); }},
         {"unit", unit_meaning, [](const CheckResult& r) { return si_unit(r.kind); }},
         {"missing", "pointers to keys of the file that would decide it", &CheckResult::missing},
         {"rule",
          "what is required, with its figures",
          [](const CheckResult& r) { return r.check->rule; }},
         {"applies", "to what", [](const CheckResult& r) { return r.check->applies; }},
         {"source",
          "id; `fluewright explain` has its page",
          [](const CheckResult& r) { return r.check->source; }},
         {"clause",
          "where in the source; null where only its place there is known",
          [](const CheckResult& r) { return unless_empty(r.check->clause); }},
         {"mark", "how the limit is known", [](const CheckResult& r) { return r.check->mark; }},
         {"disagrees", "what another source says", [](const CheckResult& r) {
              return unless_empty(r.check->disagrees);
          }}}};
    return record;
}

template <>
const Record<PresentDanger>& record_of<PresentDanger>() {
    static const Record<PresentDanger> record{
        "shown_danger",
        "a danger that stands in the run as it is drawn, whatever the answer is about",
        {{"id", "of the finding", &PresentDanger::id},
         {"part",
          "number of the part in the file, from 1; null where it is of none",
          [](const PresentDanger& d) { return part_number(d.part); }},
         {"title", "of the finding", &PresentDanger::title},
         {"place", "in words", &PresentDanger::place},
         {"message", "what was found", &PresentDanger::message},
         {"remedy", "what to do", &PresentDanger::remedy}}};
    return record;
}

template <>
const Record<Finding>& record_of<Finding>() {
    static const Record<Finding> record{
        "finding",
        "all checks of one matter at one place that were not met",
        {{"id",
          "names what is bad; `fluewright explain` has its page",
          [](const Finding& f) { return f.matter->id; }},
         {"severity",
          Kind::number,
          "the worst of its checks",
          [](const Finding& f) { return f.severity; },
          severity_words},
         {"harm",
          Kind::number,
          "kind of harm; a danger is one of fire, whatever its matter, and the smoke of an open "
          "front counts as draft",
          [](const Finding& f) { return f.harm; },
          harm_words},
         {"title", "a few words", [](const Finding& f) { return f.matter->title; }},
         {"place", "in words; empty where it is about the whole", &Finding::place},
         {"part", part_meaning, [](const Finding& f) { return part_number(f.part); }},
         {"state", state_meaning, &Finding::state},
         {"message", "one sentence with the figures", &Finding::message},
         {"remedy", "what to do", &Finding::what_to_do},
         {"figure", figure_meaning, [](const Finding& f) { return if_finite(f.figure); }},
         {"limit", limit_meaning, [](const Finding& f) { return if_finite(f.limit); }},
         {"unit", unit_meaning, [](const Finding& f) { return si_unit(f.kind); }},
         {"sources",
          "the checks behind it, weightiest first; then those of the matter that are met",
          &Finding::sources}}};
    return record;
}

template <>
const Record<ChecksRow>& record_of<ChecksRow>() {
    static constexpr auto count = [](CheckOutcome outcome) {
        return [outcome](const ChecksRow& row) { return count_of(row.of.checks, outcome); };
    };
    static const Record<ChecksRow> record{
        "checks",
        "what every check came to, by physics, by trade and by the body of rules that was asked",
        {{"body", "id of the body of rules", [](const ChecksRow& row) { return row.of.body->id; }},
         {"name", "its name", [](const ChecksRow& row) { return row.of.body->name; }},
         {"who_decides", "on the spot", [](const ChecksRow& row) { return row.of.body->decides; }},
         {"not_met", "how many, the local ones left out", count(CheckOutcome::not_met)},
         {"undetermined", "how many, the local ones left out", count(CheckOutcome::undetermined)},
         {"met", "how many, the local ones left out", count(CheckOutcome::met)},
         {"does_not_apply",
          "how many, the local ones left out",
          count(CheckOutcome::does_not_apply)},
         {"results",
          "one for each check, or for each place where it speaks of several",
          [](const ChecksRow& row) -> const CheckResults& { return row.of.checks; }}}};
    return record;
}

} // namespace fluewright::results
