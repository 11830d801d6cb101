#include "fluewright/io/report/report_improve.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/state_rows.hpp"

namespace fluewright::results {
namespace {

struct PlanRow {
    const Improvement& all;
    const Plan& of;
};

struct PresentRow {
    const Improvement& of;
};

std::vector<PlanRow> plans_of(const Improvement& all) {
    std::vector<PlanRow> rows;
    for (const Plan& plan : all.plans) {
        rows.push_back({all, plan});
    }
    return rows;
}

std::vector<std::string_view> ids_of(const std::vector<const Matter*>& matters) {
    std::vector<std::string_view> ids;
    ids.reserve(matters.size());
    for (const Matter* matter : matters) {
        ids.push_back(matter->id);
    }
    return ids;
}

constexpr std::array<std::string_view, 5> improvement_outcomes{
    "leave alone", "one change cures", "two changes cure", "three changes cure", "hopeless"};
constexpr std::array<std::string_view, 4> goals{
    "clear findings", "more to spare", "less draft", "clear upkeep"};
constexpr std::string_view spare_meaning =
    "of the state with least to spare, over what is required";

} // namespace

template <>
const Record<Remedy>& record_of<Remedy>() {
    static const Record<Remedy> record{
        "remedy",
        "one change",
        {{"remedy",
          "id of the change; `fluewright explain` has its page",
          [](const Remedy& r) { return effort_of(r.kind).id; }},
         {"what", "an order for the fitter, without a final stop", &Remedy::what},
         {"place", "in words", &Remedy::place},
         {"length", Kind::length, "of the pipe or wall it touches", &Remedy::length_m},
         {"cost", "in the unit of the answer", &Remedy::effort},
         {"look_at", "what it may worsen", [](const Remedy& r) { return may_worsen(r); }},
         {"caution", "what stands against doing it here; empty else", &Remedy::caution}}};
    return record;
}

template <>
const Record<PlanRow>& record_of<PlanRow>() {
    static const Record<PlanRow> record{
        "plan",
        "one change or several together, tried, with what comes of it",
        {{"rank", "from 1", [](const PlanRow& p) { return p.of.rank; }},
         {"remedies",
          "ids of the changes, in order",
          [](const PlanRow& p) {
              std::vector<std::string_view> ids;
              for (const Remedy& remedy : p.of.steps) {
                  ids.push_back(effort_of(remedy.kind).id);
              }
              return ids;
          }},
         {"steps",
          "changes, in order",
          [](const PlanRow& p) -> decltype(auto) { return (p.of.steps); }},
         {"cost", "in the unit of the answer", [](const PlanRow& p) { return p.of.cost; }},
         {"gain",
          "of what the goal asks for",
          [](const PlanRow& p) { return if_finite(p.of.gain); }},
         {"cures",
          "nothing that counts is short, and the goal is met",
          [](const PlanRow& p) { return p.of.cures; }},
         {"too_strong",
          "more draft than the appliance holds, and not so before",
          [](const PlanRow& p) { return p.of.too_strong; }},
         {"new_harm",
          "brings a danger or a fault that the present run has not",
          [](const PlanRow& p) { return p.of.new_harm; }},
         {"short_of_wanted",
          "the door was short, and opens less far than is wanted even so",
          [](const PlanRow& p) { return p.of.short_of_wanted; }},
         {"on_front",
          "no other plan costs no more and leaves more to spare",
          [](const PlanRow& p) { return p.of.on_front; }},
         {"least_relative_spare",
          spare_meaning,
          [](const PlanRow& p) { return if_finite(p.of.score.least_spare); }},
         {"limiting_state",
          "index of that state, from 0",
          [](const PlanRow& p) { return p.of.score.limiting; }},
         {"states",
          "those that decide about a kind of harm",
          [](const PlanRow& p) { return state_rows(p.of.resolved, p.of.score); }},
         {"left_short",
          "ids of findings that count and make it fall short then",
          [](const PlanRow& p) { return ids_of(p.of.against); }},
         {"findings_raised",
          "ids of findings of which there was none before",
          [](const PlanRow& p) { return ids_of(p.of.raised); }},
         {"findings_cleared",
          "ids of findings of which none is left",
          [](const PlanRow& p) { return ids_of(p.of.cleared); }},
         {"findings_worse",
          "ids of findings farther past their limit than before",
          [](const PlanRow& p) { return ids_of(p.of.worse); }},
         {"findings_better",
          "ids of findings less far past their limit than before",
          [](const PlanRow& p) { return ids_of(p.of.better); }},
         Column<PlanRow>{"may_worsen",
                         "in words, with figures",
                         [](const PlanRow& p) -> decltype(auto) { return (p.of.worsens); }}
             .json_only()}};
    return record;
}

template <>
const Record<PresentRow>& record_of<PresentRow>() {
    static const Record<PresentRow> record{
        "present",
        "the run as it is now",
        {{"works",
          "nothing that counts is short",
          [](const PresentRow& p) { return p.of.present.works(); }},
         {"sentence",
          "its verdict",
          [](const PresentRow& p) -> decltype(auto) { return (p.of.present.sentence); }},
         {"least_relative_spare",
          spare_meaning,
          [](const PresentRow& p) { return if_finite(p.of.score.least_spare); }},
         {"falling_short",
          "ids of findings that count and make it fall short",
          [](const PresentRow& p) { return ids_of(p.of.against); }},
         {"states", "those that decide about a kind of harm", [](const PresentRow& p) {
              return state_rows(p.of.present.installation, p.of.score);
          }}}};
    return record;
}

template <>
const Record<Improvement>& record_of<Improvement>() {
    static const Record<Improvement> record{
        "improve_answer",
        "which changes make the run work, ranked by what they gain against what they cost",
        {{"outcome",
          Kind::number,
          "what it comes to",
          [](const Improvement& i) {
              return improvement_outcomes[static_cast<std::size_t>(i.outcome)];
          },
          improvement_outcomes},
         {"goal",
          Kind::number,
          "what is required of a change",
          [](const Improvement& i) { return goals[static_cast<std::size_t>(i.goal)]; },
          goals},
         {"sentence", "the answer", &Improvement::sentence},
         {"reason", "why nothing helps; empty else", &Improvement::reason},
         {"present", "the run as it is now", [](const Improvement& i) { return PresentRow{i}; }},
         {"stuck",
          "ids of findings that no change which was tried clears",
          [](const Improvement& i) { return ids_of(i.stuck); }},
         {"cost_unit",
          "of every cost: effort, or the currency of the prices",
          [](const Improvement& i) -> std::string_view {
              return i.currency.empty() ? std::string_view{"effort"} : std::string_view{i.currency};
          }},
         {"proven",
          "the search came to its end: no two changes that cost less than the best were left "
          "untried, nor a set that could do it by twice what its parts do",
          &Improvement::proven},
         {"tried_below",
          "where it did not: the cost below which all sets of changes were tried",
          &Improvement::tried_below},
         {"runs_solved", "no two of them are the same", &Improvement::tried},
         {"unpriced", "changes left out for want of a price", &Improvement::unpriced},
         {"plans", "by rank", [](const Improvement& i) { return plans_of(i); }}}};
    return record;
}

const RecordInfo& improve_result() {
    return record_of<Improvement>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string improvement_json(const Improvement& improvement, const AnswerInput& input) {
    return results::answer_text("improve",
                                input,
                                results::record_of<Improvement>().json(improvement),
                                improvement.present.installation.assumptions);
}

std::string improvement_csv(const Improvement& improvement) {
    using namespace results;
    const Case& c = improvement.present.installation;
    std::string out = csv_keys<PlanRow>() + ',' + csv_heading<StateRow>();
    // The run as it stands is the plan without a change.
    Plan none;
    none.score = improvement.score;
    none.against = improvement.against;
    append_with_states(csv_cells(PlanRow{improvement, none}),
                       std::optional{state_rows(c, improvement.score)},
                       out);
    for (const Plan& plan : improvement.plans) {
        append_with_states(csv_cells(PlanRow{improvement, plan}),
                           std::optional{state_rows(plan.resolved, plan.score)},
                           out);
    }
    return out;
}

} // namespace fluewright
