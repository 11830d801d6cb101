#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/physics/fittings.hpp"
#include "model/run/ends.hpp"
#include "model/run/shape_faults.hpp"
#include "model/run/stretch.hpp"
#include "model/run/turns.hpp"
#include "run_builder.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::resolving {
namespace {

/// Whether a part of this kind turns the gas, or may.
bool may_turn(PartKind kind) {
    return kind == PartKind::elbow || kind == PartKind::tee || kind == PartKind::fitting
           || kind == PartKind::draft_hood;
}

PartKind kind_of(const Part& written) {
    return written.part.value_or(PartKind::straight);
}

/// The bore of the part made last, or of the collar.
const FlueBore& bore_before(const Run& made) {
    return made.parts.empty() ? made.collar.bore : made.parts.back().bore;
}

/// How steeply a straight of the file climbs; empty for other parts.
std::optional<double> climb_of_written(const Part& written) {
    if (kind_of(written) != PartKind::straight) {
        return std::nullopt;
    }
    const StraightShape shape = shape_of(written);
    return climb_of(shape.rise_m, shape.plan_m);
}

/// The turns that the straights on both sides of a part ask of it, where it is the only part
/// between them that turns.
std::optional<TurnRange> needed_turn(const std::vector<Part>& run, std::size_t index) {
    std::optional<double> before;
    for (std::size_t i = index; i-- > 0 && !before;) {
        if (may_turn(kind_of(run[i]))) {
            return std::nullopt;
        }
        before = climb_of_written(run[i]);
    }
    std::optional<double> behind;
    for (std::size_t i = index + 1; i < run.size() && !behind; ++i) {
        if (may_turn(kind_of(run[i]))) {
            return std::nullopt;
        }
        behind = climb_of_written(run[i]);
    }
    if (!before || !behind) {
        return std::nullopt;
    }
    return turns_between(*before, *behind);
}

} // namespace

Section RunBuilder::section(PartKind kind, const Part& written) {
    const WallLayer deposit = deposit_layer(work, written, pointer);
    Section s;
    s.part = index;
    s.kind = kind;
    s.zone = now.zone.value;
    s.wall = wall_index(work, now.wall, deposit);
    s.roughness_m = work.made.walls[s.wall].roughness_m;
    s.rated_surface_k = written.rated_surface_temperature_k.value_or(0.0);
    s.expansion_allowed_m = written.expansion_allowed_m.value_or(-1.0);
    s.cleanout = written.cleanout.value_or(false);
    s.loss_given = written.loss.has_value();
    const FlueBore bore = narrowed(now.bore, deposit.thickness_m);
    s.rectangular = bore.rectangular();
    s.area_m2 = bore.area_m2;
    s.perimeter_m = bore.perimeter_m;
    if (bore.area_m2 <= 0.0) {
        work.fault(pointer + "/deposit_thickness",
                   "the deposit fills the whole flue",
                   "the thickness is that of the layer on one side");
        s.area_m2 = 1e-4;
        s.perimeter_m = 4e-2;
    }
    s.diameter_m = 4.0 * s.area_m2 / s.perimeter_m;
    s.built_diameter_m = 4.0 * now.bore.area_m2 / now.bore.perimeter_m;
    s.built_area_m2 = now.bore.area_m2;
    return s;
}

void RunBuilder::take_over(const Part& written) {
    if (written.liner) {
        const catalog::ClayLiner& liner = *catalog::find_clay_liner(*written.liner);
        now.bore = liner.shape == "round"
                       ? round_bore(liner.inside_width_m)
                       : rectangular_bore(liner.inside_width_m, liner.inside_depth_m);
        now.bore.clay_liner = true;
    }
    if (const std::optional<FlueBore> stated = bore_of(size_of(written))) {
        now.bore = *stated;
    }
    if (written.wall) {
        now.wall = *written.wall;
        now.wall_given = true;
    }
    if (written.zone) {
        now.zone = {*written.zone, true};
    }
}

RunPart RunBuilder::begin(const Part& written) const {
    RunPart part;
    part.index = index;
    part.kind = kind_of(written);
    part.written = written;
    part.zone = now.zone;
    part.wall_given = now.wall_given;
    part.bore = now.bore;
    part.cleanout = written.cleanout.value_or(false);
    part.foot_height_m = part.top_height_m = height_m;
    return part;
}

