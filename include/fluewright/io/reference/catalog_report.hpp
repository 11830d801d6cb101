#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// The tables a file may name rows of, and those the program assumes from, each row with its
/// source.
namespace fluewright {

/// A cell: words, or a number in SI of the column's kind; monostate where the row has none.
using CatalogCell = std::variant<std::monostate, std::string_view, double>;

/// Where a value stands in text: in the row, on a line below it, or behind the line before.
enum class CatalogPlace : std::uint8_t { row, line, same_line };

struct CatalogColumn {
    std::string_view name;    ///< key in JSON and CSV, before the suffix of its unit
    std::string_view heading; ///< in text
    Kind kind{Kind::number};  ///< of the numbers
    CatalogPlace place{CatalogPlace::row};
};

struct CatalogTable {
    std::string_view id;
    std::string_view title;
    std::vector<CatalogColumn> columns;
    std::vector<std::vector<CatalogCell>> rows;
};

struct CatalogName {
    std::string_view id;
    std::string_view summary;
};

/// Which tables there are.
[[nodiscard]] std::span<const CatalogName> catalog_names();

/// A table by its id, which must be one of catalog_names().
[[nodiscard]] CatalogTable catalog_table(std::string_view id);

/// The tables themselves as a table.
[[nodiscard]] CatalogTable catalog_contents();

/// Aligned text in the units of the style.
[[nodiscard]] std::string catalog_text(const CatalogTable& table, const Style& style);

/// The answer in its envelope; empty cells are null.
[[nodiscard]] std::string catalog_json(const CatalogTable& table, const AnswerInput& input);

/// RFC 4180 with a heading line; the same keys and numbers as JSON.
[[nodiscard]] std::string catalog_csv(const CatalogTable& table);

} // namespace fluewright
