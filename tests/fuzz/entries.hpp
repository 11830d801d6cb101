#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

/// The ways a text from outside goes into the program. The replay that every compiler builds and
/// clang's fuzzers try the same ones.
namespace fuzz {

struct Entry {
    std::string_view name;

    /// Feeds the text to the program. Aborts, saying why, when what comes of it is no answer.
    void (*take)(std::string_view text);

    /// Another text like it; the same seed gives the same.
    std::string (*change)(std::string_view text, std::uint64_t seed);
};

[[nodiscard]] std::span<const Entry> entries();

/// Null where there is none of that name.
[[nodiscard]] const Entry* find_entry(std::string_view name);

} // namespace fuzz
