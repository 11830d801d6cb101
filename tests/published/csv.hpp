#pragma once

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// Tables on disk: comma separated, one header line, "#" starts a line of comment. A cell that
/// holds a comma or a quote stands in double quotes, with quotes inside it doubled.
namespace published {

struct Table {
    std::vector<std::string> header;
    std::vector<std::vector<std::string>> rows; ///< each as long as the header
    std::vector<int> lines;                     ///< line number of each row, from 1

    [[nodiscard]] std::size_t column(std::string_view name) const {
        for (std::size_t i = 0; i < header.size(); ++i) {
            if (header[i] == name) {
                return i;
            }
        }
        throw std::runtime_error("no column named " + std::string(name));
    }
};

inline std::vector<std::string> split_csv_line(std::string_view line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            cells.back() += '"';
            ++i;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            cells.emplace_back();
        } else if (c != '\r') {
            cells.back() += c;
        }
    }
    return cells;
}

inline Table read_csv(const std::filesystem::path& file) {
    std::ifstream in(file);
    if (!in) {
        throw std::runtime_error("cannot read " + file.string());
    }
    Table table;
    std::string line;
    for (int number = 1; std::getline(in, line); ++number) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        auto cells = split_csv_line(line);
        if (table.header.empty()) {
            table.header = std::move(cells);
            continue;
        }
        if (cells.size() != table.header.size()) {
            throw std::runtime_error(file.filename().string() + ":" + std::to_string(number)
                                     + ": wrong number of cells");
        }
        table.rows.push_back(std::move(cells));
        table.lines.push_back(number);
    }
    return table;
}

} // namespace published
