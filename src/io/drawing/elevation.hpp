#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Where everything stands in the side elevation of an installation: level distance to the right
/// from the outlet, height over the floor of the heater. Every part is where the run says that it
/// is; level stretches are drawn in one plane, all to the right.
namespace fluewright::drawing {

struct Spot {
    double x_m{};
    double y_m{};
};

/// One layer of a wall as it is drawn, from the inside out.
enum class Stuff : std::uint8_t { sheet, insulation, air, masonry };

/// What a layer looks like: an air gap, insulation below 0.25 W/mK, masonry, sheet above 5 W/mK.
/// Judgement.
[[nodiscard]] Stuff stuff_of(const WallLayer& layer);

/// Whether a part is built of masonry, with a liner in it or not.
[[nodiscard]] bool is_masonry(const Case& resolved, const RunPart& part);

/// A part of the run as it is drawn.
struct DrawnPart {
    const RunPart* part{};
    std::size_t section{};  ///< index into the sections of the case
    std::vector<Spot> axis; ///< center line in flow order; a part without length has one spot
    double bore_m{};        ///< clear width as seen from the side
    double outside_m{};     ///< with all layers of its wall
    double direction_rad{}; ///< of the gas behind it: 0 to the right, a right angle upwards
    Spot at{};              ///< where a label or a finding points to

    [[nodiscard]] bool has_length() const { return part->has_length(); }
};

/// A surface the run passes, or the floor.
enum class BarrierKind : std::uint8_t { wall, ceiling, roof };

struct Barrier {
    BarrierKind kind{};
    double at_m{}; ///< x of a wall, y of what is level; of a roof its highest place at the chimney
    double axis_m{};         ///< of the pipe that passes: x of what is level, y of a wall
    double half_opening_m{}; ///< half of the outside of that pipe
    bool stated{};           ///< the file says where; else it follows from the zones
};

/// The roof where the chimney leaves it.
struct RoofLine {
    double pitch_rad{};
    bool pitch_known{};
    std::optional<double> ridge_m; ///< level, from the axis of the chimney; empty where not told
};

/// The heater: what the file tells of it, and the rest a sign.
struct DrawnHeater {
    double left_m{};
    double right_m{};
    double foot_m{}; ///< under its body: height of its legs
    double top_m{};
    std::optional<Spot> door_foot; ///< lower end of the opening at the front
    double door_height_m{};
    bool masonry{};
    bool open_front{};
    bool outlet_at_back{};
    bool depth_known{};
};

/// A stretch of what burns beside the run or the heater.
struct Combustible {
    Spot from{}; ///< lower end of its face
    Spot to{};
    Spot pipe{}; ///< where its distance is measured from, at half its height
    double distance_m{};
    int part{-1}; ///< index in the run; -1 for the heater
    bool shield{};
};

struct Elevation {
    std::vector<DrawnPart> parts; ///< in flow order
    Spot outlet;
    Spot top;
    DrawnHeater heater;
    std::vector<Barrier> barriers;
    std::optional<RoofLine> roof;
    std::vector<Combustible> combustibles;
    std::optional<double> floor_protection_left_m; ///< its ends, where the file tells
    std::optional<double> floor_protection_right_m;
    bool run_leaves_sideways{}; ///< the house ends at the wall, and what is behind it is outdoors
    double left_m{};            ///< of all that is drawn
    double right_m{};
    double bottom_m{};
    double high_m{};

    [[nodiscard]] const Barrier* first(BarrierKind kind) const;
};

/// Lays the installation out. `resolved` is that of `written`.
[[nodiscard]] Elevation elevation_of(const Installation& written, const Case& resolved);

/// Floors, walls, ceilings and roof, from the zones and passages of the parts and what the file
/// tells of the roof; for elevation_of().
void add_building(const Installation& written, const Case& resolved, Elevation& made);

/// What burns, at the distances the file gives; for elevation_of().
void add_combustibles(const Installation& written, Elevation& made);

} // namespace fluewright::drawing
