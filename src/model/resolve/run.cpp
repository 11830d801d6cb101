#include "fluewright/model/fields/fields.hpp"
#include "fluewright/physics/fittings.hpp"
#include "resolving.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::resolving {
namespace {

constexpr double right_angle_rad = constants::pi / 2.0;

/// What carries on from part to part.
struct Carried {
    double diameter_m{}; ///< hydraulic, before deposits
    double width_m{};    ///< 0 for a round flue
    double depth_m{};
    std::string wall;
    Zone zone{Zone::room};
};

struct Builder {
    const Draft& draft;
    Carried now;
    int index{};
    std::string pointer;

    /// The part's number as people count, from 1.
    [[nodiscard]] std::string number() const { return std::to_string(index + 1); }

    Section section(PartKind kind, const Part& part) const;
    void take_over(const Part& part);
    void take_wall_and_zone(const Part& part);
    void add(const Part& part);
    void straight(const Part& part);
    void elbow(const Part& part);
    void tee(const Part& part);
    void change_of_size(const Part& part, PartKind kind);
    void damper(const Part& part);
    void cap(const Part& part);
    void point(const Part& part, PartKind kind, double loss);
    void step_if_size_changed(const Section& next) const;
    [[nodiscard]] double screen_loss(const Part& part) const;
    [[nodiscard]] double fitting_loss(const Part& part) const;
};

/// A section of the size, wall and zone that hold at this part.
Section Builder::section(PartKind kind, const Part& part) const {
    const WallLayer deposit = deposit_layer(draft, part, pointer);
    Section s;
    s.part = index;
    s.kind = kind;
    s.zone = now.zone;
    s.wall = wall_index(draft, now.wall, deposit);
    s.roughness_m = draft.made.walls[s.wall].roughness_m;
    s.rated_surface_k = part.rated_surface_temperature_k.value_or(0.0);
    s.expansion_allowed_m = part.expansion_allowed_m.value_or(-1.0);
    s.cleanout = part.cleanout.value_or(false);
    s.loss_given = part.loss.has_value();
    const double narrowing_m = 2.0 * deposit.thickness_m;
    if (now.width_m > 0.0) {
        const double width_m = now.width_m - narrowing_m;
        const double depth_m = now.depth_m - narrowing_m;
        s.rectangular = true;
        s.area_m2 = width_m * depth_m;
        s.perimeter_m = 2.0 * (width_m + depth_m);
    } else {
        const double diameter_m = now.diameter_m - narrowing_m;
        s.area_m2 = constants::pi / 4.0 * diameter_m * diameter_m;
        s.perimeter_m = constants::pi * diameter_m;
    }
    if (s.area_m2 <= 0.0 || (now.width_m <= 0.0 && now.diameter_m <= narrowing_m)) {
        draft.fault(pointer + "/deposit_thickness",
                    "the deposit fills the whole flue",
                    "the thickness is that of the layer on one side");
        s.area_m2 = 1e-4;
        s.perimeter_m = 4e-2;
    }
    s.diameter_m = 4.0 * s.area_m2 / s.perimeter_m;
    return s;
}

void Builder::take_over(const Part& part) {
    if (part.liner) {
        const catalog::ClayLiner& liner = *catalog::find_clay_liner(*part.liner);
        if (liner.shape == "round") {
            now.diameter_m = liner.inside_width_m;
            now.width_m = now.depth_m = 0.0;
        } else {
            now.width_m = liner.inside_width_m;
            now.depth_m = liner.inside_depth_m;
        }
    }
    if (part.diameter_m) {
        now.diameter_m = *part.diameter_m;
        now.width_m = now.depth_m = 0.0;
    }
    if (part.width_m && part.depth_m) {
        now.width_m = *part.width_m;
        now.depth_m = *part.depth_m;
    }
    take_wall_and_zone(part);
}

void Builder::take_wall_and_zone(const Part& part) {
    if (part.wall) {
        now.wall = *part.wall;
    }
    if (part.zone) {
        now.zone = *part.zone;
    }
}

/// A flue that changes size from one part to the next without a reducer or increaser between: a
/// sudden step, which the user should see as such.
void Builder::step_if_size_changed(const Section& next) const {
    auto& sections = draft.made.sections;
    const Section& before = sections.back();
    const bool fitting_made_it =
        before.kind == PartKind::reducer || before.kind == PartKind::increaser;
    const double ratio = next.area_m2 / before.area_m2;
    constexpr double same_size = 0.005;
    if (fitting_made_it || std::abs(ratio - 1.0) < same_size) {
        return;
    }
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

void Builder::straight(const Part& part) {
    Section s = section(PartKind::straight, part);
    if (part.across_m) {
        const double level_m = *part.across_m;
        s.rise_m = part.rise_m ? *part.rise_m : part.slope.value_or(0.0) * level_m;
        s.length_m = std::hypot(level_m, s.rise_m);
    } else {
        s.rise_m = part.up_m ? *part.up_m : -part.down_m.value_or(0.0);
        s.length_m = std::abs(s.rise_m);
    }
    step_if_size_changed(s);
    draft.made.sections.push_back(s);
}

void Builder::elbow(const Part& part) {
    Section s = section(PartKind::elbow, part);
    if (!part.angle_rad) {
        draft.assume(pointer + "/angle",
                     "angle of elbow " + number(),
                     Kind::angle,
                     right_angle_rad,
                     "judgement",
                     "judgement");
    }
    if (!part.build) {
        draft.assume_word(
            pointer + "/build", "build of elbow " + number(), "gored", "judgement", "judgement");
    }
    s.turn_rad = part.angle_rad.value_or(right_angle_rad);
    const Build build = part.build.value_or(Build::gored);
    if (build == Build::smooth) {
        const double ratio = part.radius_m
                                 ? *part.radius_m / s.diameter_m
                                 : catalog::default_of("elbow_radius_over_diameter_smooth").value;
        s.loss = fittings::bend_smooth(s.turn_rad, ratio);
    } else {
        s.loss = build == Build::mitred ? fittings::bend_mitred(s.turn_rad)
                                        : fittings::bend_gored(s.turn_rad);
    }
    s.loss = part.loss.value_or(s.loss);
    s.disturbs = true;
    step_if_size_changed(s);
    draft.made.sections.push_back(s);
}

void Builder::tee(const Part& part) {
    Section s = section(PartKind::tee, part);
    const bool straight_through = part.flow == TeeFlow::straight;
    if (!part.flow) {
        draft.assume_word(pointer + "/flow",
                          "way of the gas through tee " + number(),
                          "side",
                          "judgement",
                          "judgement");
    }
    s.turn_rad = straight_through ? 0.0 : part.angle_rad.value_or(right_angle_rad);
    const fittings::Junction junction{.angle_rad = part.angle_rad.value_or(right_angle_rad),
                                      .area_ratio = 1.0,
                                      .branch_flow = straight_through ? 0.0 : 1.0};
    s.loss = part.loss.value_or(straight_through ? fittings::tee_along_main(junction)
                                                 : fittings::tee_from_branch(junction));
    s.disturbs = true;
    step_if_size_changed(s);
    draft.made.sections.push_back(s);
}

void Builder::change_of_size(const Part& part, PartKind kind) {
    Section s = section(kind, part);
    const double before_m2 = draft.made.sections.back().area_m2;
    const double before_m = std::sqrt(4.0 * before_m2 / constants::pi);
    const double after_m = std::sqrt(4.0 * s.area_m2 / constants::pi);
    const fittings::Cone cone{.small_diameter_m = std::min(before_m, after_m),
                              .large_diameter_m = std::max(before_m, after_m),
                              .length_m = part.taper_length_m.value_or(0.0)};
    if (!part.taper_length_m) {
        draft.assume(pointer + "/taper_length",
                     "length of the taper of part " + number() + ": a sudden step",
                     Kind::length,
                     0.0,
                     "judgement",
                     "judgement");
    }
    const double ratio = s.area_m2 / before_m2;
    s.kind = ratio <= 1.0 ? PartKind::reducer : PartKind::increaser;
    s.loss = ratio <= 1.0 ? fittings::reducer(cone) : fittings::increaser(cone) * ratio * ratio;
    s.loss = part.loss.value_or(s.loss);
    s.disturbs = true;
    draft.made.sections.push_back(s);
}

void Builder::point(const Part& part, PartKind kind, double loss) {
    Section s = section(kind, part);
    s.loss = part.loss.value_or(loss);
    s.disturbs = true;
    step_if_size_changed(s);
    draft.made.sections.push_back(s);
}

void Builder::damper(const Part& part) {
    if (!part.blade_angle_rad && !part.loss) {
        draft.assume(pointer + "/blade_angle",
                     "blade of damper " + number() + ": open",
                     Kind::angle,
                     0.0,
                     "judgement",
                     "judgement");
    }
    double edge = 0.0;
    if (part.free_area) {
        edge = *part.free_area;
    } else if (!part.loss) {
        edge = draft.value_or_default(std::nullopt,
                                      pointer + "/free_area",
                                      "share that damper " + number() + " leaves open when shut",
                                      Kind::fraction,
                                      "damper_shut_free_share");
    }
    const double turned = fittings::disc_damper(part.blade_angle_rad.value_or(0.0), edge);
    if (part.only_when_strong.value_or(false) && !part.loss) {
        point(part, PartKind::damper, fittings::disc_damper(0.0, edge));
        draft.made.sections.back().loss_when_strong = turned;
        return;
    }
    point(part, PartKind::damper, turned);
}

/// What is stuck in the mesh takes its share of the openings that clean wire leaves.
double Builder::screen_loss(const Part& part) const {
    const bool wire = part.mesh_m || part.part == PartKind::screen;
    double open = 1.0;
    if (part.free_area) {
        open = *part.free_area;
    } else if (wire) {
        open = draft.value_or_default(std::nullopt,
                                      pointer + "/free_area",
                                      "free share of the screen at part " + number(),
                                      Kind::fraction,
                                      "screen_free_area_share");
    }
    return fittings::screen(open * (1.0 - part.blocked.value_or(0.0)));
}

void Builder::cap(const Part& part) {
    const Build build = part.build.value_or(Build::plain);
    if (!part.build && !part.loss) {
        draft.assume_word(
            pointer + "/build", "build of the cap", name(build), "judgement", "judgement");
    }
    const catalog::Fitting& row = *catalog::find_fitting(build == Build::open   ? "open end"
                                                         : build == Build::rain ? "rain cap"
                                                                                : "plain cap");
    double loss = row.loss;
    if (!part.loss && build != Build::open) {
        draft.assume(pointer + "/loss",
                     "loss coefficient of a " + std::string{row.id},
                     Kind::number,
                     row.loss,
                     row.source,
                     row.mark);
    }
    if (part.mesh_m || part.free_area || part.blocked) {
        loss += screen_loss(part);
    }
    point(part, PartKind::cap, loss);
}

double Builder::fitting_loss(const Part& part) const {
    const std::string id = part.fitting.value_or("");
    for (const OwnFitting& own : draft.written.fittings) {
        if (own.id == id) {
            return own.loss.value_or(0.0);
        }
    }
    if (const catalog::Fitting* row = catalog::find_fitting(id)) {
        draft.assume(pointer + "/loss",
                     "loss coefficient of " + id,
                     Kind::number,
                     row->loss,
                     row->source,
                     row->mark);
        return row->loss;
    }
    if (!part.loss) {
        draft.fault(pointer,
                    "this fitting has neither a known name nor a loss coefficient",
                    R"(write "loss": 0.5, or a name out of `fluewright catalog fittings`)");
    }
    return 0.0;
}

void Builder::add(const Part& part) {
    take_over(part);
    switch (part.part.value_or(PartKind::straight)) {
    case PartKind::elbow:
        elbow(part);
        break;
    case PartKind::tee:
        tee(part);
        break;
    case PartKind::reducer:
        change_of_size(part, PartKind::reducer);
        break;
    case PartKind::increaser:
        change_of_size(part, PartKind::increaser);
        break;
    case PartKind::damper:
        damper(part);
        break;
    case PartKind::screen:
        point(part, PartKind::screen, screen_loss(part));
        break;
    case PartKind::cap:
        cap(part);
        break;
    case PartKind::obstruction:
        point(part, PartKind::obstruction, fittings::obstruction(1.0 - part.blocked.value_or(0.0)));
        break;
    case PartKind::fitting:
        point(part, PartKind::fitting, fitting_loss(part));
        break;
    case PartKind::draft_regulator:
        point(part, PartKind::draft_regulator, catalog::find_fitting("draft regulator")->loss);
        break;
    case PartKind::draft_hood:
        point(part, PartKind::draft_hood, catalog::find_fitting("draft hood")->loss);
        break;
    case PartKind::straight:
    case PartKind::collar:
        straight(part);
        break;
    }
}

/// Turns that follow each other closely lose more than each alone.
void couple_bends(std::vector<Section>& sections) {
    for (std::size_t i = 0; i < sections.size(); ++i) {
        if (sections[i].kind != PartKind::elbow) {
            continue;
        }
        double straight_m = 0.0;
        for (std::size_t j = i + 1; j < sections.size(); ++j) {
            if (sections[j].turn_rad > 0.0) {
                sections[i].loss *= fittings::bend_spacing_factor(
                    sections[i].turn_rad, straight_m / sections[i].diameter_m);
                break;
            }
            straight_m += sections[j].length_m;
        }
    }
}

bool is_outdoors_at_end(const std::vector<Part>& parts) {
    return std::any_of(
        parts.begin(), parts.end(), [](const Part& p) { return p.zone.has_value(); });
}

} // namespace

void run(const Draft& draft) {
    const auto& parts = draft.written.run;
    const ApplianceCase& a = draft.made.appliance;
    const Outlet& outlet = draft.written.appliance.outlet;
    Carried start;
    start.diameter_m = a.outlet_diameter_m;
    if (outlet.width_m && outlet.depth_m) {
        start.width_m = *outlet.width_m;
        start.depth_m = *outlet.depth_m;
    }
    start.wall = "single-wall steel";
    Builder builder{draft, std::move(start), -1, "/appliance/outlet"};
    Section collar = builder.section(PartKind::collar, Part{});
    collar.disturbs = true;
    draft.made.sections.push_back(collar);
    if (!parts.empty() && !parts.front().wall) {
        draft.assume_word(
            "/run/0/wall", "wall of the first part", builder.now.wall, "judgement", "judgement");
    }
    if (!is_outdoors_at_end(parts)) {
        draft.assume_word(
            "/run/0/zone", "where the whole run stands", "room", "judgement", "judgement");
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        builder.index = static_cast<int>(i);
        builder.pointer = "/run/" + std::to_string(i);
        builder.add(parts[i]);
    }
    if (parts.empty() || draft.made.sections.back().kind != PartKind::cap) {
        Section mouth = draft.made.sections.back();
        mouth.part = static_cast<int>(parts.size());
        mouth.kind = PartKind::cap;
        mouth.length_m = mouth.rise_m = mouth.loss = mouth.turn_rad = 0.0;
        draft.made.sections.push_back(mouth);
        draft.assume_word(
            "/run", "what stands on the mouth", "nothing (open end)", "judgement", "judgement");
    }
    couple_bends(draft.made.sections);
}

} // namespace fluewright::resolving
