#include "fluewright/advice/parts/joints.hpp"

#include "advice/checks/subject.hpp"

#include <cmath>

namespace fluewright::checking {
namespace {

/// Where a joint counts as: the part above it.
CheckResult*
hold_joint(Subject& s, std::size_t own_check, bool met, const Held& held, const Joint& joint) {
    CheckResult* result =
        s.hold(own_check, met, held, {.section = nullptr, .place = joint.place, .state = nullptr});
    if (result != nullptr) {
        result->part = joint.above;
        result->remedy = joint.cure();
    }
    return result;
}

void ends(Subject& s, const Joint& joint) {
    if (joint.lower.assumed && joint.upper.assumed) {
        return; // assumed against assumed tells nothing about what lies on the bench
    }
    constexpr Held no_figure{.kind = Kind::number, .figure = {}, .limit = {}, .weight = 1.0};
    const auto words = [&](std::string_view what) {
        return std::string{what} + "a " + std::string{name(joint.lower.end)} + " end meets a "
               + std::string{name(joint.upper.end)} + " end " + joint.place + ".";
    };
    CheckResult* never =
        hold_joint(s, own("ends-do-not-mate"), joint.fit.mating != Mating::never, no_figure, joint);
    if (never != nullptr && s.with_words()) {
        never->message = words("The parts do not go together: ");
    }
    CheckResult* up = hold_joint(
        s, own("crimp-points-up"), joint.fit.mating != Mating::points_up, no_figure, joint);
    if (up != nullptr && s.with_words()) {
        up->message = words("The crimped end points up: ");
    }
}

void bores(Subject& s, const Joint& joint) {
    const double lower_m = joint.lower.diameter_m;
    const double upper_m = joint.upper.diameter_m;
    const bool other_shape = joint.fit.bore == Bore::other_shape;
    CheckResult* f = hold_joint(
        s,
        own("diameters-do-not-match"),
        joint.fit.bore == Bore::same,
        other_shape ? Held{.kind = Kind::number, .figure = {}, .limit = {}, .weight = 1.0}
                    : Held{.kind = Kind::length,
                           .figure = upper_m,
                           .limit = lower_m,
                           .weight = joint.fit.bore == Bore::same ? 0.0 : 1.0},
        joint);
    if (f == nullptr || !s.with_words()) {
        return;
    }
    if (other_shape) {
        f->message = joint.lower.rectangular && joint.upper.rectangular
                         ? "The two sides have other sides or another shape, " + joint.place + "."
                         : "One side is round, the other "
                               + std::string{joint.lower.oval || joint.upper.oval ? "oval, "
                                                                                  : "rectangular, "}
                               + joint.place + ".";
        return;
    }
    const UnitSystem units = s.resolved.units;
    f->message = size_name(lower_m, units) + " meets " + size_name(upper_m, units) + " "
                 + joint.place
                 + (joint.fit.bore == Bore::inch_and_metric
                        ? ": the sizes look alike, one is of inches and one of millimetres, and "
                          "they do not fit."
                        : ".");
}

} // namespace

void joints(Subject& s) {
    for (const Joint& joint : s.view.joints().joints) {
        ends(s, joint);
        bores(s, joint);
    }
}

} // namespace fluewright::checking
