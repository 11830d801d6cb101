#pragma once

#include <string>

namespace fluewright {

/// "a reading needs a unit" as a sentence: with a capital and a full stop. What ends in a stop or a
/// question mark keeps it; nothing stays nothing.
[[nodiscard]] inline std::string sentence_of(std::string words) {
    if (words.empty()) {
        return words;
    }
    if (words.front() >= 'a' && words.front() <= 'z') {
        words.front() = static_cast<char>(words.front() - 'a' + 'A');
    }
    if (words.back() != '.' && words.back() != '?') {
        words += '.';
    }
    return words;
}

} // namespace fluewright
