#include "shape_faults.hpp"

#include "turns.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace fluewright {
namespace {

/// What stands between two straights: its turns, and whether one of them is unknown.
struct Between {
    std::vector<const RunPart*> turning;
    double sum_rad{};
    double largest_rad{};
    bool unknown{};
};

/// Fittings of the user's own and hoods may turn the gas by what the file does not say.
bool may_turn_unsaid(const RunPart& part) {
    return part.kind == PartKind::fitting || part.kind == PartKind::draft_hood;
}

Between between(const Run& run, const RunPart& before, const RunPart& behind) {
    Between found;
    for (int i = before.index + 1; i < behind.index; ++i) {
        const RunPart& part = run.parts[static_cast<std::size_t>(i)];
        found.unknown = found.unknown || may_turn_unsaid(part);
        if (part.turn_rad > 0.0) {
            found.turning.push_back(&part);
            found.sum_rad += part.turn_rad;
            found.largest_rad = std::max(found.largest_rad, part.turn_rad);
        }
    }
    return found;
}

/// Whether turns of these sizes, each free to point any way round, can lead through an angle of the
/// range: together they reach from the largest less all others up to their sum.
bool fits(const Between& turns, const TurnRange& needed) {
    const double least_rad = std::max(0.0, 2.0 * turns.largest_rad - turns.sum_rad);
    return least_rad <= needed.most_rad + turn_slack_rad
           && turns.sum_rad >= needed.least_rad - turn_slack_rad;
}

std::string way_of(const RunPart& part) {
    const char* way = part.lie == Lie::upright  ? (part.rise_m > 0.0 ? "goes up" : "goes down")
                      : part.lie == Lie::sloped ? "slopes"
                                                : "goes across";
    return label(part) + " " + way;
}

std::string shown(double angle_rad, UnitSystem units) {
    return format_quantity(angle_rad, Kind::angle, units, 2);
}

std::string needed_words(const TurnRange& needed, UnitSystem units) {
    return needed.most_rad - needed.least_rad < turn_slack_rad
               ? "a turn of " + shown(needed.least_rad, units)
               : "a turn of " + shown(needed.least_rad, units) + " to "
                     + shown(needed.most_rad, units);
}

void check_turn(const Run& run,
                const RunPart& before,
                const RunPart& behind,
                UnitSystem units,
                Faults& faults) {
    const Between turns = between(run, before, behind);
    const TurnRange needed = turns_between(climb_of(before.rise_m, before.plan_m),
                                           climb_of(behind.rise_m, behind.plan_m));
    if (turns.unknown || fits(turns, needed)) {
        return;
    }
    const std::string ways = way_of(before) + " and " + way_of(behind);
    Fault fault;
    if (turns.turning.empty()) {
        fault.pointer = "/run/" + std::to_string(behind.index);
        fault.message = ways + ", with no bend between them";
        fault.help = R"(put {"part": "elbow", "angle": ")" + shown(needed.least_rad, units)
                     + R"("} between them, or a tee)";
    } else {
        const RunPart& turn = *turns.turning.front();
        fault.pointer = "/run/" + std::to_string(turn.index);
        fault.message =
            ways + ": that takes " + needed_words(needed, units) + ", and "
            + (turns.turning.size() == 1 ? label(turn) + " turns "
                                         : "the parts from " + label(turn) + " to "
                                               + label(*turns.turning.back()) + " together turn ")
            + shown(turns.sum_rad, units);
        fault.help = "give the bend that angle, or let the straights meet it: a sloping pipe is "
                     "\"across\" with \"rise\"";
    }
    faults.push_back(std::move(fault));
}

/// Outdoor air counts as of one density from the outlet to the top, which over this height it
/// hardly is any more; heaters with taller chimneys are not what this program is made for.
constexpr double most_rise_m = 300.0;

void check_height(const Run& run, UnitSystem units, Faults& faults) {
    double height_m = 0.0;
    for (const RunPart& part : run.parts) {
        height_m += part.rise_m;
        if (std::abs(height_m) > most_rise_m) {
            Fault fault;
            fault.pointer = "/run/" + std::to_string(part.index);
            fault.message = "up to here the run rises or falls by "
                            + format_quantity(std::abs(height_m), Kind::length, units)
                            + ", more than " + format_quantity(most_rise_m, Kind::length, units);
            fault.help = "check the lengths and their units";
            faults.push_back(std::move(fault));
            return;
        }
    }
}

void check_top(const Run& run, Faults& faults) {
    if (run.parts.empty()) {
        return;
    }
    const RunPart& last = run.parts.back();
    if (last.zone.value == Zone::outdoors) {
        return;
    }
    const std::string place{name(last.zone.value)};
    Fault fault;
    fault.pointer = last.pointer("zone");
    fault.message =
        last.zone.given
            ? "the run ends in the " + place + ": " + label(last) + " stands there"
            : "the chimney top would end in the room: no part says where the run leaves it";
    fault.help = R"(write "zone": "outdoors" in the first part that stands outdoors; the parts )"
                 "behind it follow";
    faults.push_back(std::move(fault));
}

} // namespace

void add_shape_faults(const Run& run, UnitSystem units, Faults& faults) {
    const RunPart* before = nullptr;
    for (const RunPart& part : run.parts) {
        if (!part.has_length()) {
            continue;
        }
        if (before != nullptr) {
            check_turn(run, *before, part, units, faults);
        }
        before = &part;
    }
    check_height(run, units, faults);
    check_top(run, faults);
}

} // namespace fluewright
