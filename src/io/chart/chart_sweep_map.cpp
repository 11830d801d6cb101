#include "chart_sweep.hpp"
#include "sweep_figures.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>

namespace fluewright::chart {
namespace {

constexpr double left_px = 78.0;
constexpr double right_px = 620.0;
constexpr double top_px = 80.0;
constexpr double bottom_px = 514.0;
constexpr double width_px = 900.0;
constexpr double height_px = 584.0;

/// Short of draft in warm colors, more to spare in colder and darker ones.
constexpr std::array<std::string_view, 4> short_fills{"#fbe3d4", "#f5bf9f", "#e8926a", "#cf6239"};
constexpr std::array<std::string_view, 6> spare_fills{
    "#edf4fa", "#d3e5f3", "#b3d2ea", "#8dbadd", "#649fcd", "#4083b8"};

/// A figure at every point of the grid, in the shown unit.
struct Field {
    std::vector<double> x;
    std::vector<double> y;
    std::vector<double> z; ///< x turns fastest

    [[nodiscard]] double at(std::size_t i, std::size_t j) const { return z[j * x.size() + i]; }
};

class Map {
public:
    explicit Map(const Sweep& sweep)
        : sweep_(sweep), pressure_(unit_scale(Kind::pressure,
                                              customary_unit(Kind::pressure, sweep.present.units))),
          x_(axis_of(sweep, 0)), y_(axis_of(sweep, 1)),
          margin_(field([this](const Score& s) { return pressure_.shown(least_margin_pa(s)); })) {
        x_.start_px = left_px;
        x_.end_px = right_px;
        y_.start_px = bottom_px;
        y_.end_px = top_px;
        const Axis range = axis_over(margin_.z, "");
        constexpr int about = 7;
        levels_ = round_steps(range.low, range.high, about);
    }

    std::string drawn() {
        Picture picture(width_px, height_px, sweep_.sentence);
        picture.head(left_px, sweep_.present.title, sweep_.sentence);
        fill(picture);
        for (const double level : levels_) {
            const bool need = std::abs(level) < 1e-12;
            if (!need) {
                contour(picture, margin_, level, {.color = "#7a8794", .width = 1.0}, true);
            }
        }
        contour(picture, margin_, 0.0, {.color = "#000000", .width = 3.0}, false);
        if (sweep_.shape.appliance.has_door) {
            const Field door =
                field([](const Score& s) { return std::clamp(least_opening(s), 0.0, 1.0); });
            contour(picture, door, door_wanted(sweep_.shape), door_stroke(), false);
        }
        points(picture);
        picture.axes(x_, y_, false);
        legend(picture);
        return picture.finished();
    }

private:
    static Stroke door_stroke() { return {.color = "#b3261e", .width = 2.5, .dashes = "8 4"}; }

    template <class Figure>
    [[nodiscard]] Field field(const Figure& figure) const {
        Field made;
        const UnitScale x = scale_of(sweep_, 0);
        const UnitScale y = scale_of(sweep_, 1);
        for (const double value : sweep_.over[0].values) {
            made.x.push_back(x.shown(value));
        }
        for (std::size_t j = 0; j < sweep_.over[1].values.size(); ++j) {
            made.y.push_back(y.shown(sweep_.over[1].values[j]));
            for (std::size_t i = 0; i < sweep_.over[0].values.size(); ++i) {
                const SweepPoint& point = sweep_.point(i, j);
                made.z.push_back(point.score ? figure(*point.score)
                                             : std::numeric_limits<double>::quiet_NaN());
            }
        }
        return made;
    }

    [[nodiscard]] std::string_view fill_of(double z) const {
        const auto above = std::upper_bound(levels_.begin(), levels_.end(), z);
        const auto zero = std::upper_bound(levels_.begin(), levels_.end(), -1e-12);
        const std::ptrdiff_t band = above - zero;
        if (z < 0.0) {
            const auto steps = static_cast<std::size_t>(zero - above);
            return short_fills[std::min(steps, short_fills.size() - 1)];
        }
        const auto steps = static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, band - 1));
        return spare_fills[std::min(steps, spare_fills.size() - 1)];
    }

