#pragma once

#include "fluewright/advice/assessment.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fuzz {

/// A number below `count` that goes with the text: what takes long is done for some of them.
[[nodiscard]] std::size_t pick(std::string_view text, std::size_t count);

/// Tells what does not hold, with the text, and aborts.
void insist(bool holds, std::string_view what, std::string_view text);

/// The same of what the program has written: valid UTF-8, and nothing in it that steers how it is
/// shown but the ends of lines.
void insist_visible(std::string_view written, std::string_view text);

/// Every state has figures, and the solver gave none up.
void insist_solved(const fluewright::Assessment& assessed, std::string_view text);

/// Runs the program with these arguments and the text as its standard input. Insists on a status
/// that is documented, on one that has its words, and on an answer that is visible. Returns the
/// answer.
std::string run_program(const std::vector<std::string>& arguments, std::string_view text);

void take_json(std::string_view text);
void take_quantity(std::string_view text);
void take_check(std::string_view text);
void take_batch(std::string_view text);
void take_stock(std::string_view text);
void take_prices(std::string_view text);
void take_dialogue(std::string_view text);
void take_installation(std::string_view text);

/// Bytes, digits, near misses of words and numbers, and pieces of itself.
std::string change_text(std::string_view text, std::uint64_t seed);

/// The same, and lines exchanged, joined, cut off and broken.
std::string change_lines(std::string_view text, std::uint64_t seed);

/// Of an installation: any of its values set to what the table of keys allows, parts added, taken
/// out and exchanged. A text that is none gives a random one.
std::string change_installation(std::string_view text, std::uint64_t seed);

} // namespace fuzz
