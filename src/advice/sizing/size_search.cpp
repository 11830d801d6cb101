#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "size_rows.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fluewright {
namespace {

SizeTrial trial_of(const SizeRow& row) {
    SizeTrial trial;
    trial.id = row.connector;
    trial.diameter_m = row.connector_m;
    trial.chimney = row.chimney;
    trial.chimney_m = row.chimney_m;
    trial.area_over_outlet = row.area_over_outlet;
    trial.ruled_out_by = row.ruled_out_by;
    trial.seldom_sold = row.seldom_sold;
    trial.works = row.works;
    if (!row.score) {
        return trial;
    }
    trial.least_spare_pa = std::numeric_limits<double>::infinity();
    for (const StateVerdict& verdict : row.score->verdicts) {
        if (verdict.kind == Kind::pressure) {
            trial.least_spare_pa = std::min(trial.least_spare_pa, verdict.spare);
        }
    }
    const double opening = least_opening(*row.score);
    trial.least_opening_share = std::isfinite(opening) ? opening : 0.0;
    return trial;
}

std::string lacking_words(const SizeRow& row, const Case& present) {
    const UnitSystem units = present.units;
    const StateVerdict& verdict = row.score->verdicts[row.score->limiting];
    const StateResult& state = row.score->states[row.score->limiting];
    if (verdict.kind == Kind::pressure && !has_figures(state)) {
        return "cannot vent the burn rate";
    }
    if (verdict.kind == Kind::pressure) {
        return "lacks " + format_quantity(-verdict.spare, Kind::pressure, units);
    }
    return "falls short: " + opening_words(present, state);
}

/// The smallest size that passes, whether or not it is the present one.
const SizeRow* smallest(const SizeTable& table) {
    const auto row = std::find_if(table.rows.begin(), table.rows.end(), [](const SizeRow& r) {
        return r.ruled_out_by.empty();
    });
    return row == table.rows.end() ? nullptr : &*row;
}

std::string reason_for(const SizeTable& table, const SizeRow& best) {
    if (best.present) {
        const SizeRow& least = *smallest(table);
        return "The present size, " + best.connector + ", passes in every condition"
               + (least.present ? " and is the smallest that does."
                                : "; " + least.connector + " would pass too.");
    }
    const SizeRow* present = sizing::present_row(table);
    return best.connector
           + " is the smallest size that passes in every condition and is not smaller than the "
             "outlet."
           + (present == nullptr ? ""
              : present->ruled_out_by.empty()
                  ? " The present " + present->connector
                        + " is not that: `fluewright size` tells why."
                  : " The present " + present->connector + " is ruled out: " + present->ruled_out_by
                        + ".");
}

} // namespace

SizeAdvice advise_size(const Installation& written, const Assessment& present, TradeSizes sizes) {
    SizeTable table = sizing::rows_of(written,
                                      present,
                                      {.heights_m = {}, .separate = false, .sizes = sizes},
                                      sizing::Depth::no_rule_against);
    SizeAdvice advice;
    if (table.rows.empty()) {
        advice.outcome = SizeAdvice::Outcome::nothing_to_size;
        advice.reason = "The run is all masonry or rectangular: a liner would change its size, or, "
                        "before it is "
                        "built, another flue. `fluewright size` tries both.";
        return advice;
    }
    advice.present = table.present_pipe;
    for (const SizeRow& row : table.rows) {
        advice.trials.push_back(trial_of(row));
    }
    const SizeRow* best = sizing::best_row(table);
    if (best == nullptr) {
        const SizeRow* nearest = sizing::nearest_row(table);
        advice.outcome = SizeAdvice::Outcome::none;
        if (table.masonry_too_wide) {
            sizing::suggest(table);
            advice.reason = std::move(table.sentence);
            return advice;
        }
        advice.reason = "no size alone makes this run work"
                        + (nearest == nullptr ? std::string{"."}
                                              : "; the nearest, " + nearest->connector + ", "
                                                    + lacking_words(*nearest, present.installation)
                                                    + " (" + nearest->ruled_out_by + ").");
        return advice;
    }
    advice.outcome =
        best->present ? SizeAdvice::Outcome::present_is_right : SizeAdvice::Outcome::another;
    advice.suggested = best->connector;
    advice.suggested_diameter_m = best->connector_m;
    advice.lines_masonry = best->lines_masonry();
    if (table.masonry_too_wide) {
        // Right as the pipe may be: what it leads into is not, and `size` has the words for it.
        sizing::suggest(table);
        advice.reason = std::move(table.sentence);
        return advice;
    }
    advice.reason = best->present && table.sweeping_cures
                        ? "The present size, " + best->connector
                              + ", passes in every condition once it is swept."
                        : reason_for(table, *best) + sizing::stands_anyway(table, *best);
    return advice;
}

} // namespace fluewright
