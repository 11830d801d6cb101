#include "fluewright/core/nearest_word.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>

namespace fluewright {
namespace {

// Longer words are no keys or names; leaving them out keeps the work bounded for hostile input.
constexpr std::size_t longest_word = 64;

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same(char a, char b) {
    return lower(a) == lower(b);
}

std::size_t alignment_distance(std::string_view a, std::string_view b) {
    using Row = std::array<std::size_t, longest_word + 1>;
    Row before_last{};
    Row last{};
    Row current{};
    for (std::size_t j = 0; j <= b.size(); ++j) {
        last[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        current[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (same(a[i - 1], b[j - 1]) ? 0U : 1U);
            current[j] = std::min({replaced, last[j] + 1, current[j - 1] + 1});
            const bool swapped =
                i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1]);
            if (swapped) {
                current[j] = std::min(current[j], before_last[j - 2] + 1);
            }
        }
        before_last = last;
        last = current;
    }
    return last[b.size()];
}

} // namespace

std::optional<std::string_view> nearest_word(std::string_view typed,
                                             std::span<const std::string_view> words) {
    if (typed.empty() || typed.size() > longest_word) {
        return std::nullopt;
    }
    std::optional<std::string_view> nearest;
    std::size_t least = std::numeric_limits<std::size_t>::max();
    for (const std::string_view word : words) {
        if (word.empty() || word.size() > longest_word) {
            continue;
        }
        const std::size_t longest = std::max(typed.size(), word.size());
        const std::size_t limit = std::max<std::size_t>(1, longest / 3);
        if (longest - std::min(typed.size(), word.size()) > limit) {
            continue;
        }
        const std::size_t distance = alignment_distance(typed, word);
        if (distance <= limit && distance < longest && distance < least) {
            least = distance;
            nearest = word;
        }
    }
    return nearest;
}

} // namespace fluewright
