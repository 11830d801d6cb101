#pragma once

#include "fluewright/io/text/style.hpp"

#include <string>
#include <vector>

/// Aligned tables that keep to the width of the page.
namespace fluewright {

enum class Align : std::uint8_t {
    left,
    right,
    decimal, ///< numbers stand under each other at the decimal point
};

struct TableColumn {
    std::string heading{}; ///< may hold line breaks; headings stand on the last line
    Align align{Align::left};
    bool wraps{false}; ///< takes the width the others leave and breaks between words
};

struct TableCell {
    std::string text{};
    Ink ink{Ink::plain};
};

class TextTable {
public:
    explicit TextTable(std::vector<TableColumn> columns) : columns_(std::move(columns)) {}

    /// A row; cells left out at the end are empty.
    void add(std::vector<TableCell> cells);

    /// A line of text below the row added last, indented under it and wrapped.
    void add_note(std::string text);

    [[nodiscard]] bool empty() const { return rows_.empty(); }

    /// All lines. Columns stand two blanks apart, or one where the page is too narrow; if that does
    /// not suffice, the columns that wrap share what is left.
    [[nodiscard]] std::string text(const Style& style, std::size_t indent) const;

private:
    /// The same as a table of a page.
    [[nodiscard]] std::string page_table() const;

    struct Row {
        std::vector<TableCell> cells;
        std::vector<std::string> notes;
    };

    std::vector<TableColumn> columns_;
    std::vector<Row> rows_;
};

} // namespace fluewright
