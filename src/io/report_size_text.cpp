#include "fluewright/io/report_size.hpp"
#include "fluewright/io/text_layout.hpp"
#include "fluewright/io/text_table.hpp"
#include "report_text_parts.hpp"
#include "report_words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace fluewright {
namespace {

constexpr Indent flush{.first = 0, .rest = 0};
constexpr Indent inset{.first = 2, .rest = 4};

class Page {
public:
    Page(const SizeTable& table, const Style& style) : table_(table), style_(style) {}

    std::string text() {
        out_ = paragraph(table_.sentence, flush, style_.width);
        if (!table_.present.title.empty()) {
            out_ += paragraph("Installation: " + table_.present.title, flush, style_.width);
        }
        if (table_.rows.empty()) {
            return std::move(out_);
        }
        out_ += paragraph("Present pipe: " + table_.present_pipe + "; mouth "
                              + format_quantity(table_.present_height_m, Kind::length, style_.units)
                              + " over the outlet",
                          flush,
                          style_.width);
        verdicts();
        for (std::size_t weather = 0; weather < table_.present.weathers.size(); ++weather) {
            states(weather);
        }
        legend();
        return std::move(out_);
    }

private:
    void legend() {
        std::string words = "! falls short. Margin: draft less the draft needed. Mouth: gas at the "
                            "mouth, and its speed at high fire.";
        if (table_.present.appliance.has_door) {
            words += " Door: how far it may be opened with the smoke staying in; "
                     + format_quantity(table_.door_wanted, Kind::fraction, style_.units)
                     + " is asked.";
        }
        out_ += paragraph(words, inset, style_.width);
    }

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
        cells.push_back(passes                           ? TableCell{"ok", Ink::good}
                        : row.against_rule || !row.score ? TableCell{"no", Ink::quiet}
                                                         : TableCell{"SHORT", Ink::bad});
        std::string words = row.ruled_out_by;
        words += row.present ? (words.empty() ? "the present pipe" : "; the present pipe") : "";
        words += row.suggested ? (words.empty() ? "suggested" : "; suggested") : "";
        cells.push_back({std::move(words)});
        lines.add(std::move(cells));
        return next;
    }

    /// The states that decide, as they come in the first row that was solved.
    [[nodiscard]] const Score* any_score() const {
        const auto row = std::find_if(table_.rows.begin(), table_.rows.end(), [](const SizeRow& r) {
            return r.score.has_value();
        });
        return row == table_.rows.end() ? nullptr : &*row->score;
    }

    void states(std::size_t weather) {
        const Score* first = any_score();
        if (first == nullptr) {
            return;
        }
        out_ += report::heading(table_.present.weathers[weather].name, style_);
        std::vector<TableColumn> columns = size_columns();
        for (const StateResult& state : first->states) {
            if (state.weather != weather) {
                continue;
            }
            const std::string words{name(state.kind)};
            if (report::is_door_open(state.kind)) {
                columns.push_back({.heading = "door may\nbe opened", .align = Align::decimal});
                continue;
            }
            columns.push_back(
                {.heading = report::with_unit(words + "\nmargin", Kind::pressure, style_),
                 .align = Align::decimal});
            columns.push_back({.heading = report::with_unit("mouth", Kind::temperature, style_),
                               .align = Align::decimal});
            if (state.kind == StateKind::high_fire) {
                columns.push_back({.heading = report::with_unit("", Kind::speed, style_),
                                   .align = Align::decimal});
            }
        }
        TextTable lines(std::move(columns));
        for (const SizeRow& row : table_.rows) {
            if (row.score && (!row.against_rule || row.present)) {
                add_states(lines, row, weather);
            }
        }
        out_ += lines.text(style_, 2);
    }

    void add_states(TextTable& lines, const SizeRow& row, std::size_t weather) const {
        std::vector<TableCell> cells = size_cells(row);
        for (std::size_t i = 0; i < row.score->states.size(); ++i) {
            const StateResult& state = row.score->states[i];
            const StateVerdict& verdict = row.score->verdicts[i];
            if (state.weather != weather) {
                continue;
            }
            const Ink ink = verdict.passes ? Ink::plain : Ink::bad;
            const std::string mark = verdict.passes ? "" : " !";
            if (report::is_door_open(state.kind)) {
                const double share = std::clamp(state.door.opening_share, 0.0, 1.0);
                cells.push_back(
                    {format_quantity(share, Kind::fraction, style_.units, 2) + mark, ink});
                continue;
            }
            cells.push_back(
                {report::signed_number(verdict.spare, Kind::pressure, style_) + mark, ink});
            cells.push_back(
                {report::bare_number(state.flow.mouth_temperature_k, Kind::temperature, style_)});
            if (state.kind == StateKind::high_fire) {
                cells.push_back(
                    {report::bare_number(state.flow.mouth_velocity_m_s, Kind::speed, style_)});
            }
        }
        lines.add(std::move(cells));
    }

    const SizeTable& table_;
    const Style& style_;
    std::string out_;
};

} // namespace

std::string size_table_text(const SizeTable& table, const Style& style) {
    std::string out = Page(table, style).text();
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
