#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "text_metrics.hpp"

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// What every chart is drawn with: SVG elements, axes with round steps, colors that most eyes tell
/// apart.
namespace fluewright::chart {

/// Numbers of a unit for values in SI.
struct UnitScale {
    std::string unit;
    double zero_si{0.0}; ///< 0 of the unit
    double one_si{1.0};  ///< 1 of the unit

    [[nodiscard]] double shown(double si) const { return (si - zero_si) / (one_si - zero_si); }
};

[[nodiscard]] UnitScale unit_scale(Kind kind, std::string_view unit);

/// Steps of 1, 2 or 5 times a power of ten within a range, about `wanted` of them.
[[nodiscard]] std::vector<double> round_steps(double low, double high, int wanted);

/// One side of a plot. All values are in the shown unit.
struct Axis {
    std::string title; ///< with its unit
    double low{};
    double high{1.0};
    double start_px{};
    double end_px{};
    /// Names at places in place of numbers at steps.
    std::vector<std::pair<double, std::string>> named{};

    [[nodiscard]] double px(double shown) const {
        return start_px + (shown - low) / (high - low) * (end_px - start_px);
    }

    [[nodiscard]] std::vector<double> steps() const;

    /// Widens the axis to the next round step on both sides.
    void round_out();
};

/// An axis over these values, a little wider where they are all one.
[[nodiscard]] Axis axis_over(const std::vector<double>& shown, std::string title);

struct Point {
    double x{};
    double y{};
};

struct Stroke {
    std::string_view color{"#222222"};
    double width{1.0};
    std::string_view dashes{}; ///< as SVG has it: "6 3"
};

enum class Anchor : std::uint8_t { start, middle, end };

/// How words are set.
struct Words {
    Anchor anchor{Anchor::start};
    double size{12.0};
    Weight weight{Weight::regular};
    std::string_view color{}; ///< empty: that of all text
};

/// The text of an SVG picture as it grows.
class Picture {
public:
    Picture(double width, double height, std::string_view title);

    void line(Point from, Point to, const Stroke& stroke);
    void path(const std::vector<Point>& points, const Stroke& stroke);
    void polygon(const std::vector<Point>& corners, std::string_view fill);
    void box(Point corner, double width, double height, std::string_view fill);
    void frame(Point corner, double width, double height);
    void dot(Point at, std::string_view fill);
    void circle(Point at, double radius, std::string_view fill, const Stroke& stroke);
    /// A closed outline and what fills it.
    void shape(const std::vector<Point>& corners, std::string_view fill, const Stroke& stroke);
    /// Lines at 45 degrees within a rectangle, `step_px` apart.
    void hatch(Point corner, double width, double height, double step_px, const Stroke& stroke);
    void set(Point at, std::string_view words, const Words& look);
    void text(Point at, std::string_view words, Anchor anchor = Anchor::start, double size = 13.0);
    void bold(Point at, std::string_view words, double size = 14.0);
    /// Title and answer above the plot, the answer on at most two lines.
    void head(double left_px, std::string_view title, std::string_view sentence);
    /// Words with a white rim, to stand on lines and colors.
    void label(Point at, std::string_view words);
    /// Words that run upwards.
    void upright(Point at, std::string_view words);

    /// Frame, grid lines, numbers and titles.
    void axes(const Axis& x, const Axis& y, bool grid);

    /// What the lines and colors mean, from `at` downwards; returns the height it took.
    struct Entry {
        Stroke stroke{};
        std::string_view fill{}; ///< a color instead of a line
        std::string words;
    };

    double legend(Point at, const std::vector<Entry>& entries);

    /// The height it would take.
    [[nodiscard]] double legend_height(Point at, const std::vector<Entry>& entries) const;

    /// The height, where that shows only once all is drawn.
    void end_at(double height) { height_ = height; }

    [[nodiscard]] std::string finished() const;

private:
    [[nodiscard]] std::vector<std::string> legend_lines(Point at, const Entry& entry) const;

    std::string body_;
    double width_;
    double height_;
    std::string title_;
};

/// Colors for lines, in order of use.
inline constexpr std::array<std::string_view, 6> line_colors{
    "#1f5fa8", "#c2561a", "#2a7f4f", "#7b3f98", "#8a6d00", "#b02a4c"};

} // namespace fluewright::chart
