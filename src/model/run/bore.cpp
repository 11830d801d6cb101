#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/run/run.hpp"

#include <algorithm>

namespace fluewright {

FlueBore round_bore(double diameter_m) {
    return {.diameter_m = diameter_m,
            .width_m = 0.0,
            .depth_m = 0.0,
            .area_m2 = circle_area_m2(diameter_m),
            .perimeter_m = constants::pi * diameter_m,
            .oval = false,
            .clay_liner = false};
}

FlueBore rectangular_bore(double width_m, double depth_m) {
    return {.diameter_m = circle_diameter_m(width_m * depth_m),
            .width_m = width_m,
            .depth_m = depth_m,
            .area_m2 = width_m * depth_m,
            .perimeter_m = 2.0 * (width_m + depth_m),
            .oval = false,
            .clay_liner = false};
}

FlueBore oval_bore(double one_side_m, double other_side_m) {
    const double short_m = std::min(one_side_m, other_side_m);
    const double straight_m = std::max(one_side_m, other_side_m) - short_m;
    const double area_m2 = circle_area_m2(short_m) + short_m * straight_m;
    return {.diameter_m = circle_diameter_m(area_m2),
            .width_m = short_m + straight_m,
            .depth_m = short_m,
            .area_m2 = area_m2,
            .perimeter_m = constants::pi * short_m + 2.0 * straight_m,
            .oval = true,
            .clay_liner = false};
}

namespace {

/// The other side of round pipe pressed oval: P = pi D = pi d + 2 (w - d). A side over the diameter
/// is the long one. None where no such oval is.
Given other_side_m(double diameter_m, double side_m) {
    const double perimeter_m = constants::pi * diameter_m;
    const double other_m = side_m <= diameter_m
                               ? side_m + 0.5 * constants::pi * (diameter_m - side_m)
                               : (perimeter_m - 2.0 * side_m) / (constants::pi - 2.0);
    return other_m > 0.0 ? Given{other_m} : std::nullopt;
}

} // namespace

std::optional<FlueBore> bore_of(const WrittenSize& size) {
    if (size.shape == SectionShape::oval) {
        if (size.width_m && size.depth_m) {
            return oval_bore(*size.width_m, *size.depth_m);
        }
        const Given& side_m = size.width_m ? size.width_m : size.depth_m;
        const Given other_m =
            side_m && size.diameter_m ? other_side_m(*size.diameter_m, *side_m) : std::nullopt;
        return other_m ? std::optional{oval_bore(*side_m, *other_m)} : std::nullopt;
    }
    if (size.width_m && size.depth_m) {
        return rectangular_bore(*size.width_m, *size.depth_m);
    }
    return size.diameter_m ? std::optional{round_bore(*size.diameter_m)} : std::nullopt;
}

FlueBore narrowed(const FlueBore& clean, double thickness_m) {
    const double by_m = 2.0 * thickness_m;
    const double least_m =
        clean.round() ? clean.diameter_m : std::min(clean.width_m, clean.depth_m);
    if (least_m <= by_m) {
        FlueBore filled = clean;
        filled.area_m2 = filled.perimeter_m = 0.0;
        return filled;
    }
    FlueBore left = clean.round() ? round_bore(clean.diameter_m - by_m)
                    : clean.oval  ? oval_bore(clean.width_m - by_m, clean.depth_m - by_m)
                                  : rectangular_bore(clean.width_m - by_m, clean.depth_m - by_m);
    left.clay_liner = clean.clay_liner;
    return left;
}

} // namespace fluewright
