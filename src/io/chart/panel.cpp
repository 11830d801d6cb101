#include "panel.hpp"

#include <algorithm>

namespace fluewright::chart {
namespace {

constexpr double top_px = 96.0;
constexpr double panel_px = 270.0;
constexpr double between_px = 84.0;
constexpr double legend_px = panel_right + 22.0;
constexpr double mark_size = 10.0;

} // namespace

double height_of_panels(std::size_t count) {
    return top_px + static_cast<double>(count) * (panel_px + between_px) - 22.0;
}

void paint(Picture& picture, const Panel& panel, std::size_t number) {
    const double top = top_px + static_cast<double>(number) * (panel_px + between_px);
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
    Axis y = axis_over(all, panel.y_title);
    y.start_px = top + panel_px;
    y.end_px = top;
    y.round_out();
    for (const Band& band : panel.bands) {
        picture.box({x.px(band.from), top}, x.px(band.to) - x.px(band.from), panel_px, band.fill);
    }
    for (const double upright : panel.uprights) {
        picture.line({x.px(upright), top},
                     {x.px(upright), top + panel_px},
                     {.colour = "#bbbbbb", .width = 0.7, .dashes = "2 3"});
    }
    picture.axes(x, y, true);
    std::vector<Picture::Entry> entries;
    for (const Level& level : panel.levels) {
        picture.line({panel_left, y.px(level.at)}, {panel_right, y.px(level.at)}, level.stroke);
    }
    for (const Curve& curve : panel.curves) {
        std::vector<Point> points;
        for (const Point& point : curve.points) {
            points.push_back({x.px(point.x), y.px(point.y)});
        }
        picture.path(points, curve.stroke);
        entries.push_back({.stroke = curve.stroke, .fill = {}, .words = curve.words});
    }
    for (const Level& level : panel.levels) {
        entries.push_back({.stroke = level.stroke, .fill = {}, .words = level.words});
    }
    entries.insert(entries.end(), panel.more.begin(), panel.more.end());
    picture.legend({legend_px, top + 12.0}, entries);
    double free_from = 0.0;
    for (const Mark& mark : panel.marks) {
        const double half = 0.5 * text_width(mark.words, mark_size);
        const double at = x.px(mark.at);
        if (at - half >= free_from) {
            picture.text({at, top - 5.0}, mark.words, Anchor::middle, mark_size);
            free_from = at + half + 3.0;
        }
    }
}

} // namespace fluewright::chart
