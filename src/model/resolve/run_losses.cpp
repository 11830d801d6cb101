#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/fields/own_names.hpp"
#include "fluewright/physics/fittings.hpp"
#include "run_builder.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::resolving {
namespace {

double damper_loss(const RunBuilder& b, const RunPart& part) {
    const Part& written = part.written;
    if (!written.blade_angle_rad && !written.loss) {
        b.work.assume(b.pointer + "/blade_angle",
                      "blade of damper " + b.number() + ": open",
                      Kind::angle,
                      0.0,
                      "judgement",
                      "judgement");
    }
    return fittings::disc_damper(written.blade_angle_rad.value_or(0.0),
                                 part.open_when_shut.value_or(0.0));
}

/// What is stuck in the mesh takes its share of the openings that clean wire leaves.
double screen_loss(const RunBuilder& b, const RunPart& part) {
    const Part& written = part.written;
    const bool wire = written.mesh_m || part.kind == PartKind::screen;
    double open = 1.0;
    if (written.free_area) {
        open = *written.free_area;
    } else if (wire) {
        open = b.work.value_or_default(std::nullopt,
                                       b.pointer + "/free_area",
                                       "free share of the screen at part " + b.number(),
                                       Kind::fraction,
                                       DefaultId::screen_free_area_share);
    }
    return fittings::screen(open * (1.0 - written.blocked.value_or(0.0)));
}

std::string_view cap_row(Build build) {
    return build == Build::open ? "open end" : build == Build::rain ? "rain cap" : "plain cap";
}

double cap_loss(const RunBuilder& b, const RunPart& part) {
    const Part& written = part.written;
    if (!written.build && !written.loss) {
        b.work.assume_word(b.pointer + "/build",
                           "build of the cap",
                           name(part.build.value),
                           "judgement",
                           "judgement");
    }
    const catalog::Fitting& row = *catalog::find_fitting(cap_row(part.build.value));
    double loss = row.loss;
    // The key for the loss is that of the whole cap.
    const bool screened = written.mesh_m || written.free_area || written.blocked;
    if (!written.loss && part.build.value != Build::open) {
        b.work.assume(b.pointer + (screened ? "/build" : "/loss"),
                      "loss coefficient of a " + std::string{row.id},
                      Kind::number,
                      row.loss,
                      row.source,
                      row.mark);
    }
    if (screened) {
        loss += screen_loss(b, part);
    }
    return loss;
}

double fitting_loss(const RunBuilder& b, const Part& written) {
    if (written.loss) {
        return *written.loss;
    }
    const std::string& id = *written.fitting;
    if (const OwnFitting* own = find_own(b.work.written.fittings, id)) {
        return *own->loss;
    }
    const catalog::Fitting& row = *catalog::find_fitting(id);
    b.work.assume(b.pointer + "/loss",
                  "loss coefficient of " + id,
                  Kind::number,
                  row.loss,
                  row.source,
                  row.mark);
    return row.loss;
}

} // namespace

std::optional<double> open_when_shut(const RunBuilder& b, const Part& written) {
    if (written.free_area || written.loss) {
        return written.free_area;
    }
    return b.work.value_or_default(std::nullopt,
                                   b.pointer + "/free_area",
                                   "share that damper " + b.number() + " leaves open when shut",
                                   Kind::fraction,
                                   DefaultId::damper_shut_free_share);
}

double elbow_loss(const RunBuilder& b, const RunPart& part, const Section& s) {
    const Part& written = part.written;
    if (!written.build) {
        b.work.assume_word(b.pointer + "/build",
                           "build of elbow " + b.number(),
                           name(part.build.value),
                           "judgement",
                           "judgement");
    }
    if (part.build.value == Build::smooth) {
        const double ratio =
            written.radius_m
                ? *written.radius_m / s.diameter_m
                : catalog::default_of(DefaultId::elbow_radius_over_diameter_smooth).value;
        return fittings::bend_smooth(part.turn_rad, ratio);
    }
    return part.build.value == Build::mitered ? fittings::bend_mitered(part.turn_rad)
                                              : fittings::bend_gored(part.turn_rad);
}

double tee_loss(const RunPart& part) {
    const bool straight_through = part.flow.value == TeeFlow::straight;
    const fittings::Junction junction{.angle_rad =
                                          part.written.angle_rad.value_or(constants::pi / 2.0),
                                      .area_ratio = 1.0,
                                      .branch_flow = straight_through ? 0.0 : 1.0};
    return straight_through ? fittings::tee_along_main(junction)
                            : fittings::tee_from_branch(junction);
}

double
size_change_loss(const RunBuilder& b, const RunPart& part, double before_m2, double after_m2) {
    const Part& written = part.written;
    const double before_m = circle_diameter_m(before_m2);
    const double after_m = circle_diameter_m(after_m2);
    const fittings::Cone cone{.small_diameter_m = std::min(before_m, after_m),
                              .large_diameter_m = std::max(before_m, after_m),
                              .length_m = written.taper_length_m.value_or(0.0)};
    if (!written.taper_length_m) {
        b.work.assume(b.pointer + "/taper_length",
                      "length of the taper of part " + b.number() + ": a sudden step",
                      Kind::length,
                      0.0,
                      "judgement",
                      "judgement");
    }
    // Coefficients hold in the smaller section; the section's own head is that behind the change.
    const double ratio = after_m2 / before_m2;
    return ratio <= 1.0 ? fittings::reducer(cone) : fittings::increaser(cone) * ratio * ratio;
}

double point_loss(const RunBuilder& b, const RunPart& part) {
    switch (part.kind) {
    case PartKind::damper:
        return damper_loss(b, part);
    case PartKind::screen:
        return screen_loss(b, part);
    case PartKind::cap:
        return cap_loss(b, part);
    case PartKind::obstruction:
        return fittings::obstruction(1.0 - part.written.blocked.value_or(0.0));
    case PartKind::draft_regulator:
        return catalog::find_fitting("draft regulator")->loss;
    case PartKind::draft_hood:
        return catalog::find_fitting("draft hood")->loss;
    case PartKind::fitting:
    case PartKind::straight:
    case PartKind::elbow:
    case PartKind::tee:
    case PartKind::reducer:
    case PartKind::increaser:
    case PartKind::collar:
        break;
    }
    return fitting_loss(b, part.written);
}

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

} // namespace fluewright::resolving
