#include "size_rows.hpp"

#include "csv_rows.hpp"
#include "finding_rows.hpp"
#include "fluewright/io/report/report_size.hpp"
#include "io/chart/sweep_figures.hpp"
#include "io/text/words.hpp"
#include "results.hpp"

namespace fluewright::results {
namespace {

SizeEntry entry_of(const Assessment& a, const SizeTrial& trial) {
    const bool computed = report::was_computed(trial);
    const bool door = computed && a.installation.appliance.has_door;
    return {.connector = trial.id,
            .chimney = trial.chimney,
            .connector_m = trial.diameter_m,
            .chimney_m = trial.chimney_m,
            .height_m = a.installation.total_rise_m(),
            .area_over_outlet = trial.area_over_outlet,
            .ruled_out_by = trial.ruled_out_by,
            .seldom_sold = trial.seldom_sold,
            .works = trial.works,
            .present = trial.id == a.size.present,
            .suggested = trial.id == a.size.suggested,
            .least_margin_pa = computed ? if_finite(trial.least_spare_pa) : std::nullopt,
            .least_opening_share = door ? if_finite(trial.least_opening_share) : std::nullopt};
}

SizeEntry entry_of(const SizeTable& table, const SizeRow& row) {
    SizeEntry entry{.connector = row.connector,
                    .chimney = row.chimney,
                    .connector_m = row.connector_m,
                    .chimney_m = row.chimney_m,
                    .height_m = row.height_m,
                    .area_over_outlet = row.area_over_outlet,
                    .ruled_out_by = row.ruled_out_by,
                    .seldom_sold = row.seldom_sold,
                    .works = row.works,
                    .present = row.present,
                    .suggested = row.suggested};
    if (row.score) {
        entry.least_margin_pa = if_finite(least_margin_pa(*row.score));
        if (table.present.appliance.has_door) {
            entry.least_opening_share = if_finite(least_opening(*row.score));
        }
        entry.states = state_rows(table.present, *row.score);
    }
    return entry;
}

} // namespace

std::vector<SizeEntry> entries_of(const Assessment& assessment) {
    std::vector<SizeEntry> entries;
    for (const SizeTrial& trial : assessment.size.trials) {
        entries.push_back(entry_of(assessment, trial));
    }
    return entries;
}

std::vector<SizeEntry> entries_of(const SizeTable& table) {
    std::vector<SizeEntry> entries;
    for (const SizeRow& row : table.rows) {
        entries.push_back(entry_of(table, row));
    }
    return entries;
}

template <>
const Record<SizeEntry>& record_of<SizeEntry>() {
    static const Record<SizeEntry> record{
        "size",
        "a pipe size, tried throughout the run",
        {{{"connector", "size"},
          "size of the connector, as the trade says it",
          &SizeEntry::connector},
         {"chimney",
          "size of the chimney, or of the masonry flue that the pipe leads into; else that of the "
          "connector",
          &SizeEntry::chimney},
         {"connector_diameter", Kind::length, "inside", &SizeEntry::connector_m},
         {"chimney_diameter",
          Kind::length,
          "inside; of what is not round, hydraulic",
          &SizeEntry::chimney_m},
         {"height", Kind::length, "chimney top above outlet", &SizeEntry::height_m},
         {{"area_over_outlet", "area over\noutlet"},
          "of the narrower of the two",
          &SizeEntry::area_over_outlet},
         {"works",
          "nothing that counts is short in the run with it",
          [](const SizeEntry& e) { return e.works; }},
         {"ruled_out_by",
          "a rule, a state, or a danger the present run has not; null where it is no matter of "
          "size",
          [](const SizeEntry& e) { return unless_empty(e.ruled_out_by); }},
         {"seldom_sold",
          "which pipe of the run shops seldom stock in this size; null for none",
          [](const SizeEntry& e) { return unless_empty(e.seldom_sold); }},
         {"present", "the pipe as it is", &SizeEntry::present},
         {"suggested", "the one to take", &SizeEntry::suggested},
         Column<SizeEntry>{{"least_margin", "least to\nspare"},
                           Kind::pressure,
                           "least draft over the required draft; null where it was not solved",
                           &SizeEntry::least_margin_pa}
             .with_sign(),
         {{"least_opening_share", "door may\nbe opened"},
          "share of the door's opening over which the smoke stays in, in the worst state; over 1: "
          "all of it",
          &SizeEntry::least_opening_share},
         {"states",
          "those that decide about a kind of harm; null where only the size was asked for, or it "
          "was not solved",
          &SizeEntry::states}}};
    return record;
}

template <>
const Record<SizeAdviceRow>& record_of<SizeAdviceRow>() {
    static constexpr std::array<std::string_view, 4> outcomes{
        "present is right", "another", "none", "nothing to size"};
    static const Record<SizeAdviceRow> record{
        "size_advice",
        "which pipe size suits the run",
        {{"outcome",
          Kind::number,
          "what it came to",
          [](const SizeAdviceRow& r) {
              return outcomes[static_cast<std::size_t>(r.of.size.outcome)];
          },
          outcomes},
         {"present",
          "trade name of the present size, or its diameter",
          [](const SizeAdviceRow& r) -> decltype(auto) { return (r.of.size.present); }},
         {"suggested",
          "trade name of the one to take; null where none is",
          [](const SizeAdviceRow& r) { return unless_empty(r.of.size.suggested); }},
         {"suggested_diameter",
          Kind::length,
          "inside",
          [](const SizeAdviceRow& r) {
              return r.of.size.suggested.empty() ? std::optional<double>{}
                                                 : std::optional{r.of.size.suggested_diameter_m};
          }},
         {"reason",
          "one sentence",
          [](const SizeAdviceRow& r) -> decltype(auto) { return (r.of.size.reason); }},
         {"sizes", "every size that was tried", [](const SizeAdviceRow& r) {
              return entries_of(r.of);
          }}}};
    return record;
}

// The answer of `size`.

template <>
const Record<SizeTable>& record_of<SizeTable>() {
    static const Record<SizeTable> record{
        "size_answer",
        "every trade size against every state",
        {{"sentence", "the suggestion and why", &SizeTable::sentence},
         {"not_decided",
          "what leaves fire and carbon monoxide open, whatever the size; null where nothing does",
          [](const SizeTable& t) { return unless_empty(t.not_decided); }},
         {"present",
          "trade name of the present pipe, or that there are several sizes",
          &SizeTable::present_pipe},
         {"present_height",
          Kind::length,
          "chimney top above outlet, as it is now",
          &SizeTable::present_height_m},
         {"suggested", "index into the sizes, from 0; null for none", &SizeTable::suggested},
         {"sizes", "every size, and where asked for every height", [](const SizeTable& t) {
              return entries_of(t);
          }}}};
    return record;
}

const RecordInfo& size_result() {
    return record_of<SizeTable>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string size_table_json(const SizeTable& table, const AnswerInput& input) {
    return results::answer_text(
        "size", input, results::record_of<SizeTable>().json(table), table.present.assumptions);
}

std::string size_table_csv(const SizeTable& table) {
    using namespace results;
    std::string out = csv_keys<SizeEntry>() + ',' + csv_heading<StateRow>();
    for (const SizeEntry& entry : entries_of(table)) {
        append_with_states(csv_cells(entry), entry.states, out);
    }
    return out;
}

} // namespace fluewright
