#include "tolerance_rows.hpp"

#include "verdict_rows.hpp"

namespace fluewright::results {
namespace {

struct SpreadRow {
    const StudyRow& study;
    const StateSpread& of;

    [[nodiscard]] const StateResult& state() const { return study.of.solution.states[of.state]; }
};

struct ShareRow {
    std::string_view pointer;
    double first_order;
};

/// A quantile, where the runs below it do not lack their figures.
std::optional<double> told(const SpreadRow& spread, double share, double quantile) {
    return spread.of.without_figures_share > share ? std::nullopt : std::optional{quantile};
}

std::vector<SpreadRow> spreads_of(const StudyRow& study) {
    std::vector<SpreadRow> rows;
    for (const StateSpread& spread : study.study.states) {
        rows.push_back({study, spread});
    }
    return rows;
}

struct SoundRow {
    Harm harm;
    double share;
};

std::vector<SoundRow> sound_of(const StudyRow& study) {
    std::vector<SoundRow> rows;
    for (std::size_t i = 0; i < harms.size() && study.study.runs > 0; ++i) {
        if (study.of.verdict.harms[i].outcome != HarmOutcome::does_not_apply) {
            rows.push_back({harms[i], study.study.sound_share[i]});
        }
    }
    return rows;
}

std::vector<ShareRow> shares_of(const SpreadRow& spread) {
    std::vector<ShareRow> rows;
    const auto& inputs = spread.study.study.inputs;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        rows.push_back({inputs[i].pointer, spread.of.first_order[i]});
    }
    return rows;
}

} // namespace

template <>
const Record<VariedInput>& record_of<VariedInput>() {
    static const Record<VariedInput> record{
        "varied_input",
        "a value of the file with a spread",
        {{"pointer", "into the file", &VariedInput::pointer},
         {"unit",
          "SI unit of the two that follow",
          [](const VariedInput& v) { return si_unit(v.kind); }},
         {"value", "as written", &VariedInput::value},
         {"half_width", "of the spread", &VariedInput::half_width}}};
    return record;
}

template <>
const Record<ShareRow>& record_of<ShareRow>() {
    static const Record<ShareRow> record{
        "variance_share",
        "what a spread matters",
        {{"pointer", "into the file", &ShareRow::pointer},
         {"first_order", "its share of the variance, by itself", &ShareRow::first_order}}};
    return record;
}

template <>
const Record<SoundRow>& record_of<SoundRow>() {
    static const Record<SoundRow> record{
        "sound_share",
        "how likely a kind of harm does not fall short",
        {{"harm", Kind::number, "kind of harm", &SoundRow::harm, harm_words},
         {"share", "of the runs", &SoundRow::share}}};
    return record;
}

template <>
const Record<SpreadRow>& record_of<SpreadRow>() {
    static const Record<SpreadRow> record{
        "spread",
        "what is to spare in a state that counts, over all runs",
        {{"state", "condition", [](const SpreadRow& s) { return s.state().kind; }},
         {"weather",
          "name of the weather",
          [](const SpreadRow& s) -> decltype(auto) {
              return (s.study.of.installation.weathers[s.state().weather].name);
          }},
         {"unit",
          "SI unit of the four that follow: draft over the need, or share of the opening over the "
          "share wanted",
          [](const SpreadRow& s) { return si_unit(s.of.kind); }},
         {"as_written",
          "with every value as written",
          [](const SpreadRow& s) {
              return s.state().status == Status::solved || s.of.kind != Kind::pressure
                         ? std::optional{s.of.as_written}
                         : std::nullopt;
          }},
         {"percentile_5",
          "5 % of the runs have less",
          [](const SpreadRow& s) { return told(s, 0.05, s.of.low); }},
         {"median",
          "half of the runs have less",
          [](const SpreadRow& s) { return told(s, 0.5, s.of.median); }},
         {"percentile_95",
          "5 % of the runs have more",
          [](const SpreadRow& s) { return told(s, 0.95, s.of.high); }},
         {"without_figures_share",
          "of the runs: the run cannot vent the burn rate; they are below all others",
          [](const SpreadRow& s) { return s.of.without_figures_share; }},
         {"passing_share", "of the runs", [](const SpreadRow& s) { return s.of.passing_share; }},
         {"inputs", "in the order of the inputs", [](const SpreadRow& s) {
              return shares_of(s);
          }}}};
    return record;
}

template <>
const Record<StudyRow>& record_of<StudyRow>() {
    static const Record<StudyRow> record{
        "tolerances",
        "what the spreads of the file do to the verdict",
        {{"runs", "computed", [](const StudyRow& s) { return s.study.runs; }},
         {"refused",
          "runs whose values together describe nothing that can be built",
          [](const StudyRow& s) { return s.study.refused; }},
         {"refusal",
          "why the first of them was",
          [](const StudyRow& s) -> const std::string* {
              return s.study.refusal ? &s.study.refusal->message : nullptr;
          }},
         {"seed", "of the sample", [](const StudyRow& s) { return s.study.seed; }},
         {"distribution",
          "of each value within its spread",
          [](const StudyRow&) { return "uniform"; }},
         {"inputs",
          "every value with a spread",
          [](const StudyRow& s) -> decltype(auto) { return (s.study.inputs); }},
         {"working_share",
          "of the runs: nothing that counts is short",
          [](const StudyRow& s) {
              return s.study.runs > 0 ? std::optional{s.study.working_share} : std::nullopt;
          }},
         {"harms",
          "by kind of harm; none where no run was computed",
          [](const StudyRow& s) { return sound_of(s); }},
         {"tightest",
          "index into the states, from 0: passes least often, then has least to spare",
          [](const StudyRow& s) {
              return s.study.runs > 0 ? std::optional{s.study.tightest} : std::nullopt;
          }},
         {"states", "those that count", [](const StudyRow& s) { return spreads_of(s); }}}};
    return record;
}

} // namespace fluewright::results
