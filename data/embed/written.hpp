#pragma once

#include "table.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The tables as C++.
namespace fluewright::embed {

/// What becomes of one table.
struct Entry {
    std::string_view table;         ///< file name without its ending
    std::string_view row_struct;    ///< filled by a row
    std::string_view array;         ///< name of the array of rows, without "_rows"
    std::string_view enumeration{}; ///< of the ids; empty where the code asks for no row by name
    std::string_view space{};       ///< its namespace
    std::string_view header{};      ///< its header, below the folder of generated files
};

[[nodiscard]] std::span<const Entry> entries();

/// The rows as a constexpr array. Members are named, so that a column out of order or misspelled
/// does not compile.
[[nodiscard]] std::string rows(const Entry& entry, const Table& table);

/// The header with the enumeration of the ids, in the order of the rows; empty where the entry
/// names none. An id that cannot be an enumerator goes to `faults`.
[[nodiscard]] std::string
enumeration(const Entry& entry, const Table& table, std::vector<Fault>& faults);

} // namespace fluewright::embed
