#pragma once

#include "record.hpp"
#include "state_rows.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

/// Records as lines of RFC 4180: the same keys and the same figures as JSON. Of a record, what is
/// one value or a list of words; records within it have no place on a line.
namespace fluewright::results {

/// Whether a column stands in CSV.
[[nodiscard]] bool stands_in_csv(const ColumnInfo& column);

/// A value of such a column: empty for null, "yes" or "no", words of a list with blanks between.
[[nodiscard]] std::string csv_cell(const json::Value& value);

/// "key,key" without a line end.
template <class T>
[[nodiscard]] std::string csv_keys() {
    std::string out;
    for (const Column<T>& column : record_of<T>().columns()) {
        if (stands_in_csv(column.info())) {
            out += (out.empty() ? "" : ",") + column.info().key;
        }
    }
    return out;
}

/// The cells of a record, without a line end.
template <class T>
[[nodiscard]] std::string csv_cells(const T& of) {
    std::string out;
    bool first = true;
    for (const Column<T>& column : record_of<T>().columns()) {
        if (stands_in_csv(column.info())) {
            out += (first ? "" : ",") + csv_cell(column.get(of));
            first = false;
        }
    }
    return out;
}

/// As many empty cells as the record has.
template <class T>
[[nodiscard]] std::string empty_cells() {
    const std::string keys = csv_keys<T>();
    return std::string(static_cast<std::size_t>(std::count(keys.begin(), keys.end(), ',')), ',');
}

template <class T>
[[nodiscard]] std::string csv_heading() {
    return csv_keys<T>() + "\r\n";
}

template <class T>
void append_csv(const T& of, std::string& out) {
    out += csv_cells(of) + "\r\n";
}

/// One line for each state behind the cells of `head`; one line with empty cells where nothing was
/// solved.
void append_with_states(const std::string& head,
                        const std::optional<std::vector<StateRow>>& states,
                        std::string& out);

} // namespace fluewright::results
