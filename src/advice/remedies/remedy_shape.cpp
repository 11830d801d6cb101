#include "advice/checks/bodies/roof_geometry.hpp"
#include "fluewright/core/constants.hpp"
#include "remedy_changes.hpp"
#include "run_edit.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace fluewright::changes {
namespace {

using namespace run_edit;

/// The least that is left of an upright from which height is taken.
constexpr double least_upright_m = 0.3;

void set_rise(Part& level, double value_m) {
    level.rise_m = value_m;
    level.slope.reset();
}

bool is_square_elbow(const RunPart& part) {
    constexpr double least_rad = 1.4; // 80 degrees
    return part.kind == PartKind::elbow && part.turn_rad > least_rad;
}

/// Takes height from the uprights nearest to part `at`, those above it first, so that the chimney
/// top stays where it is; negative: adds to it. Returns whether there was enough.
bool take_height(std::vector<Part>& run, std::size_t at, double height_m) {
    const auto take = [&](Part& part) {
        if (!goes_up(part)) {
            return;
        }
        const double there_m = std::max(0.0, *part.up_m - least_upright_m);
        const double taken_m = std::min(height_m, there_m);
        part.up_m = *part.up_m - taken_m;
        height_m -= taken_m;
    };
    for (std::size_t i = at + 1; i < run.size() && height_m != 0.0; ++i) {
        take(run[i]);
    }
    for (std::size_t i = at; i-- > 0 && height_m != 0.0;) {
        take(run[i]);
    }
    return height_m <= 0.0;
}

/// Makes a level straight so long, as steep as it is; whether the uprights have height for that.
bool set_across(std::vector<Part>& run, std::size_t at, double across_m) {
    Part& level = run[at];
    const double rise_m = shape_of(level).rise_m;
    const double share = across_m / *level.across_m;
    level.across_m = across_m;
    if (level.rise_m) {
        level.rise_m = *level.rise_m * share;
    }
    return take_height(run, at, rise_m * (share - 1.0));
}

bool same_place(const RunPart& a, const RunPart& b) {
    return a.zone.value == b.zone.value;
}

/// Whether the chimney top stands higher than the ridge and all that the file names near it.
bool looks_over_all(const Roof& roof) {
    constexpr double clear_m = 2.0 * constants::foot_m; // judgement, as the codes of roofs have it
    return checking::missing_of_roof(roof).empty()
           && checking::place_of(roof).above_ridge_m() >= clear_m
           && std::all_of(roof.near.begin(), roof.near.end(), [](const NearThing& thing) {
                  return thing.below_top_m.value_or(0.0) >= clear_m;
              });
}

/// The run behind a heater that moves so far from where it stood; empty where it has no room.
std::vector<Part> pipe_that_follows(std::vector<Part> run, const Run& resolved, double across_m) {
    const auto stands_in_room = [&](std::size_t i) {
        return resolved.parts[i].zone.value == Zone::room && !resolved.parts[i].in_chimney()
               && !passes_something(run[i]);
    };
    for (std::size_t i = 0; i < run.size(); ++i) {
        if (is_level(run[i]) && stands_in_room(i)) {
            return set_across(run, i, *run[i].across_m + across_m) ? run : std::vector<Part>{};
        }
    }
    if (run.empty() || !goes_up(run.front()) || !stands_in_room(0)
        || *run.front().up_m < across_m + 2.0 * least_upright_m) {
        return {};
    }
    Part elbow = like_pipe(run.front());
    elbow.part = PartKind::elbow;
    elbow.angle_rad = constants::pi / 4.0;
    Part aslant = run.front();
    aslant.up_m.reset();
    aslant.across_m = across_m;
    aslant.rise_m = across_m;
    Part above = run.front();
    const double left_m = *run.front().up_m - across_m;
    run.front().up_m = left_m / 2.0;
    above.up_m = left_m / 2.0;
    run.insert(run.begin() + 1, {elbow, aslant, elbow, above});
    return run;
}

/// A heater that moves, and the pipe on it, stand at other distances: nobody knows which.
void forget_distances(Installation& in, std::size_t before) {
    Clearances& heater = in.appliance.clearances;
    heater.side_m = heater.back_m = heater.corner_m = std::nullopt;
    for (std::size_t i = 0; i < before; ++i) {
        if (!passes_something(in.run[i])) {
            in.run[i].clearance_m.reset();
        }
    }
}

} // namespace

void give_slope(Installation& in, double slope) {
    for (std::size_t i = 0; i < in.run.size(); ++i) {
        Part& part = in.run[i];
        if (!is_level(part)) {
            continue;
        }
        const double more_m = slope * *part.across_m - shape_of(part).rise_m;
        std::vector<Part> run = in.run;
        if (more_m > 0.0 && take_height(run, i, more_m)) {
            set_rise(run[i], slope * *part.across_m);
            in.run = std::move(run);
        }
    }
}

void smooth_elbows(Installation& in) {
    for (Part& part : in.run) {
        if (is_a(part, PartKind::elbow) && !part.loss
            && part.build.value_or(Build::gored) != Build::smooth) {
            part.build = Build::smooth;
            part.radius_m.reset();
        }
    }
}

