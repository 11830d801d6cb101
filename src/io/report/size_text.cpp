#include "check_parts.hpp"
#include "fluewright/io/report/report_size.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "score_text.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

class SizePage {
public:
    SizePage(const SizeTable& table, const Style& style) : table_(table), style_(style) {}

    std::string text() {
        out_ = paragraph(table_.sentence, flush_left, style_.width)
               + report::not_decided_text(table_.not_decided, style_);
        if (!table_.present.title.empty()) {
            out_ += paragraph("Installation: " + table_.present.title, flush_left, style_.width);
        }
        if (table_.rows.empty()) {
            return std::move(out_);
        }
        out_ += paragraph((table_.varies_masonry ? "Present flue: " : "Present pipe: ")
                              + table_.present_pipe + "; chimney top "
                              + format_quantity(table_.present_height_m, Kind::length, style_.units)
                              + " above the outlet",
                          flush_left,
                          style_.width);
        verdicts();
        std::vector<report::ScoredRow> rows;
        for (const SizeRow& row : table_.rows) {
            if (row.score && (!row.against_rule || row.present)) {
                rows.push_back({.cells = size_cells(row), .score = &*row.score});
            }
        }
        out_ += report::score_tables(table_.present, size_columns(), rows, style_);
        out_ += report::score_legend(table_.present, style_);
        return std::move(out_);
    }

private:
    [[nodiscard]] std::vector<TableColumn> size_columns() const {
        std::vector<TableColumn> columns{{.heading = table_.separate ? "connector" : "size"}};
        if (table_.separate) {
            columns.push_back({.heading = "chimney"});
        }
        if (table_.several_heights) {
            columns.push_back({.heading = "height"});
        }
        return columns;
    }

    [[nodiscard]] std::vector<TableCell> size_cells(const SizeRow& row) const {
        std::vector<TableCell> cells{{row.connector}};
        if (table_.separate) {
            cells.push_back({row.chimney});
        }
        if (table_.several_heights) {
            cells.push_back({format_quantity(row.height_m, Kind::length, style_.units)});
        }
        return cells;
    }

    void verdicts() {
        out_ += report::heading("Sizes", style_);
        std::vector<TableColumn> columns = size_columns();
        columns.push_back({.heading = "area over\noutlet", .align = Align::decimal});
        columns.push_back({.heading = ""});
        columns.push_back({.heading = "", .wraps = true});
        TextTable lines(std::move(columns));
        for (std::size_t i = 0; i < table_.rows.size();) {
            i = add_verdict(lines, i);
        }
        out_ += lines.text(style_, 2);
    }

    /// Adds the row, with those after it that the same rule rules out; returns the next one.
    std::size_t add_verdict(TextTable& lines, std::size_t first) const {
        const SizeRow& row = table_.rows[first];
        std::size_t next = first + 1;
        const auto same = [&](const SizeRow& other) {
            return row.against_rule && other.ruled_out_by == row.ruled_out_by && !row.present
                   && !other.present && !table_.separate && other.height_m == row.height_m;
        };
        while (next < table_.rows.size() && same(table_.rows[next])) {
            ++next;
        }
        std::vector<TableCell> cells = size_cells(row);
        std::string area = format_number(row.area_over_outlet, 2);
        if (next > first + 1) {
            const SizeRow& last = table_.rows[next - 1];
            cells.front().text += " to " + last.connector;
            area = "";
        }
        cells.push_back({std::move(area)});
        const bool passes = row.ruled_out_by.empty();
        cells.push_back(passes && row.works              ? TableCell{"ok", Ink::good}
                        : passes                         ? TableCell{"not alone", Ink::warning}
                        : row.against_rule || !row.score ? TableCell{"no", Ink::quiet}
                                                         : TableCell{"SHORT", Ink::bad});
        std::string words = row.ruled_out_by;
        words += row.present ? (words.empty() ? "the present pipe" : "; the present pipe") : "";
        words += row.suggested ? (words.empty() ? "suggested" : "; suggested") : "";
        if (!row.seldom_sold.empty() && !row.against_rule) {
            words += (words.empty() ? "" : "; ") + ("seldom sold as " + row.seldom_sold);
        }
        cells.push_back({std::move(words)});
        lines.add(std::move(cells));
        return next;
    }

    const SizeTable& table_;
    const Style& style_;
    std::string out_;
};

} // namespace

std::string size_table_text(const SizeTable& table, const Style& style) {
    std::string out = SizePage(table, style).text();
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
