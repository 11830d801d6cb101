#include "text_columns.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "io/report/check_parts.hpp"

namespace fluewright::results {
namespace {

bool is_figure(const ColumnInfo& column) {
    return column.shape.holds == Holds::number || column.shape.holds == Holds::whole;
}

bool has_unit_in_heading(const ColumnInfo& column, const Style& style) {
    return is_figure(column) && column.kind != Kind::length
           && !customary_unit(column.kind, style.units).empty();
}

} // namespace

TableColumn text_column(const ColumnInfo& column, const Style& style) {
    if (has_unit_in_heading(column, style)) {
        return {.heading = report::with_unit(column.heading, column.kind, style),
                .align = Align::decimal};
    }
    const Align align = !is_figure(column)            ? Align::left
                        : column.kind == Kind::length ? Align::right
                                                      : Align::decimal;
    return {.heading = column.heading, .align = align};
}

std::string text_cell(const ColumnInfo& column,
                      const json::Value& value,
                      const Style& style,
                      std::string_view nothing) {
    if (value.is_text()) {
        return value.text();
    }
    if (const bool* truth = value.truth()) {
        return *truth ? "yes" : "no";
    }
    const auto number = value.number();
    if (!number) {
        return std::string{nothing};
    }
    if (column.kind == Kind::length) {
        return report::quantity(*number, column.kind, style);
    }
    return column.shows_sign ? report::signed_number(*number, column.kind, style)
                             : report::bare_number(*number, column.kind, style);
}

std::string text_quantity(const ColumnInfo& column, const json::Value& value, const Style& style) {
    const auto number = value.number();
    return number ? report::quantity(*number, column.kind, style)
                  : text_cell(column, value, style, "-");
}

} // namespace fluewright::results
