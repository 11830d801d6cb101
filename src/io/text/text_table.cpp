#include "fluewright/io/text/text_table.hpp"

#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <numeric>

namespace fluewright {
namespace {

constexpr std::size_t wide_gap = 2;
constexpr std::size_t narrow_gap = 1;
constexpr std::size_t note_indent = 4;
constexpr std::size_t least_wrapped = 12;

using Lines = std::vector<std::string>;

/// Where the decimal point of the first number stands, or would stand; for a text without digits
/// the end.
std::size_t point_of(std::string_view text) {
    const std::size_t digit = text.find_first_of("0123456789");
    if (digit == std::string_view::npos) {
        return text.size();
    }
    const std::size_t end = text.find_first_not_of("0123456789", digit);
    return end == std::string_view::npos ? text.size() : end;
}

/// Columns from the decimal point on.
std::size_t tail_width(std::string_view text) {
    return shown_width(text.substr(point_of(text)));
}

Lines heading_lines(std::string_view heading) {
    Lines lines;
    for (;;) {
        const std::size_t end = heading.find('\n');
        lines.emplace_back(heading.substr(0, end));
        if (end == std::string_view::npos) {
            return lines;
        }
        heading.remove_prefix(end + 1);
    }
}

std::string padded(std::string_view text, std::size_t width, Align align) {
    const std::size_t taken = shown_width(text);
    const std::string blanks(width > taken ? width - taken : 0, ' ');
    return align == Align::left ? std::string{text} + blanks : blanks + std::string{text};
}

/// Where everything goes.
struct Measures {
    std::vector<Lines> headings;
    std::size_t heading_height{};
    std::vector<std::size_t> widths;
    std::vector<std::size_t> tails; ///< of decimal columns
    std::size_t gap{wide_gap};
};

void take_away_excess(const std::vector<TableColumn>& columns,
                      std::size_t room,
                      Measures& measures) {
    auto& widths = measures.widths;
    const auto total = [&] {
        return std::accumulate(widths.begin(), widths.end(), measures.gap * (widths.size() - 1));
    };
    const bool any_wraps =
        std::any_of(columns.begin(), columns.end(), [](const auto& c) { return c.wraps; });
    if (total() > room && !any_wraps) {
        measures.gap = narrow_gap;
    }
    // The widest wrapping column gives way first.
    while (total() > room) {
        std::size_t widest = widths.size();
        for (std::size_t c = 0; c < widths.size(); ++c) {
            if (columns[c].wraps && widths[c] > least_wrapped
                && (widest == widths.size() || widths[c] > widths[widest])) {
                widest = c;
            }
        }
        if (widest == widths.size()) {
            measures.gap = narrow_gap;
            return;
        }
        --widths[widest];
    }
}

void append_line(std::string& out,
                 const std::vector<TableColumn>& columns,
                 const Measures& measures,
                 const std::vector<TableCell>& cells,
                 const Style& style,
                 std::size_t indent) {
    out.append(indent, ' ');
    for (std::size_t c = 0; c < columns.size(); ++c) {
        out +=
            inked(padded(cells[c].text, measures.widths[c], columns[c].align), cells[c].ink, style);
        out.append(c + 1 < columns.size() ? measures.gap : 0, ' ');
    }
    out.erase(out.find_last_not_of(' ') + 1);
    out += '\n';
}

} // namespace

void TextTable::add(std::vector<TableCell> cells) {
    cells.resize(columns_.size());
    for (TableCell& cell : cells) {
        // Escapes control characters; only the columns that wrap break lines.
        cell.text = wrap(cell.text, std::string::npos).front();
    }
    rows_.push_back({.cells = std::move(cells), .notes = {}});
}

void TextTable::add_note(std::string text) {
    if (!rows_.empty() && !text.empty()) {
        rows_.back().notes.push_back(std::move(text));
    }
}

std::string TextTable::text(const Style& style, std::size_t indent) const {
    if (style.is_page()) {
        return page_table();
    }
    Measures measures;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        const bool decimal = columns_[c].align == Align::decimal;
        std::size_t whole = 0;
        std::size_t tail = 0;
        for (const Row& row : rows_) {
            const std::size_t width = shown_width(row.cells[c].text);
            const std::size_t behind = decimal ? tail_width(row.cells[c].text) : 0;
            whole = std::max(whole, width - behind);
            tail = std::max(tail, behind);
        }
        measures.headings.push_back(heading_lines(columns_[c].heading));
        measures.widths.push_back(whole + tail);
        measures.tails.push_back(tail);
        for (const std::string& line : measures.headings.back()) {
            measures.widths.back() = std::max(measures.widths.back(), shown_width(line));
        }
        measures.heading_height =
            std::max(measures.heading_height, measures.headings.back().size());
    }
    take_away_excess(columns_, style.width - indent, measures);

    std::string out;
    std::vector<TableCell> line_cells(columns_.size());
    for (std::size_t h = 0; h < measures.heading_height; ++h) {
        bool bare = true;
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            const Lines& lines = measures.headings[c];
            const std::size_t skip = measures.heading_height - lines.size();
            line_cells[c] = {h < skip ? "" : lines[h - skip], Ink::quiet};
            bare = bare && line_cells[c].text.empty();
        }
        if (!bare) {
            append_line(out, columns_, measures, line_cells, style, indent);
        }
    }
    for (const Row& row : rows_) {
        std::vector<Lines> cells;
        std::size_t height = 1;
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            cells.push_back(columns_[c].wraps ? wrap(row.cells[c].text, measures.widths[c])
                                              : Lines{row.cells[c].text});
            height = std::max(height, cells.back().size());
        }
        for (std::size_t line = 0; line < height; ++line) {
            for (std::size_t c = 0; c < columns_.size(); ++c) {
                std::string cell = line < cells[c].size() ? cells[c][line] : "";
                if (columns_[c].align == Align::decimal && !cell.empty()) {
                    cell.append(measures.tails[c] - tail_width(cell), ' ');
                }
                line_cells[c] = {std::move(cell), row.cells[c].ink};
            }
            append_line(out, columns_, measures, line_cells, style, indent);
        }
        for (const std::string& note : row.notes) {
            out += paragraph(
                note, {.first = indent + note_indent, .rest = indent + note_indent}, style.width);
        }
    }
    return out;
}

} // namespace fluewright
