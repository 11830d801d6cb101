#include "ends.hpp"

#include "fluewright/core/constants.hpp"

#include <array>
#include <cmath>

namespace fluewright {
namespace {

/// Sheet from here on is butted into sockets, thinner sheet is crimped.
constexpr double thick_sheet_m = 0.0012;
/// What conducts better than this is the metal of a wall.
constexpr double metal_w_mk = 5.0;

double inner_sheet_m(const WallBuild& wall) {
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

UsualEnds usual_ends(WallKind wall, double thickness_m) {
    switch (wall) {
    case WallKind::double_wall:
    case WallKind::insulated:
        return {PipeEnd::locking, PipeEnd::locking};
    case WallKind::liner: // its clamps and tees go together as thin pipe
        return {PipeEnd::crimped, PipeEnd::plain};
    case WallKind::masonry:
        return {PipeEnd::open, PipeEnd::open};
    case WallKind::single:
        break;
    }
    return thickness_m >= thick_sheet_m ? UsualEnds{PipeEnd::plain, PipeEnd::socket}
                                        : UsualEnds{PipeEnd::crimped, PipeEnd::plain};
}

PartEnd end_of(const std::optional<PipeEnd>& written, PipeEnd usual) {
    return {written.value_or(usual), written.has_value()};
}

} // namespace

void fill_ends(RunPart& part, const WallBuild& wall) {
    const Part& written = part.written;
    part.thickness_given = written.thickness_m || written.gauge;
    part.thickness_m = written.thickness_m ? *written.thickness_m
                       : written.gauge     ? sheet_gauge_m(*written.gauge)
                                           : inner_sheet_m(wall);
    const UsualEnds usual = usual_ends(part.wall_kind, part.thickness_m);
    part.heater_end = end_of(written.heater_end, usual.heater);
    part.chimney_end = end_of(written.chimney_end, usual.chimney);
}

PartEnd collar_end(const Outlet& outlet, ApplianceType type) {
    return end_of(outlet.end, type == ApplianceType::fireplace ? PipeEnd::open : PipeEnd::socket);
}

double sheet_gauge_m(double gauge) {
    // Weight by number in oz per square foot of the standard gauge; 640 oz/ft2 make an inch there,
    // 41.82 lb/ft2 an inch of steel.
    struct Row {
        double gauge;
        double ounces;
    };

    constexpr auto rows = std::to_array<Row>(
        {{16, 40}, {18, 32}, {20, 24}, {22, 20}, {24, 16}, {26, 12}, {28, 10}, {30, 8}});
    constexpr double ounces_per_inch = 41.82 * 16.0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (std::abs(gauge - rows[i].gauge) < 1e-9) {
            return rows[i].ounces / ounces_per_inch * constants::inch_m;
        }
        if (i > 0 && gauge < rows[i].gauge && gauge > rows[i - 1].gauge) {
            const double share = (gauge - rows[i - 1].gauge) / (rows[i].gauge - rows[i - 1].gauge);
            return (rows[i - 1].ounces + share * (rows[i].ounces - rows[i - 1].ounces))
                   / ounces_per_inch * constants::inch_m;
        }
    }
    return 0.0;
}

} // namespace fluewright
