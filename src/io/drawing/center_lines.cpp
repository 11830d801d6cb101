#include "paint.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::drawing {
namespace {

using chart::Point;
using PointLine = std::vector<Point>;

Point unit(Point from, Point to) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    return length > 0.0 ? Point{(to.x - from.x) / length, (to.y - from.y) / length}
                        : Point{0.0, -1.0};
}

double length_of(const PointLine& line) {
    return line.size() < 2
               ? 0.0
               : std::hypot(line.back().x - line.front().x, line.back().y - line.front().y);
}

/// How many chords a turn is drawn with.
int chords_of(const RunPart& part) {
    const bool elbow = part.kind == PartKind::elbow;
    return !elbow || part.build.value == Build::mitered ? 0
           : part.build.value == Build::gored           ? 4
                                                        : 12;
}

/// The turn between two straights: takes its room from both.
void bend(PointLine& before, PointLine& turn, PointLine& behind, const DrawnPart& part, double px) {
    const Point in = unit(before.front(), before.back());
    const Point out = unit(behind.front(), behind.back());
    const double cosine = std::clamp(in.x * out.x + in.y * out.y, -1.0, 1.0);
    const double angle = std::acos(cosine);
    constexpr double least_rad = 0.02;
    constexpr double most_rad = 3.0;
    if (angle < least_rad || angle > most_rad) {
        return;
    }
    const double radius = part.part->written.radius_m.value_or(part.outside_m) * px;
    const double tangent = std::min(
        {radius * std::tan(0.5 * angle), 0.45 * length_of(before), 0.45 * length_of(behind)});
    const Point corner = before.back();
    const Point start{corner.x - tangent * in.x, corner.y - tangent * in.y};
    const Point end{corner.x + tangent * out.x, corner.y + tangent * out.y};
    turn = {start};
    const int chords = chords_of(*part.part);
    if (chords == 0) {
        turn.push_back(corner);
    }
    // A quadratic between the tangents: near a circle's arc, and as smooth.
    for (int i = 1; i < chords; ++i) {
        const double t = static_cast<double>(i) / chords;
        const double a = (1.0 - t) * (1.0 - t);
        const double b = 2.0 * t * (1.0 - t);
        const double c = t * t;
        turn.push_back(
            {a * start.x + b * corner.x + c * end.x, a * start.y + b * corner.y + c * end.y});
    }
    turn.push_back(end);
    before.back() = start;
    behind.front() = end;
}

bool turns(const DrawnPart& part) {
    return part.part->kind == PartKind::elbow || part.part->kind == PartKind::tee
           || part.part->kind == PartKind::fitting || part.part->kind == PartKind::draft_hood;
}

} // namespace

std::vector<Point> beside(const std::vector<Point>& line, double distance) {
    PointLine made;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const Point in = i > 0 ? unit(line[i - 1], line[i]) : unit(line[i], line[i + 1]);
        const Point out = i + 1 < line.size() ? unit(line[i], line[i + 1]) : in;
        const Point sum{in.x + out.x, in.y + out.y};
        const double square = sum.x * sum.x + sum.y * sum.y;
        constexpr double least_square = 0.2; // of a turn nearly back, whose corner would be far off
        const double share = 2.0 * distance / std::max(least_square, square);
        made.push_back({line[i].x + share * sum.y, line[i].y - share * sum.x});
    }
    return made;
}

Lines center_lines(const Elevation& elevation, const Frame& frame) {
    Lines lines;
    for (const DrawnPart& part : elevation.parts) {
        PointLine line;
        for (const Spot& spot : part.axis) {
            line.push_back(frame.at(spot));
        }
        lines.push_back(std::move(line));
    }
    for (std::size_t i = 0; i < elevation.parts.size(); ++i) {
        std::size_t before = i;
        std::size_t behind = i;
        while (before > 0 && !elevation.parts[before].has_length()) {
            --before;
        }
        while (behind + 1 < elevation.parts.size() && !elevation.parts[behind].has_length()) {
            ++behind;
        }
        const bool between = elevation.parts[before].has_length()
                             && elevation.parts[behind].has_length() && before < i && behind > i;
        // Of several turns at one place the first is drawn.
        bool first = true;
        for (std::size_t k = before + 1; k < i; ++k) {
            first = first && !turns(elevation.parts[k]);
        }
        if (turns(elevation.parts[i]) && between && first) {
            bend(lines[before], lines[i], lines[behind], elevation.parts[i], frame.px_per_m);
        }
    }
    return lines;
}

} // namespace fluewright::drawing
