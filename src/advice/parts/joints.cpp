#include "fluewright/advice/parts/joints.hpp"

#include "fluewright/model/states/states.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// Sheet up to this is crimped by hand: 22 gauge. Common practice, no source.
constexpr double most_crimped_m = 0.0008;

bool has_ends(const RunPart& part) {
    return part.kind != PartKind::screen && part.kind != PartKind::obstruction
           && part.kind != PartKind::damper && !part.bare_end();
}

PartEnds ends_of(const RunPart& part, const WallBuild& wall, const EndFacts& below) {
    PartEnds ends;
    ends.part = part.index;
    ends.thickness_m = part.thickness_m;
    ends.thickness_assumed = !part.thickness_given;
    ends.chimney.end = part.chimney_end.value;
    ends.chimney.wall = wall.name;
    ends.chimney.assumed = !part.chimney_end.given;
    ends.chimney.take_bore(part.bore);
    ends.chimney.can_crimp = part.wall_kind == WallKind::single && part.bore.round()
                             && part.thickness_m > 0.0 && part.thickness_m <= most_crimped_m;
    ends.heater = ends.chimney;
    ends.heater.end = part.heater_end.value;
    ends.heater.assumed = !part.heater_end.given;
    if (part.changes_size()) {
        // A reducer or increaser is bought for the section below it.
        ends.heater.diameter_m = below.diameter_m;
        ends.heater.rectangular = below.rectangular;
        ends.heater.oval = below.oval;
        ends.heater.width_m = below.width_m;
        ends.heater.depth_m = below.depth_m;
        ends.heater.can_crimp = ends.heater.can_crimp && !below.rectangular;
    }
    return ends;
}

EndFacts collar_facts(const Collar& collar) {
    EndFacts facts;
    facts.end = collar.end.value;
    facts.assumed = !collar.end.given;
    facts.take_bore(collar.bore);
    return facts;
}

} // namespace

JointReport joints_of(const Case& resolved) {
    JointReport report;
    const std::vector<RunPart>& parts = resolved.run.parts;
    EndFacts below = collar_facts(resolved.run.collar);
    std::string below_place = "the outlet";
    int below_part = -1;
    std::vector<bool> may_turn;
    report.parts.reserve(parts.size());
    report.joints.reserve(parts.size());
    for (const RunPart& part : parts) {
        if (!has_ends(part)) {
            continue;
        }
        PartEnds ends = ends_of(part, resolved.walls[part.wall], below);
        std::string place = label(part);
        may_turn.push_back(part.kind == PartKind::straight || part.kind == PartKind::elbow);
        Fit fit = fit_of(below, ends.heater, resolved.units);
        report.joints.push_back({.below = below_part,
                                 .above = part.index,
                                 .place = "between " + below_place + " and " + place,
                                 .lower = std::move(below),
                                 .upper = ends.heater,
                                 .fit = std::move(fit),
                                 .turn_round = {},
                                 .turned = {}});
        below = ends.chimney;
        below_place = std::move(place);
        below_part = part.index;
        report.parts.push_back(std::move(ends));
    }
    turn_parts(report, may_turn, resolved.units);
    return report;
}

} // namespace fluewright
