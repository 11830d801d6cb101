#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace fluewright::json {

/// What to write for a key that the trade has a word for and the file another: "write `up`
/// (upright) or `across` (horizontal)". Empty where none of `keys` is meant.
[[nodiscard]] std::string trade_key_help(std::string_view typed,
                                         std::span<const std::string_view> keys);

/// The word of a vocabulary that the trade calls otherwise: under `part`, "pipe" is straight.
[[nodiscard]] std::optional<std::string_view> trade_word(std::string_view key,
                                                         std::string_view typed);

/// The choice that a word of the glossary, or one of its aliases, stands for: "raincap" is a cap,
/// "base tee" a tee.
[[nodiscard]] std::optional<std::string_view>
glossary_word(std::string_view typed, std::span<const std::string_view> choices);

/// What to write for a value that belongs under another key: "24 ga" of sheet, a burn rate in heat.
/// Empty where that is not so.
[[nodiscard]] std::string trade_value_help(std::string_view key, std::string_view typed);

} // namespace fluewright::json
