#include "elevation.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::drawing {
namespace {

/// Between the outside of a chimney and the wall it climbs. A sign: no file tells it.
constexpr double beside_wall_m = 0.05;
/// Half the thickness a wall or ceiling is drawn with, for where it stands beside a chimney.
constexpr double half_thickness_m = 0.1;

bool is_wall(Passage passage) {
    return passage == Passage::wall;
}

bool is_level_barrier(Passage passage) {
    return passage == Passage::floor || passage == Passage::ceiling;
}

class Building {
public:
    Building(const Installation& written, const Case& resolved, Elevation& made)
        : written_(written), resolved_(resolved), made_(made) {}

    void add() {
        const DrawnPart* before = nullptr;
        for (const DrawnPart& part : made_.parts) {
            if (!part.has_length()) {
                add_stated(part, nullptr);
                continue;
            }
            if (before != nullptr && zone(*before) != zone(part)) {
                add_between(*before, part);
            }
            before = &part;
        }
        for (std::size_t i = 0; i < made_.parts.size(); ++i) {
            if (made_.parts[i].has_length()) {
                add_stated(made_.parts[i], next_straight(i));
            }
        }
        add_roof();
    }

private:
    static Zone zone(const DrawnPart& part) { return part.part->zone.value; }

    const DrawnPart* next_straight(std::size_t index) const {
        for (std::size_t i = index + 1; i < made_.parts.size(); ++i) {
            if (made_.parts[i].has_length()) {
                return &made_.parts[i];
            }
        }
        return nullptr;
    }

    [[nodiscard]] bool stands_near(BarrierKind kind, double at_m) const {
        constexpr double same_m = 0.4;
        return std::any_of(
            made_.barriers.begin(), made_.barriers.end(), [&](const Barrier& barrier) {
                return barrier.kind == kind && std::abs(barrier.at_m - at_m) < same_m;
            });
    }

    void add_barrier(BarrierKind kind, Spot at, double outside_m, bool stated) {
        const bool level = kind != BarrierKind::wall;
        const double at_m = level ? at.y_m : at.x_m;
        if (!stands_near(kind, at_m)) {
            made_.barriers.push_back({.kind = kind,
                                      .at_m = at_m,
                                      .axis_m = level ? at.x_m : at.y_m,
                                      .half_opening_m = 0.5 * outside_m,
                                      .stated = stated});
        }
    }

    /// Where the zone changes: what the later part goes through decides as little as the file says.
    void add_between(const DrawnPart& before, const DrawnPart& behind) {
        const Spot at = before.axis.back();
        const bool outdoors = zone(behind) == Zone::outdoors || zone(before) == Zone::outdoors;
        const bool chase = zone(before) == Zone::chase || zone(behind) == Zone::chase;
        if (chase && !outdoors) {
            return; // its walls are drawn round it
        }
        if (before.part->level()) {
            const bool climbs = !behind.part->level();
            // Masonry stands in the wall, pipe before it.
            const bool masonry = is_masonry(resolved_, *behind.part);
            const double back_m = !climbs ? 0.0
                                  : masonry
                                      ? 0.5 * behind.outside_m - half_thickness_m
                                      : 0.5 * behind.outside_m + beside_wall_m + half_thickness_m;
            add_barrier(BarrierKind::wall,
                        {std::max(before.axis.front().x_m, at.x_m - back_m), at.y_m},
                        before.outside_m,
                        false);
            made_.run_leaves_sideways = made_.run_leaves_sideways || outdoors;
        } else if (behind.part->level() && outdoors) {
            add_barrier(
                BarrierKind::wall,
                {at.x_m + 0.5 * before.outside_m + beside_wall_m + half_thickness_m, at.y_m},
                behind.outside_m,
                false);
            made_.run_leaves_sideways = true;
        } else {
            add_barrier(
                outdoors ? BarrierKind::roof : BarrierKind::ceiling, at, before.outside_m, false);
        }
    }

    /// What the file says that a part goes through; at its far end where the zone changes there.
    void add_stated(const DrawnPart& part, const DrawnPart* next) {
        if (!part.part->written.passes) {
            return;
        }
        const Passage passage = *part.part->written.passes;
        const bool changes = next != nullptr && zone(*next) != zone(part);
        const Spot at = changes ? part.axis.back() : part.at;
        if (is_wall(passage) && (part.part->level() || !part.has_length())) {
            add_barrier(BarrierKind::wall, at, part.outside_m, true);
        } else if (is_level_barrier(passage) && !part.part->level()) {
            add_barrier(BarrierKind::ceiling, at, part.outside_m, true);
        } else if (passage == Passage::roof && !part.part->level()) {
            add_barrier(BarrierKind::roof, at, part.outside_m, true);
        }
    }

