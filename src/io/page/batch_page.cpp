#include "fluewright/io/page/batch_page.hpp"

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "html_page.hpp"
#include "io/chart/histogram.hpp"
#include "io/report/check_parts.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace fluewright {
namespace {

class BatchPage {
public:
    BatchPage(const BatchTally& tally, const BatchPageOptions& options)
        : tally_(tally), options_(options), style_(page::style_of(3)) {}

    std::string text() {
        page_.add("summary", "Summary", summary());
        page_.add("found", "Found most often", found());
        add_histograms();
        page_.add("failing", "What falls short or is open, and why", failing());
        page_.add_headed(
            "cautions", "Cautions", report::cautions_text(std::nullopt, page::style_of(2)));
        return page_.finished(
            {.title = "Many installations at a glance",
             .kicker = "Heater, pipe and chimney: which of them draw?",
             .lead = options_.sentence,
             .passes = tally_.failing_count() == 0,
             .foot = fmt::format("fluewright {}, from {}", options_.version, options_.from)});
    }

private:
    /// "12 (40 %)"
    [[nodiscard]] std::string of_computed(std::size_t count) const {
        return fmt::format("{} ({:.0f} %)",
                           count,
                           100.0 * static_cast<double>(count)
                               / static_cast<double>(std::max<std::size_t>(tally_.computed(), 1)));
    }

    [[nodiscard]] std::string summary() const {
        std::vector<TableColumn> columns{{.heading = "kind of harm"}};
        std::vector<HarmOutcome> seen;
        for (std::size_t i = 0; i < harm_outcome_count; ++i) {
            const auto outcome = static_cast<HarmOutcome>(i);
            const bool any = std::any_of(harms.begin(), harms.end(), [&](Harm harm) {
                return tally_.count(harm, outcome) > 0;
            });
            if (any) {
                seen.push_back(outcome);
                columns.push_back({.heading = std::string{name(outcome)}, .align = Align::right});
            }
        }
        if (seen.empty()) {
            return "No installation could be computed.\n";
        }
        TextTable table(std::move(columns));
        for (const Harm harm : harms) {
            std::vector<TableCell> cells{{std::string{name(harm)}}};
            for (const HarmOutcome outcome : seen) {
                cells.push_back({of_computed(tally_.count(harm, outcome))});
            }
            table.add(std::move(cells));
        }
        const std::size_t faulty = tally_.records() - tally_.computed();
        std::string text = table.text(style_, 0);
        if (!options_.rules.empty()) {
            text += fmt::format("Checked against the rules of {}.\n", options_.rules);
        }
        return text
               + (faulty > 0 ? fmt::format(
                      "{} at fault were not computed and are not counted here.\n", faulty)
                             : "");
    }

    [[nodiscard]] std::string found() const {
        constexpr std::size_t most = 25;
        const auto found = tally_.found();
        TextTable table({{.heading = "found"},
                         {.heading = "installations", .align = Align::right},
                         {.heading = "id"}});
        for (std::size_t i = 0; i < std::min(most, found.size()); ++i) {
            const Matter* matter = find_matter(found[i].first);
            table.add({{std::string{matter != nullptr ? matter->title : found[i].first}},
                       {of_computed(found[i].second)},
                       {std::string{found[i].first}}});
        }
        return found.empty() ? "" : table.text(style_, 0);
    }

    void add_histograms() {
        constexpr double percent = 100.0;
        constexpr double quarter = 25.0;
        if (!tally_.margins_pa().empty()) {
            page_.add_figure("margins",
                             "Margins of draft",
                             chart::histogram_svg({.title = "Least margin of draft",
                                                   .x_title = "draft over the required draft, Pa",
                                                   .values = tally_.margins_pa(),
                                                   .least_good = 0.0,
                                                   .has_limit = true}),
                             "Of each installation the condition with the least to spare. "
                             "Hatched bars fall short.");
        }
        std::vector<double> openings;
        for (const double share : tally_.opening_shares()) {
            openings.push_back(percent * std::min(share, 1.0));
        }
        if (!openings.empty()) {
            page_.add_figure("reloading",
                             "Reloading",
                             chart::histogram_svg({.title = "How far the door may be opened",
                                                   .x_title = "share of the door's width, %",
                                                   .values = std::move(openings),
                                                   .least_good = quarter,
                                                   .has_limit = true}),
                             "Of each installation the least. Hatched bars smoke when opened less "
                             "than a quarter.");
        }
    }

    /// Which kinds of harm are short, what is found, or what is wrong with the record.
    [[nodiscard]] static std::string reasons(const BatchRow& row) {
        if (row.outcome == Outcome::fault || row.outcome == Outcome::failed) {
            return row.error;
        }
        if (row.outcome == Outcome::open) {
            return row.why;
        }
        constexpr std::size_t most = 4;
        std::string text;
        for (std::size_t i = 0; i < std::min(most, row.findings.size()); ++i) {
            const Matter* matter = find_matter(row.findings[i]);
            text += text.empty() ? "" : "; ";
            text += matter != nullptr ? matter->title : row.findings[i];
        }
        if (row.findings.size() > most) {
            text += fmt::format("; {} more", row.findings.size() - most);
        }
        return text;
    }

    [[nodiscard]] static std::string short_of(const BatchRow& row) {
        if (row.outcome == Outcome::fault || row.outcome == Outcome::failed) {
            return row.outcome == Outcome::fault ? "at fault" : "no answer of the solver";
        }
        std::string text;
        for (const Harm harm : harms) {
            if (row.harms[static_cast<std::size_t>(harm)] == HarmOutcome::falls_short) {
                text += text.empty() ? "" : ", ";
                text += name(harm);
            }
        }
        return text.empty() ? "open" : text;
    }

    [[nodiscard]] std::string failing() const {
        if (tally_.failing_count() == 0) {
            return "Nothing that counts falls short or is open.\n";
        }
        TextTable table({{.heading = "installation", .wraps = true},
                         {.heading = "short", .wraps = true},
                         {.heading = "least margin", .align = Align::right},
                         {.heading = "in", .wraps = true},
                         {.heading = "found", .wraps = true}});
        for (const BatchRow& row : tally_.failing()) {
            table.add({{row.id},
                       {short_of(row), Ink::bad},
                       {margin_text(row)},
                       {row.margin_state.empty()
                            ? ""
                            : fmt::format("{}, {}", row.margin_state, row.margin_weather)},
                       {reasons(row)}});
        }
        const std::size_t more = tally_.failing_count() - tally_.failing().size();
        return table.text(style_, 0)
               + (more > 0 ? fmt::format("{} more; `--format csv --fields id,outcome,why` "
                                         "lists all.\n",
                                         more)
                           : "");
    }

    const BatchTally& tally_;
    const BatchPageOptions& options_;
    Style style_;
    page::HtmlPage page_;
};

} // namespace

std::string batch_page(const BatchTally& tally, const BatchPageOptions& options) {
    return BatchPage{tally, options}.text();
}

} // namespace fluewright
