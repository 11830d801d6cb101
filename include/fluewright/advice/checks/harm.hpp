#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

/// What a bad thing threatens, in the order an answer is given: what can kill comes first.
namespace fluewright {

enum class Harm : std::uint8_t {
    fire,  ///< fire, or smoke and carbon monoxide in the room
    draft, ///< the fire burns badly with the door shut; of an open fireplace: with its front open
    reloading, ///< smoke comes out of the door opened to reload
    upkeep,    ///< the run wears, wets or fouls before its time
};

inline constexpr std::size_t harm_count = 4;
inline constexpr std::array<Harm, harm_count> harms{
    Harm::fire, Harm::draft, Harm::reloading, Harm::upkeep};

/// "fire", as options and answers spell it.
[[nodiscard]] std::string_view name(Harm harm);

/// "Fire and carbon monoxide", for a person.
[[nodiscard]] std::string_view title(Harm harm);

} // namespace fluewright
