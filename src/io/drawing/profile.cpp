#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/io/drawing/draw.hpp"
#include "fluewright/io/text/style.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/tar.hpp"
#include "fluewright/model/states/cold_wall.hpp"
#include "io/chart/chart.hpp"
#include "io/chart/panel.hpp"
#include "io/report/check_parts.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>

namespace fluewright::drawing {
namespace {

using chart::Curve;
using chart::Panel;

constexpr double gap = std::numeric_limits<double>::quiet_NaN(); ///< lifts the pen

class Profile {
public:
    Profile(const Installation& written, const Assessment& assessment, const StateResult& state)
        : written_(written), a_(assessment), c_(assessment.installation), state_(state),
          length_(chart::unit_scale(Kind::length, c_.units == UnitSystem::us ? "ft" : "m")),
          pressure_(chart::unit_scale(Kind::pressure, customary_unit(Kind::pressure, c_.units))),
          warmth_(
              chart::unit_scale(Kind::temperature, customary_unit(Kind::temperature, c_.units))) {}

    std::string drawn() {
        const std::string sentence = fmt::format(
            "Along the run from the outlet to the chimney top: {}. Numbers at the top are those of "
            "the parts.",
            report::state_words(c_, state_));
        chart::Picture picture(
            chart::panel_page_width, chart::height_of_panels(2), "Profile along the run");
        picture.head(
            chart::panel_left, c_.title.empty() ? "Profile along the run" : c_.title, sentence);
        chart::paint(picture, pressures(), 0);
        chart::paint(picture, temperatures(), 1);
        return picture.finished();
    }

private:
    [[nodiscard]] double along(const Station& station) const {
        return length_.shown(station.distance_m);
    }

    [[nodiscard]] Panel panel(std::string title) const {
        Panel made{.x_title = "distance from the outlet, " + length_.unit,
                   .y_title = std::move(title),
                   .x_low = 0.0,
                   .x_high = along(state_.stations.back())};
        for (std::size_t i = 1; i < state_.stations.size(); ++i) {
            const Section& section = c_.sections[state_.stations[i].section];
            if (section.part < 0 || static_cast<std::size_t>(section.part) >= c_.run.parts.size()) {
                continue;
            }
            const double from = along(state_.stations[i - 1]);
            const double to = along(state_.stations[i]);
            made.marks.push_back({0.5 * (from + to), std::to_string(section.part + 1)});
            made.uprights.push_back(to);
        }
        return made;
    }

    [[nodiscard]] Panel pressures() const {
        Panel made = panel("pressure against the air round it, " + pressure_.unit);
        Curve curve{.stroke = {.color = chart::line_colors[0], .width = 2.2},
                    .words = "in the flue",
                    .points = {}};
        curve.points.push_back({0.0, pressure_.shown(state_.stations[0].pressure_in_zone_pa)});
        for (std::size_t i = 1; i < state_.stations.size(); ++i) {
            const Station& station = state_.stations[i];
            if (i > 1) {
                curve.points.push_back(
                    {along(state_.stations[i - 1]), pressure_.shown(station.joint_pressure_pa)});
            }
            curve.points.push_back({along(station), pressure_.shown(station.pressure_in_zone_pa)});
        }
        made.curves.push_back(std::move(curve));
        if (state_.draft_needed_pa > 0.0) {
            made.levels.push_back({-pressure_.shown(state_.draft_needed_pa),
                                   fmt::format("draft needed at the outlet, {}",
                                               shown(state_.draft_needed_pa, Kind::pressure)),
                                   {.color = "#000000", .width = 1.6, .dashes = "2 4"}});
        }
        made.levels.push_back({0.0,
                               "over this smoke comes out of a leak",
                               {.color = chart::line_colors[1], .width = 1.6}});
        return made;
    }

    [[nodiscard]] std::string shown(double si, Kind kind) const {
        return format_quantity(si, kind, c_.units);
    }

    [[nodiscard]] Panel temperatures() const {
        Panel made = panel("temperature, " + warmth_.unit);
        Curve gas{
            .stroke = {.color = chart::line_colors[1], .width = 2.4}, .words = "gas", .points = {}};
        Curve inner{.stroke = {.color = chart::line_colors[0], .width = 2.0, .dashes = "8 3"},
                    .words = "inner wall",
                    .points = {}};
        Curve outer{.stroke = {.color = chart::line_colors[2], .width = 2.0, .dashes = "3 3"},
                    .words = "outer wall",
                    .points = {}};
        gas.points.push_back({0.0, warmth_.shown(state_.stations[0].gas_temperature_k)});
        for (std::size_t i = 1; i < state_.stations.size(); ++i) {
            const Station& end = state_.stations[i];
            gas.points.push_back({along(end), warmth_.shown(end.gas_temperature_k)});
            if (report::has_wall_temperature(c_, state_, i)) {
                add_wall(i, inner, outer);
            }
        }
        made.curves = {std::move(gas), std::move(inner), std::move(outer)};
        add_limits(made);
        return made;
    }

