#pragma once

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>
#include <string_view>

/// What the compiler checks of the embedded tables, so that a slipped decimal or a missing source
/// stops the build.
namespace fluewright::catalog {

/// The plausible ends of one numeric column, in SI.
template <class Row>
struct Bounds {
    std::string_view column; ///< as the table names it
    double Row::*member;
    double low;
    double high;
};

inline constexpr auto marks = std::to_array<std::string_view>(
    {"looked up", "quoted", "computed", "judgement", "common practice", "from memory"});

template <class Rows>
consteval bool ids_unique(const Rows& rows) {
    for (auto row = rows.begin(); row != rows.end(); ++row) {
        if (row->id.empty() || std::any_of(rows.begin(), row, [&](const auto& other) {
                return other.id == row->id;
            })) {
            return false;
        }
    }
    return true;
}

template <class Rows, class AllBounds>
consteval bool inside_bounds(const Rows& rows, const AllBounds& all_bounds) {
    for (const auto& row : rows) {
        for (const auto& bounds : all_bounds) {
            const double value = row.*(bounds.member);
            if (!(value >= bounds.low && value <= bounds.high)) {
                return false;
            }
        }
    }
    return true;
}

/// Every row names a listed source and one of the fixed marks.
template <class Rows, class Sources>
consteval bool sources_and_marks_known(const Rows& rows, const Sources& sources) {
    return std::all_of(rows.begin(), rows.end(), [&](const auto& row) {
        return std::any_of(sources.begin(),
                           sources.end(),
                           [&](const Source& source) { return source.id == row.source; })
               && std::find(marks.begin(), marks.end(), row.mark) != marks.end();
    });
}

/// The elements of a fuel make up the whole, but for what the analysis left out.
template <class Fuels>
consteval bool analyses_complete(const Fuels& fuels) {
    return std::all_of(fuels.begin(), fuels.end(), [](const Fuel& fuel) {
        const double sum =
            fuel.carbon + fuel.hydrogen + fuel.oxygen + fuel.nitrogen + fuel.sulphur + fuel.ash;
        return sum > 0.995 && sum < 1.002;
    });
}

/// Each layer of a wall is "material thickness_mm" with a listed material, or "air gap width_mm".
template <class Walls, class Materials>
consteval bool layers_known(const Walls& walls, const Materials& materials) {
    for (const Wall& wall : walls) {
        for (std::string_view rest = wall.layers; !rest.empty();) {
            const std::string_view layer = rest.substr(0, rest.find('|'));
            rest.remove_prefix(std::min(layer.size() + 1, rest.size()));
            const auto space = layer.rfind(' ');
            if (space == std::string_view::npos || space + 1 == layer.size()
                || layer.find_first_not_of("0123456789.", space + 1) != std::string_view::npos) {
                return false;
            }
            const std::string_view name = layer.substr(0, space);
            const bool known =
                std::any_of(materials.begin(), materials.end(), [&](const Material& material) {
                    return material.id == name;
                });
            if (!known && name != "air gap") {
                return false;
            }
        }
    }
    return true;
}

} // namespace fluewright::catalog