void RunBuilder::finish(RunPart part, Section section, bool step_allowed) {
    auto& sections = work.made.sections;
    part.first_section = sections.size();
    if (step_allowed) {
        step_if_size_changed(section);
    }
    part.section = sections.size();
    part.wall = section.wall;
    part.wall_kind = work.made.walls[section.wall].kind;
    close_tee(part, section);
    section.loss = part.written.loss.value_or(section.loss);
    fill_ends(part, work.made.walls[section.wall]);
    sections.push_back(section);
    height_m = part.top_height_m;
    work.made.run.parts.push_back(std::move(part));
}

/// The end of a tee that no gas uses is closed, as a rule with what comes off for sweeping. Brick
/// has a door for it, or none; beside a draft regulator it may be the regulator that closes it.
void RunBuilder::close_tee(RunPart& part, Section& section) const {
    const auto regulates = [&](std::size_t at) {
        const auto& run = work.written.run;
        return at < run.size() && kind_of(run[at]) == PartKind::draft_regulator;
    };
    const auto at = static_cast<std::size_t>(part.index);
    if (part.kind != PartKind::tee || part.written.cleanout || part.wall_kind == WallKind::masonry
        || regulates(at + 1) || (at > 0 && regulates(at - 1))) {
        return;
    }
    part.cleanout = section.cleanout = true;
    work.assume_word(pointer + "/cleanout",
                     "plug or cap that closes the open end of tee " + number()
                         + ", and comes off for sweeping",
                     "true",
                     "practice",
                     "common practice");
}

/// A flue that changes size from one part to the next without a reducer or increaser between: a
/// sudden step, which the user should see as such.
void RunBuilder::step_if_size_changed(const Section& next) const {
    auto& sections = work.made.sections;
    const Section& before = sections.back();
    const bool fitting_made_it =
        before.kind == PartKind::reducer || before.kind == PartKind::increaser;
    if (fitting_made_it || is_same_size(next.area_m2, before.area_m2)) {
        return;
    }
    const double ratio = next.area_m2 / before.area_m2;
    Section step = next;
    step.length_m = step.rise_m = 0.0;
    step.kind = ratio < 1.0 ? PartKind::reducer : PartKind::increaser;
    // Coefficients hold in the smaller section; the section's own head is that behind the step.
    step.loss = ratio < 1.0 ? fittings::sudden_contraction(ratio)
                            : fittings::sudden_enlargement(1.0 / ratio) * ratio * ratio;
    step.disturbs = true;
    step.cleanout = false;
    step.turn_rad = 0.0;
    sections.push_back(step);
}

void RunBuilder::straight(RunPart part, Section section) {
    const StraightShape shape = shape_of(part.written);
    part.plan_m = shape.plan_m;
    part.rise_m = shape.rise_m;
    part.length_m = shape.length_m;
    part.lie = shape.lie;
    part.top_height_m = part.foot_height_m + part.rise_m;
    section.length_m = part.length_m;
    section.rise_m = part.rise_m;
    section.lie = part.lie;
    finish(std::move(part), section, true);
}

void RunBuilder::turn(RunPart part, Section section) {
    const Part& written = part.written;
    const auto needed = needed_turn(work.written.run, static_cast<std::size_t>(index));
    part.turn_given = written.angle_rad.has_value();
    if (part.kind == PartKind::elbow) {
        part.build = {written.build.value_or(Build::gored), written.build.has_value()};
        part.turn_rad = written.angle_rad.value_or(usual_turn_rad(needed));
        if (!written.angle_rad) {
            work.assume(pointer + "/angle",
                        "angle of elbow " + number(),
                        Kind::angle,
                        part.turn_rad,
                        "judgement",
                        "judgement");
        }
        section.loss = elbow_loss(*this, part, section);
    } else {
        // A tee between two straights of one direction can only be passed by.
        const bool aligned = needed && needed->most_rad < turn_slack_rad;
        part.flow = {written.flow.value_or(aligned ? TeeFlow::straight : TeeFlow::side),
                     written.flow.has_value()};
        if (!written.flow) {
            work.assume_word(pointer + "/flow",
                             "way of the gas through tee " + number(),
                             name(part.flow.value),
                             "judgement",
                             "judgement");
        }
        part.turn_rad = part.flow.value == TeeFlow::straight
                            ? 0.0
                            : written.angle_rad.value_or(constants::pi / 2.0);
        section.loss = tee_loss(part);
    }
    section.turn_rad = part.turn_rad;
    section.disturbs = true;
    finish(std::move(part), section, true);
}

