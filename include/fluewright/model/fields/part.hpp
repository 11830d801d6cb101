#pragma once

#include "fluewright/model/fields/given.hpp"

#include <algorithm>
#include <vector>

/// The entries of the run, as the user wrote them.
namespace fluewright {

/// One entry of the run. Which members have a meaning depends on `part`; the field table says so.
struct Part {
    Choice<PartKind> part; ///< straight, elbow, tee, reducer, increaser, damper, screen, cap,
                           ///< obstruction, fitting
    Word name;
    Given up_m;     ///< rise of a vertical straight
    Given down_m;   ///< fall of a vertical straight
    Given across_m; ///< level distance
    Given rise_m;   ///< rise that goes with across_m
    Given slope;    ///< rise over level distance, instead of rise_m
    Given diameter_m;
    Given width_m; ///< with depth_m: a rectangular or oval flue
    Given depth_m;
    Choice<SectionShape> shape; ///< rectangular or oval; left out, rectangular
    Word liner;                 ///< trade name of a clay liner: gives width and depth
    Word wall;
    Choice<Zone> zone;          ///< room, attic, chase or outdoors
    Choice<Stretch> belongs_to; ///< connector or chimney; left out, by what the pipe is
    Given angle_rad;
    Choice<Build> build;  ///< elbow: smooth, gored, mitered; cap: open, plain, rain
    Given radius_m;       ///< centre-line radius of an elbow
    Choice<TeeFlow> flow; ///< tee: "side" (the gas turns in the tee) or "straight"
    Flag cleanout;
    Given blade_angle_rad; ///< damper: 0 is open, a right angle is shut
    Flag only_when_strong; ///< damper: turned so only while the draft is too strong, open else
    Given taper_length_m;
    Given mesh_m;                      ///< clear opening of a screen
    Given free_area;                   ///< share of the section a screen or cap leaves open
    Given blocked;                     ///< share of the section an obstruction takes
    Given deposit_m;                   ///< thickness of what has grown on the inside
    Choice<DepositKind> deposit;       ///< soot, flaky creosote, glazed creosote or ash
    Word fitting;                      ///< a fitting defined in the file or the catalog
    Given loss;                        ///< loss coefficient, when it is known
    Given rated_surface_temperature_k; ///< of the paint or the wall
    Choice<JointFit> joint;    ///< fit of the joint at its lower end: sealed ... loose, or a class
    Given joint_gap_m;         ///< width of the slit all round that joint
    Given leakage_area_m2;     ///< of that joint alone
    Given setting_pa;          ///< draft regulator: the draft at which it opens
    Given opening_diameter_m;  ///< draft regulator: of its gate
    Given open_area_m2;        ///< draft hood: of its opening to the room
    Given expansion_allowed_m; ///< movement the joint of a straight takes up
    Given clearance_m;         ///< to what burns
    Given listed_clearance_m;
    Choice<Shield> shield;
    Given shield_gap_m;
    Given shield_reach_m;   ///< how far the shield reaches past the pipe's axis on each side
    Choice<Passage> passes; ///< what it goes through
    Choice<PassThrough> pass_through; ///< how it goes through a wall
    Given pass_through_clearance_m;   ///< from its pipe, liner or thimble to the wood of the wall
    Flag attic_shield;                ///< whether a shield keeps insulation off it
    Given thickness_m;                ///< of the sheet
    Given gauge;
    Choice<PipeEnd> heater_end; ///< plain, crimped, socket, flange or locking
    Choice<PipeEnd> chimney_end;
    Given screws; ///< in the joint at its lower end
    Given lap_m;
    Given supports; ///< along it
    Flag slip_joint;
    Choice<ChimneyRating> rating; ///< HT, 650 degC or other
    Given cap_gap_m;

    bool operator==(const Part&) const = default;
};

/// Whether a run as it is written has a part of this kind.
[[nodiscard]] inline bool has_part(const std::vector<Part>& run, PartKind kind) {
    return std::any_of(
        run.begin(), run.end(), [kind](const Part& part) { return part.part == kind; });
}

/// Whether the file says that a part goes through a wall, a floor or the like.
[[nodiscard]] inline bool passes_something(const Part& part) {
    return part.passes.value_or(Passage::nothing) != Passage::nothing;
}

} // namespace fluewright
