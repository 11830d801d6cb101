#include "rule_check.hpp"

#include <array>

/// Distances from chimneys, and from pipe that goes by its label, to what burns.
namespace fluewright::checking {
namespace {

/// Pipe and chimney whose distance only the label knows: with the label's figure the rule of listed
/// distances judges it, too; without it nothing can be said, and what is usual is told.
Verdict by_label(const View& view, WallKind kind, std::string_view none, std::string_view usual) {
    Fold fold{none};
    for (const Piece& piece : view.pieces) {
        if (piece.wall->kind != kind || !piece.has_distance()) {
            continue;
        }
        const Part& part = *piece.part;
        fold.add(part.listed_clearance_m
                     ? to_what_burns(view, piece, *part.listed_clearance_m)
                     : unknown({piece.key("listed_clearance")},
                               "clearance to combustibles as its label says"
                                   + (usual.empty() || !piece.wall->may_serve(FuelGroup::wood)
                                          ? ""
                                          : "; usual is " + std::string{usual})));
    }
    return fold.result();
}

Verdict double_wall(const View& view, const catalog::Rule& rule) {
    return by_label(view,
                    WallKind::double_wall,
                    "there is no double-wall pipe",
                    view.solid_fuel() ? view.show(rule.figure, Kind::length) + " to a wall, "
                                            + view.show(rule.second, Kind::length) + " to a ceiling"
                                      : std::string{});
}

Verdict factory_chimney(const View& view, const catalog::Rule& rule) {
    return by_label(view,
                    WallKind::insulated,
                    "there is no factory-built chimney",
                    view.show(rule.figure, Kind::length));
}

/// Nearer than any label lets pipe of a kind stand, where the label itself is not known.
template <WallKind kind>
Verdict far_too_near(const View& view, const catalog::Rule& rule) {
    Fold fold{"nothing of the kind without a listed distance has a distance in the file"};
    for (const Piece& piece : view.pieces) {
        if (view.solid_fuel() && piece.wall->kind == kind && piece.has_distance()
            && piece.part->clearance_m && !piece.part->listed_clearance_m) {
            fold.add(to_what_burns(view, piece, rule.figure));
        }
    }
    return fold.result();
}

/// Factory-built chimney in an enclosure whose label gives no distance.
Verdict casing_au(const View& view, const catalog::Rule& rule) {
    Fold fold{"no factory-built chimney without a listed distance stands in an enclosure"};
    for (const Piece& piece : view.pieces) {
        if (piece.wall->kind == WallKind::insulated && piece.has_distance()
            && piece.section->zone == Zone::chase && !piece.part->listed_clearance_m) {
            fold.add(to_what_burns(view, piece, rule.figure));
        }
    }
    return fold.result();
}

bool is_brick(const Piece& piece) {
    return piece.has_distance()
           && (piece.wall->kind == WallKind::masonry || piece.wall->kind == WallKind::liner);
}

/// Masonry beside wood: inside the house, or with its walls outdoors. What stands over the roof
/// alone has no wood beside it.
Verdict masonry(const View& view, const catalog::Rule& rule, bool outdoors) {
    Fold fold{outdoors ? "no masonry has its walls outdoors" : "no masonry is indoors"};
    for (const Piece& piece : view.pieces) {
        const bool here =
            outdoors ? view.outdoors_below_roof(piece) : piece.section->zone != Zone::outdoors;
        if (is_brick(piece) && here && !piece.part->listed_clearance_m) {
            fold.add(to_what_burns(view, piece, rule.figure));
        }
    }
    return fold.result();
}

Verdict masonry_inside(const View& view, const catalog::Rule& rule) {
    return masonry(view, rule, false);
}

Verdict masonry_outside(const View& view, const catalog::Rule& rule) {
    return masonry(view, rule, true);
}

/// Brick, block, concrete and tile round the flue.
double solid_masonry_m(const WallBuild& wall) {
    constexpr double least_w_mk = 0.2;
    constexpr double most_w_mk = 5.0;
    double thick_m = 0.0;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        const WallLayer& layer = wall.layers[i];
        const bool solid = !layer.air_gap && layer.conductivity_w_mk > least_w_mk
                           && layer.conductivity_w_mk < most_w_mk;
        thick_m += solid ? layer.thickness_m : 0.0;
    }
    return thick_m;
}

Verdict masonry_uk(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no masonry chimney without a listed distance"};
    for (const Piece& piece : view.pieces) {
        const bool beside_wood =
            is_brick(piece) && !piece.part->listed_clearance_m
            && (piece.section->zone != Zone::outdoors || view.outdoors_below_roof(piece));
        if (!beside_wood) {
            continue;
        }
        const double thick_m = solid_masonry_m(*piece.wall);
        fold.add(
            view.reaches(thick_m, rule.second, Kind::length)
                ? at(view,
                     piece,
                     at_least(
                         view, thick_m, rule.second, Kind::length, "solid masonry round the flue"))
                : to_what_burns(view, piece, rule.figure));
    }
    return fold.result();
}

Verdict chimney_de(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no chimney without a listed distance"};
    for (const Piece* piece : view.chimney()) {
        if (piece->has_distance() && !piece->part->listed_clearance_m) {
            fold.add(to_what_burns(view, *piece, rule.figure));
        }
    }
    return fold.result();
}

constexpr auto chimney_distance_entries = std::to_array<Entry>({
    {"au-casing-clearance", casing_au},
    {"connector-clearance-double-wall", double_wall},
    {"uk-double-wall", double_wall},
    {"ca-double-wall", double_wall},
    {"au-double-wall", double_wall},
    {"factory-chimney-clearance", factory_chimney},
    {"trade-chimney-distance", far_too_near<WallKind::insulated>},
    {"trade-double-wall-distance", far_too_near<WallKind::double_wall>},
    {"uk-factory-chimney", factory_chimney},
    {"ca-factory-clearance", factory_chimney},
    {"au-factory-clearance", factory_chimney},
    {"masonry-clearance-inside", masonry_inside},
    {"masonry-clearance-outside", masonry_outside},
    {"ca-masonry-clearance-inside", masonry_inside},
    {"ca-masonry-clearance-outside", masonry_outside},
    {"uk-masonry-clearance", masonry_uk},
    {"trade-masonry-distance", where_told<masonry_uk>},
    {"de-chimney-clearance", chimney_de},
});

} // namespace

std::span<const Entry> chimney_distance_checks() {
    return chimney_distance_entries;
}

} // namespace fluewright::checking
