#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace fluewright {

/// The word in `words` that was most likely meant by `typed`; none when nothing is close.
///
/// Distance  optimal string alignment: insert, delete, replace or swap two neighbours, 1 each
/// Limit     max(1, longest / 3), longest being the length of the longer of the two words
/// Notes     Letter case is ignored, a tie goes to the earlier word, and words that share nothing
///           (every letter would have to change) never match. It only serves to suggest: the caller
///           must not act on the answer without asking.
[[nodiscard]] std::optional<std::string_view> nearest_word(std::string_view typed,
                                                           std::span<const std::string_view> words);

} // namespace fluewright
