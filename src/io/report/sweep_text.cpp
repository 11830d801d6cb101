#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/io/report/report_sweep.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/chart/sweep_figures.hpp"
#include "io/text/words.hpp"
#include "score_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace {

/// Columns of a grid that fit on a page.
constexpr std::size_t most_columns = 8;

class Page {
public:
    Page(const Sweep& sweep, const Style& style) : sweep_(sweep), style_(style) {}

    std::string text() {
        out_ = paragraph(sweep_.sentence, flush_left, style_.width)
               + report::not_decided_text(sweep_.not_decided, style_);
        if (!sweep_.present.title.empty()) {
            out_ += paragraph("Installation: " + sweep_.present.title, flush_left, style_.width);
        }
        if (sweep_.over.size() == 1) {
            rows();
        } else {
            grids();
        }
        return std::move(out_);
    }

private:
    [[nodiscard]] std::string value(std::size_t which, double si) const {
        const Varied& varied = sweep_.over[which];
        const std::string_view unit = shown_unit(varied, style_.units);
        const std::string words = format_in_unit(si, varied.key.kind, unit);
        return words.substr(0, words.find(' '));
    }

    [[nodiscard]] std::string heading_of(std::size_t which) const {
        const Varied& varied = sweep_.over[which];
        return fmt::format("{}\n{}", varied.key.name, shown_unit(varied, style_.units));
    }

    void rows() {
        out_ += report::heading("Every value", style_);
        const TableColumn front{.heading = heading_of(0), .align = Align::decimal};
        TextTable verdicts({front, {}, {.wraps = true}});
        std::vector<report::ScoredRow> scored;
        for (const SweepPoint& point : sweep_.points) {
            const std::string at = value(0, point.at[0]);
            if (!point.score) {
                verdicts.add({{at}, {"no", Ink::quiet}, {point.fault}});
                continue;
            }
            const Score& score = *point.score;
            verdicts.add({{at},
                          point.works ? TableCell{"ok", Ink::good} : TableCell{"SHORT", Ink::bad},
                          {point.works ? "smallest margin: "
                                             + report::state_words(sweep_.shape,
                                                                   score.states[score.limiting])
                                       : point.short_of}});
            scored.push_back({.cells = {{at}}, .score = &score});
        }
        out_ += verdicts.text(style_, 2);
        if (!scored.empty()) {
            out_ += report::score_tables(sweep_.shape, {front}, scored, style_);
            out_ += report::score_legend(sweep_.shape, style_);
        }
    }

    void grids() {
        grid("Least draft margin, " + std::string{customary_unit(Kind::pressure, style_.units)},
             [this](const SweepPoint& point) {
                 return report::signed_number(
                     least_margin_pa(*point.score), Kind::pressure, style_);
             });
        if (sweep_.shape.appliance.has_door) {
            grid(has_open_front(sweep_.shape.appliance) ? "Smoke held" : "Door may be opened",
                 [this](const SweepPoint& point) {
                     const double share = least_opening(*point.score);
                     return std::isfinite(share) ? opening_share_words(sweep_.shape, share)
                                                 : std::string{"-"};
                 });
        }
        std::string legend =
            "! it falls short. Margin: draft less the required draft, the least of all conditions.";
        if (sweep_.shape.appliance.has_door) {
            legend += (has_open_front(sweep_.shape.appliance)
                           ? std::string{" Smoke held: over how much of the opening; "}
                           : std::string{" Door: how far it may be opened without smoke; "})
                      + format_quantity(door_wanted(sweep_.shape), Kind::fraction, style_.units)
                      + " is required.";
        }
        out_ += paragraph(legend, hung_in, style_.width);
        for (const SweepBlank& blank : sweep_.blanks) {
            out_ += paragraph("- at " + blank.words + ": it cannot be built, " + blank.reason + ".",
                              hung_in,
                              style_.width);
        }
    }

    template <class Figure>
    void grid(std::string_view title, const Figure& figure) {
        const auto& across = sweep_.over[1].values;
        out_ += report::heading(title, style_);
        for (std::size_t begin = 0; begin < across.size(); begin += most_columns) {
            const std::size_t end = std::min(begin + most_columns, across.size());
            std::vector<TableColumn> columns{{.heading = heading_of(0), .align = Align::decimal}};
            for (std::size_t j = begin; j < end; ++j) {
                const std::string_view unit = shown_unit(sweep_.over[1], style_.units);
                const std::string over = j == begin ? sweep_.over[1].key.name + "\n" : "";
                columns.push_back(
                    {.heading = fmt::format("{}{} {}", over, value(1, across[j]), unit),
                     .align = Align::right});
            }
            TextTable table(std::move(columns));
            for (std::size_t i = 0; i < sweep_.over[0].values.size(); ++i) {
                std::vector<TableCell> cells{{value(0, sweep_.over[0].values[i])}};
                for (std::size_t j = begin; j < end; ++j) {
                    const SweepPoint& point = sweep_.point(i, j);
                    if (!point.score) {
                        cells.push_back({"-", Ink::quiet});
                        continue;
                    }
                    const bool passes = point.passes();
                    cells.push_back(
                        {figure(point) + (passes ? "  " : " !"), passes ? Ink::plain : Ink::bad});
                }
                table.add(std::move(cells));
            }
            out_ += (begin > 0 ? "\n" : "") + table.text(style_, 2);
        }
    }

    const Sweep& sweep_;
    const Style& style_;
    std::string out_;
};

} // namespace

std::string sweep_text(const Sweep& sweep, const Style& style) {
    std::string out = Page(sweep, style).text();
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