    /// The file may tell how far the chimney stands over the roof: that is where it is.
    void add_roof() {
        const Roof& roof = written_.site.roof;
        if (roof.top_above_roof_m && !is_open(resolved_.shelter)
            && *roof.top_above_roof_m < made_.top.y_m) {
            std::erase_if(made_.barriers,
                          [](const Barrier& b) { return b.kind == BarrierKind::roof; });
            const double outside_m = made_.parts.empty() ? 0.0 : made_.parts.back().outside_m;
            made_.barriers.push_back({.kind = BarrierKind::roof,
                                      .at_m = made_.top.y_m - *roof.top_above_roof_m,
                                      .axis_m = made_.top.x_m,
                                      .half_opening_m = 0.5 * outside_m,
                                      .stated = true});
        }
        if (made_.first(BarrierKind::roof) != nullptr) {
            made_.roof = RoofLine{.pitch_rad = roof.pitch_rad.value_or(0.0),
                                  .pitch_known = roof.pitch_rad.has_value(),
                                  .ridge_m = roof.distance_to_ridge_m};
        }
    }

    const Installation& written_;
    const Case& resolved_;
    Elevation& made_;
};

} // namespace

void add_building(const Installation& written, const Case& resolved, Elevation& made) {
    Building{written, resolved, made}.add();
}

void add_combustibles(const Installation& written, Elevation& made) {
    for (const DrawnPart& part : made.parts) {
        if (!part.has_length() || !part.part->written.clearance_m) {
            continue;
        }
        const double away_m = 0.5 * part.outside_m + *part.part->written.clearance_m;
        Combustible thing{.pipe = part.at,
                          .distance_m = *part.part->written.clearance_m,
                          .part = part.part->index,
                          .shield = part.part->written.shield.has_value()};
        const Spot from = part.axis.front();
        const Spot to = part.axis.back();
        if (part.part->level()) {
            // Over it, where heat goes.
            const double y_m = std::max(from.y_m, to.y_m) + away_m;
            thing.from = {from.x_m, y_m};
            thing.to = {to.x_m, y_m};
            const Barrier* wall = made.first(BarrierKind::wall);
            if (made.run_leaves_sideways && wall != nullptr && wall->at_m > from.x_m) {
                thing.to.x_m = std::min(to.x_m, wall->at_m - half_thickness_m);
                thing.pipe.x_m = std::min(thing.pipe.x_m, 0.5 * (from.x_m + thing.to.x_m));
            }
            thing.pipe.y_m += 0.5 * part.outside_m;
        } else {
            const Barrier* wall = made.first(BarrierKind::wall);
            const bool to_left =
                made.run_leaves_sideways && wall != nullptr
                && (part.part->zone.value == Zone::outdoors
                    || std::max(from.x_m, to.x_m) + away_m > wall->at_m + half_thickness_m);
            const double x_m =
                to_left ? std::min(from.x_m, to.x_m) - away_m : std::max(from.x_m, to.x_m) + away_m;
            thing.from = {x_m, std::min(from.y_m, to.y_m)};
            thing.to = {x_m, std::max(from.y_m, to.y_m)};
            thing.pipe.x_m = x_m + (to_left ? 1.0 : -1.0) * thing.distance_m;
        }
        made.combustibles.push_back(thing);
    }
    const Appliance& heater = written.appliance;
    const double half_m = 0.5 * (made.heater.foot_m + made.heater.top_m);
    if (heater.clearances.back_m) {
        const double x_m = made.heater.right_m + *heater.clearances.back_m;
        made.combustibles.push_back({.from = {x_m, 0.0},
                                     .to = {x_m, made.heater.top_m},
                                     .pipe = {made.heater.right_m, half_m},
                                     .distance_m = *heater.clearances.back_m,
                                     .shield = heater.clearances.shield.has_value()});
    }
    if (heater.clearances.front_m) {
        const double x_m = made.heater.left_m - *heater.clearances.front_m;
        made.combustibles.push_back({.from = {x_m, 0.0},
                                     .to = {x_m, made.heater.top_m},
                                     .pipe = {made.heater.left_m, half_m},
                                     .distance_m = *heater.clearances.front_m});
    }
    if (heater.floor_protection.front_m) {
        made.floor_protection_left_m = made.heater.left_m - *heater.floor_protection.front_m;
    }
    if (heater.floor_protection.back_m) {
        made.floor_protection_right_m = made.heater.right_m + *heater.floor_protection.back_m;
    }
}

} // namespace fluewright::drawing
