#include "buildable.hpp"

#include "fluewright/core/constants.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fluewright::property {
namespace {

constexpr double right_angle_rad = constants::pi / 2.0;
/// Nearer than the program asks, so that what is made here is well inside its limit.
constexpr double slack_rad = 0.15;

double climb_rad(const Part& part) {
    if (part.across_m) {
        return std::atan2(part.rise_m.value_or(part.slope.value_or(0.0) * *part.across_m),
                          *part.across_m);
    }
    return part.down_m ? -right_angle_rad : right_angle_rad;
}

double turn_rad(const Part& part) {
    if (part.part == PartKind::elbow) {
        return part.angle_rad.value_or(right_angle_rad);
    }
    const bool turns = part.part == PartKind::tee && part.flow != TeeFlow::straight;
    return turns ? part.angle_rad.value_or(right_angle_rad) : 0.0;
}

bool fits(const std::vector<Part>& between, double least_rad, double most_rad) {
    double sum_rad = 0.0;
    double largest_rad = 0.0;
    for (const Part& part : between) {
        sum_rad += turn_rad(part);
        largest_rad = std::max(largest_rad, turn_rad(part));
    }
    return std::max(0.0, 2.0 * largest_rad - sum_rad) <= most_rad + slack_rad
           && sum_rad >= least_rad - slack_rad;
}

/// The parts between two straights, with one bend of the least angle that leads from one into the
/// other, or none where they nearly have one direction.
void settle(std::vector<Part>& between, double least_rad) {
    std::erase_if(between, [](const Part& part) { return turn_rad(part) > 0.0; });
    if (least_rad > slack_rad) {
        Part bend;
        bend.part = PartKind::elbow;
        bend.angle_rad = least_rad;
        bend.build = Build::gored;
        between.insert(between.begin(), bend);
    }
}

} // namespace

void make_buildable(Installation& installation) {
    std::vector<Part> made;
    std::vector<Part> between;
    const Part* before = nullptr;
    for (const Part& part : installation.run) {
        if (part.part != PartKind::straight) {
            between.push_back(part);
            continue;
        }
        if (before != nullptr) {
            const double a = climb_rad(*before);
            const double b = climb_rad(part);
            if (!fits(between, std::abs(a - b), constants::pi - std::abs(a + b))) {
                settle(between, std::abs(a - b));
            }
        }
        made.insert(made.end(), between.begin(), between.end());
        between.clear();
        made.push_back(part);
        before = &part;
    }
    made.insert(made.end(), between.begin(), between.end());
    installation.run = std::move(made);
    // The last straight and all behind it, so that the top stays outdoors whatever is taken off it.
    auto part = installation.run.rbegin();
    while (part != installation.run.rend() && part->part != PartKind::straight) {
        part->zone.reset();
        ++part;
    }
    if (part != installation.run.rend()) {
        part->zone = Zone::outdoors;
    }
}

} // namespace fluewright::property
