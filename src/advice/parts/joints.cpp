#include "fluewright/advice/parts/joints.hpp"

#include "advice/checks/view.hpp"
#include "fluewright/model/states/states.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

using checking::Piece;

/// Sheet from here on is butted into sockets, thinner sheet is crimped.
constexpr double thick_sheet_m = 0.0012;
constexpr double metal_w_mk = 5.0;

double sheet_m(const WallBuild& wall) {
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        if (wall.layers[i].conductivity_w_mk > metal_w_mk) {
            return wall.layers[i].thickness_m;
        }
    }
    return 0.0;
}

struct UsualEnds {
    PipeEnd heater;
    PipeEnd chimney;
};

UsualEnds usual_ends(const WallBuild& wall, double thickness_m) {
    if (wall.kind == WallKind::masonry) {
        return {PipeEnd::open, PipeEnd::open};
    }
    if (wall.kind == WallKind::liner) {
        return {PipeEnd::crimped, PipeEnd::plain}; // its clamps and tees go together as thin pipe
    }
    if (wall.kind == WallKind::double_wall || wall.kind == WallKind::insulated) {
        return {PipeEnd::locking, PipeEnd::locking};
    }
    return thickness_m >= thick_sheet_m ? UsualEnds{PipeEnd::plain, PipeEnd::socket}
                                        : UsualEnds{PipeEnd::crimped, PipeEnd::plain};
}

bool has_ends(const Piece& piece) {
    const PartKind kind = piece.section->kind;
    return kind != PartKind::screen && kind != PartKind::obstruction && kind != PartKind::damper;
}

/// Where there is no wall under a deposit's name, the bare name is what ends go by.
std::string bare_wall(const WallBuild& wall) {
    return wall.id.substr(0, wall.id.find(" with deposit "));
}

double bore_m(const Piece& piece) {
    return piece.section->diameter_m + 2.0 * piece.part->deposit_m.value_or(0.0);
}

PartEnds ends_of(const Piece& piece, double bore_below_m) {
    const Part& part = *piece.part;
    PartEnds ends;
    ends.part = piece.index;
    ends.thickness_m =
        part.thickness_m.value_or(part.gauge ? sheet_gauge_m(*part.gauge) : sheet_m(*piece.wall));
    ends.thickness_assumed = !part.thickness_m && !part.gauge;
    const UsualEnds usual = usual_ends(*piece.wall, ends.thickness_m);
    const bool changes =
        piece.section->kind == PartKind::reducer || piece.section->kind == PartKind::increaser;
    EndFacts both{.end = PipeEnd::plain,
                  .diameter_m = bore_m(piece),
                  .wall = bare_wall(*piece.wall),
                  .rectangular = piece.section->rectangular,
                  .assumed = false};
    ends.heater = both;
    ends.heater.assumed = !part.heater_end;
    ends.heater.end = part.heater_end.value_or(usual.heater);
    // A reducer or increaser is bought for the size below it.
    ends.heater.diameter_m = changes ? bore_below_m : both.diameter_m;
    ends.chimney = std::move(both);
    ends.chimney.assumed = !part.chimney_end;
    ends.chimney.end = part.chimney_end.value_or(usual.chimney);
    return ends;
}

EndFacts collar(const Installation& written, const Case& c) {
    const Outlet& outlet = written.appliance.outlet;
    EndFacts facts;
    facts.assumed = !outlet.end;
    const bool front = c.appliance.type == ApplianceType::fireplace;
    facts.end = outlet.end ? *outlet.end : front ? PipeEnd::open : PipeEnd::socket;
    facts.diameter_m =
        c.sections.empty() ? c.appliance.outlet_diameter_m : c.sections.front().diameter_m;
    facts.rectangular = !c.sections.empty() && c.sections.front().rectangular;
    return facts;
}

} // namespace

JointReport joints_of(const Installation& written, const Case& installation) {
    JointReport report;
    const std::vector<Piece> pieces = checking::pieces_of(written, installation);
    EndFacts below = collar(written, installation);
    std::string below_place = "the outlet";
    int below_part = -1;
    std::vector<bool> may_turn;
    report.parts.reserve(pieces.size());
    report.joints.reserve(pieces.size());
    for (const Piece& piece : pieces) {
        if (!has_ends(piece)) {
            continue;
        }
        PartEnds ends = ends_of(piece, below.diameter_m);
        std::string place = checking::place_of(*piece.section);
        const PartKind kind = piece.section->kind;
        may_turn.push_back(kind == PartKind::straight || kind == PartKind::elbow);
        Fit fit = fit_of(below, ends.heater, installation.units);
        report.joints.push_back({.below = below_part,
                                 .above = piece.index,
                                 .place = "between " + below_place + " and " + place,
                                 .lower = std::move(below),
                                 .upper = ends.heater,
                                 .fit = std::move(fit),
                                 .turn_round = {},
                                 .turned = {}});
        below = ends.chimney;
        below_place = std::move(place);
        below_part = piece.index;
        report.parts.push_back(std::move(ends));
    }
    turn_parts(report, may_turn, installation.units);
    return report;
}

} // namespace fluewright
