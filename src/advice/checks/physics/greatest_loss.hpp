#pragma once

#include "advice/checks/subject.hpp"

#include <cstdint>
#include <string_view>

namespace fluewright::checking {

/// What takes draft from a run.
enum class Taker : std::uint8_t { friction, fittings, room, wind };

/// What takes most of the draft in a state.
struct GreatestLoss {
    Taker by{};
    std::string_view what; ///< in words
    double pa{};
    const Section* fitting{}; ///< which alone takes over half of what all fittings take; else null
    double fitting_pa{};
};

/// The greatest of friction, fittings, a room below outdoors and wind that pushes down on the top.
[[nodiscard]] GreatestLoss greatest_loss(const Subject& subject, const StateResult& state);

} // namespace fluewright::checking
