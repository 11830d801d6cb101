#pragma once

#include "io/chart/chart.hpp"

#include <optional>
#include <string_view>
#include <vector>

/// Where words go in a drawing, so that none lies on another.
namespace fluewright::drawing {

struct Box {
    double left{};
    double top{};
    double width{};
    double height{};

    [[nodiscard]] double right() const { return left + width; }

    [[nodiscard]] double bottom() const { return top + height; }

    [[nodiscard]] bool meets(const Box& other) const {
        return left < other.right() && other.left < right() && top < other.bottom()
               && other.top < bottom();
    }

    [[nodiscard]] bool holds(const Box& other) const {
        return other.left >= left && other.right() <= right() && other.top >= top
               && other.bottom() <= bottom();
    }
};

/// The room words take that are set with their base line at a place.
[[nodiscard]] Box
box_of(chart::Point at, std::string_view words, double size, chart::Anchor anchor = {});

/// Height of a line of text with what parts it from the next.
[[nodiscard]] constexpr double line_height(double size) {
    return 1.25 * size;
}

/// One entry of a column of labels.
struct Entry {
    double wanted{}; ///< where its middle would best be
    double height{};
};

/// The tops of entries in a column: each as near to where it is wanted as the others allow, in the
/// order given, which is that of `wanted`; none above `top`. Those that would meet stand as one
/// block about the middle of what they want.
[[nodiscard]] std::vector<double>
in_column(const std::vector<Entry>& entries, double top, double gap);

/// What is drawn already, and a free place among it.
class Sheet {
public:
    explicit Sheet(Box area) : area_(area) {}

    void take(const Box& box) { taken_.push_back(box); }

    /// A line with a half width.
    void take_line(chart::Point from, chart::Point to, double half_width);

    [[nodiscard]] bool is_free(const Box& box) const;

    /// The first of the places that is free, with its room taken; empty where none is.
    [[nodiscard]] std::optional<Box> first_free(const std::vector<Box>& places);

    /// A box of that size within an area, as near to a place as there is room; taken.
    [[nodiscard]] std::optional<Box>
    near(chart::Point place, double width, double height, const Box& within);

    [[nodiscard]] const Box& area() const { return area_; }

private:
    Box area_;
    std::vector<Box> taken_;
};

} // namespace fluewright::drawing
