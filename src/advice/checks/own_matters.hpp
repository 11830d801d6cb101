#pragma once

#include "own_matters_a_to_i.hpp"
#include "own_matters_j_to_z.hpp"

#include <algorithm>

namespace fluewright::checking {

/// The matters that physics or trade practice speak of, in order of id.
inline constexpr auto own_matters = [] {
    std::array<Matter, own_matters_a_to_i.size() + own_matters_j_to_z.size()> all{};
    const auto behind =
        std::copy(own_matters_a_to_i.begin(), own_matters_a_to_i.end(), all.begin());
    std::copy(own_matters_j_to_z.begin(), own_matters_j_to_z.end(), behind);
    return all;
}();

} // namespace fluewright::checking
