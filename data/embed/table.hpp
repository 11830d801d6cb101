#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// A table of data/ as text, taken apart and held against what every table promises: as many cells
/// as columns, figures inside their bounds, each id once, a known source and a known mark.
namespace fluewright::embed {

/// Where a table is wrong, as a compiler says it: "data/fuels.csv:14:30: ...".
struct Fault {
    std::string file;
    std::size_t line{};
    std::size_t column{}; ///< counted in bytes, from 1
    std::string message;

    [[nodiscard]] std::string text() const;
};

struct Cell {
    std::string text; ///< without the quotation marks around it
    std::size_t column{};
};

struct Row {
    std::vector<Cell> cells;
    std::size_t line{};
};

/// The unit a figure is written in, by the end of its column's name, and how it becomes SI.
struct Unit {
    std::string_view ending;
    std::string_view si_ending;
    std::string_view scale; ///< C++ that follows the figure; empty for SI
};

struct Column {
    std::string name;   ///< as the table says
    std::string member; ///< the name with the ending of the SI unit
    std::string scale;
    bool is_number{};
    double low{}; ///< in the unit of the table
    double high{};
};

struct Table {
    std::string file;
    std::vector<Column> columns;
    std::vector<Row> rows;

    /// The place of a column, or the number of columns when there is none of that name.
    [[nodiscard]] std::size_t column(std::string_view name) const;
};

/// The table in `text`; what is wrong with it goes to `faults`. `file` is named in messages.
[[nodiscard]] Table read_table(std::string file, std::string_view text, std::vector<Fault>& faults);

/// Each `source` is the id of a row of `sources`, each `mark` one of the six.
void check_sources(const Table& table, const Table& sources, std::vector<Fault>& faults);

} // namespace fluewright::embed
