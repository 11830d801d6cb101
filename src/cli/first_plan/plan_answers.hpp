#pragma once

#include "fluewright/io/reference/first_plan.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Answers about a first plan, understood and held against those before them.
namespace fluewright::cli {

/// What an answer may be, and why.
struct Allowed {
    double least{};
    double most{};
    std::string_view why; ///< "the ceiling is above the flue collar"
};

/// Takes a quantity; returns why it cannot be, or nothing.
[[nodiscard]] std::optional<std::string> take_quantity(
    std::string_view typed, Kind kind, const Allowed& allowed, UnitSystem units, Said& to);

/// Takes "200 mm" or "200 mm x 300 mm"; with `round` false only the second.
[[nodiscard]] std::optional<std::string> take_section(
    std::string_view typed, bool round, const Allowed& allowed, UnitSystem units, SaidSection& to);

/// Takes heat, fuel an hour, the volume of the firebox or a charge, as it suits the heater.
[[nodiscard]] std::optional<std::string> take_fire(std::string_view typed, FirstPlan& plan);

/// Takes one of the words, or its number in the list from 1.
[[nodiscard]] std::optional<std::string>
take_word(std::string_view typed, std::span<const std::string_view> words, std::size_t& to);

} // namespace fluewright::cli
