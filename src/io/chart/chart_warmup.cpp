#include "fluewright/io/report/report_warmup.hpp"
#include "fluewright/model/run/tar.hpp"
#include "panel.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

using chart::Curve;
using chart::Panel;

constexpr double minute_s = 60.0;
constexpr std::string_view phase_fill = "#f1efe9";
constexpr std::string_view starved_fill = "#f6e3dc";

class Courses {
public:
    Courses(const Case& resolved, const WarmupReportOptions& options)
        : c_(resolved), options_(options),
          pressure_(chart::unit_scale(Kind::pressure,
                                      customary_unit(Kind::pressure, options.style.units))),
          warmth_(chart::unit_scale(Kind::temperature,
                                    customary_unit(Kind::temperature, options.style.units))) {}

    /// Draft and temperatures of the fire in one weather.
    [[nodiscard]] std::vector<Panel> panels(const WarmupInWeather& of) const {
        const std::string& weather = c_.weathers[of.weather].name;
        const Warmup& w = of.course;
        Panel draft = panel(w, weather, "draft at the outlet, " + pressure_.unit);
        draft.curves.push_back(curve(w, "draft", 0, "", [this](const WarmupMoment& m) {
            return pressure_.shown(m.draft_pa);
        }));
        draft.levels.push_back({pressure_.shown(w.draft_needed_pa),
                                "needed at high fire, " + shown(w.draft_needed_pa, Kind::pressure),
                                {.color = "#000000", .width = 1.8, .dashes = "2 4"}});
        draft.levels.push_back({0.0, "below this the gas comes back", {.color = "#666666"}});
        add_starved(draft, w);
        Panel heat = panel(w, weather, "temperature, " + warmth_.unit);
        const auto add = [&](std::string_view words,
                             std::size_t color,
                             std::string_view dashes,
                             double WarmupMoment::*member) {
            heat.curves.push_back(
                curve(w, words, color, dashes, [this, member](const WarmupMoment& m) {
                    return warmth_.shown(m.*member);
                }));
        };
        add("gas at the outlet", 1, "", &WarmupMoment::outlet_k);
        add("gas at the chimney top", 1, "7 4", &WarmupMoment::top_k);
        add("hottest outside of the pipe", 2, "", &WarmupMoment::hottest_surface_k);
        add("coldest inner wall", 0, "", &WarmupMoment::coldest_wall_k);
        add("dew point of the gas", 3, "2 4", &WarmupMoment::dew_point_k);
        if (makes_tar(c_.appliance)) {
            heat.levels.push_back(
                {warmth_.shown(w.creosote_threshold_k),
                 "creosote settles below, " + shown(w.creosote_threshold_k, Kind::temperature),
                 {.color = chart::line_colors[4], .dashes = "6 3 1 3"}});
        }
        return {std::move(draft), std::move(heat)};
    }

    /// The dangers first, in a sentence.
    [[nodiscard]] std::string sentence() const {
        std::string words;
        for (const PresentDanger& danger : options_.dangers) {
            words += (words.empty() ? "DANGER, put right before a fire: " : "; ")
                     + std::string{danger.title};
        }
        return words.empty() ? "One fire from a cold flue to a cold flue again, in every weather. "
                               "Shaded alternately: the phases of the fire."
                             : words + ". Light no fire before.";
    }

private:
    [[nodiscard]] std::string shown(double si, Kind kind) const {
        return format_quantity(si, kind, options_.style.units);
    }

    [[nodiscard]] Panel
    panel(const Warmup& w, std::string_view weather, std::string y_title) const {
        Panel made{.x_title = fmt::format("minutes from lighting, {}", weather),
                   .y_title = std::move(y_title),
                   .x_low = 0.0,
                   .x_high = w.end_s / minute_s};
        double from_s = 0.0;
        for (std::size_t i = 0; i < w.phases.size() && from_s < w.end_s; ++i) {
            const double to_s = std::min(w.end_s, from_s + w.phases[i].duration_s);
            if (i % 2 == 1) {
                made.bands.push_back({from_s / minute_s, to_s / minute_s, phase_fill});
            }
            made.marks.push_back({0.5 * (from_s + to_s) / minute_s, w.phases[i].name});
            from_s = to_s;
        }
        return made;
    }

    template <class Value>
    [[nodiscard]] static Curve curve(const Warmup& w,
                                     std::string_view words,
                                     std::size_t color,
                                     std::string_view dashes,
                                     const Value& value) {
        Curve made{.stroke = {.color = chart::line_colors[color], .width = 2.0, .dashes = dashes},
                   .words = std::string{words},
                   .points = {}};
        for (const WarmupMoment& moment : w.moments) {
            made.points.push_back({moment.time_s / minute_s, value(moment)});
        }
        return made;
    }

    /// Where the flue draws less than the fire asks.
    static void add_starved(Panel& draft, const Warmup& w) {
        bool any = false;
        for (std::size_t i = 0; i + 1 < w.moments.size(); ++i) {
            if (w.moments[i].starved) {
                any = true;
                draft.bands.push_back({w.moments[i].time_s / minute_s,
                                       w.moments[i + 1].time_s / minute_s,
                                       starved_fill});
            }
        }
        if (any) {
            draft.more.push_back({.stroke = {},
                                  .fill = starved_fill,
                                  .words = "the fire gets less air than it asks"});
        }
    }

    const Case& c_;
    const WarmupReportOptions& options_;
    chart::UnitScale pressure_;
    chart::UnitScale warmth_;
};

} // namespace

std::string warmup_svg(const Case& resolved,
                       std::span<const WarmupInWeather> courses,
                       const WarmupReportOptions& options) {
    const Courses drawn{resolved, options};
    std::vector<Panel> panels;
    for (const WarmupInWeather& course : courses) {
        for (Panel& panel : drawn.panels(course)) {
            panels.push_back(std::move(panel));
        }
    }
    const std::string title = resolved.title.empty() ? "Warm-up" : resolved.title;
    const std::string sentence = drawn.sentence();
    chart::Picture picture(
        chart::panel_page_width, chart::height_of_panels(panels.size()), title + ": " + sentence);
    picture.head(chart::panel_left, title, sentence);
    for (std::size_t i = 0; i < panels.size(); ++i) {
        chart::paint(picture, panels[i], i);
    }
    return picture.finished();
}

} // namespace fluewright
