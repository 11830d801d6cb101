#pragma once

#include "fluewright/io/text/text_table.hpp"
#include "record.hpp"

#include <cassert>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

/// Columns of a record as those of a table for people: heading, unit and figure come from the
/// record.
namespace fluewright::results {

/// The heading with the unit of the style below it. A length has its unit in the cell, which may
/// have two ("3 ft 4 in").
[[nodiscard]] TableColumn text_column(const ColumnInfo& column, const Style& style);

/// A value in the unit of the column; `nothing` for null.
[[nodiscard]] std::string text_cell(const ColumnInfo& column,
                                    const json::Value& value,
                                    const Style& style,
                                    std::string_view nothing);

/// The same with its unit, for a table whose columns have none.
[[nodiscard]] std::string
text_quantity(const ColumnInfo& column, const json::Value& value, const Style& style);

/// The column of a key, which the record must have.
template <class T>
[[nodiscard]] const Column<T>& column_of(std::string_view key) {
    const auto& columns = record_of<T>().columns();
    const auto found = std::find_if(columns.begin(), columns.end(), [key](const auto& column) {
        return column.info().key == key;
    });
    assert(found != columns.end());
    return *found;
}

template <class T>
class TextColumns {
public:
    TextColumns(std::initializer_list<std::string_view> keys,
                const Style& style,
                std::string_view nothing = "-")
        : style_(style), nothing_(nothing) {
        for (const std::string_view key : keys) {
            columns_.push_back(&column_of<T>(key));
        }
    }

    [[nodiscard]] std::size_t size() const { return columns_.size(); }

    void add_headings(std::vector<TableColumn>& headings) const {
        for (const Column<T>* column : columns_) {
            headings.push_back(text_column(column->info(), style_));
        }
    }

    void add_cells(const T& of, std::vector<TableCell>& cells) const {
        for (const Column<T>* column : columns_) {
            cells.push_back({text_cell(column->info(), column->get(of), style_, nothing_)});
        }
    }

private:
    const Style& style_;
    std::string_view nothing_;
    std::vector<const Column<T>*> columns_;
};

} // namespace fluewright::results
