#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/part_words.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

/// A first plan as somebody tells it who has no file yet: the heater, its flue collar, and where
/// the run goes. Heights count from the floor the heater stands on.
namespace fluewright {

enum class PlanHeater : std::uint8_t {
    stove,
    fireplace,
    masonry_heater,
    pellet_stove,
    coal_stove,
    wood_boiler,
    oil_boiler,
    gas_hood
};

/// In the order of the enumeration; the words of `new` and of `template`.
inline constexpr std::array<std::string_view, 8> plan_heater_words{"stove",
                                                                   "fireplace",
                                                                   "masonry-heater",
                                                                   "pellet-stove",
                                                                   "coal-stove",
                                                                   "wood-boiler",
                                                                   "oil-boiler",
                                                                   "gas-hood"};

/// Where the run goes from the flue collar.
enum class PlanWay : std::uint8_t {
    up,     ///< straight up, through ceiling and roof
    wall,   ///< through the wall, and up outside
    masonry ///< into a masonry chimney; of an open fireplace, the chimney above it
};

inline constexpr std::array<std::string_view, 3> plan_way_words{"up", "wall", "masonry"};

/// A value as it was said: kept in the words of whoever said it.
struct Said {
    double value{};       ///< SI
    std::string text;     ///< "6 in"
    bool us_units{false}; ///< typed in US units
};

/// How big the fire is, by whatever the plate or the manual tells.
struct FireSize {
    Kind kind{}; ///< power, mass_rate, volume (of the firebox) or mass (of a charge)
    Said said;
};

/// A section: round, or two sides. A side without a text is not there.
struct SaidSection {
    Said diameter;
    Said width;
    Said depth;
};

struct FirstPlan {
    PlanHeater heater{};
    PlanWay way{};
    FireSize fire;                   ///< not of an open fireplace
    SaidSection front;               ///< width and depth (height) of a fireplace's opening
    Said collar;                     ///< diameter of the flue collar; not of a fireplace
    Said collar_height;              ///< of the middle of the collar; of a fireplace, of its throat
    Said distance;                   ///< level, from the collar to the middle of the chimney
    Said entry_height;               ///< where the run goes through the wall, or into the masonry
    SaidSection flue;                ///< inside the masonry
    Said ceiling;                    ///< height of the highest ceiling the chimney goes through
    Said roof;                       ///< height of the roof at the chimney, on its upper side
    Said top;                        ///< height of the chimney top
    std::optional<Said> pitch;       ///< of the roof
    std::optional<Said> ridge;       ///< level distance from the chimney to the ridge
    std::optional<Said> clearance;   ///< of bare pipe to combustibles
    std::optional<PassThrough> pass; ///< how bare pipe goes through the wall

    /// US units where the flue collar, or else the first height, was typed in them.
    [[nodiscard]] UnitSystem units() const;

    [[nodiscard]] bool is_fireplace() const { return heater == PlanHeater::fireplace; }

    /// Whether single-wall pipe leaves the heater and the fire in it is of solid fuel: its
    /// clearance is asked for.
    [[nodiscard]] bool has_bare_pipe() const;

    /// Whether the run goes level before it goes up for good.
    [[nodiscard]] bool goes_across() const {
        return way == PlanWay::wall || (way == PlanWay::masonry && !is_fireplace());
    }
};

/// How a pipe goes through a wall, as it is asked for; in the order of PassThrough.
inline constexpr std::array<std::string_view, 8> plan_pass_words{"brick",
                                                                 "insulated-length",
                                                                 "ventilated-thimble",
                                                                 "larger-insulated-length",
                                                                 "wood-cut-back",
                                                                 "noncombustible-wall",
                                                                 "listed-system",
                                                                 "none"};

/// How much a horizontal run rises for each meter it goes across, as the file says it.
inline constexpr double plan_slope = 0.02;

/// What the length that goes across gains [m]; 0 where none does.
[[nodiscard]] double rise_across_m(const FirstPlan& plan);

/// The kinds of quantity that tell how big the fire of a heater is, the usual one first; none of an
/// open fireplace, whose front tells.
[[nodiscard]] std::span<const Kind> kinds_of_fire(PlanHeater heater);

/// A whole plan of usual figures, to start from: `template` by kind of heater.
[[nodiscard]] FirstPlan usual_plan(PlanHeater heater, UnitSystem units);

/// The run in letters, bottom to top, with its heights: at most 72 columns, ASCII.
[[nodiscard]] std::string plan_sketch(const FirstPlan& plan);

/// The plan as a commented file with that sketch in it. A plan whose heights rise from the floor
/// to the top gives a file that can be checked.
[[nodiscard]] std::string plan_file(const FirstPlan& plan);

} // namespace fluewright
