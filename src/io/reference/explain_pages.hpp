#pragma once

#include "fluewright/io/text/style.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The kinds of page that `explain` has, each from the table of its ids.
namespace fluewright::explaining {

struct PageKind {
    std::string_view what; ///< "a finding"
    /// Every id of the kind.
    std::vector<std::string_view> (*ids)();
    /// The page of one of them.
    std::string (*page)(std::string_view id, const Style& style);
};

[[nodiscard]] std::span<const PageKind> page_kinds();

/// A heading with a paragraph under it.
[[nodiscard]] std::string
section(std::string_view title, std::string_view text, const Style& style);

/// The first line of a page.
[[nodiscard]] std::string title_line(std::string_view text, const Style& style);

/// A page in the letters that the style may show.
[[nodiscard]] std::string in_letters_of(const Style& style, const std::string& page);

/// The document behind a figure, and how it is known.
[[nodiscard]] std::string source_words(std::string_view key, std::string_view mark);

// The pages that do not come from the table of checks.
[[nodiscard]] std::string word_page(std::string_view id, const Style& style);
[[nodiscard]] std::string harm_page(std::string_view id, const Style& style);
[[nodiscard]] std::string condition_page(std::string_view id, const Style& style);
[[nodiscard]] std::string remedy_page(std::string_view id, const Style& style);
[[nodiscard]] std::string look_page(std::string_view id, const Style& style);
[[nodiscard]] std::string body_page(std::string_view id, const Style& style);
[[nodiscard]] std::string wall_page(std::string_view id, const Style& style);
[[nodiscard]] std::string fuel_page(std::string_view id, const Style& style);
[[nodiscard]] std::string source_page(std::string_view id, const Style& style);
[[nodiscard]] std::vector<std::string_view> trade_names();
[[nodiscard]] std::string trade_page(std::string_view id, const Style& style);

} // namespace fluewright::explaining