    /// The bands between the levels.
    void fill(Picture& picture) const {
        // A grid so fine is colored cell by cell.
        constexpr std::size_t most_cut = 2500;
        const bool cut = (margin_.x.size() - 1) * (margin_.y.size() - 1) <= most_cut;
        for (std::size_t j = 0; j + 1 < margin_.y.size(); ++j) {
            for (std::size_t i = 0; i + 1 < margin_.x.size(); ++i) {
                for (const Triangle& corners : triangles(margin_, i, j)) {
                    if (cut) {
                        fill_triangle(picture, corners);
                    } else {
                        picture.polygon({corners[0].at, corners[1].at, corners[2].at},
                                        fill_of(corners[2].z));
                    }
                }
            }
        }
    }

    struct Corner {
        Point at;
        double z;
    };

    using Triangle = std::array<Corner, 3>;

    /// A cell in four triangles about its middle, which comes last: on these no contour is
    /// ambiguous. None where a corner was not computed.
    [[nodiscard]] std::vector<Triangle>
    triangles(const Field& f, std::size_t i, std::size_t j) const {
        const auto corner = [&](std::size_t a, std::size_t b) {
            return Corner{{x_.px(f.x[a]), y_.px(f.y[b])}, f.at(a, b)};
        };
        const std::array<Corner, 4> around{
            corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)};
        Corner middle{
            {0.5 * (around[0].at.x + around[1].at.x), 0.5 * (around[1].at.y + around[2].at.y)},
            0.0};
        for (const Corner& each : around) {
            middle.z += 0.25 * each.z;
        }
        std::vector<Triangle> made;
        for (std::size_t k = 0; std::isfinite(middle.z) && k < around.size(); ++k) {
            made.push_back({around[k], around[(k + 1) % around.size()], middle});
        }
        return made;
    }

    /// Cuts a polygon down to where z is above a level, or below it.
    static std::vector<Corner> cut_at(const std::vector<Corner>& shape, double level, bool above) {
        std::vector<Corner> left;
        for (std::size_t k = 0; k < shape.size(); ++k) {
            const Corner& a = shape[k];
            const Corner& b = shape[(k + 1) % shape.size()];
            const bool a_in = (a.z >= level) == above;
            const bool b_in = (b.z >= level) == above;
            if (a_in) {
                left.push_back(a);
            }
            Point where;
            if (a_in != b_in && crosses(a, b, level, where)) {
                left.push_back({where, level});
            }
        }
        return left;
    }

    void fill_triangle(Picture& picture, const Triangle& corners) const {
        std::vector<Corner> rest(corners.begin(), corners.end());
        for (std::size_t band = 0; band <= levels_.size() && rest.size() > 2; ++band) {
            const bool last = band == levels_.size();
            const std::vector<Corner> piece = last ? rest : cut_at(rest, levels_[band], false);
            std::vector<Point> outline;
            double sum = 0.0;
            for (const Corner& corner : piece) {
                outline.push_back(corner.at);
                sum += corner.z;
            }
            if (outline.size() > 2) {
                picture.polygon(outline, fill_of(sum / static_cast<double>(outline.size())));
            }
            rest = last ? std::vector<Corner>{} : cut_at(rest, levels_[band], true);
        }
    }

    /// Where the edge from a to b meets the level; false where it does not.
    static bool crosses(const Corner& a, const Corner& b, double level, Point& where) {
        if ((a.z < level) == (b.z < level)) {
            return false;
        }
        const double share = (level - a.z) / (b.z - a.z);
        where = {a.at.x + share * (b.at.x - a.at.x), a.at.y + share * (b.at.y - a.at.y)};
        return true;
    }

    void contour(
        Picture& picture, const Field& f, double level, const Stroke& stroke, bool labelled) const {
        std::vector<Point> middles;
        for (std::size_t j = 0; j + 1 < f.y.size(); ++j) {
            for (std::size_t i = 0; i + 1 < f.x.size(); ++i) {
                for (const Triangle& corners : triangles(f, i, j)) {
                    triangle(picture, corners, level, stroke, middles);
                }
            }
        }
        if (labelled && !middles.empty()) {
            picture.label(middles[middles.size() / 2], format_number(level, 3));
        }
    }

    static void triangle(Picture& picture,
                         const Triangle& corners,
                         double level,
                         const Stroke& stroke,
                         std::vector<Point>& middles) {
        std::vector<Point> ends;
        for (std::size_t k = 0; k < corners.size(); ++k) {
            Point where;
            if (crosses(corners[k], corners[(k + 1) % corners.size()], level, where)) {
                ends.push_back(where);
            }
        }
        if (ends.size() == 2) {
            picture.line(ends[0], ends[1], stroke);
            middles.push_back({0.5 * (ends[0].x + ends[1].x), 0.5 * (ends[0].y + ends[1].y)});
        }
    }

    /// The points that were solved: full where every state passes.
    void points(Picture& picture) const {
        constexpr std::size_t most_dots = 400;
        if (sweep_.points.size() > most_dots) {
            return;
        }
        for (std::size_t j = 0; j < margin_.y.size(); ++j) {
            for (std::size_t i = 0; i < margin_.x.size(); ++i) {
                const Point at{x_.px(margin_.x[i]), y_.px(margin_.y[j])};
                if (sweep_.point(i, j).passes()) {
                    picture.dot(at, "#1c5a2e");
                } else {
                    const double half = 3.0;
                    const Stroke stroke{.color = "#b3261e", .width = 1.5};
                    picture.line({at.x - half, at.y - half}, {at.x + half, at.y + half}, stroke);
                    picture.line({at.x - half, at.y + half}, {at.x + half, at.y - half}, stroke);
                }
            }
        }
    }

    void legend(Picture& picture) const {
        const double x = right_px + 22.0;
        picture.text({x, top_px + 8.0}, "least margin of draft, " + pressure_.unit);
        std::vector<Picture::Entry> entries;
        for (std::size_t i = levels_.size() + 1; i-- > 0;) {
            const bool first = i == 0;
            const bool last = i == levels_.size();
            if (levels_.empty()) {
                break;
            }
            const double inside = first  ? levels_.front() - 1e-9
                                  : last ? levels_.back() + 1e-9
                                         : 0.5 * (levels_[i - 1] + levels_[i]);
            entries.push_back({.stroke = {},
                               .fill = fill_of(inside),
                               .words = first  ? "below " + format_number(levels_.front(), 3)
                                        : last ? "above " + format_number(levels_.back(), 3)
                                               : format_number(levels_[i - 1], 3) + " to "
                                                     + format_number(levels_[i], 3)});
        }
        double y = top_px + 30.0 + picture.legend({x, top_px + 30.0}, entries);
        std::vector<Picture::Entry> lines{{.stroke = {.color = "#000000", .width = 3.0},
                                           .fill = {},
                                           .words = "draft just as needed"}};
        if (sweep_.shape.appliance.has_door) {
            lines.push_back({.stroke = door_stroke(),
                             .fill = {},
                             .words = "door opens just as far as required"});
        }
        y += 14.0 + picture.legend({x, y + 14.0}, lines);
        picture.dot({x + 15.0, y + 14.0}, "#1c5a2e");
        picture.text({x + 38.0, y + 18.5}, "every state passes", Anchor::start, 12.0);
        picture.text({x + 10.0, y + 38.5}, "x", Anchor::start, 14.0);
        picture.text({x + 38.0, y + 38.5}, "some state falls short", Anchor::start, 12.0);
        y += 62.0;
        for (const SweepBlank& blank : sweep_.blanks) {
            constexpr double line_px = 15.0;
            for (const std::string& line :
                 wrap_to("no color: at " + blank.words + " it cannot be built, " + blank.reason,
                         width_px - x - 8.0,
                         12.0)) {
                picture.text({x, y}, line, Anchor::start, 12.0);
                y += line_px;
            }
        }
    }

    const Sweep& sweep_;
    UnitScale pressure_;
    Axis x_;
    Axis y_;
    Field margin_;
    std::vector<double> levels_;
};

} // namespace

std::string sweep_map(const Sweep& sweep) {
    return Map(sweep).drawn();
}

} // namespace fluewright::chart
