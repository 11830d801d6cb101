#include "walls_before.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double both_faces_w_m2k = 12.0;
constexpr double not_cooled_w_m2k = 1e7; ///< of a wall that has had no time

double kept_w_m2k(const WallLayer& layer, double elapsed_s) {
    const double stored_j_m3k =
        layer.air_gap ? 0.0 : layer.density_kg_m3 * layer.specific_heat_j_kgk;
    if (stored_j_m3k <= 0.0) {
        return 0.0;
    }
    const double reached_m =
        0.5 * std::sqrt(constants::pi * layer.conductivity_w_mk / stored_j_m3k * elapsed_s);
    const double stored_j_m2k = stored_j_m3k * std::min(layer.thickness_m, reached_m);
    constexpr double long_since = 700.0; // beyond, its power has no number, and nothing is left
    const double left =
        stored_j_m2k > 0.0
            ? std::expm1(std::min(long_since, both_faces_w_m2k * elapsed_s / stored_j_m2k))
            : 0.0;
    return left > 0.0 ? std::min(both_faces_w_m2k / left, not_cooled_w_m2k) : not_cooled_w_m2k;
}

} // namespace

std::vector<WallMemory>
walls_before(const Case& c, std::span<const Station> fire, double elapsed_s) {
    std::vector<WallMemory> memory(c.sections.size());
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& section = c.sections[i];
        if (section.length_m > 0.0) {
            memory[i] = {.inner_start_k = fire[i + 1].inner_wall_start_k,
                         .inner_end_k = fire[i + 1].inner_wall_k,
                         .kept_w_m2k = kept_w_m2k(c.walls[section.wall].layers[0], elapsed_s)};
        }
    }
    return memory;
}

} // namespace fluewright
