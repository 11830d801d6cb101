#include "colors.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/text/words.hpp"
#include "paint.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace fluewright::drawing {
namespace {

using chart::Point;

/// The lower end of a part in flow order, and the way of the gas there.
struct JointPlace {
    Point at;
    Point along;
};

JointPlace start_of(const std::vector<Point>& line, const DrawnPart& part) {
    if (line.size() > 1) {
        const double length = std::hypot(line[1].x - line[0].x, line[1].y - line[0].y);
        return length > 0.0 ? JointPlace{line[0],
                                         {(line[1].x - line[0].x) / length,
                                          (line[1].y - line[0].y) / length}}
                            : JointPlace{line[0], {0.0, -1.0}};
    }
    return {line.front(), {std::cos(part.direction_rad), -std::sin(part.direction_rad)}};
}

/// A triangle that points away from the pipe, to the right of the gas's way.
void arrow(chart::Picture& picture, Point tip_from, Point out, bool filled) {
    constexpr double long_px = 10.0;
    constexpr double half_px = 5.0;
    const Point side{-out.y, out.x};
    picture.shape({{tip_from.x + side.x * half_px, tip_from.y + side.y * half_px},
                   {tip_from.x + out.x * long_px, tip_from.y + out.y * long_px},
                   {tip_from.x - side.x * half_px, tip_from.y - side.y * half_px}},
                  filled ? smoke : "#ffffff",
                  {.color = filled ? ink : smoke, .width = filled ? 0.8 : 1.3});
}

/// With a fire and the door shut; an open front stands open.
bool presses_on_joints(const Case& resolved, const StateResult& state) {
    return report::has_working_point(state)
           && (has_open_front(resolved.appliance) ? is_door_open(state.kind)
                                                  : has_closed_fire(state.kind));
}

/// Whether the joint at the lower end of a part lets smoke out in a state.
bool leaks(const Case& resolved, const StateResult& state, const RunPart& part) {
    const auto joints = report::joints_of(resolved, state);
    return std::any_of(joints.begin(), joints.end(), [&](const report::Joint& joint) {
        return joint.section == part.first_section && joint.pressure_pa > 0.0;
    });
}

/// Whether `check` finds anything about joints under pressure: sealed ones hold some of it.
bool joints_are_found_wanting(const Assessment& a) {
    constexpr std::array<std::string_view, 3> of_joints{
        "smoke-at-joints", "smoke-may-seep-at-joints", "joints-without-draft"};
    return std::any_of(a.findings.begin(), a.findings.end(), [&](const Finding& finding) {
        return std::find(of_joints.begin(), of_joints.end(), finding.matter->id) != of_joints.end();
    });
}

} // namespace

void paint_joints(const Assessment& a,
                  const Elevation& elevation,
                  const Shown& shown,
                  const Lines& lines,
                  Painting& painting) {
    const bool any_leaks = joints_are_found_wanting(a);
    for (std::size_t i = 0; i < elevation.parts.size(); ++i) {
        const DrawnPart& part = elevation.parts[i];
        if (part.part->bare_end()) {
            continue;
        }
        const JointPlace place = start_of(lines[i], part);
        const double narrower_m =
            i > 0 ? std::min(part.outside_m, elevation.parts[i - 1].outside_m) : part.outside_m;
        const double half = std::max(2.5, 0.5 * painting.frame.px(narrower_m) + 1.5);
        const Point left{place.along.y, -place.along.x};
        painting.picture.line({place.at.x + half * left.x, place.at.y + half * left.y},
                              {place.at.x - half * left.x, place.at.y - half * left.y},
                              {.color = ink, .width = 1.1});
        painting.signs.insert(Sign::joint);
        if (!any_leaks || !report::leaks_indoors(a.installation, part.part->first_section)) {
            continue;
        }
        const auto burns_and_leaks = [&](const StateResult& state) {
            return presses_on_joints(a.installation, state)
                   && leaks(a.installation, state, *part.part);
        };
        const bool here = shown.state != nullptr && burns_and_leaks(*shown.state);
        const bool elsewhere =
            std::any_of(a.solution.states.begin(), a.solution.states.end(), burns_and_leaks);
        if (here || elsewhere) {
            const Point from{place.at.x - half * left.x, place.at.y - half * left.y};
            const Point out{-left.x, -left.y};
            arrow(painting.picture, from, out, here);
            painting.sheet.take_line(from, {from.x + 10.0 * out.x, from.y + 10.0 * out.y}, 6.0);
            painting.signs.insert(here ? Sign::leaks_out : Sign::leaks_out_elsewhere);
        }
    }
}

