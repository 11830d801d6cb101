#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// Reading and changing a run as it is written, for those who propose other runs.
namespace fluewright::run_edit {

/// Every part says for itself what it would carry on from the part before, and the outlet its size:
/// a part can then be changed or taken out without a change to the others.
[[nodiscard]] Installation spelled_out(const Installation& written);

/// What is left out again because it carries on anyway; parts that no longer change the size go.
[[nodiscard]] Installation shortened(Installation spelled);

/// Takes reducers and increasers out that do not change the size any more, and calls the others by
/// what they do.
void settle_size_changes(Installation& spelled);

[[nodiscard]] bool is_a(const Part& part, PartKind kind);
[[nodiscard]] bool is_straight(const Part& part);
/// A straight that goes further across than up.
[[nodiscard]] bool is_level(const Part& part);
[[nodiscard]] bool is_upright(const Part& part);
[[nodiscard]] bool changes_size(const Part& part);

[[nodiscard]] double length_m(const Part& part);
[[nodiscard]] double rise_m(const Part& part);

/// Height of the mouth over the outlet.
[[nodiscard]] double total_rise_m(const Installation& installation);

/// Single where the part names no wall.
[[nodiscard]] WallKind wall_kind(const Installation& installation, const Part& part);

/// Inside section of a part that is spelled out.
[[nodiscard]] double area_m2(const Installation& spelled, const Part& part);
[[nodiscard]] double outlet_area_m2(const Installation& spelled);

/// A round pipe in place of whatever section the part had.
void set_diameter(Part& part, double diameter_m);

/// Whether the diameter can be chosen: round pipe that is not part of a masonry flue.
[[nodiscard]] bool is_resizable(const Installation& spelled, const Part& part);

/// Index of the first part of the chimney, behind the connector: a chimney wall, or any upright
/// that stands outside the room, with the tee it stands on. Number of parts where there is none.
[[nodiscard]] std::size_t chimney_start(const Installation& spelled);

} // namespace fluewright::run_edit
