#include "fluewright/io/report/report_compare.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/layout_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/verdict_rows.hpp"

namespace fluewright::results {
namespace {

/// The comparison with what differs between the files, which takes a while to find.
struct ComparisonRow {
    const Comparison& of;
    std::vector<FileDifference> differences;
    std::vector<PartDifference> parts;
};

} // namespace

template <>
const Record<PartDifference>& record_of<PartDifference>() {
    static const Record<PartDifference> record{
        "part_difference",
        "a part of which the layouts do not buy alike",
        {{"what", "the part, as `parts` names it", &PartDifference::what},
         {"size", "its size", &PartDifference::size},
         {"unit", "empty for pieces, else kg or m", &PartDifference::unit},
         {"counts", "of each layout", &PartDifference::counts}}};
    return record;
}

template <>
const Record<FileDifference>& record_of<FileDifference>() {
    static const Record<FileDifference> record{
        "difference",
        "a value the files do not share",
        {{"pointer", "into the files", &FileDifference::pointer},
         {"values",
          "of each layout, as written; empty where it has none",
          &FileDifference::values}}};
    return record;
}

std::vector<LayoutRow> layouts_of(const Comparison& all) {
    std::vector<LayoutRow> rows;
    for (std::size_t i = 0; i < all.layouts.size(); ++i) {
        rows.push_back({all, i});
    }
    return rows;
}

template <>
const Record<LayoutRow>& record_of<LayoutRow>() {
    static constexpr auto of = [](auto member) {
        return [member](const LayoutRow& l) { return l.of().*member; };
    };
    static constexpr auto outcome = [](Harm harm) {
        return [harm](const LayoutRow& l) { return l.of().assessment.verdict.of(harm).outcome; };
    };
    static const Record<LayoutRow> record{
        "layout",
        "one layout, checked",
        {{"name",
          "the file without folder and ending, where that tells them apart",
          of(&Layout::name)},
         {"works",
          "nothing that counts is short",
          [](const LayoutRow& l) { return l.of().assessment.works(); }},
         {"fire_outcome", Kind::number, "by kind of harm", outcome(Harm::fire), harm_outcome_words},
         {"draft_outcome", Kind::number, "the same", outcome(Harm::draft), harm_outcome_words},
         {"reloading_outcome",
          Kind::number,
          "the same",
          outcome(Harm::reloading),
          harm_outcome_words},
         {"upkeep_outcome", Kind::number, "the same", outcome(Harm::upkeep), harm_outcome_words},
         {"best",
          "the one to build, or the nearest",
          [](const LayoutRow& l) { return l.at == l.all.best; }},
         Column<LayoutRow>{
             "sentence",
             "its verdict",
             [](const LayoutRow& l) -> decltype(auto) { return (l.of().assessment.sentence); }}

             .json_only(),
         {"least_relative_spare",
          "of the state with least to spare, over what is required",
          [](const LayoutRow& l) { return if_finite(l.of().score.least_spare); }},
         {"limiting_state",
          "index of that state, from 0",
          [](const LayoutRow& l) { return l.of().score.limiting; }},
         {{"height", "chimney top above outlet"},
          Kind::length,
          "chimney top above outlet",
          of(&Layout::rise_m)},
         {{"pipe", "pipe, along it"}, Kind::length, "along the pipe", of(&Layout::pipe_m)},
         {{"level", "of that horizontal"},
          Kind::length,
          "of pipe that goes further across than up",
          of(&Layout::level_m)},
         {"turns", Kind::angle, "of all elbows and tees together", of(&Layout::turns_rad)},
         {"least_area",
          Kind::area,
          "of the narrowest pipe",
          [](const LayoutRow& l) { return if_finite(l.of().least_area_m2); }},
         {{"sizes", "inside"}, "inside diameters of the straights, in order", of(&Layout::sizes)},
         {{"pieces_bought", "pieces to buy"},
          "pipe, fittings and supports that are bought, by the list of `parts`",
          of(&Layout::pieces_bought)},
         {{"parts_weight", "weight of the parts"},
          Kind::mass,
          "of all of them that is estimated",
          [](const LayoutRow& l) { return l.of().parts.weight_kg; }},
         {{"parts_price", "cost of the parts"},
          "of all that is priced and bought, by the prices given; null without prices",
          [](const LayoutRow& l) { return l.of().parts.price; }},
         {{"parts_unpriced", "parts without a price"},
          "lines to buy that have no price; null without prices",
          [](const LayoutRow& l) {
              return l.of().parts.price ? std::optional{l.of().parts.unpriced} : std::nullopt;
          }},
         {"states",
          "those that decide about a kind of harm",
          [](const LayoutRow& l) {
              return state_rows(l.of().assessment.installation, l.of().score);
          }},
         {"findings",
          "what is not met, by severity and weight",
          [](const LayoutRow& l) -> decltype(auto) { return (l.of().assessment.findings); }}}};
    return record;
}

template <>
const Record<ComparisonRow>& record_of<ComparisonRow>() {
    static const Record<ComparisonRow> record{
        "compare_answer",
        "several layouts side by side",
        {{"sentence",
          "which to build and why",
          [](const ComparisonRow& c) -> decltype(auto) { return (c.of.sentence); }},
         {"added",
          "what was added to which file, so that all are held alike",
          [](const ComparisonRow& c) -> decltype(auto) { return (c.of.added); }},
         {"best",
          "index of the one to build, or of the nearest, from 0",
          [](const ComparisonRow& c) { return c.of.best; }},
         {"alike",
          "all of them come to the same",
          [](const ComparisonRow& c) { return c.of.alike; }},
         {"tied",
          "indexes of those that come to the same as the best",
          [](const ComparisonRow& c) -> decltype(auto) { return (c.of.tied); }},
         {"currency",
          "of the cost of the parts, as the user wrote it",
          [](const ComparisonRow& c) -> decltype(auto) {
              return (c.of.layouts.front().parts.currency);
          }},
         {"layouts", "in the order given", [](const ComparisonRow& c) { return layouts_of(c.of); }},
         {"parts", "what is not bought alike for all", &ComparisonRow::parts},
         {"differences", "between the files", &ComparisonRow::differences}}};
    return record;
}

const RecordInfo& compare_result() {
    return record_of<ComparisonRow>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string comparison_json(const Comparison& comparison, const AnswerInput& input) {
    std::vector<results::AssumedOf> assumed;
    for (std::size_t i = 0; i < comparison.layouts.size(); ++i) {
        const Layout& layout = comparison.layouts[i];
        assumed.push_back({i < input.files.size() ? std::string_view{input.files[i].name}
                                                  : std::string_view{layout.name},
                           layout.assessment.installation.assumptions});
    }
    return results::answer_text(
        "compare",
        input,
        results::record_of<results::ComparisonRow>().json(
            {comparison, file_differences(comparison), part_differences(comparison)}),
        assumed);
}

std::string comparison_csv(const Comparison& comparison) {
    using namespace results;
    std::string out = csv_keys<LayoutRow>() + ',' + csv_heading<StateRow>();
    for (const LayoutRow& layout : layouts_of(comparison)) {
        append_with_states(
            csv_cells(layout),
            std::optional{state_rows(layout.of().assessment.installation, layout.of().score)},
            out);
    }
    return out;
}

} // namespace fluewright
