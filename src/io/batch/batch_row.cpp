#include "fluewright/io/batch/batch_row.hpp"

#include "fluewright/advice/study/varied.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/advice/verdict_reason.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/tar.hpp"
#include "fluewright/model/standards/en13384.hpp"
#include "fluewright/model/standards/handbook.hpp"
#include "fluewright/model/states/cold_wall.hpp"
#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr double no_figure = std::numeric_limits<double>::quiet_NaN();

/// The least of two, where NaN means "none yet".
double least(double so_far, double value) {
    return std::isnan(so_far) || value < so_far ? value : so_far;
}

void take_fault(const Diagnostics& faults, BatchRow& row) {
    row.outcome = Outcome::fault;
    if (faults.empty()) {
        return;
    }
    const Diagnostic& first = faults.front();
    // In a stream the line of the record is known already; within it only the column counts.
    row.error = row.line > 0 ? "column " + std::to_string(first.column)
                             : "line " + std::to_string(first.line) + ", column "
                                   + std::to_string(first.column);
    row.error += ": " + first.fault.message;
    if (!first.fault.pointer.empty()) {
        row.error += " at " + first.fault.pointer;
    }
    if (faults.size() > 1) {
        row.error += " (and " + std::to_string(faults.size() - 1) + " more)";
    }
}

/// The id of a record that could not be read: what was read before the fault may hold it, and a
/// line without its id cannot be joined.
void take_id_of_faulty(const std::string& text, BatchRow& row) {
    const json::Parsed parsed = json::parse(text);
    bool exact = false;
    const json::Node& node = parsed.document.nearest_to("/id", exact);
    if (exact && node.type == json::Type::string) {
        row.id = node.text;
    }
}

/// Of the states with a draft that with least to spare over its need: where a draft limits, the
/// limiting state itself.
void take_margin(const Assessment& a, BatchRow& row) {
    double least_spare = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        const StateResult& state = a.solution.states[i];
        const StateVerdict& verdict = a.verdicts[i];
        if (!verdict.counts || verdict.kind != Kind::pressure
            || relative_spare(verdict, state) >= least_spare) {
            continue;
        }
        least_spare = relative_spare(verdict, state);
        row.margin_state = name(state.kind);
        row.margin_weather = a.installation.weathers[state.weather].name;
        row.margin_status = state.status;
        row.margin_pa = has_figures(state) ? state.margin_pa() : no_figure;
        row.draft_pa = has_figures(state) ? state.draft_pa : no_figure;
        row.draft_needed_pa = state.draft_needed_pa;
    }
}

/// The walls of a fire: the coldest of them, and how far it keeps from what settles on it.
void take_walls(const Assessment& a, const StateResult& state, BatchRow& row) {
    const Case& c = a.installation;
    const Station* const coldest = coldest_wall(state, c);
    if (coldest == nullptr) {
        return;
    }
    const double coldest_k = coldest->inner_wall_k;
    row.coldest_wall_k = least(row.coldest_wall_k, coldest_k);
    row.over_dew_point_k = least(row.over_dew_point_k, coldest_k - dew_points_of(state, c).water_k);
    if (makes_tar(c.appliance)) {
        const double settles_k = catalog::default_of(DefaultId::creosote_threshold_k).value;
        row.over_creosote_k = least(row.over_creosote_k, coldest_k - settles_k);
    }
}

/// What bodies of rules say: without words the checks hold what is not met and the open dangers.
void take_rules(const Assessment& a, BatchRow& row) {
    for (const CheckResult& result : a.checks) {
        if (result.check->basis != Basis::body || result.check->local) {
            continue;
        }
        row.rules_not_met += result.outcome == CheckOutcome::not_met ? 1U : 0U;
        row.rules_open += result.outcome == CheckOutcome::undetermined
                                  && result.check->severity == Severity::danger
                              ? 1U
                              : 0U;
    }
}

void take_method(const Case& resolved, BatchMethod method, BatchRow& row) {
    row.method = method;
    if (method == BatchMethod::none) {
        return;
    }
    const MethodResult result = method == BatchMethod::handbook ? handbook::calculate(resolved)
                                                                : european::calculate(resolved);
    if (!result.beyond.empty()) {
        row.method_why = "does not hold: " + result.beyond;
        return;
    }
    row.method_met = result.met();
    row.method_why = result.not_met_words();
    for (const MethodFiring& firing : result.firings) {
        for (const MethodCriterion& criterion : firing.criteria) {
            if (criterion.counts && criterion.unit == "Pa") {
                const double spare_pa = criterion.have - criterion.want;
                row.method_spare_pa =
                    least(row.method_spare_pa, criterion.at_most ? -spare_pa : spare_pa);
            }
        }
    }
}

/// A name that fits no number of this file, or several, leaves its place empty.
void take_values(const Installation& written,
                 const Case& resolved,
                 const std::vector<BatchValue>& asked,
                 BatchRow& row) {
    for (const BatchValue& value : asked) {
        if (value.word) {
            const auto key = find_varied_word(value.name, written);
            row.values.emplace_back(key ? word_now(written, *key).value_or("") : std::string{});
            continue;
        }
        const auto key = find_varied_key(value.name, written);
        row.values.emplace_back(key ? value_now(written, resolved, *key) : no_figure);
    }
}

