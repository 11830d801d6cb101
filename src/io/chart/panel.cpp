#include "panel.hpp"

#include <algorithm>

namespace fluewright::chart {
namespace {

constexpr double panels_top_px = 96.0;
constexpr double panels_height_px = 270.0;
constexpr double panels_between_px = 84.0;
constexpr double panels_legend_px = panel_right + 22.0;
constexpr double mark_size = 10.0;
constexpr double beside_numbers_px = 5.0; ///< the numbers of the y axis end before

/// What lines and colors mean. Of more lines than there is room for the first are told.
std::vector<Picture::Entry> entries_of(const Panel& panel, const Picture& picture) {
    constexpr double room_px = panels_height_px + panels_between_px - 30.0;
    std::vector<Picture::Entry> after;
    for (const Level& level : panel.levels) {
        if (!level.words.empty()) {
            after.push_back({.stroke = level.stroke, .fill = {}, .words = level.words});
        }
    }
    after.insert(after.end(), panel.more.begin(), panel.more.end());
    for (std::size_t told = panel.curves.size();; --told) {
        std::vector<Picture::Entry> entries;
        for (std::size_t i = 0; i < told; ++i) {
            entries.push_back(
                {.stroke = panel.curves[i].stroke, .fill = {}, .words = panel.curves[i].words});
        }
        if (told < panel.curves.size()) {
            entries.push_back(
                {.stroke = {.width = 0.0},
                 .fill = {},
                 .words = "and " + std::to_string(panel.curves.size() - told) + " more"});
        }
        entries.insert(entries.end(), after.begin(), after.end());
        if (told == 0 || picture.legend_height({panels_legend_px, 0.0}, entries) <= room_px) {
            return entries;
        }
    }
}

} // namespace

double height_of_panels(std::size_t count) {
    return panels_top_px + static_cast<double>(count) * (panels_height_px + panels_between_px)
           - 22.0;
}

void paint(Picture& picture, const Panel& panel, std::size_t number) {
    const double top =
        panels_top_px + static_cast<double>(number) * (panels_height_px + panels_between_px);
    Axis x{.title = panel.x_title,
           .low = panel.x_low,
           .high = panel.x_high > panel.x_low ? panel.x_high : panel.x_low + 1.0,
           .start_px = panel_left,
           .end_px = panel_right};
    std::vector<double> all;
    for (const Curve& curve : panel.curves) {
        for (const Point& point : curve.points) {
            all.push_back(point.y);
        }
    }
    for (const Level& level : panel.levels) {
        all.push_back(level.at);
    }
    for (const Mark& name : panel.x_names) {
        x.named.emplace_back(name.at, name.words);
    }
    Axis y = axis_over(all, panel.y_title);
    y.start_px = top + panels_height_px;
    y.end_px = top;
    y.round_out();
    for (const Band& band : panel.bands) {
        picture.box(
            {x.px(band.from), top}, x.px(band.to) - x.px(band.from), panels_height_px, band.fill);
    }
    for (const double upright : panel.uprights) {
        picture.line({x.px(upright), top},
                     {x.px(upright), top + panels_height_px},
                     {.color = "#bbbbbb", .width = 0.7, .dashes = "2 3"});
    }
    picture.axes(x, y, true);
    for (const Level& level : panel.levels) {
        picture.line({panel_left, y.px(level.at)}, {panel_right, y.px(level.at)}, level.stroke);
    }
    for (const Curve& curve : panel.curves) {
        std::vector<Point> points;
        for (const Point& point : curve.points) {
            points.push_back({x.px(point.x), y.px(point.y)});
        }
        picture.path(points, curve.stroke);
        for (const Point& point : points) {
            if (curve.dots) {
                picture.dot(point, curve.stroke.color);
            }
        }
    }
    picture.legend({panels_legend_px, top + 12.0}, entries_of(panel, picture));
    std::vector<std::pair<double, double>> taken;
    for (const bool first : {true, false}) {
        for (const Mark& mark : panel.marks) {
            const double half = 0.5 * text_width(mark.words, mark_size) + 2.0;
            const double at = std::max(x.px(mark.at), panel_left - beside_numbers_px + half);
            const bool meets = std::any_of(taken.begin(), taken.end(), [&](const auto& other) {
                return at - half < other.second && other.first < at + half;
            });
            if (mark.first == first && !meets) {
                picture.text({at, top - 5.0}, mark.words, Anchor::middle, mark_size);
                taken.emplace_back(at - half, at + half);
            }
        }
    }
}

} // namespace fluewright::chart
