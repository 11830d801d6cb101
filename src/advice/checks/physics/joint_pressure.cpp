#include "joint_pressure.hpp"

#include "advice/checks/subject.hpp"
#include "fluewright/advice/checks/joint_air.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "greatest_loss.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>
#include <vector>

namespace fluewright::checking {
namespace {

/// A joint in one state.
struct PressedJoint {
    const Section* section{}; ///< the one above it
    const StateResult* state{};
    SmokeSpace space{};
    JointMake make{};
    JointHarm harm{};
    double over_pa{};          ///< over the air around it
    double over_outdoors_pa{}; ///< over the air outdoors at that height

    [[nodiscard]] bool worse_than(const PressedJoint& other) const {
        return std::tuple{harm, over_pa} > std::tuple{other.harm, other.over_pa};
    }
};

/// With a fire and the door shut. An open front stands at the flow that the flue draws through it:
/// what is more than that comes out of the front and presses on no joint.
bool presses_on_joints(const View& view, const StateResult& state) {
    if (has_open_front(view.heater())) {
        return is_door_open(state.kind) && state.status == Status::solved;
    }
    return view.has(state) && has_closed_fire(state.kind);
}

/// By the slit that the leak comes to. Where the file leaves no slit at all, what pipe of that kind
/// usually has: nobody has said that it is sealed.
JointMake make_of(const Piece& piece, const Section& lower_end) {
    const double slit_m = lower_end.joint_leak_m2 / lower_end.perimeter_m;
    if (slit_m <= 0.0) {
        if (piece.wall->name == "pellet vent") {
            return JointMake::sealed; // by its gaskets
        }
        const bool slips = !is_chimney_wall(piece.wall->kind) || piece.is_unlined();
        return slips ? JointMake::slip : JointMake::locked;
    }
    const auto value = [](DefaultId id) { return catalog::default_of(id).value; };
    const double sealed_m = value(DefaultId::joint_gap_sealed_m);
    const double tight_m = value(DefaultId::joint_gap_tight_m);
    const double ordinary_m = value(DefaultId::joint_gap_ordinary_m);
    return slit_m < std::sqrt(sealed_m * tight_m)     ? JointMake::sealed
           : slit_m < std::sqrt(tight_m * ordinary_m) ? JointMake::locked
                                                      : JointMake::slip;
}

/// Lined masonry goes on over the next part without a joint, unless the file says of a leak there.
bool is_one_masonry(const View& view, const Piece& piece) {
    const std::size_t first = piece.run_part->first_section;
    if (first == 0 || view.resolved.sections[first].joint_leak_m2 > 0.0) {
        return false;
    }
    const WallBuild& below = view.resolved.walls[view.resolved.sections[first - 1].wall];
    return piece.wall->kind == WallKind::masonry && below.kind == WallKind::masonry
           && !piece.is_unlined();
}

/// The joint at the lower end of a part; none where it has none that smoke comes out of unsaid: the
/// bare end of a pipe, masonry that goes on, and a hood, which has a check of its own.
std::optional<PressedJoint>
joint_of(const View& view, const Piece& piece, const StateResult& state) {
    if (piece.run_part->bare_end() || piece.section->kind == PartKind::draft_hood
        || is_one_masonry(view, piece)) {
        return std::nullopt;
    }
    const std::size_t first = piece.run_part->first_section;
    const Section& section = view.resolved.sections[first];
    const JointAir air = joint_air(view.resolved, state, first);
    PressedJoint joint{.section = piece.section,
                       .state = &state,
                       .space = space_of(air.zone),
                       .make = make_of(piece, section),
                       .harm = JointHarm::none,
                       .over_pa = air.over_pa,
                       .over_outdoors_pa = state.stations[first].pressure_pa};
    joint.harm = joint_harm(joint.space, joint.make, joint.over_pa);
    if (view.heater().pushed_by_fan && joint.make == JointMake::sealed) {
        // Pipe made for it under the push of a fan: right where somebody has said that it is
        // sealed.
        joint.harm = section.joint_leak_m2 > 0.0 ? JointHarm::none
                                                 : std::min(joint.harm, JointHarm::warning);
    }
    return joint;
}

/// The worst joint indoors in a state.
std::optional<PressedJoint> worst_joint(const View& view, const StateResult& state) {
    std::optional<PressedJoint> worst;
    for (const Piece& piece : view.pieces) {
        const std::optional<PressedJoint> joint = joint_of(view, piece, state);
        if (joint && joint->space != SmokeSpace::open_air
            && (!worst || joint->worse_than(*worst))) {
            worst = joint;
        }
    }
    return worst;
}

constexpr std::string_view words(SmokeSpace space) {
    return space == SmokeSpace::living ? "the room" : "the closed space";
}

constexpr std::string_view words(JointMake make) {
    return make == JointMake::slip     ? "a slip joint"
           : make == JointMake::locked ? "a locked joint"
                                       : "a sealed joint";
}

void hold_joint(Subject& s, const PressedJoint& joint, JointHarm level) {
    const auto* row = joint_pressure_rows.begin();
    while (row->space != joint.space || row->make != joint.make) {
        ++row;
    }
    const double limit_pa = level == JointHarm::danger    ? row->danger_pa
                            : level == JointHarm::warning ? row->warning_pa
                                                          : row->note_pa;
    const std::size_t check = level == JointHarm::danger    ? own("smoke-at-joints")
                              : level == JointHarm::warning ? own("smoke-may-seep-at-joints")
                                                            : own("joints-without-draft");
    CheckResult* f = s.hold(check,
                            joint.harm < level,
                            {.kind = Kind::pressure,
                             .figure = joint.over_pa,
                             .limit = limit_pa,
                             .weight = joint.over_pa - limit_pa},
                            {.section = joint.section, .place = {}, .state = joint.state});
    if (f == nullptr || !s.with_words()) {
        return;
    }
    const bool at_limit = joint.state->status == Status::cannot_vent;
    f->message =
        (at_limit ? "At the most that the run can vent, less than this fire gives, the gas "
                    "at the lower end of "
                  : "The gas at the lower end of ")
        + f->place + " is " + s.show(joint.over_pa, Kind::pressure) + " above the pressure of "
        + std::string{words(joint.space)} + "; " + std::string{words(joint.make)}
        + " allows at most " + s.show(limit_pa, Kind::pressure) + ".";
    // Near its top every flue is close to outdoor pressure; a room below that cannot hold smoke
    // out.
    if (joint.over_outdoors_pa <= 0.0 && level != JointHarm::note) {
        f->remedy = std::string{"The room is below outdoor pressure. First let air in: open a "
                                "window, "}
                    + (s.resolved.house.fans_may_run() ? "stop fans, " : "")
                    + "or fit an air inlet.";
    }
    // A fitting presses on the joints below it, and on its own.
    const GreatestLoss most = greatest_loss(s, *joint.state);
    if (joint.over_outdoors_pa > 0.0 && most.fitting != nullptr && most.fitting >= joint.section) {
        f->remedy = "Begin with " + s.resolved.run.label_at(most.fitting->part) + ", where "
                    + s.show(most.fitting_pa, Kind::pressure)
                    + " is lost. Sealing the joint alone only hides it.";
    }
    // What pushes from above is no restriction.
    const double wind_pa = s.wind_on_top_pa(*joint.state);
    if (wind_pa > joint.over_pa || most.by == Taker::wind) {
        f->remedy = "The wind pushes down on the chimney top with "
                    + s.show(wind_pa, Kind::pressure)
                    + ". Raise the top into clear wind, or fit an anti-downdraft cap. Light no "
                      "fire in such wind before that.";
    }
    if (s.resolved.appliance.high.draft_needed_pa < 0.0) {
        f->remedy = "Behind a fan a vent may be under pressure where every joint is sealed: use "
                    "pieces made for pressure and seal them as their maker states.";
    }
}

/// A vent behind a fan is under pressure at the start, in wind and when ash lies in it, whatever
/// the draft of a steady fire.
void behind_fan(Subject& s) {
    if (s.resolved.appliance.high.draft_needed_pa >= 0.0) {
        return;
    }
    const double tight_m = catalog::default_of(DefaultId::joint_gap_tight_m).value;
    for (const Piece& piece : s.view.pieces) {
        if (piece.run_part->bare_end() || piece.section->kind == PartKind::draft_hood) {
            continue;
        }
        const Section& lower_end = s.resolved.sections[piece.run_part->first_section];
        const bool met = make_of(piece, lower_end) != JointMake::slip;
        const double slit_m = lower_end.joint_leak_m2 / lower_end.perimeter_m;
        CheckResult* f = s.hold(own("fan-vent-not-sealed"),
                                met,
                                {.kind = Kind::length,
                                 .figure = slit_m > 0.0 ? std::optional{slit_m} : std::nullopt,
                                 .limit = tight_m,
                                 .weight = met ? -1.0 : slit_m / tight_m},
                                {.section = piece.section});
        if (f != nullptr && s.with_words()) {
            f->message =
                "The joint below " + f->place + " is a slip joint, and a fan blows into this vent.";
        }
    }
}

} // namespace

/// All states are weighed before any is put down, so that one joint is not a danger in one state
/// and a note in the next.
void joint_pressure(Subject& s) {
    behind_fan(s);
    std::vector<PressedJoint> worst;
    JointHarm most = JointHarm::none;
    for (const StateResult& state : s.view.states()) {
        if (state.stations.empty() || !presses_on_joints(s.view, state)) {
            continue;
        }
        if (const std::optional<PressedJoint> joint = worst_joint(s.view, state)) {
            worst.push_back(*joint);
            most = std::max(most, joint->harm);
        }
    }
    for (const PressedJoint& joint : worst) {
        for (const JointHarm level : {JointHarm::danger, JointHarm::warning, JointHarm::note}) {
            if (level >= most) {
                hold_joint(s, joint, level);
            }
        }
    }
}

} // namespace fluewright::checking
