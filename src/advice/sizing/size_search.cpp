#include "advice/remedies/run_edit.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "pipe_sizes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

using namespace pipe_sizes;

/// Solves the states that count and fills the trial.
void try_size(const Case& c, SizeTrial& trial) {
    const Score scored = score(c);
    trial.passes = scored.passes;
    trial.least_spare_pa = std::numeric_limits<double>::infinity();
    trial.least_opening_share =
        c.appliance.has_door ? std::numeric_limits<double>::infinity() : 0.0;
    for (std::size_t i = 0; i < scored.states.size(); ++i) {
        if (scored.verdicts[i].kind == Kind::pressure) {
            trial.least_spare_pa = std::min(trial.least_spare_pa, scored.verdicts[i].spare);
        } else {
            trial.least_opening_share =
                std::min(trial.least_opening_share, scored.states[i].door.opening_share);
        }
    }
    if (!scored.passes) {
        trial.ruled_out_by = state_name(c, scored.states[scored.limiting]);
    }
}

std::string lacking_words(const SizeTrial& trial, UnitSystem units) {
    if (trial.least_spare_pa < 0.0) {
        return "lacks " + format_quantity(-trial.least_spare_pa, Kind::pressure, units);
    }
    return "lets the door open no further than "
           + format_quantity(trial.least_opening_share, Kind::fraction, units, 2);
}

} // namespace

SizeAdvice advise_size(const Installation& written, const Case& present, TradeSizes sizes) {
    SizeAdvice advice;
    const Installation spelled = run_edit::spelled_out(written);
    const Present now = present_size(spelled, 0, spelled.run.size());
    if (now.diameter_m <= 0.0) {
        advice.outcome = SizeAdvice::Outcome::nothing_to_size;
        advice.reason =
            "The run is all masonry or rectangular; only a liner would change its size.";
        return advice;
    }
    advice.present =
        now.uniform ? trade_name(now.diameter_m, sizes, present.units)
                    : "several sizes, mostly " + trade_name(now.diameter_m, sizes, present.units);
    const double greatest = greatest_area_ratio(present);
    const SizeTrial* found = nullptr;
    const SizeTrial* present_trial = nullptr;
    const SizeTrial* nearest = nullptr;
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system != system_name(sizes)) {
            continue;
        }
        SizeTrial trial;
        trial.id = size.id;
        trial.diameter_m = size.inside_diameter_m;
        trial.area_over_outlet =
            std::pow(size.inside_diameter_m / present.appliance.outlet_diameter_m, 2);
        trial.ruled_out_by = rule_against(trial.area_over_outlet, greatest);
        if (trial.ruled_out_by.empty()) {
            const double d = size.inside_diameter_m;
            if (const Result<Case, Faults> changed = resolve(with_sizes(spelled, d, d))) {
                try_size(*changed, trial);
            } else {
                trial.ruled_out_by = "cannot be built this way";
            }
        }
        advice.trials.push_back(std::move(trial));
    }
    double best = -std::numeric_limits<double>::infinity();
    for (const SizeTrial& trial : advice.trials) {
        const bool is_present =
            now.uniform && std::abs(trial.diameter_m / now.diameter_m - 1.0) < same_size / 2.0;
        present_trial = is_present ? &trial : present_trial;
        found = found == nullptr && trial.passes ? &trial : found;
        const bool was_tried = trial.least_spare_pa != 0.0 || trial.passes;
        const double score = std::min(trial.least_spare_pa, 0.0) + trial.least_opening_share;
        if (was_tried && score > best) {
            best = score;
            nearest = &trial;
        }
    }
    if (found == nullptr) {
        advice.outcome = SizeAdvice::Outcome::none;
        advice.reason = "No pipe size alone makes this run work"
                        + (nearest == nullptr ? std::string{"."}
                                              : "; the nearest, " + nearest->id + ", "
                                                    + lacking_words(*nearest, present.units) + " ("
                                                    + nearest->ruled_out_by + ").");
        return advice;
    }
    const bool right = present_trial != nullptr && present_trial->passes;
    const SizeTrial& chosen = right ? *present_trial : *found;
    advice.outcome = right ? SizeAdvice::Outcome::present_is_right : SizeAdvice::Outcome::another;
    advice.suggested = chosen.id;
    advice.suggested_diameter_m = chosen.diameter_m;
    if (right) {
        advice.reason = "The present size, " + chosen.id + ", carries every state"
                        + (found->id == chosen.id ? " and is the smallest that does."
                                                  : "; " + found->id + " would carry them too.");
    } else {
        advice.reason = chosen.id
                        + " is the smallest size that carries every state and is not "
                          "smaller than the outlet."
                        + (present_trial != nullptr && !present_trial->ruled_out_by.empty()
                               ? " The present " + present_trial->id
                                     + " is ruled out: " + present_trial->ruled_out_by + "."
                               : "");
    }
    return advice;
}

} // namespace fluewright
