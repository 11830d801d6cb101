#pragma once

#include "command.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Questions to a person, one line each: what all dialogues have in common.
namespace fluewright::cli {

/// Whoever is not understood so often is no person, or has gone.
inline constexpr int most_tries = 20;

/// Puts a question on standard output and reads the line behind it; nothing where the answers
/// have ended. An answer that no terminal shows is repeated.
[[nodiscard]] std::optional<std::string>
read_answer(const Context& context, std::string_view question, const Style& style);

/// Says that an answer is of no use, and why.
void tell_misfit(const Context& context, std::string_view why, const Style& style);

/// An answer in small letters, without blanks around it or a full stop.
[[nodiscard]] std::string plain_answer(std::string_view line);

/// "don't know" and its like, or nothing at all; of a plain answer.
[[nodiscard]] bool is_unknown_answer(std::string_view plain);

/// "stop" and its like; of a plain answer.
[[nodiscard]] bool is_stop_answer(std::string_view plain);

} // namespace fluewright::cli
