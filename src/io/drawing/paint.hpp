#pragma once

#include "elevation.hpp"
#include "io/chart/chart.hpp"
#include "placing.hpp"
#include "shown.hpp"

#include <set>
#include <vector>

/// The elevation as shapes: house, heater, run and the marks on it.
namespace fluewright::drawing {

/// Where a place of the elevation is in the picture.
struct Frame {
    double px_per_m{};
    Spot zero_at; ///< the place that is at `origin`
    chart::Point origin;

    [[nodiscard]] chart::Point at(Spot spot) const {
        return {origin.x + (spot.x_m - zero_at.x_m) * px_per_m,
                origin.y - (spot.y_m - zero_at.y_m) * px_per_m};
    }

    [[nodiscard]] double px(double length_m) const { return length_m * px_per_m; }
};

/// What a drawing has used, so that its legend explains that and no more.
enum class Sign : std::uint8_t {
    leaks_out,
    leaks_out_elsewhere,
    joint,
    finding,
    combustible,
    shield,
    sheet,
    insulation,
    air_gap,
    masonry,
    piece_end,
};

struct Painting {
    chart::Picture& picture;
    Sheet& sheet; ///< what words must keep off
    const Frame& frame;
    std::set<Sign> signs;
};

/// The center line of each part as it is drawn, in the picture: turns take their room from the
/// straights beside them. Beside the parts of the elevation.
using Lines = std::vector<std::vector<chart::Point>>;
[[nodiscard]] Lines center_lines(const Elevation& elevation, const Frame& frame);

/// A line beside another at a distance [px], to the left of its way where that is positive.
[[nodiscard]] std::vector<chart::Point> beside(const std::vector<chart::Point>& line,
                                               double distance);

void paint_house(const Elevation& elevation, Painting& painting);
void paint_heater(const Elevation& elevation, Painting& painting);
void paint_combustibles(const Elevation& elevation, Painting& painting);
void paint_run(const Case& resolved,
               const Elevation& elevation,
               const Shown& shown,
               const Lines& lines,
               Painting& painting);
/// Joints that let smoke out in the condition shown, and those that do so in another.
void paint_joints(const Assessment& assessment,
                  const Elevation& elevation,
                  const Shown& shown,
                  const Lines& lines,
                  Painting& painting);
/// Where the pieces of the cut list end.
void paint_pieces(const PartsList& list,
                  const Elevation& elevation,
                  const Lines& lines,
                  Painting& painting);

/// One sign as the legend has it.
void paint_sign(chart::Picture& picture, Sign sign, chart::Point at);

} // namespace fluewright::drawing
