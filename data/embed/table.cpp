#include "table.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <set>
#include <utility>

namespace fluewright::embed {
namespace {

constexpr auto units = std::to_array<Unit>({
    {"_pct", "", " / 100.0"},
    {"_mm", "_m", " / 1000.0"},
    {"_in2", "_m2", " * 0.00064516"},
    {"_in", "_m", " * 0.0254"},
    {"_mj_kg", "_j_kg", " * 1e6"},
    {"_millionths_per_k", "_per_k", " / 1e6"},
});

constexpr auto marks = std::to_array<std::string_view>(
    {"looked up", "quoted", "computed", "judgement", "common practice", "from memory"});

/// A figure as the tables write it, which is also how C++ does: no sign but minus, no hexadecimal.
std::optional<double> figure(std::string_view text) {
    double value = 0.0;
    const char* const end = text.data() + text.size();
    const auto [rest, error] = std::from_chars(text.data(), end, value);
    const bool begins_with_digit = !text.empty() && (text.back() >= '0' && text.back() <= '9')
                                   && (text.front() == '-' || text.front() != '.');
    if (error != std::errc{} || rest != end || !begins_with_digit) {
        return std::nullopt;
    }
    return value;
}

/// Takes one table apart, line by line.
class Reader {
public:
    Reader(Table& table, std::vector<Fault>& faults) : table_(&table), faults_(&faults) {}

    void read(std::string_view text) {
        for (std::size_t line = 1; !text.empty(); ++line) {
            const std::size_t length = std::min(text.find('\n'), text.size());
            std::string_view content = text.substr(0, length);
            text.remove_prefix(std::min(length + 1, text.size()));
            if (content.ends_with('\r')) {
                content.remove_suffix(1);
            }
            if (!content.empty() && content != "#" && !content.starts_with("# ")) {
                take(line, content);
            }
        }
        if (!any_row_) {
            fault(1, 1, "the table has no rows");
        }
    }

private:
    void fault(std::size_t line, std::size_t column, std::string message) {
        faults_->push_back({table_->file, line, column, std::move(message)});
    }

    void take(std::size_t line, std::string_view content) {
        std::vector<Cell> cells = split(line, content);
        if (content.starts_with("#bounds")) {
            bounds_ = std::move(cells);
            bounds_line_ = line;
        } else if (table_->columns.empty()) {
            take_columns(line, cells);
        } else {
            take_row(line, std::move(cells));
        }
    }

    /// The cells between the commas; one in quotation marks keeps its commas, "" in it is one mark.
    std::vector<Cell> split(std::size_t line, std::string_view content) {
        std::vector<Cell> cells;
        std::size_t at = 0;
        while (true) {
            Cell cell{{}, at + 1};
            if (at < content.size() && content[at] == '"') {
                ++at;
                while (at < content.size()
                       && (content[at] != '"' || content.substr(at).starts_with("\"\""))) {
                    cell.text += content[at];
                    at += content[at] == '"' ? 2U : 1U;
                }
                if (at == content.size()) {
                    fault(line, cell.column, "the quotation mark is not closed");
                } else if (++at < content.size() && content[at] != ',') {
                    fault(line, at + 1, "a comma is missing after the quotation mark");
                    at = std::min(content.find(',', at), content.size());
                }
            } else {
                const std::size_t comma = std::min(content.find(',', at), content.size());
                cell.text = content.substr(at, comma - at);
                at = comma;
                if (const auto quote = cell.text.find('"'); quote != std::string::npos) {
                    fault(line,
                          cell.column + quote,
                          "a cell with a quotation mark in it stands in quotation marks");
                }
            }
            cells.push_back(std::move(cell));
            if (at >= content.size()) {
                return cells;
            }
            ++at;
        }
    }

    void take_columns(std::size_t line, const std::vector<Cell>& cells) {
        if (bounds_.size() != cells.size()) {
            fault(std::max<std::size_t>(bounds_line_, 1),
                  1,
                  bounds_.empty() ? "a line #bounds is missing before the names of the columns"
                                  : std::to_string(bounds_.size()) + " cells of bounds for "
                                        + std::to_string(cells.size()) + " columns");
        }
        bounds_.resize(cells.size());
        bounds_.front().text.clear(); // "#bounds" itself
        if (cells.front().text != "id") {
            fault(line, 1, "the first column is called id");
        }
        for (std::size_t i = 0; i < cells.size(); ++i) {
            table_->columns.push_back(made_column(cells[i].text, bounds_[i]));
        }
    }

