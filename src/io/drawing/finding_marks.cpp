#include "colors.hpp"
#include "io/report/check_parts.hpp"
#include "labels.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fluewright::drawing {
namespace {

using chart::Anchor;
using chart::Point;

/// A finding's numbers at one place of the drawing.
struct Marks {
    Spot at;
    std::string numbers;
};

/// The places that findings name, as far as the drawing has them.
std::optional<Spot> spot_of(const Finding& finding, const Run& run, const Elevation& e) {
    if (finding.part >= 0 && static_cast<std::size_t>(finding.part) < e.parts.size()) {
        return e.parts[static_cast<std::size_t>(finding.part)].at;
    }
    if (finding.place == run.label_at(-1)) {
        return e.outlet;
    }
    if (finding.place == run.label_at(static_cast<int>(e.parts.size()))) {
        return e.top;
    }
    const DrawnHeater& h = e.heater;
    if (finding.place == "the heater" || finding.place == "the draft hood") {
        return Spot{0.5 * (h.left_m + h.right_m), 0.5 * (h.foot_m + h.top_m)};
    }
    if ((finding.place == "the loading door" || finding.place == "the open front") && h.door_foot) {
        return Spot{h.left_m, h.door_foot->y_m + 0.5 * h.door_height_m};
    }
    if (finding.place == "the room") {
        constexpr double beside_m = 0.5; // in the air before the heater, away from the run
        return Spot{std::max(e.left_m, h.left_m - beside_m), 0.5 * (h.foot_m + h.top_m)};
    }
    return std::nullopt;
}

std::vector<Marks> marks_of(const Drawn& drawn) {
    std::vector<Marks> all;
    for (std::size_t i = 0; i < drawn.assessment.findings.size(); ++i) {
        const auto spot = spot_of(
            drawn.assessment.findings[i], drawn.assessment.installation.run, drawn.elevation);
        if (!spot) {
            continue;
        }
        const auto same = std::find_if(all.begin(), all.end(), [&](const Marks& m) {
            return std::hypot(m.at.x_m - spot->x_m, m.at.y_m - spot->y_m) < 0.02;
        });
        Marks& mark = same == all.end() ? all.emplace_back(Marks{*spot, {}}) : *same;
        mark.numbers += (mark.numbers.empty() ? "" : ", ") + std::to_string(i + 1);
    }
    return all;
}

void pill(chart::Picture& picture, const Box& box, std::string_view words) {
    picture.shape({{box.left + 4.0, box.top},
                   {box.right() - 4.0, box.top},
                   {box.right(), box.top + 4.0},
                   {box.right(), box.bottom() - 4.0},
                   {box.right() - 4.0, box.bottom()},
                   {box.left + 4.0, box.bottom()},
                   {box.left, box.bottom() - 4.0},
                   {box.left, box.top + 4.0}},
                  "#ffffff",
                  {.color = ink, .width = 1.2});
    picture.set({box.left + 0.5 * box.width, box.bottom() - 4.2},
                words,
                {.anchor = Anchor::middle, .size = page::small, .weight = chart::Weight::bold});
}

void name_near(Painting& painting, std::string_view words, Point at, const Box& within) {
    const double width = chart::text_width(words, page::small) + 4.0;
    const double high = line_height(page::small);
    if (const auto box = painting.sheet.near(at, width, high, within)) {
        painting.picture.set({box->left + 2.0, box->bottom() - page::drop},
                             words,
                             {.size = page::small, .color = "#5f5a50"});
    }
}

} // namespace

void paint_findings(const Drawn& drawn, Painting& painting) {
    for (const Marks& mark : marks_of(drawn)) {
        const Point at = drawn.frame.at(mark.at);
        const double width =
            chart::text_width(mark.numbers, page::small, chart::Weight::bold) + 10.0;
        constexpr double high = 16.0;
        std::optional<Box> box;
        for (const double reach : {60.0, 130.0, 400.0}) {
            const Box within{std::max(drawn.area.left, at.x - reach - width),
                             std::max(drawn.area.top, at.y - reach),
                             0.0,
                             0.0};
            const Box window{within.left,
                             within.top,
                             std::min(drawn.area.right(), at.x + reach + width) - within.left,
                             std::min(drawn.area.bottom(), at.y + reach) - within.top};
            box = box ? box : painting.sheet.near(at, width, high, window);
        }
        if (!box) {
            continue; // the list below names the place
        }
        painting.signs.insert(Sign::finding);
        const Point middle{box->left + 0.5 * width, box->top + 0.5 * high};
        painting.picture.line(at, middle, {.color = ink, .width = 0.8});
        pill(painting.picture, *box, mark.numbers);
    }
}

void paint_names(const Drawn& drawn, Painting& painting) {
    for (const Barrier& barrier : drawn.elevation.barriers) {
        if (barrier.kind == BarrierKind::wall) {
            continue;
        }
        const bool roof = barrier.kind == BarrierKind::roof;
        const double y = drawn.frame.at({0.0, barrier.at_m}).y;
        const double x = drawn.frame.at({barrier.axis_m, 0.0}).x;
        const std::string words =
            !roof ? "ceiling"
            : drawn.elevation.roof->pitch_known
                ? "roof, "
                      + report::quantity(drawn.elevation.roof->pitch_rad, Kind::angle, drawn.style)
                : "roof, pitch not given";
        constexpr double reach = 44.0;
        const Box within{drawn.area.left,
                         std::max(drawn.area.top, y - reach),
                         drawn.area.width,
                         std::min(drawn.area.bottom(), y + reach)
                             - std::max(drawn.area.top, y - reach)};
        name_near(painting, words, {x - 60.0, y - 12.0}, within);
    }
    const Barrier* wall = drawn.elevation.first(BarrierKind::wall);
    std::optional<Zone> before;
    for (const DrawnPart& part : drawn.elevation.parts) {
        const Zone zone = part.part->zone.value;
        if (!part.has_length() || zone == before) {
            continue;
        }
        before = zone;
        const double foot = drawn.frame.at(part.axis.front()).y;
        const double head = drawn.frame.at(part.axis.back()).y;
        double left = drawn.area.left;
        double right = drawn.area.right();
        if (wall != nullptr && drawn.elevation.run_leaves_sideways) {
            const double wall_px = drawn.frame.at({wall->at_m, 0.0}).x;
            (zone == Zone::outdoors ? left : right) =
                wall_px + (zone == Zone::outdoors ? 8.0 : -8.0);
        }
        const double low = std::min(drawn.area.bottom(), std::max(foot, head) + 10.0);
        const double high = std::max(drawn.area.top, std::min(foot, head) - 10.0);
        const Point at = drawn.frame.at(part.at);
        name_near(painting,
                  name(zone),
                  {zone == Zone::outdoors ? at.x + 60.0 : at.x - 70.0, at.y},
                  {left, high, right - left, low - high});
    }
}

} // namespace fluewright::drawing