void RunBuilder::change_of_size(RunPart part, Section section) {
    const double before_m2 = work.made.sections.back().area_m2;
    section.loss = size_change_loss(*this, part, before_m2, section.area_m2);
    section.kind = section.area_m2 <= before_m2 ? PartKind::reducer : PartKind::increaser;
    part.kind = section.kind;
    section.disturbs = true;
    finish(std::move(part), section, false);
}

void RunBuilder::point(RunPart part, Section section) {
    const Part& written = part.written;
    if (part.kind == PartKind::cap) {
        part.build = {written.build.value_or(Build::plain), written.build.has_value()};
    }
    if (part.bare_end() && is_same_size(part.bore.area_m2, bore_before(work.made.run).area_m2)) {
        // No deposit is said of an end: what has grown in the part below it ends with that.
        const Section& below = work.made.sections.back();
        section.area_m2 = below.area_m2;
        section.perimeter_m = below.perimeter_m;
        section.diameter_m = below.diameter_m;
        section.built_diameter_m = below.built_diameter_m;
        section.built_area_m2 = below.built_area_m2;
        section.wall = below.wall;
        section.roughness_m = below.roughness_m;
    }
    if (part.kind == PartKind::damper) {
        part.open_when_shut = open_when_shut(*this, written);
    }
    section.loss = point_loss(*this, part);
    if (part.kind == PartKind::damper && written.only_when_strong.value_or(false)
        && !written.loss) {
        section.loss_when_strong = section.loss;
        section.loss = fittings::disc_damper(0.0, part.open_when_shut.value_or(0.0));
    }
    section.disturbs = part.kind != PartKind::cap;
    finish(std::move(part), section, true);
}

void RunBuilder::add(const Part& written) {
    take_over(written);
    RunPart part = begin(written);
    Section made = section(part.kind, written);
    switch (part.kind) {
    case PartKind::straight:
    case PartKind::collar:
        straight(std::move(part), made);
        break;
    case PartKind::elbow:
    case PartKind::tee:
        turn(std::move(part), made);
        break;
    case PartKind::reducer:
    case PartKind::increaser:
        change_of_size(std::move(part), made);
        break;
    case PartKind::damper:
    case PartKind::screen:
    case PartKind::cap:
    case PartKind::obstruction:
    case PartKind::fitting:
    case PartKind::draft_regulator:
    case PartKind::draft_hood:
        point(std::move(part), made);
        break;
    }
}

namespace {

void add_open_end(const CaseWork& work) {
    Section top = work.made.sections.back();
    top.part = static_cast<int>(work.written.run.size());
    top.kind = PartKind::cap;
    top.length_m = top.rise_m = top.loss = top.turn_rad = 0.0;
    work.made.sections.push_back(top);
    work.assume_word(
        "/run", "what is on the chimney top", "nothing: open end", "judgement", "judgement");
}

} // namespace

void run(const CaseWork& work) {
    const auto& parts = work.written.run;
    const ApplianceCase& a = work.made.appliance;
    const Outlet& outlet = work.written.appliance.outlet;
    Carried start;
    start.bore = bore_of(size_of(outlet)).value_or(round_bore(a.outlet_diameter_m));
    start.wall = "single-wall steel";
    work.made.run.collar = {.bore = start.bore, .end = collar_end(outlet, a.type)};
    work.made.run.parts.reserve(parts.size());
    RunBuilder builder{work, std::move(start), -1, "/appliance/outlet"};
    Section collar = builder.section(PartKind::collar, Part{});
    collar.disturbs = true;
    work.made.sections.push_back(collar);
    if (!parts.empty() && !parts.front().wall) {
        work.assume_word(
            "/run/0/wall", "wall of the first part", builder.now.wall, "judgement", "judgement");
    }
    if (!parts.empty() && !parts.front().zone) {
        work.assume_word(
            "/run/0/zone", "where the first part stands", "room", "judgement", "judgement");
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        builder.index = static_cast<int>(i);
        builder.pointer = "/run/" + std::to_string(i);
        builder.add(parts[i]);
    }
    if (parts.empty() || work.made.sections.back().kind != PartKind::cap) {
        add_open_end(work);
    }
    couple_bends(work.made.sections);
    decide_stretches(work.made.run, work.made.walls, a.fuel_group);
    add_shape_faults(work.made.run, work.made.units, work.faults);
}

} // namespace fluewright::resolving
