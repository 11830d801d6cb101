#pragma once

#include "fluewright/model/run/case.hpp"

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string_view>

/// What a heater is to the trades: each kind has a measure and words of its own.
namespace fluewright {

enum class HeaterKind : std::uint8_t {
    closed_fire,    ///< logs or coal behind a door, fed by hand
    open_fire,      ///< logs or coal on an open hearth
    masonry_heater, ///< a charge of logs at a time, its heat stored
    pellets,
    oil,
    gas,      ///< a burner with a fan, or any other without a hood
    gas_hood, ///< gas with a draft hood
};

inline constexpr std::array<std::string_view, 7> heater_kind_words{
    "closed fire", "open fire", "masonry heater", "pellets", "oil", "gas", "gas with a hood"};

[[nodiscard]] constexpr std::string_view name(HeaterKind kind) {
    return heater_kind_words[static_cast<std::size_t>(kind)];
}

[[nodiscard]] constexpr HeaterKind kind_of(ApplianceType type, FuelGroup fuel) {
    switch (fuel) {
    case FuelGroup::wood:
    case FuelGroup::coal:
        return type == ApplianceType::fireplace        ? HeaterKind::open_fire
               : type == ApplianceType::masonry_heater ? HeaterKind::masonry_heater
                                                       : HeaterKind::closed_fire;
    case FuelGroup::pellets:
        return HeaterKind::pellets;
    case FuelGroup::oil:
        return HeaterKind::oil;
    case FuelGroup::gas:
        break;
    }
    return type == ApplianceType::draft_hood ? HeaterKind::gas_hood : HeaterKind::gas;
}

[[nodiscard]] inline HeaterKind kind_of(const ApplianceCase& appliance) {
    return kind_of(appliance.type, appliance.fuel_group);
}

struct Installation;

/// The kind of a file, before anything is assumed; none where it does not tell type or fuel.
[[nodiscard]] std::optional<HeaterKind> kind_of(const Installation& written);

/// The kinds that a row of a table applies to.
class Kinds {
public:
    constexpr Kinds(std::initializer_list<HeaterKind> kinds) {
        for (const HeaterKind kind : kinds) {
            bits_ |= bit(kind);
        }
    }

    [[nodiscard]] constexpr bool has(HeaterKind kind) const { return (bits_ & bit(kind)) != 0; }

    /// Every kind that this list does not hold.
    [[nodiscard]] constexpr Kinds others() const {
        Kinds made{};
        made.bits_ = static_cast<std::uint8_t>(all_bits & ~bits_);
        return made;
    }

    constexpr bool operator==(const Kinds&) const = default;

private:
    static constexpr std::uint8_t all_bits = (1U << heater_kind_words.size()) - 1U;

    static constexpr std::uint8_t bit(HeaterKind kind) {
        return static_cast<std::uint8_t>(1U << static_cast<unsigned>(kind));
    }

    std::uint8_t bits_{};
};

inline constexpr Kinds every_kind = Kinds{}.others();
/// Logs or coal, laid and lit by hand.
inline constexpr Kinds fed_by_hand{
    HeaterKind::closed_fire, HeaterKind::open_fire, HeaterKind::masonry_heater};
/// A burner that lights itself.
inline constexpr Kinds burners{
    HeaterKind::pellets, HeaterKind::oil, HeaterKind::gas, HeaterKind::gas_hood};
inline constexpr Kinds gas_burners{HeaterKind::gas, HeaterKind::gas_hood};

/// What the trade of a kind calls what leads the gas out of the house.
[[nodiscard]] constexpr std::string_view way_out(HeaterKind kind) {
    return kind == HeaterKind::pellets || gas_burners.has(kind) ? "vent" : "chimney";
}

/// Whether a row with this column applies to a kind: words of heater_kind_words parted by '|', or
/// "fed by hand" for all of those; empty for every kind.
[[nodiscard]] constexpr bool applies_to(std::string_view kinds, HeaterKind kind) {
    if (kinds.empty()) {
        return true;
    }
    while (!kinds.empty()) {
        const std::size_t end = kinds.find('|');
        const std::string_view word = kinds.substr(0, end);
        if (word == name(kind) || (word == "fed by hand" && fed_by_hand.has(kind))) {
            return true;
        }
        kinds = end == std::string_view::npos ? std::string_view{} : kinds.substr(end + 1);
    }
    return false;
}

/// Whether the heater is fed by hand, so that somebody lays, lights and tends its fire.
[[nodiscard]] inline bool is_fed_by_hand(const ApplianceCase& appliance) {
    return fed_by_hand.has(kind_of(appliance));
}

/// Whether its gas flows as the burner makes it, whatever the flue draws: what the flue does not
/// take is under pressure, where a hood of its own lets it out into the room instead.
[[nodiscard]] inline bool keeps_its_flow(const ApplianceCase& appliance) {
    return !is_fed_by_hand(appliance) && kind_of(appliance) != HeaterKind::gas_hood;
}

} // namespace fluewright
