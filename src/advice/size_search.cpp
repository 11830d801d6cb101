#include "finding_rules.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/catalog.hpp"
#include "fluewright/model/resolve.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr double same_size = 0.02;

/// Marks the parts whose diameter can be chosen: round pipe that is not part of a masonry flue.
std::vector<bool> resizable_parts(const Installation& written) {
    std::vector<bool> can(written.run.size());
    bool masonry = false;
    bool angular = written.appliance.outlet.width_m.has_value();
    for (std::size_t i = 0; i < written.run.size(); ++i) {
        const Part& part = written.run[i];
        if (part.wall) {
            const catalog::Wall* row = catalog::find_wall(*part.wall);
            masonry = row != nullptr && row->kind == "masonry";
            for (const OwnWall& own : written.walls) {
                masonry = own.id == *part.wall ? own.kind && *own.kind == "masonry" : masonry;
            }
        }
        if (part.liner || part.width_m) {
            angular = true;
        } else if (part.diameter_m) {
            angular = false;
        }
        can[i] = !masonry && !angular;
    }
    return can;
}

Installation resized(const Installation& written, const std::vector<bool>& can, double diameter_m) {
    Installation changed = written;
    for (std::size_t i = 0; i < changed.run.size(); ++i) {
        if (can[i]) {
            changed.run[i].diameter_m = diameter_m;
        }
    }
    return changed;
}

/// Name of the size nearest to a diameter, or the diameter itself when none is within 2 %.
std::string trade_name(double diameter_m, TradeSizes sizes, UnitSystem units) {
    const std::string_view system = sizes == TradeSizes::inch ? "inch" : "metric";
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system == system
            && std::abs(size.inside_diameter_m / diameter_m - 1.0) < same_size / 2.0) {
            return std::string{size.id};
        }
    }
    return format_quantity(diameter_m, Kind::length, units);
}

struct Present {
    double diameter_m{};
    bool uniform{true};
};

/// The diameter most of the pipe's length has.
Present present_size(const Case& c, const std::vector<bool>& can) {
    Present present;
    double longest_m = -1.0;
    for (const Section& section : c.sections) {
        const auto part = static_cast<std::size_t>(std::max(section.part, 0));
        if (section.part < 0 || part >= can.size() || !can[part]) {
            continue;
        }
        if (present.diameter_m > 0.0
            && std::abs(section.diameter_m / present.diameter_m - 1.0) > same_size) {
            present.uniform = false;
        }
        if (section.length_m > longest_m) {
            longest_m = section.length_m;
            present.diameter_m = section.diameter_m;
        }
    }
    return present;
}

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

bool has_outdoor_chimney(const Case& c) {
    return std::any_of(c.sections.begin(), c.sections.end(), [](const Section& section) {
        return section.zone == Zone::outdoors && section.length_m > 1.0;
    });
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
    const std::vector<bool> can = resizable_parts(written);
    if (std::none_of(can.begin(), can.end(), [](bool yes) { return yes; })) {
        advice.outcome = SizeAdvice::Outcome::nothing_to_size;
        advice.reason =
            "The run is all masonry or rectangular; only a liner would change its size.";
        return advice;
    }
    const Present now = present_size(present, can);
    advice.present =
        now.uniform ? trade_name(now.diameter_m, sizes, present.units)
                    : "several sizes, mostly " + trade_name(now.diameter_m, sizes, present.units);
    const double most =
        present.appliance.type == ApplianceType::fireplace
            ? std::numeric_limits<double>::infinity()
            : catalog::default_of(has_outdoor_chimney(present) ? "flue_area_most_outside"
                                                               : "flue_area_most_inside")
                  .value;
    const std::string_view system = sizes == TradeSizes::inch ? "inch" : "metric";
    const SizeTrial* found = nullptr;
    const SizeTrial* present_trial = nullptr;
    const SizeTrial* nearest = nullptr;
    for (const catalog::TradeSize& size : catalog::trade_sizes()) {
        if (size.system != system) {
            continue;
        }
        SizeTrial trial;
        trial.id = size.id;
        trial.diameter_m = size.inside_diameter_m;
        trial.area_over_outlet =
            std::pow(size.inside_diameter_m / present.appliance.outlet_diameter_m, 2);
        if (trial.area_over_outlet < 1.0 - 2.0 * same_size) {
            trial.ruled_out_by = "smaller than the outlet";
        } else if (trial.area_over_outlet > most * (1.0 + same_size)) {
            trial.ruled_out_by = "more than " + format_number(most, 2) + " times the outlet's area";
        } else if (const Result<Case, Faults> changed =
                       resolve(resized(written, can, size.inside_diameter_m))) {
            try_size(*changed, trial);
        } else {
            trial.ruled_out_by = "cannot be built this way";
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
