#pragma once

#include "elevation.hpp"
#include "fluewright/io/drawing/draw.hpp"
#include "fluewright/io/text/style.hpp"
#include "io/chart/chart.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

/// What the colors of a drawing tell, and the words beside its parts.
namespace fluewright::drawing {

/// From pale to dark, so that it is read in gray as well; yellow to violet, which all eyes tell
/// apart. `share` from 0 to 1.
[[nodiscard]] std::string ramp(double share);

/// The colors of what has grades rather than figures: low, raised, high.
[[nodiscard]] std::string grade_color(std::size_t grade);

/// The values at both ends of a part, in SI or as a grade; empty where it has none.
struct Tint {
    std::optional<double> from;
    std::optional<double> to;
};

/// A drawing's subject.
struct Shown {
    Show show{};
    const StateResult* state{}; ///< null where nothing was solved that has figures
    std::string caption;        ///< what the colors tell, with the condition
    chart::UnitScale unit;
    double low{}; ///< of the scale, in its unit
    double high{1.0};
    std::vector<Tint> tints;        ///< beside the drawn parts
    std::vector<std::string> notes; ///< second line of each label; beside the drawn parts
    std::string asides;             ///< what is to know about the figures; may be empty

    [[nodiscard]] bool has_scale() const {
        return show == Show::temperature || show == Show::surface || show == Show::pressure;
    }

    [[nodiscard]] std::string color(double si) const;
};

[[nodiscard]] Shown shown_of(const Installation& written,
                             const Assessment& assessment,
                             const Elevation& elevation,
                             const DrawOptions& options);

/// "straight 1, up 1.5 m, 150 mm double-wall connector": the first line of the label of a part.
/// Size and wall are told where they change.
[[nodiscard]] std::string
part_words(const Case& resolved, const Elevation& elevation, std::size_t index, const Style& style);

} // namespace fluewright::drawing
