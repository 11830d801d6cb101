#include "fluewright/io/report/report_sweep.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/state_rows.hpp"
#include "io/text/csv_text.hpp"

namespace fluewright::results {
namespace {

struct PointRow {
    const Sweep& sweep;
    const SweepPoint& of;
};

std::vector<PointRow> points_of(const Sweep& sweep) {
    std::vector<PointRow> rows;
    for (const SweepPoint& point : sweep.points) {
        rows.push_back({sweep, point});
    }
    return rows;
}

} // namespace

template <>
const Record<Varied>& record_of<Varied>() {
    static const Record<Varied> record{
        "swept",
        "a quantity that was varied",
        {{"name",
          "as it was typed",
          [](const Varied& v) -> decltype(auto) { return (v.key.name); }},
         {"label", "in words", [](const Varied& v) -> decltype(auto) { return (v.key.label); }},
         {"kind", "of quantity", [](const Varied& v) { return name(v.key.kind); }},
         {"unit",
          "SI unit of its values; empty for a plain number",
          [](const Varied& v) { return si_unit(v.key.kind); }},
         {"pointers",
          "into the file, that all take the same value; empty for a short name",
          [](const Varied& v) -> decltype(auto) { return (v.key.pointers); }},
         {"values", "in `unit`", &Varied::values}}};
    return record;
}

template <>
const Record<SweepTurn>& record_of<SweepTurn>() {
    static constexpr std::array<std::string_view, 2> sides{"above", "below"};
    static const Record<SweepTurn> record{
        "turn",
        "where, between two neighboring values, the verdict turns",
        {{"at", "in the unit of the quantity", &SweepTurn::at},
         {"passes",
          Kind::number,
          "on which side the run works",
          [](const SweepTurn& t) { return sides[t.passes_above ? 0 : 1]; },
          sides},
         {"falls_short",
          "what does on the other side: a state, or the title of a finding",
          &SweepTurn::state}}};
    return record;
}

template <>
const Record<PointRow>& record_of<PointRow>() {
    static const Record<PointRow> record{
        "point",
        "one value, or one pair of values",
        {{"at",
          "of each quantity, in its unit",
          [](const PointRow& p) -> decltype(auto) { return (p.of.at); }},
         {"works", "nothing that counts is short", [](const PointRow& p) { return p.of.passes(); }},
         {"falls_short",
          "what does: a state, or the title of a finding; null where it works",
          [](const PointRow& p) { return unless_empty(p.of.short_of); }},
         {"least_relative_spare",
          "of the state with least to spare, over what is required",
          [](const PointRow& p) {
              return p.of.score ? if_finite(p.of.score->least_spare) : std::nullopt;
          }},
         {"states",
          "those that decide about a kind of harm; null where nothing was solved",
          [](const PointRow& p) {
              return p.of.score ? std::optional{state_rows(p.sweep.shape, *p.of.score)}
                                : std::nullopt;
          }},
         {"fault", "why nothing was solved", [](const PointRow& p) {
              return unless_empty(p.of.fault);
          }}}};
    return record;
}

template <>
const Record<Sweep>& record_of<Sweep>() {
    static const Record<Sweep> record{"sweep_answer",
                                      "every state at every value of one or two quantities",
                                      {{"sentence", "what it comes to", &Sweep::sentence},
                                       {"not_decided",
                                        "what leaves fire and carbon monoxide open in the file; "
                                        "null where nothing does",
                                        [](const Sweep& s) { return unless_empty(s.not_decided); }},
                                       {"over", "one quantity or two", &Sweep::over},
                                       {"turns", "of one quantity", &Sweep::turns},
                                       {"points",
                                        "the last quantity turns fastest",
                                        [](const Sweep& s) { return points_of(s); }}}};
    return record;
}

const RecordInfo& sweep_result() {
    return record_of<Sweep>().info();
}

} // namespace fluewright::results

namespace fluewright {

std::string sweep_json(const Sweep& sweep, const AnswerInput& input) {
    return results::answer_text(
        "sweep", input, results::record_of<Sweep>().json(sweep), sweep.present.assumptions);
}

std::string sweep_csv(const Sweep& sweep) {
    using namespace results;
    std::string out;
    for (const Varied& varied : sweep.over) {
        out += csv_field(varied.key.name + std::string{json_suffix(varied.key.kind)}) + ',';
    }
    out += csv_keys<PointRow>() + ',' + csv_heading<StateRow>();
    for (const PointRow& point : points_of(sweep)) {
        std::string head;
        for (const double value : point.of.at) {
            head += csv_cell(value) + ',';
        }
        append_with_states(head + csv_cells(point),
                           point.of.score ? std::optional{state_rows(sweep.shape, *point.of.score)}
                                          : std::nullopt,
                           out);
    }
    return out;
}

} // namespace fluewright
