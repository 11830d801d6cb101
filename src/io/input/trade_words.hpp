#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace fluewright::json {

/// A word of the trade under a key of the file that has another for it. Where the glossary knows
/// both as one thing, no row is needed: these are the words that mean something else elsewhere, or
/// nothing at all ("length" is a straight as a part).
struct TradeWord {
    std::string_view key;
    std::string_view typed;
    std::string_view word;
};

[[nodiscard]] std::span<const TradeWord> trade_words();

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

/// The key that is, in the glossary, another name for what was typed: "flue_collar" is `outlet`.
[[nodiscard]] std::optional<std::string_view> glossary_key(std::string_view typed,
                                                           std::span<const std::string_view> keys);

/// What to write for a value that belongs under another key: "24 ga" of sheet, a burn rate in heat.
/// Empty where that is not so.
[[nodiscard]] std::string trade_value_help(std::string_view key, std::string_view typed);

} // namespace fluewright::json
