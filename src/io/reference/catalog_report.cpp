#include "fluewright/io/reference/catalog_report.hpp"

#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr int digits = 5;

/// Names that may be written instead stand apart with commas.
std::string listed(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '|') {
            out += ", ";
        } else {
            out += c;
        }
    }
    return out;
}

std::string shown(const CatalogCell& cell, const CatalogColumn& column, const Style& style) {
    if (const auto* words = std::get_if<std::string_view>(&cell)) {
        return listed(*words);
    }
    if (const auto* value = std::get_if<double>(&cell)) {
        return format_quantity(*value, column.kind, style.units, digits);
    }
    return {};
}

bool is_number(const CatalogTable& table, std::size_t column) {
    return std::any_of(table.rows.begin(), table.rows.end(), [column](const auto& row) {
        return std::holds_alternative<double>(row[column]);
    });
}

/// The one unit of all values of a column, so that it can head it; empty where they differ.
std::string_view common_unit(const CatalogTable& table, std::size_t column, const Style& style) {
    std::string_view unit = customary_unit(table.columns[column].kind, style.units);
    for (const auto& row : table.rows) {
        if (const auto* value = std::get_if<double>(&row[column])) {
            const std::string text =
                format_quantity(*value, table.columns[column].kind, style.units, digits);
            if (text.find(' ') == std::string::npos || text.substr(text.find(' ') + 1) != unit) {
                return {};
            }
        }
    }
    return unit;
}

void add_note(const CatalogColumn& column, std::string_view text, std::vector<std::string>& notes) {
    if (text.empty()) {
        return;
    }
    std::string note = fmt::format("{}: {}", column.heading, text);
    if (column.place == CatalogPlace::same_line && !notes.empty()) {
        notes.back() += "; " + note;
    } else {
        notes.push_back(std::move(note));
    }
}

} // namespace

std::string catalog_text(const CatalogTable& table, const Style& style) {
    std::vector<TableColumn> columns;
    std::vector<std::string_view> units(table.columns.size());
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const CatalogColumn& column = table.columns[c];
        if (column.place != CatalogPlace::row) {
            continue;
        }
        const bool numbers = is_number(table, c);
        units[c] = numbers ? common_unit(table, c, style) : std::string_view{};
        columns.push_back({.heading = units[c].empty()
                                          ? std::string{column.heading}
                                          : fmt::format("{}\n{}", column.heading, units[c]),
                           .align = numbers ? Align::decimal : Align::left,
                           .wraps = c == 0});
    }
    TextTable lines(std::move(columns));
    for (const auto& row : table.rows) {
        std::vector<TableCell> cells;
        std::vector<std::string> notes;
        for (std::size_t c = 0; c < row.size(); ++c) {
            std::string text = shown(row[c], table.columns[c], style);
            const CatalogColumn& column = table.columns[c];
            if (column.place != CatalogPlace::row) {
                add_note(column, text, notes);
                continue;
            }
            if (!units[c].empty()) {
                text = text.substr(0, text.find(' '));
            }
            cells.push_back({std::move(text), cells.empty() ? Ink::heading : Ink::plain});
        }
        lines.add(std::move(cells));
        for (std::string& note : notes) {
            lines.add_note(std::move(note));
        }
    }
    std::string out = paragraph(table.title, flush_left, style.width) + '\n';
    out += lines.text(style, 0);
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