void two_45(Installation& in) {
    const std::optional<Run> resolved = run_of(in);
    if (!resolved) {
        return;
    }
    const std::vector<RunPart>& parts = resolved->parts;
    for (std::size_t i = 1; i + 3 < in.run.size(); ++i) {
        const bool dogleg = is_square_elbow(parts[i]) && is_level(in.run[i + 1])
                            && is_square_elbow(parts[i + 2]) && goes_up(in.run[i - 1])
                            && goes_up(in.run[i + 3]);
        // Through a wall one goes straight.
        if (!dogleg || !same_place(parts[i - 1], parts[i + 3])) {
            continue;
        }
        std::vector<Part> run = in.run;
        const double across_m = *run[i + 1].across_m;
        if (!take_height(run, i + 1, across_m - shape_of(run[i + 1]).rise_m)) {
            continue;
        }
        set_rise(run[i + 1], across_m);
        run[i].angle_rad = run[i + 2].angle_rad = constants::pi / 4.0;
        in.run = std::move(run);
    }
}

void shorten_level(Installation& in, double factor) {
    const std::optional<Run> run = run_of(in);
    for (std::size_t i = 0; run && i < in.run.size(); ++i) {
        const Part& part = in.run[i];
        // What goes through a wall is as long as the wall is thick.
        if (is_level(part) && run->parts[i].zone.value == Zone::room && !passes_something(part)) {
            forget_distances(in, i + 1);
            (void)set_across(in.run, i, *part.across_m * factor); // less rise always fits
        }
    }
}

/// Whether a level straight climbs so little that the bends beside it still fit when it is joined
/// to another.
bool nearly_level(const Part& part) {
    constexpr double most_slope = 0.1;
    return std::abs(shape_of(part).rise_m) <= most_slope * part.across_m.value_or(0.0);
}

void straighten_level(Installation& in) {
    for (std::size_t i = 0; i + 2 < in.run.size(); ++i) {
        const Part& second = in.run[i + 2];
        if (!is_level(in.run[i]) || !is_a(in.run[i + 1], PartKind::elbow) || !is_level(second)
            || in.run[i].zone != second.zone || !nearly_level(in.run[i]) || !nearly_level(second)) {
            continue;
        }
        const double rise_together_m = shape_of(in.run[i]).rise_m + shape_of(second).rise_m;
        in.run[i].across_m = std::hypot(*in.run[i].across_m, *second.across_m);
        set_rise(in.run[i], rise_together_m);
        const auto first_gone = in.run.begin() + static_cast<std::ptrdiff_t>(i) + 1;
        in.run.erase(first_gone, first_gone + 2);
    }
}

void remove_level(Installation& in) {
    const auto& run = in.run;
    const std::optional<Run> resolved = run_of(in);
    const auto turn = std::find_if(
        run.begin(), run.end(), [](const Part& part) { return is_a(part, PartKind::elbow); });
    const auto level = std::find_if(run.begin(), run.end(), is_level);
    if (turn == run.begin() || turn == run.end() || level == run.end() || !goes_up(*std::prev(turn))
        || !resolved) {
        return;
    }
    const auto last = static_cast<std::size_t>(
        std::distance(run.begin(), std::find_if(level, run.end(), goes_up)));
    const auto from = static_cast<std::size_t>(std::distance(run.begin(), turn));
    if (last == run.size()) {
        return;
    }
    double lost_m = 0.0;
    for (std::size_t i = from; i < last; ++i) {
        // A tee stands where the flue goes through a wall or turns for good.
        const bool movable =
            !is_a(run[i], PartKind::tee) && resolved->parts[i].zone.value == Zone::room;
        if (!movable) {
            return;
        }
        lost_m += shape_of(run[i]).rise_m;
    }
    if (resolved->parts[last].zone.value == Zone::outdoors) {
        return;
    }
    forget_distances(in, from);
    auto& parts = in.run;
    parts[last].up_m = *parts[last].up_m + lost_m;
    const auto gone = std::remove_if(
        parts.begin() + static_cast<std::ptrdiff_t>(from),
        parts.begin() + static_cast<std::ptrdiff_t>(last),
        [](const Part& part) { return is_a(part, PartKind::elbow) || is_straight(part); });
    parts.erase(gone, parts.begin() + static_cast<std::ptrdiff_t>(last));
}

void move_heater(Installation& in, double away_m) {
    const std::optional<Run> run = run_of(in);
    Clearances& distances = in.appliance.clearances;
    if (!run || (!distances.side_m && !distances.back_m && !distances.corner_m)) {
        return;
    }
    // Away from two walls at once it goes aslant.
    const double across_m =
        distances.side_m && distances.back_m ? std::hypot(away_m, away_m) : away_m;
    const std::vector<Part> moved = pipe_that_follows(in.run, *run, across_m);
    if (moved.empty()) {
        return;
    }
    in.run = moved;
    for (Given* distance : {&distances.side_m, &distances.back_m, &distances.corner_m}) {
        if (*distance) {
            **distance += away_m;
        }
    }
}

void shield_heater(Installation& in) {
    Clearances& distances = in.appliance.clearances;
    if (!distances.shield) {
        distances.shield = Shield::sheet_steel;
        distances.shield_gap_m = constants::inch_m;
    }
}

void raise_top(Installation& in, double height_m, const std::string& wall) {
    (void)move_top(in, height_m, 0.0);
    if (in.site.top_position && looks_over_all(in.site.roof)) {
        in.site.top_position = ChimneyTopPosition::clear;
    }
    if (!wall.empty()) {
        insulate_outside(in, wall);
    }
}

} // namespace fluewright::changes
