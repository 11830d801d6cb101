#include "csv_rows.hpp"

#include "io/text/csv_text.hpp"

#include <fmt/core.h>

namespace fluewright::results {

bool stands_in_csv(const ColumnInfo& column) {
    const bool flat = column.shape.holds != Holds::record && column.shape.holds != Holds::fragment;
    return column.in_csv && flat
           && (column.shape.lists == 0
               || (column.shape.lists == 1 && column.shape.holds == Holds::text));
}

std::string csv_cell(const json::Value& value) {
    if (value.is_text()) {
        return csv_field(value.text());
    }
    if (value.is_list()) {
        std::string words;
        for (const json::Value& entry : value.list()) {
            words += (words.empty() ? "" : " ") + entry.text();
        }
        return csv_field(words);
    }
    if (const bool* truth = value.truth()) {
        return *truth ? "yes" : "no";
    }
    if (const auto* whole = value.whole()) {
        return fmt::format("{}", *whole);
    }
    const auto number = value.number();
    return number ? fmt::format("{}", *number) : "";
}

void append_with_states(const std::string& head,
                        const std::optional<std::vector<StateRow>>& states,
                        std::string& out) {
    if (!states) {
        out += head + ',' + empty_cells<StateRow>() + "\r\n";
        return;
    }
    for (const StateRow& state : *states) {
        out += head + ',' + csv_cells(state) + "\r\n";
    }
}

} // namespace fluewright::results
