#include "fluewright/advice/diagnosis/tables.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace fluewright::diagnosis {
namespace {

#include "fluewright_data/causes.inc"
#include "fluewright_data/checks.inc"
#include "fluewright_data/readings.inc"
#include "fluewright_data/symptoms.inc"

static_assert(std::all_of(cause_rows.begin(),
                          cause_rows.end(),
                          [](const Cause& cause) {
                              return std::any_of(
                                  check_rows.begin(), check_rows.end(), [&](const Check& check) {
                                      return check.id == cause.confirm;
                                  });
                          }),
              "causes.csv: a confirming check is not in checks.csv");
static_assert(std::all_of(cause_rows.begin(),
                          cause_rows.end(),
                          [](const Cause& cause) {
                              return cause.kind == "hidden"
                                         ? cause.size_low > 0.0 && cause.size_low < cause.size_high
                                         : cause.kind == "design" || cause.kind == "none";
                          }),
              "causes.csv: a hidden cause needs a range of sizes");

template <class Rows>
auto find(const Rows& rows, std::string_view id) -> const typename Rows::value_type* {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.id == id; });
    return row == rows.end() ? nullptr : &*row;
}

/// The number of an entry of "name:number|name:number"; nothing where it is not in the list.
std::optional<double> listed(std::string_view list, std::string_view name) {
    for (std::string_view rest = list; !rest.empty();) {
        const std::string_view entry = rest.substr(0, rest.find('|'));
        rest.remove_prefix(std::min(entry.size() + 1, rest.size()));
        const std::size_t colon = entry.find(':');
        if (colon != std::string_view::npos && entry.substr(0, colon) == name) {
            // Not by the locale of the process, which may write a comma.
            double number = 0.0;
            std::from_chars(entry.data() + colon + 1, entry.data() + entry.size(), number);
            return number;
        }
    }
    return std::nullopt;
}

} // namespace

double Symptom::share(double value) const {
    return least + (most - least) / (1.0 + std::exp((threshold - value) / softness));
}

std::span<const Cause> causes() {
    return cause_rows;
}

std::span<const Check> checks() {
    return check_rows;
}

std::span<const Reading> readings() {
    return reading_rows;
}

std::span<const Symptom> symptoms() {
    return symptom_rows;
}

const Cause* find_cause(std::string_view id) {
    return find(cause_rows, id);
}

const Check* find_check(std::string_view id) {
    return find(check_rows, id);
}

const Cause& cause_of(CauseId id) {
    return cause_rows[static_cast<std::size_t>(id)];
}

std::string_view remedy_at(const Cause& cause, HeaterKind kind) {
    return burners.has(kind) && !cause.burner_remedy.empty() ? cause.burner_remedy : cause.remedy;
}

CauseId id_of(const Cause& cause) {
    return static_cast<CauseId>(&cause - cause_rows.data());
}

const Reading& reading_of(ReadingId id) {
    return reading_rows[static_cast<std::size_t>(id)];
}

const Symptom& symptom_of(SymptomId id) {
    return symptom_rows[static_cast<std::size_t>(id)];
}

double found_share(const Check& look, std::string_view cause) {
    return listed(look.reveals, cause).value_or(look.false_alarm);
}

std::optional<double> pages_telling(const Cause& flaw, std::string_view symptom) {
    return listed(flaw.told, symptom);
}

} // namespace fluewright::diagnosis
