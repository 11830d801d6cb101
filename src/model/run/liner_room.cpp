#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/run.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

/// The widest round pipe that the masonry of a run lets down; 0 where there is none.
double widest_round_m(const Run& run) {
    double widest_m = std::numeric_limits<double>::infinity();
    bool any = false;
    for (const RunPart& part : run.parts) {
        if (part.wall_kind == WallKind::masonry) {
            any = true;
            widest_m = std::min(widest_m,
                                part.bore.round() ? part.bore.diameter_m
                                                  : std::min(part.bore.width_m, part.bore.depth_m));
        }
    }
    return any ? widest_m : 0.0;
}

} // namespace

bool liner_goes_in(const Run& run, double diameter_m, LinerCover cover) {
    const double sheet_m = catalog::default_of(DefaultId::liner_over_inside_m).value;
    const double wrap_m = cover == LinerCover::insulated
                              ? catalog::default_of(DefaultId::liner_wrap_both_sides_m).value
                              : 0.0;
    return diameter_m + sheet_m + wrap_m <= widest_round_m(run);
}

std::string_view liner_that_goes_in(const Run& run, double diameter_m) {
    return liner_goes_in(run, diameter_m, LinerCover::insulated) ? "flexible liner insulated"
           : liner_goes_in(run, diameter_m, LinerCover::bare)    ? "flexible liner"
                                                                 : "";
}

} // namespace fluewright
