#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string>
#include <vector>

/// Surface temperatures in high fire, against ratings, and what they do to a wall that burns.
namespace fluewright {

struct SurfaceRange {
    double hottest_k{}; ///< near the lower end
    double coldest_k{};
};

/// Outside of a section with a length in one solved state; empty where the state has no stations.
///
/// Notes  A station holds the wall at the section's end. At its beginning the gas is hotter; the
///        wall keeps the same share of the gas's excess over the air around.
[[nodiscard]] std::optional<SurfaceRange>
surface_range(const Case& resolved, const StateResult& state, const Section& section);

/// Mean temperature of the inner wall of the section that ends at a station [K]. The gas is taken
/// as the mean of both ends, the wall as in surface_range().
[[nodiscard]] double
mean_wall_k(const Case& resolved, const StateResult& state, std::size_t station);

/// One part of the run in high fire, in the weather that makes it hottest.
struct HotSurface {
    int part{};
    std::string place;
    double surface_k{};
    std::optional<double> rating_k; ///< of paint or zinc
    bool rating_assumed{};
    std::string rating_of; ///< "stove paint (usual rating)", "zinc", "as stated"
    std::string source;
    std::optional<double> distance_m;  ///< to what burns
    std::optional<double> wall_k;      ///< estimate of that wall's face, with its shield if any
    std::optional<double> bare_wall_k; ///< the same without the shield
    bool shielded{};

    [[nodiscard]] bool over_rating() const { return rating_k && surface_k > *rating_k; }
};

struct HotSurfaces {
    std::vector<HotSurface> parts;
    double wall_limit_k{}; ///< burnable surface beside a heater at rated output
};

/// The wall estimate never stands in for a distance the code asks for.
[[nodiscard]] HotSurfaces
hot_surfaces(const Installation& written, const Case& resolved, const Solution& solution);

} // namespace fluewright
