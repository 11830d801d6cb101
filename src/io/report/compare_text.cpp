#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/report/report_compare.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/report/parts/cut_sheet.hpp"
#include "io/results/layout_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"
#include "score_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <functional>

namespace fluewright {
namespace {

/// Layouts that stand side by side on a page; more go into further tables.
constexpr std::size_t most_columns = 4;

class Page {
public:
    Page(const Comparison& comparison, const Style& style)
        : comparison_(comparison), style_(style) {}

    std::string text() {
        out_ = paragraph(comparison_.sentence, flush_left, style_.width);
        for (const std::string& words : comparison_.added) {
            out_ += paragraph(words, flush_left, style_.width);
        }
        const std::size_t count = comparison_.layouts.size();
        for (begin_ = 0; begin_ < count; begin_ = end_) {
            end_ = std::min(begin_ + most_columns, count);
            tables();
        }
        legend();
        findings();
        parts();
        differences();
        return std::move(out_);
    }

private:
    using Figure = std::function<TableCell(const Layout&)>;

    [[nodiscard]] std::vector<TableColumn> columns(std::string_view first) const {
        std::vector<TableColumn> made{{.heading = ""}, {.heading = std::string{first}}};
        for (std::size_t i = begin_; i < end_; ++i) {
            const bool best = !comparison_.alike
                              && (i == comparison_.best
                                  || std::find(comparison_.tied.begin(), comparison_.tied.end(), i)
                                         != comparison_.tied.end());
            made.push_back({.heading = comparison_.layouts[i].name + (best ? " <" : ""),
                            .align = Align::right});
        }
        return made;
    }

    /// A line of the table, marked where the layouts differ, those on other pages too.
    void row(TextTable& table, std::string_view what, const Figure& figure) const {
        std::vector<TableCell> shown;
        bool differs = false;
        const std::string first = figure(comparison_.layouts.front()).text;
        for (std::size_t i = 0; i < comparison_.layouts.size(); ++i) {
            TableCell cell = figure(comparison_.layouts[i]);
            differs = differs || cell.text != first;
            if (i >= begin_ && i < end_) {
                shown.push_back(std::move(cell));
            }
        }
        std::vector<TableCell> cells{{differs ? "*" : ""}, {std::string{what}}};
        cells.insert(cells.end(), shown.begin(), shown.end());
        table.add(std::move(cells));
    }

    void tables() {
        out_ += report::heading("Side by side", style_);
        TextTable table(columns(""));
        row(table, "what counts", [](const Layout& layout) {
            return layout.assessment.works() ? TableCell{"ok", Ink::good}
                                             : TableCell{"SHORT", Ink::bad};
        });
        for (const Harm harm : harms) {
            const bool told = std::any_of(comparison_.layouts.begin(),
                                          comparison_.layouts.end(),
                                          [harm](const Layout& layout) {
                                              return layout.assessment.verdict.of(harm).outcome
                                                     != HarmOutcome::does_not_apply;
                                          });
            if (!told) {
                continue;
            }
            row(table, report::label_of(harm), [harm](const Layout& layout) {
                return report::outcome_cell(layout.assessment.verdict.of(harm));
            });
        }
        counts(table);
        states(table);
        run(table);
        out_ += table.text(style_, 2);
    }

    void run(TextTable& table) const {
        const bool priced =
            std::any_of(comparison_.layouts.begin(),
                        comparison_.layouts.end(),
                        [](const Layout& layout) { return layout.parts.price.has_value(); });
        std::vector<std::string_view> keys{"height_m",
                                           "pipe_m",
                                           "level_m",
                                           "turns_rad",
                                           "sizes",
                                           "pieces_bought",
                                           "parts_weight_kg"};
        if (priced) {
            keys.insert(keys.end(), {"parts_price", "parts_unpriced"});
        }
        for (const std::string_view key : keys) {
            const auto& column = results::column_of<results::LayoutRow>(key);
            row(table, column.info().heading, [this, &column](const Layout& layout) {
                const auto at = static_cast<std::size_t>(&layout - comparison_.layouts.data());
                return TableCell{
                    results::text_quantity(column.info(), column.get({comparison_, at}), style_)};
            });
        }
    }

