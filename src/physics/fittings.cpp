#include "fluewright/physics/fittings.hpp"

#include "fluewright/core/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace fluewright::fittings {
namespace {

struct Point {
    double x;
    double y;
};

double degrees(double angle_rad) {
    return angle_rad * 180.0 / constants::pi;
}

/// Straight lines between the points, held at the ends.
double between(std::span<const Point> points, double x) {
    if (x <= points.front().x) {
        return points.front().y;
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (x <= points[i].x) {
            const double share = (x - points[i - 1].x) / (points[i].x - points[i - 1].x);
            return points[i - 1].y + share * (points[i].y - points[i - 1].y);
        }
    }
    return points.back().y;
}

/// A table that ends at 90 degrees, carried on in proportion to the angle.
double by_angle(std::span<const Point> points, double angle_rad) {
    const double angle = degrees(angle_rad);
    const double end = points.back().x;
    return angle <= end ? between(points, angle) : points.back().y * angle / end;
}

// Means of the Rennels, Miller, Crane and Ito columns at each radius.
constexpr std::array<Point, 6> smooth_075{
    {{0, 0}, {15, 0.117}, {30, 0.198}, {45, 0.299}, {60, 0.427}, {90, 0.660}}};
constexpr std::array<Point, 6> smooth_100{
    {{0, 0}, {15, 0.111}, {30, 0.180}, {45, 0.251}, {60, 0.325}, {90, 0.474}}};
constexpr std::array<Point, 6> smooth_150{
    {{0, 0}, {15, 0.095}, {30, 0.153}, {45, 0.204}, {60, 0.252}, {90, 0.340}}};
constexpr std::array<Point, 6> gored{
    {{0, 0}, {15, 0.10}, {30, 0.20}, {45, 0.30}, {60, 0.45}, {90, 0.60}}};
constexpr std::array<Point, 6> mitered{
    {{0, 0}, {15, 0.061}, {30, 0.153}, {45, 0.304}, {60, 0.530}, {90, 1.202}}};
constexpr std::array<Point, 6> short_over_long{
    {{0, 1.0}, {10, 1.0}, {30, 1.5}, {45, 1.333}, {60, 1.4}, {90, 1.333}}};

constexpr double near_spacing = 2.0;
constexpr double far_spacing = 30.0;

// Weisbach: closing angle in degrees, natural logarithm taken at run time.
constexpr std::array<Point, 15> disc{{{0, 0.10},
                                      {5, 0.24},
                                      {10, 0.52},
                                      {15, 0.90},
                                      {20, 1.54},
                                      {25, 2.51},
                                      {30, 3.91},
                                      {35, 6.22},
                                      {40, 10.8},
                                      {45, 18.7},
                                      {50, 32.6},
                                      {55, 58.8},
                                      {60, 118},
                                      {65, 256},
                                      {70, 751}}};

double disc_without_bypass(double angle) {
    if (angle >= disc.back().x) {
        return disc.back().y * std::exp(0.2 * (angle - disc.back().x));
    }
    std::size_t i = 1;
    while (disc[i].x < angle) {
        ++i;
    }
    const double share = (angle - disc[i - 1].x) / (disc[i].x - disc[i - 1].x);
    return disc[i - 1].y * std::pow(disc[i].y / disc[i - 1].y, share);
}

double square(double x) {
    return x * x;
}

double half_angle_sine(const Cone& cone) {
    const double half_step_m = 0.5 * (cone.large_diameter_m - cone.small_diameter_m);
    if (half_step_m <= 0.0) {
        return 0.0;
    }
    return half_step_m / std::hypot(half_step_m, cone.length_m);
}

double small_over_large(const Cone& cone) {
    return square(cone.small_diameter_m / cone.large_diameter_m);
}

} // namespace

double bend_smooth(double angle_rad, double radius_over_diameter) {
    const std::array<Point, 3> by_radius{{{0.75, by_angle(smooth_075, angle_rad)},
                                          {1.0, by_angle(smooth_100, angle_rad)},
                                          {1.5, by_angle(smooth_150, angle_rad)}}};
    return between(by_radius, radius_over_diameter);
}

double bend_gored(double angle_rad) {
    return by_angle(gored, angle_rad);
}

double bend_mitered(double angle_rad) {
    return by_angle(mitered, angle_rad);
}

double bend_spacing_factor(double angle_rad, double spacing_over_diameter) {
    const double full = between(short_over_long, degrees(angle_rad));
    const double share =
        std::clamp((far_spacing - spacing_over_diameter) / (far_spacing - near_spacing), 0.0, 1.0);
    return 1.0 + share * (full - 1.0);
}

double tee_from_branch(const Junction& tee) {
    const double q = tee.branch_flow;
    const double a = tee.area_ratio;
    const double cosine = std::cos(tee.angle_rad);
    return -0.92 * square(1.0 - q)
           - square(q)
                 * (1.2 * (cosine / a - 1.0) + 0.8 * (1.0 - 1.0 / square(a))
                    - (1.0 / a - 1.0) * cosine)
           + (2.0 - a) * (1.0 - q) * q;
}

double tee_along_main(const Junction& tee) {
    const double q = tee.branch_flow;
    const double a = tee.area_ratio;
    const double cosine = std::cos(tee.angle_rad);
    return 0.03 * square(1.0 - q) - square(q) * (1.0 + 1.62 * (cosine / a - 1.0) - 0.38 * (1.0 - a))
           + (2.0 - a) * (1.0 - q) * q;
}

double sudden_enlargement(double area_ratio) {
    return square(1.0 - area_ratio);
}

double sudden_contraction(double area_ratio) {
    return 0.5 * (1.0 - area_ratio);
}

double increaser(const Cone& cone) {
    const double factor = std::fmin(2.6 * half_angle_sine(cone), 1.0);
    return factor * sudden_enlargement(small_over_large(cone));
}

double reducer(const Cone& cone) {
    const double sine = half_angle_sine(cone);
    const double factor = std::fmin(1.6 * sine, std::sqrt(sine));
    return factor * sudden_contraction(small_over_large(cone));
}

double disc_damper(double blade_angle_rad, double free_area_shut) {
    const double blade = disc_without_bypass(degrees(blade_angle_rad));
    if (free_area_shut <= 0.0) {
        return blade;
    }
    // Two openings side by side under one pressure difference: their flows add, flow ~ K^-0.5.
    const double past_edge = obstruction(free_area_shut);
    if (blade <= 0.0 || past_edge <= 0.0) {
        return 0.0; // nothing stands in the way of one of them
    }
    return 1.0 / square(1.0 / std::sqrt(blade) + 1.0 / std::sqrt(past_edge));
}

double obstruction(double free_area) {
    const double f = free_area;
    return square((0.707 * std::sqrt(1.0 - f) + 1.0 - f) / f);
}

double screen(double free_area) {
    const double f = free_area;
    return 1.3 * (1.0 - f) + square(1.0 / f - 1.0);
}

} // namespace fluewright::fittings