void paint_pieces(const PartsList& list,
                  const Elevation& elevation,
                  const Lines& lines,
                  Painting& painting) {
    for (const PipeStretch& stretch : list.stretches) {
        double whole_m = 0.0;
        for (const int index : stretch.parts) {
            whole_m += elevation.parts[static_cast<std::size_t>(index)].part->length_m;
        }
        double laid_m = 0.0;
        for (std::size_t k = 0; k + 1 < stretch.pieces.size() && stretch.between_m > 0.0; ++k) {
            laid_m += stretch.pieces[k].length_m - stretch.lap_m;
            // Where on the drawn way: the stretch lies between the faces of its fittings.
            double along_m = whole_m * std::clamp(laid_m / stretch.between_m, 0.0, 1.0);
            for (const int index : stretch.parts) {
                const auto at = static_cast<std::size_t>(index);
                const double length_m = elevation.parts[at].part->length_m;
                if (along_m > length_m) {
                    along_m -= length_m;
                    continue;
                }
                const std::vector<Point>& line = lines[at];
                if (line.size() < 2 || length_m <= 0.0) {
                    break;
                }
                const double share = along_m / length_m;
                const Point on{line.front().x + share * (line.back().x - line.front().x),
                               line.front().y + share * (line.back().y - line.front().y)};
                const JointPlace way = start_of(line, elevation.parts[at]);
                const Point left{way.along.y, -way.along.x};
                const double half =
                    std::max(4.0, 0.5 * painting.frame.px(elevation.parts[at].outside_m) + 4.0);
                painting.picture.line({on.x + half * left.x, on.y + half * left.y},
                                      {on.x - half * left.x, on.y - half * left.y},
                                      {.color = smoke, .width = 2.0});
                painting.signs.insert(Sign::piece_end);
                break;
            }
        }
    }
}

void paint_sign(chart::Picture& picture, Sign sign, Point at) {
    const chart::Stroke thin{.color = ink, .width = 0.8};
    const Point corner{at.x, at.y - 6.0};
    constexpr double wide = 22.0;
    constexpr double high = 12.0;
    const auto swatch = [&](Stuff stuff) {
        picture.shape({corner,
                       {corner.x + wide, corner.y},
                       {corner.x + wide, corner.y + high},
                       {corner.x, corner.y + high}},
                      color_of(stuff),
                      thin);
    };
    switch (sign) {
    case Sign::leaks_out:
    case Sign::leaks_out_elsewhere:
        arrow(picture, {at.x + 6.0, at.y}, {1.0, 0.0}, sign == Sign::leaks_out);
        break;
    case Sign::joint:
        picture.line({at.x + 11.0, at.y - 6.0}, {at.x + 11.0, at.y + 6.0}, {.width = 1.4});
        break;
    case Sign::finding:
        picture.circle({at.x + 11.0, at.y}, 6.5, "#ffffff", {.color = ink, .width = 1.2});
        break;
    case Sign::combustible:
        picture.hatch({at.x, at.y - 3.5}, wide, 7.0, 5.0, {.color = burns, .width = 1.0});
        picture.line({at.x, at.y + 3.5}, {at.x + wide, at.y + 3.5}, {.color = burns, .width = 1.8});
        break;
    case Sign::shield:
        picture.line({at.x, at.y}, {at.x + wide, at.y}, {.color = ink, .width = 1.5});
        break;
    case Sign::sheet:
        swatch(Stuff::sheet);
        break;
    case Sign::insulation:
        swatch(Stuff::insulation);
        break;
    case Sign::air_gap:
        swatch(Stuff::air);
        break;
    case Sign::masonry:
        swatch(Stuff::masonry);
        break;
    case Sign::piece_end:
        picture.line(
            {at.x + 11.0, at.y - 7.0}, {at.x + 11.0, at.y + 7.0}, {.color = smoke, .width = 2.0});
        break;
    }
}

} // namespace fluewright::drawing
