#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/json/report_json.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/installation_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/size_rows.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/tolerance_rows.hpp"
#include "io/results/trade_rows.hpp"
#include "io/results/verdict_rows.hpp"

namespace fluewright::results {
namespace {

struct CheckRow {
    const Assessment& of;
    const JsonReportOptions& options;
};

struct LimitingRow {
    const Assessment& of;

    [[nodiscard]] const StateResult& state() const { return of.solution.states[of.limiting]; }
};

/// A member of what the trade says, where that was asked for.
template <auto Member>
auto of_trade(const CheckRow& c) {
    return c.options.trade == nullptr ? nullptr : &(c.options.trade->*Member);
}

} // namespace

template <>
const Record<LimitingRow>& record_of<LimitingRow>() {
    static const Record<LimitingRow> record{
        "limiting_state",
        "of the states that what counts hangs on, that with least to spare",
        {{"index", "into the states, from 0", [](const LimitingRow& l) { return l.of.limiting; }},
         {"state", "condition", [](const LimitingRow& l) { return l.state().kind; }},
         {"weather",
          "name of the weather",
          [](const LimitingRow& l) -> decltype(auto) {
              return (l.of.installation.weathers[l.state().weather].name);
          }},
         {"draft", Kind::pressure, "at the outlet", [](const LimitingRow& l) {
              return has_figures(l.state()) ? if_finite(l.state().draft_pa)
                                            : std::optional<double>{};
          }}}};
    return record;
}

template <>
const Record<CheckRow>& record_of<CheckRow>() {
    static const Record<CheckRow> record{
        "check_answer",
        "whether the run draws, what is wrong with it and which pipe size suits it",
        {{"works",
          "nothing that counts is short; see `verdict`",
          [](const CheckRow& c) { return c.of.works(); }},
         {"sentence",
          "the verdict in a sentence or two",
          [](const CheckRow& c) -> decltype(auto) { return (c.of.sentence); }},
         {"what_counts",
          "kinds of harm that `works` hangs on",
          [](const CheckRow& c) { return what_counts(c.of); }},
         {"verdict",
          "by kind of harm, what harms most first",
          [](const CheckRow& c) { return harm_rows(c.of); }},
         {"limiting_state",
          "null where no state counts",
          [](const CheckRow& c) {
              return c.of.limiting < c.of.solution.states.size()
                         ? std::optional<LimitingRow>{LimitingRow{c.of}}
                         : std::nullopt;
          }},
         {"states", "weather by weather", [](const CheckRow& c) { return checked_states(c.of); }},
         {"size",
          "null where it was not searched for",
          [](const CheckRow& c) {
              return c.options.size_searched ? std::optional<SizeAdviceRow>{SizeAdviceRow{c.of}}
                                             : std::nullopt;
          }},
         {"findings",
          "what is not met, by severity and weight",
          [](const CheckRow& c) -> decltype(auto) { return (c.of.findings); }},
         {"checks",
          "what every check came to; null where none was asked for",
          [](const CheckRow& c) {
              return c.of.body != nullptr ? std::optional<ChecksRow>{ChecksRow{c.of}}
                                          : std::nullopt;
          }},
         {"joints",
          "in flow order",
          [](const CheckRow& c) {
              return c.options.trade != nullptr ? c.options.trade->joints.joints
                                                : std::vector<fluewright::Joint>{};
          }},
         {"hot_surfaces", "at high fire", of_trade<&TradeAdvice::surfaces>},
         {"building",
          "null where the file has none",
          [](const CheckRow& c) -> const HeatDemand* {
              return c.options.trade != nullptr && c.options.trade->demand
                         ? &*c.options.trade->demand
                         : nullptr;
          }},
         {"upkeep",
          "null where the fuel leaves no deposit",
          [](const CheckRow& c) -> const Maintenance* {
              return c.options.trade != nullptr && c.options.trade->upkeep.applies
                         ? &c.options.trade->upkeep
                         : nullptr;
          }},
         {"tolerances",
          "null where the file gives no spread",
          [](const CheckRow& c) {
              return c.options.tolerances != nullptr
                         ? std::optional<StudyRow>{StudyRow{c.of, *c.options.tolerances}}
                         : std::nullopt;
          }},
         {"installation",
          "what the file was understood to say",
          [](const CheckRow& c) -> decltype(auto) { return (c.of.installation); }}}};
    return record;
}

const RecordInfo& check_result() {
    return record_of<CheckRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string report_json(const Assessment& a, const JsonReportOptions& options) {
    return results::answer_text("check",
                                options.input,
                                results::record_of<results::CheckRow>().json({a, options}),
                                a.installation.assumptions);
}

} // namespace fluewright
