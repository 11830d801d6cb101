#pragma once

#include "fluewright/model/fields/appliance_words.hpp"
#include "fluewright/model/fields/observed_words.hpp"
#include "fluewright/model/fields/part_words.hpp"
#include "fluewright/model/fields/site_words.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <type_traits>

/// The closed vocabularies of an installation. Each is an enumeration from the reader on, and each
/// has its words written down once, in words_of(): reader, writer, schema and reports all take them
/// from here. Free text is for titles and names only; names of fuels, walls, fittings and liners
/// are rows of the catalog or of the user's own.
namespace fluewright {

/// A vocabulary: an enumeration with its words in words_of().
template <class E>
concept Vocabulary = std::is_enum_v<E> && requires(E word) {
    words_of(word);
};

template <Vocabulary E>
inline constexpr auto vocabulary_words = words_of(E{});

/// The words of a vocabulary as a view that lasts.
template <Vocabulary E>
[[nodiscard]] constexpr std::span<const std::string_view> all_words() {
    return vocabulary_words<E>;
}

/// The words from one value to another, both counted in.
template <Vocabulary E>
[[nodiscard]] constexpr std::span<const std::string_view> words_between(E first, E last) {
    const auto from = static_cast<std::size_t>(first);
    return all_words<E>().subspan(from, static_cast<std::size_t>(last) - from + 1);
}

/// The word of a value; "?" for a number that is no value of the enumeration, which a program that
/// builds an installation could make by a cast and which check_installation() refuses.
template <Vocabulary E>
[[nodiscard]] constexpr std::string_view name(E value) {
    const auto words = all_words<E>();
    const auto index = static_cast<std::size_t>(value);
    return index < words.size() ? words[index] : std::string_view{"?"};
}

/// The place of a word among some; empty for a word that is none of them.
[[nodiscard]] constexpr std::optional<std::size_t>
place_of(std::string_view word, std::span<const std::string_view> words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == word) {
            return i;
        }
    }
    return std::nullopt;
}

/// The value of a word; empty for a word that is none of them.
template <Vocabulary E>
[[nodiscard]] constexpr std::optional<E> from_word(std::string_view word) {
    const auto place = place_of(word, all_words<E>());
    return place ? std::optional{static_cast<E>(*place)} : std::nullopt;
}

/// A value that an embedded table writes as its word. An unknown word stops the compiler.
template <Vocabulary E>
class Worded {
public:
    // Implicit both ways: a row is written with the word and read as the value.
    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions)
    consteval Worded(const char* word) : value_{from_word<E>(word).value()} {}

    // NOLINTNEXTLINE(google-explicit-constructor,hicpp-explicit-conversions)
    constexpr operator E() const { return value_; }

    [[nodiscard]] constexpr E value() const { return value_; }

private:
    E value_;
};

} // namespace fluewright