    Column made_column(const std::string& name, const Cell& bounds) {
        Column made;
        made.name = name;
        made.member = name;
        if (bounds.text.empty()) {
            return made;
        }
        made.is_number = true;
        const std::size_t dots = bounds.text.find("..");
        const auto low = figure(std::string_view{bounds.text}.substr(0, dots));
        const auto high = dots == std::string::npos
                              ? std::nullopt
                              : figure(std::string_view{bounds.text}.substr(dots + 2));
        if (!low || !high || *low > *high) {
            fault(bounds_line_,
                  bounds.column,
                  "the bounds of " + name + " read low..high, not \"" + bounds.text + '"');
            return made;
        }
        made.low = *low;
        made.high = *high;
        const auto* const unit = std::find_if(units.begin(), units.end(), [&](const Unit& each) {
            return name.size() > each.ending.size() && name.ends_with(each.ending);
        });
        if (unit != units.end()) {
            made.member.resize(name.size() - unit->ending.size());
            made.member += unit->si_ending;
            made.scale = unit->scale;
        }
        return made;
    }

    void take_row(std::size_t line, std::vector<Cell> cells) {
        any_row_ = true;
        if (cells.size() != table_->columns.size()) {
            fault(line,
                  cells.back().column,
                  std::to_string(cells.size()) + " cells for "
                      + std::to_string(table_->columns.size()) + " columns");
            return;
        }
        for (std::size_t i = 0; i < cells.size(); ++i) {
            check_cell(line, cells[i], table_->columns[i]);
        }
        const Cell& id = cells.front();
        if (id.text.empty()) {
            fault(line, 1, "the row has no id");
        } else if (!ids_.insert(id.text).second) {
            fault(line, id.column, "a second row is called " + id.text);
        }
        table_->rows.push_back({std::move(cells), line});
    }

    void check_cell(std::size_t line, const Cell& cell, const Column& column) {
        if (!column.is_number) {
            return;
        }
        const auto value = figure(cell.text);
        if (!value) {
            fault(line, cell.column, column.name + " is not a number: \"" + cell.text + '"');
        } else if (*value < column.low || *value > column.high) {
            std::string bounds =
                bounds_[static_cast<std::size_t>(&column - table_->columns.data())].text;
            fault(line,
                  cell.column,
                  column.name + " is " + cell.text + ", outside its bounds " + bounds);
        }
    }

    Table* table_;
    std::vector<Fault>* faults_;
    std::vector<Cell> bounds_;
    std::size_t bounds_line_{};
    bool any_row_{};
    std::set<std::string> ids_;
};

} // namespace

std::string Fault::text() const {
    return file + ':' + std::to_string(line) + ':' + std::to_string(column) + ": " + message;
}

std::size_t Table::column(std::string_view name) const {
    const auto found = std::find_if(
        columns.begin(), columns.end(), [&](const Column& each) { return each.name == name; });
    return static_cast<std::size_t>(found - columns.begin());
}

Table read_table(std::string file, std::string_view text, std::vector<Fault>& faults) {
    Table table;
    table.file = std::move(file);
    Reader{table, faults}.read(text);
    return table;
}

void check_sources(const Table& table, const Table& sources, std::vector<Fault>& faults) {
    std::set<std::string_view> known;
    for (const Row& row : sources.rows) {
        known.insert(row.cells.front().text);
    }
    const auto among = [&](std::string_view name, const auto& is_known, std::string_view what) {
        const std::size_t column = table.column(name);
        if (column == table.columns.size()) {
            faults.push_back({table.file, 1, 1, "there is no column " + std::string{name}});
            return;
        }
        for (const Row& row : table.rows) {
            const Cell& cell = row.cells[column];
            if (!is_known(cell.text)) {
                faults.push_back({table.file,
                                  row.line,
                                  cell.column,
                                  '"' + cell.text + "\" is " + std::string{what}});
            }
        }
    };
    among(
        "source", [&](std::string_view id) { return known.contains(id); }, "no row of sources.csv");
    among(
        "mark",
        [](std::string_view mark) {
            return std::find(marks.begin(), marks.end(), mark) != marks.end();
        },
        "none of the marks that data/README.md lists");
}

} // namespace fluewright::embed