    void add_wall(std::size_t i, Curve& inner, Curve& outer) const {
        const Station& end = state_.stations[i];
        const double from = along(state_.stations[i - 1]);
        const double to = along(end);
        const double start_k =
            end.inner_wall_start_k > 0.0 ? end.inner_wall_start_k : end.inner_wall_k;
        inner.points.push_back({from, warmth_.shown(start_k)});
        inner.points.push_back({to, warmth_.shown(end.inner_wall_k)});
        inner.points.push_back({gap, gap});
        const auto range = surface_range(c_, state_, c_.sections[end.section]);
        if (range) {
            const bool cools = state_.stations[i - 1].gas_temperature_k >= end.gas_temperature_k;
            outer.points.push_back(
                {from, warmth_.shown(cools ? range->hottest_k : range->coldest_k)});
            outer.points.push_back(
                {to, warmth_.shown(cools ? range->coldest_k : range->hottest_k)});
            outer.points.push_back({gap, gap});
        }
    }

    void add_limits(Panel& made) const {
        if (fire_of(state_.kind) == Fire::burning) {
            const DewPoints dew = dew_points_of(state_, c_);
            level(made,
                  dew.water_k,
                  "dew point",
                  {.color = "#000000", .width = 1.4, .dashes = "2 4"});
            if (dew.acid_k > 0.0) {
                level(made,
                      dew.acid_k,
                      "acid dew point",
                      {.color = chart::line_colors[3], .width = 1.4, .dashes = "2 4"});
            }
            if (makes_tar(c_.appliance)) {
                level(made,
                      catalog::default_of(DefaultId::creosote_threshold_k).value,
                      "creosote settles below",
                      {.color = chart::line_colors[4], .width = 1.4, .dashes = "6 3 1 3"});
            }
        }
        Curve rating{.stroke = {.color = chart::line_colors[5], .width = 3.0},
                     .words = "limit of the outside of the part",
                     .points = {}};
        Curve gas_rating{.stroke = {.color = chart::line_colors[3], .width = 3.0, .dashes = "10 4"},
                         .words = "limit of the gas in the part",
                         .points = {}};
        const HotSurfaces hot = hot_surfaces(written_, c_, a_.solution);
        for (std::size_t i = 1; i < state_.stations.size(); ++i) {
            const Section& section = c_.sections[state_.stations[i].section];
            if (section.length_m <= 0.0) {
                continue;
            }
            const double from = along(state_.stations[i - 1]);
            const double to = along(state_.stations[i]);
            const auto add = [&](Curve& curve, double limit_k) {
                if (limit_k > 0.0) {
                    curve.points.push_back({from, warmth_.shown(limit_k)});
                    curve.points.push_back({to, warmth_.shown(limit_k)});
                    curve.points.push_back({gap, gap});
                }
            };
            const auto surface =
                std::find_if(hot.parts.begin(), hot.parts.end(), [&](const HotSurface& s) {
                    return s.part == section.part;
                });
            add(rating, surface != hot.parts.end() ? surface->rating_k.value_or(0.0) : 0.0);
            add(gas_rating, c_.walls[section.wall].rated_gas_temperature_k);
        }
        for (Curve* curve : {&rating, &gas_rating}) {
            if (!curve->points.empty()) {
                made.curves.push_back(std::move(*curve));
            }
        }
    }

    void
    level(Panel& made, double limit_k, std::string_view what, const chart::Stroke& stroke) const {
        made.levels.push_back({warmth_.shown(limit_k),
                               fmt::format("{}, {}", what, shown(limit_k, Kind::temperature)),
                               stroke});
    }

    const Installation& written_;
    const Assessment& a_;
    const Case& c_;
    const StateResult& state_;
    chart::UnitScale length_;
    chart::UnitScale pressure_;
    chart::UnitScale warmth_;
};

} // namespace
} // namespace fluewright::drawing

namespace fluewright {

std::string
draw_profile(const Installation& written, const Assessment& assessment, const StateResult* state) {
    const StateResult* drawn =
        state != nullptr ? state : drawn_state(assessment, Show::temperature);
    if (drawn == nullptr) {
        chart::Picture picture(chart::panel_page_width, 80.0, "Profile along the run");
        picture.head(chart::panel_left,
                     assessment.installation.title,
                     "No condition has figures along the run: run and heater come to no balance.");
        return picture.finished();
    }
    return drawing::Profile{written, assessment, *drawn}.drawn();
}

} // namespace fluewright