    /// The state of another layout that answers to one of the first: by the name of its weather,
    /// else by its place.
    static const StateResult*
    same_state(const Layout& layout, const Case& first, const StateResult& state, std::size_t& at) {
        const Case& c = layout.assessment.installation;
        const std::string& weather = first.weathers[state.weather].name;
        const bool named = std::any_of(
            c.weathers.begin(), c.weathers.end(), [&](const auto& w) { return w.name == weather; });
        for (at = 0; at < layout.score.states.size(); ++at) {
            const StateResult& other = layout.score.states[at];
            if (other.kind == state.kind
                && (named ? c.weathers[other.weather].name == weather
                          : other.weather == state.weather)) {
                return &other;
            }
        }
        return nullptr;
    }

    void states(TextTable& table) const {
        const Layout& first = comparison_.layouts.front();
        const Case& c = first.assessment.installation;
        for (const StateResult& state : first.score.states) {
            const bool door = is_door_open(state.kind);
            const auto of_state = [&](const auto& figure) {
                return [this, &c, &state, figure](const Layout& layout) {
                    std::size_t at = 0;
                    const StateResult* same = same_state(layout, c, state, at);
                    return same == nullptr ? TableCell{"-", Ink::quiet}
                                           : figure(*same, layout.score.verdicts[at]);
                };
            };
            const std::string words = report::state_words(c, state);
            row(table,
                words
                    + (!door                         ? ": margin"
                       : has_open_front(c.appliance) ? ": smoke held"
                                                     : ": opens"),
                of_state([this, door, &c](const StateResult& s, const StateVerdict& verdict) {
                    const std::string mark = verdict.passes ? "" : " !";
                    const std::string figure =
                        !door && !has_figures(s) ? std::string{name(s.status)}
                        : door                   ? opening_share_words(c, s.door.opening_share)
                               : report::signed_quantity(verdict.spare, Kind::pressure, style_);
                    return TableCell{figure + mark, verdict.passes ? Ink::plain : Ink::bad};
                }));
            if (!door) {
                row(table,
                    "- gas at the chimney top",
                    of_state([this](const StateResult& s, const StateVerdict& /*verdict*/) {
                        return !has_figures(s)
                                   ? TableCell{"-", Ink::quiet}
                                   : TableCell{report::quantity(
                                       s.flow.top_temperature_k, Kind::temperature, style_)};
                    }));
            }
            if (state.kind == StateKind::high_fire) {
                row(table,
                    "- speed at the chimney top",
                    of_state([this](const StateResult& s, const StateVerdict& /*verdict*/) {
                        return !has_figures(s) ? TableCell{"-", Ink::quiet}
                                               : TableCell{report::quantity(
                                                   s.flow.top_velocity_m_s, Kind::speed, style_)};
                    }));
            }
        }
    }

    void counts(TextTable& table) const {
        row(table, "dangers and faults", [](const Layout& layout) {
            return TableCell{std::to_string(layout.failures),
                             layout.failures > 0 ? Ink::bad : Ink::plain};
        });
        row(table, "warnings", [](const Layout& layout) {
            return TableCell{std::to_string(layout.warnings)};
        });
    }

    /// Whether some weather of the first layout is missing in this one.
    [[nodiscard]] bool has_other_weathers(const Layout& layout) const {
        const auto& mine = layout.assessment.installation.weathers;
        const auto& first = comparison_.layouts.front().assessment.installation.weathers;
        return std::any_of(first.begin(), first.end(), [&](const WeatherCase& wanted) {
            return std::none_of(mine.begin(), mine.end(), [&](const WeatherCase& weather) {
                return weather.name == wanted.name;
            });
        });
    }

    void legend() {
        const bool any_door = std::any_of(
            comparison_.layouts.begin(), comparison_.layouts.end(), [](const Layout& layout) {
                const ApplianceCase& a = layout.assessment.installation.appliance;
                return a.has_door && !has_open_front(a);
            });
        std::string words = "* the layouts differ. ! short. Margin: draft less the required draft.";
        words += any_door ? " Opens: how far the door may be opened without smoke coming out." : "";
        words += comparison_.alike           ? ""
                 : !comparison_.tied.empty() ? " < the ones to take: they come to the same."
                 : comparison_.layouts[comparison_.best].assessment.works() ? " < the one to take."
                                                                            : " < the nearest.";
        for (const Layout& layout : comparison_.layouts) {
            if (has_other_weathers(layout)) {
                words += ' ' + layout.name
                         + " names other weathers: its states stand in the order of its file.";
            }
        }
        out_ += paragraph(words, hung_in, style_.width);
    }

