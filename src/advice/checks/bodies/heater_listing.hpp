#pragma once

#include "rule_check.hpp"

#include <array>
#include <optional>
#include <string_view>

/// What the file tells of a heater's listing: the distances on its plate go before general ones.
namespace fluewright::checking {

/// A side of a heater that has a distance.
struct HeaterSide {
    std::string_view key;
    std::string_view words;
    Given Clearances::*member;

    [[nodiscard]] bool above() const { return key == "above"; }

    [[nodiscard]] bool front() const { return key == "front"; }

    [[nodiscard]] bool corner() const { return key == "corner"; }
};

inline constexpr auto heater_sides = std::to_array<HeaterSide>({
    {"side", "to the side", &Clearances::side_m},
    {"back", "behind", &Clearances::back_m},
    {"corner", "to the corner", &Clearances::corner_m},
    {"front", "before", &Clearances::front_m},
    {"above", "above", &Clearances::above_m},
});

/// Whether the plate gives a distance for any side.
[[nodiscard]] bool has_plate(const View& view);

/// Whether the file says it is listed; listed distances say so too.
[[nodiscard]] Flag is_listed(const View& view);

/// Why nothing is asked of a heater without a listing, or what is missing to know; empty where it
/// has none.
[[nodiscard]] std::optional<Verdict> not_unlisted(const View& view);

} // namespace fluewright::checking
