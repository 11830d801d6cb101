#include "chart_sweep.hpp"
#include "fluewright/io/report/report_sweep.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>

namespace fluewright::chart {
namespace {

constexpr double left_px = 78.0;
constexpr double right_px = 620.0;
constexpr double top_px = 80.0;
constexpr double panel_px = 270.0;
constexpr double between_px = 74.0;
constexpr double width_px = 900.0;
constexpr double legend_px = right_px + 22.0;
constexpr std::string_view shade = "#f6e3dc";
constexpr std::string_view needed_color = "#000000";

/// One line: what it is, and its value at every point.
struct SweptCurve {
    Stroke stroke;
    std::string words;
    std::vector<double> shown;
};

class Lines {
public:
    explicit Lines(const Sweep& sweep)
        : sweep_(sweep), pressure_(unit_scale(
                             Kind::pressure, customary_unit(Kind::pressure, sweep.present.units))) {
        for (const SweepPoint& point : sweep.points) {
            if (point.score) {
                shape_ = &*point.score;
                break;
            }
        }
    }

    std::string drawn() {
        const bool door = sweep_.shape.appliance.has_door;
        const double height = top_px + panel_px + (door ? between_px + panel_px : 0.0) + between_px;
        Picture picture(width_px, height, sweep_.sentence);
        picture.head(left_px, sweep_.present.title, sweep_.sentence);
        panel(picture,
              top_px,
              drafts(),
              fmt::format("draft at the outlet, {}", pressure_.unit),
              false);
        if (door) {
            panel(picture, top_px + panel_px + between_px, doors(), "door may be opened, %", true);
        }
        return picture.finished();
    }

private:
    [[nodiscard]] std::string_view color(std::size_t weather) const {
        return line_colors[weather % line_colors.size()];
    }

    /// The values of one state over all points; not a number where there is none.
    template <class Value>
    [[nodiscard]] std::vector<double> over_points(std::size_t state, const Value& value) const {
        std::vector<double> values;
        for (const SweepPoint& point : sweep_.points) {
            const bool known = point.score && report::has_working_point(point.score->states[state]);
            values.push_back(known ? value(point.score->states[state])
                                   : std::numeric_limits<double>::quiet_NaN());
        }
        return values;
    }

    [[nodiscard]] std::string words_of(const StateResult& state) const {
        return report::state_words(sweep_.shape, state);
    }

    [[nodiscard]] std::vector<SweptCurve> drafts() const {
        std::vector<SweptCurve> curves;
        std::vector<SweptCurve> needs;
        for (std::size_t i = 0; shape_ != nullptr && i < shape_->states.size(); ++i) {
            const StateResult& state = shape_->states[i];
            if (is_door_open(state.kind)) {
                continue;
            }
            const bool high = state.kind == StateKind::high_fire;
            curves.push_back({.stroke = {.color = color(state.weather),
                                         .width = 2.0,
                                         .dashes = high ? "" : "7 4"},
                              .words = words_of(state),
                              .shown = over_points(i, [this](const StateResult& s) {
                                  return pressure_.shown(s.draft_pa);
                              })});
            if (state.weather == 0) {
                needs.push_back(
                    {.stroke = {.color = needed_color, .width = 2.5, .dashes = high ? "" : "2 4"},
                     .words = "required draft, " + std::string{name(state.kind)},
                     .shown = over_points(i, [this](const StateResult& s) {
                         return pressure_.shown(s.draft_needed_pa);
                     })});
            }
        }
        curves.insert(curves.end(), needs.begin(), needs.end());
        return curves;
    }