    /// A matter as the layouts have it: the worst of it, by harm and by what it is there.
    struct Shared {
        const Matter* matter{};
        Severity severity{};
        Harm harm{};
        std::string holders;
        std::size_t count{};
    };

    [[nodiscard]] std::vector<Shared> shared_findings() const {
        std::vector<Shared> seen;
        for (const Layout& layout : comparison_.layouts) {
            std::vector<const Matter*> of_this;
            for (const Finding& finding : layout.assessment.findings) {
                auto at = std::find_if(seen.begin(), seen.end(), [&](const Shared& each) {
                    return each.matter == finding.matter;
                });
                if (at == seen.end()) {
                    at = seen.insert(
                        seen.end(),
                        {finding.matter, finding.severity, finding.harm, std::string{}, 0});
                }
                at->severity = std::min(at->severity, finding.severity);
                at->harm = std::min(at->harm, finding.harm);
                if (std::find(of_this.begin(), of_this.end(), finding.matter) == of_this.end()) {
                    of_this.push_back(finding.matter);
                    at->holders += (at->count++ == 0 ? "" : ", ") + layout.name;
                }
            }
        }
        std::stable_sort(seen.begin(), seen.end(), [](const Shared& a, const Shared& b) {
            return a.harm != b.harm ? a.harm < b.harm : a.severity < b.severity;
        });
        return seen;
    }

    /// Findings that some layouts have and others do not, by harm.
    void findings() {
        TextTable table({{}, {}, {.wraps = true}});
        for (const Shared& each : shared_findings()) {
            if (each.count < comparison_.layouts.size()) {
                table.add({{std::string{name(each.severity)}},
                           {std::string{each.matter->title}},
                           {"only " + each.holders}});
            }
        }
        if (!table.empty()) {
            out_ += report::heading("Findings they do not share", style_);
            out_ += table.text(style_, 2);
        }
    }

    /// What is bought for some and not for others.
    void parts() {
        const std::vector<PartDifference> rows = part_differences(comparison_);
        if (rows.empty()) {
            return;
        }
        out_ += report::heading("What is not bought alike", style_);
        for (const PartDifference& row : rows) {
            std::string words;
            for (std::size_t i = 0; i < row.counts.size(); ++i) {
                words += fmt::format("{}{} {}",
                                     words.empty() ? "" : ", ",
                                     comparison_.layouts[i].name,
                                     report::count_words(row.counts[i], row.unit, style_));
            }
            out_ += paragraph(
                fmt::format("{}{}: {}", row.what, row.size.empty() ? "" : ", " + row.size, words),
                hung_in,
                style_.width);
        }
        out_ +=
            paragraph("`fluewright parts` lists all of it, with the cuts.", hung_in, style_.width);
    }

    void differences() {
        const std::vector<FileDifference> rows = file_differences(comparison_);
        if (rows.empty()) {
            out_ += '\n' + paragraph("The files say the same.", flush_left, style_.width);
            return;
        }
        out_ += report::heading("What the files say differently", style_);
        for (const FileDifference& row : rows) {
            out_ += paragraph(row.pointer, hung_in, style_.width);
            for (std::size_t i = 0; i < row.values.size(); ++i) {
                out_ += paragraph(fmt::format("{}: {}",
                                              comparison_.layouts[i].name,
                                              row.values[i].empty() ? "nothing" : row.values[i]),
                                  {.first = 4, .rest = 6},
                                  style_.width);
            }
        }
    }

    const Comparison& comparison_;
    const Style& style_;
    std::size_t begin_{};
    std::size_t end_{};
    std::string out_;
};

} // namespace

std::string comparison_text(const Comparison& comparison, const Style& style) {
    std::string out = Page(comparison, style).text();
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
