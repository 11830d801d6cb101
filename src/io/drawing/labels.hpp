#pragma once

#include "drawn_page.hpp"

#include <vector>

/// Words and sizes beside the elevation.
namespace fluewright::drawing {

/// What a drawing is about.
struct Drawn {
    const Assessment& assessment;
    const Elevation& elevation;
    const Shown& shown;
    const Frame& frame;
    const Box& area; ///< of the elevation
    Style style;
};

/// The parts by name, to the right, with lines to their places.
class Labels {
public:
    Labels(const Drawn& drawn, double top);

    [[nodiscard]] double bottom() const;

    void paint(chart::Picture& picture, Sheet& sheet) const;

private:
    struct Label {
        chart::Point at;
        std::vector<std::string> lines;
        std::vector<std::string> notes;
        double height;
        double top;
    };

    std::vector<Label> labels_;
};

/// Sizes that a fitter marks: heights to the left, level ones below.
class Sizes {
public:
    explicit Sizes(const Drawn& drawn);

    [[nodiscard]] double bottom() const;

    void paint(chart::Picture& picture) const;

private:
    struct Width {
        double from_m;
        double to_m;
        double middle;
        std::size_t row;
        std::string words;
    };

    [[nodiscard]] bool outlet_is_assumed() const;
    [[nodiscard]] std::vector<double> heights() const;
    void find_widths();
    void paint_heights(chart::Picture& picture) const;
    void paint_widths(chart::Picture& picture) const;

    const Drawn& drawn_;
    std::vector<Width> widths_;
    std::size_t rows_{};
};

/// Findings by number at their places, then the names of zones, ceilings and roof where there is
/// room.
void paint_findings(const Drawn& drawn, Painting& painting);
void paint_names(const Drawn& drawn, Painting& painting);

} // namespace fluewright::drawing
