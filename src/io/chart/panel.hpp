#pragma once

#include "chart.hpp"

#include <optional>
#include <string>
#include <vector>

/// Panels of lines under one another, with what they mean beside them: the one layout of charts
/// over time, along the run and over sizes.
namespace fluewright::chart {

inline constexpr double panel_page_width = 900.0;
inline constexpr double panel_left = 78.0;
inline constexpr double panel_right = 620.0;

/// One line, in the shown units; what is no number lifts the pen.
struct Curve {
    Stroke stroke;
    std::string words;
    std::vector<Point> points;
    bool dots{}; ///< at its points
};

/// A line across the panel at one value.
struct Level {
    double at{};
    std::string words; ///< empty: only keeps the value within the panel
    Stroke stroke;
};

/// Words at a place of the x axis, on the upper rim.
struct Mark {
    double at{};
    std::string words;
    bool first{}; ///< has its place before the others
};

/// A stretch of the x axis.
struct Band {
    double from{};
    double to{};
    std::string_view fill;
};

struct Panel {
    std::string x_title;
    std::string y_title;
    double x_low{};
    double x_high{1.0};
    std::vector<Curve> curves{};
    std::vector<Level> levels{};
    std::vector<Mark> marks{};   ///< those that would meet another are left out
    std::vector<Mark> x_names{}; ///< in place of numbers, in order of place
    std::vector<double> uprights{};
    std::vector<Band> bands{};
    std::vector<Picture::Entry> more{}; ///< for the legend
};

/// Height of a page of so many panels.
[[nodiscard]] double height_of_panels(std::size_t count);

/// Paints a panel as the one of this number, from 0 at the top.
void paint(Picture& picture, const Panel& panel, std::size_t number);

} // namespace fluewright::chart
