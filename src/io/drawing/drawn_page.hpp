#pragma once

#include "paint.hpp"

#include <string>
#include <vector>

/// The page a drawing stands on: its measures [px] and its legend.
namespace fluewright::drawing::page {

inline constexpr double width = 800.0;
inline constexpr double margin = 14.0;
inline constexpr double room = width - 2.0 * margin;
inline constexpr double title = 16.0; ///< font sizes
inline constexpr double plain = 12.0;
inline constexpr double small = 11.0;
inline constexpr double drop = 3.6; ///< from the bottom of a line to its base
inline constexpr double head_bottom = 50.0;
inline constexpr double size_line = 104.0;
inline constexpr double area_left = 116.0;
inline constexpr double area_width = 326.0;
inline constexpr double area_height = 540.0;
inline constexpr double around = 12.0;
inline constexpr double most_px_per_m = 150.0;
inline constexpr double label_left = 466.0;
inline constexpr double label_width = width - margin - label_left;
inline constexpr double over_legend = 14.0;
inline constexpr double between_labels = 6.0;

/// What colors, signs and numbers mean.
class Legend {
public:
    Legend(const Assessment& assessment, const Shown& shown, bool findings);

    /// Paints it from `top` downwards; returns where it ends.
    [[nodiscard]] double paint(Painting& painting, double top) const;

private:
    struct Row {
        std::size_t number; ///< 0: a line of its own
        std::vector<std::string> lines;
    };

    double paint_scale(chart::Picture& picture, double top) const;
    double paint_signs(Painting& painting, double top) const;
    double paint_rows(chart::Picture& picture, double top) const;
    void add_findings(const Assessment& assessment);

    const Shown& shown_;
    std::vector<Row> rows_;
};

} // namespace fluewright::drawing::page