    [[nodiscard]] std::vector<SweptCurve> doors() const {
        constexpr double per_cent = 100.0;
        std::vector<SweptCurve> curves;
        for (std::size_t i = 0; shape_ != nullptr && i < shape_->states.size(); ++i) {
            const StateResult& state = shape_->states[i];
            if (is_door_open(state.kind)) {
                curves.push_back({.stroke = {.color = color(state.weather), .width = 2.0},
                                  .words = words_of(state),
                                  .shown = over_points(i, [](const StateResult& s) {
                                      return per_cent * std::clamp(s.door.opening_share, 0.0, 1.0);
                                  })});
            }
        }
        curves.push_back({.stroke = {.color = needed_color, .width = 2.5},
                          .words = "opening asked",
                          .shown = std::vector<double>(sweep_.points.size(),
                                                       per_cent * door_wanted(sweep_.shape))});
        return curves;
    }

    /// Where some state falls short, over the whole height of the panel.
    void shade_short(Picture& picture, const Axis& x, const Axis& y) const {
        const UnitScale scale = scale_of(sweep_, 0);
        const auto& values = sweep_.over[0].values;
        double from = values.front();
        bool passing = sweep_.points.front().passes();
        const auto fill = [&](double low, double high) {
            const double start = x.px(scale.shown(low));
            picture.box(
                {start, y.end_px}, x.px(scale.shown(high)) - start, y.start_px - y.end_px, shade);
        };
        for (const SweepTurn& turn : sweep_.turns) {
            if (!passing) {
                fill(from, turn.at);
            }
            from = turn.at;
            passing = turn.passes_above;
        }
        if (!passing) {
            fill(from, values.back());
        }
    }

    void panel(Picture& picture,
               double top,
               const std::vector<SweptCurve>& curves,
               std::string title,
               bool per_cent) const {
        Axis x = axis_of(sweep_, 0);
        x.start_px = left_px;
        x.end_px = right_px;
        std::vector<double> all{0.0};
        for (const SweptCurve& curve : curves) {
            all.insert(all.end(), curve.shown.begin(), curve.shown.end());
        }
        if (per_cent) {
            all.push_back(100.0);
        }
        Axis y = axis_over(all, std::move(title));
        y.start_px = top + panel_px;
        y.end_px = top;
        y.round_out();
        shade_short(picture, x, y);
        picture.axes(x, y, true);
        const UnitScale scale = scale_of(sweep_, 0);
        std::vector<Picture::Entry> entries;
        for (const SweptCurve& curve : curves) {
            std::vector<Point> points;
            for (std::size_t i = 0; i < curve.shown.size(); ++i) {
                points.push_back({x.px(scale.shown(sweep_.points[i].at[0])), y.px(curve.shown[i])});
            }
            picture.path(points, curve.stroke);
            if (curve.stroke.color != needed_color) {
                for (const Point& point : points) {
                    picture.dot(point, curve.stroke.color);
                }
            }
            entries.push_back({.stroke = curve.stroke, .fill = {}, .words = curve.words});
        }
        if (!std::all_of(sweep_.points.begin(), sweep_.points.end(), [](const SweepPoint& point) {
                return point.passes();
            })) {
            entries.push_back({.stroke = {}, .fill = shade, .words = "some state falls short"});
        }
        picture.legend({legend_px, top + 12.0}, entries);
    }

    const Sweep& sweep_;
    const Score* shape_{};
    UnitScale pressure_;
};

} // namespace

UnitScale scale_of(const Sweep& sweep, std::size_t which) {
    const Varied& varied = sweep.over[which];
    return unit_scale(varied.key.kind, shown_unit(varied, sweep.present.units));
}

Axis axis_of(const Sweep& sweep, std::size_t which) {
    const UnitScale scale = scale_of(sweep, which);
    std::vector<double> shown;
    for (const double value : sweep.over[which].values) {
        shown.push_back(scale.shown(value));
    }
    const std::string& label = sweep.over[which].key.label;
    return axis_over(shown, scale.unit.empty() ? label : label + ", " + scale.unit);
}

std::string sweep_lines(const Sweep& sweep) {
    return Lines(sweep).drawn();
}

} // namespace fluewright::chart

namespace fluewright {

std::string sweep_svg(const Sweep& sweep) {
    return sweep.over.size() == 1 ? chart::sweep_lines(sweep) : chart::sweep_map(sweep);
}

} // namespace fluewright