void take_state(const Assessment& a, std::size_t index, BatchRow& row) {
    const StateResult& state = a.solution.states[index];
    switch (state.kind) {
    case StateKind::high_fire:
    case StateKind::low_fire:
        if (!has_figures(state)) {
            break;
        }
        row.top_temperature_k = least(row.top_temperature_k, state.flow.top_temperature_k);
        take_walls(a, state, row);
        break;
    case StateKind::free_burn:
        if (state.status == Status::no_answer) {
            break;
        }
        row.capacity_kg_s = least(row.capacity_kg_s, state.capacity_kg_s);
        break;
    case StateKind::door_open_high:
    case StateKind::door_open_embers:
        if (a.verdicts[index].counts) {
            row.opening_share = least(row.opening_share, state.door.opening_share);
        }
        break;
    case StateKind::idle:
    case StateKind::cold_start:
        break;
    }
}

} // namespace

std::string_view name(Outcome outcome) {
    return batch_outcome_words[static_cast<std::size_t>(outcome)];
}

Result<BatchValue, std::string> batch_value(std::string_view name) {
    if (const std::optional<Kind> kind = kind_of_varied(name)) {
        return BatchValue{.name = std::string{name},
                          .kind = *kind,
                          .column = std::string{name} + std::string{json_suffix(*kind)}};
    }
    if (may_be_varied_word(name)) {
        return BatchValue{
            .name = std::string{name}, .kind = {}, .column = std::string{name}, .word = true};
    }
    return Failure{"`" + std::string{name}
                   + "` names no number or word of an installation; write outdoor, height, "
                     "diameter, burn_rate, fuel, wall, cap, a key such as moisture, or a pointer "
                     "such as /run/0/up"};
}

BatchRow assess_record(const BatchRecord& record, const BatchAsked& asked) {
    BatchRow row;
    row.number = record.number;
    row.source = record.source;
    row.line = record.line;
    row.id = record.line > 0 ? record.source + ":" + std::to_string(record.line) : record.source;
    row.margin_pa = row.draft_pa = row.draft_needed_pa = row.opening_share = row.capacity_kg_s =
        row.gas_temperature_k = row.top_temperature_k = row.coldest_wall_k = row.over_dew_point_k =
            row.over_creosote_k = row.height_m = row.size_suggested_m = row.method_spare_pa =
                no_figure;
    const ReadResult read = read_installation(record.text, record.source);
    if (!read) {
        take_id_of_faulty(record.text, row);
        take_fault(read.error(), row);
        return row;
    }
    if (read->id) {
        row.id = *read->id;
    }
    row.title = read->title.value_or("");
    AssessOptions options;
    options.size_search = asked.size_search;
    options.spread = false;
    options.words = false;
    options.required = asked.required;
    options.rules = asked.rules;
    const Result<Assessment, Faults> assessed = assess(*read, options);
    if (!assessed) {
        take_fault(locate(assessed.error(), record.text, record.source), row);
        return row;
    }
    const Assessment& a = *assessed;
    row.units = asked.units.value_or(a.installation.units);
    row.opening_wanted = door_wanted(a.installation);
    row.outcome = a.passes_decided() ? Outcome::pass
                  : a.works()        ? Outcome::open
                                     : Outcome::short_of_draft;
    row.why = reasons_against(a);
    const auto given_up =
        std::find_if(a.solution.states.begin(),
                     a.solution.states.end(),
                     [](const StateResult& state) { return state.status == Status::no_answer; });
    if (given_up != a.solution.states.end()) {
        row.outcome = Outcome::failed;
        row.error = "the solver found no answer for " + state_name(a.installation, *given_up)
                    + "; please report it";
    }
    for (const HarmVerdict& verdict : a.verdict.harms) {
        row.harms[static_cast<std::size_t>(verdict.harm)] = verdict.outcome;
    }
    const StateResult& limiting = a.solution.states[a.limiting];
    row.limiting_state = name(limiting.kind);
    row.limiting_weather = a.installation.weathers[limiting.weather].name;
    take_margin(a, row);
    row.gas_temperature_k = a.installation.appliance.high.gas_temperature_k;
    row.height_m = a.installation.total_rise_m();
    take_rules(a, row);
    if (asked.size_search && !a.size.suggested.empty()) {
        row.size_suggested = a.size.suggested;
        row.size_suggested_m = a.size.suggested_diameter_m;
    }
    take_method(a.installation, asked.method, row);
    take_values(*read, a.installation, asked.values, row);
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        take_state(a, i, row);
    }
    for (const Finding& finding : a.findings) {
        if (std::find(row.findings.begin(), row.findings.end(), finding.matter->id)
            == row.findings.end()) {
            row.findings.push_back(finding.matter->id);
        }
    }
    return row;
}

} // namespace fluewright
