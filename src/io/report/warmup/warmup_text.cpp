#include "fluewright/io/report/report_warmup.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/tar.hpp"
#include "io/report/check_parts.hpp"
#include "io/results/text_columns.hpp"
#include "io/results/warmup_rows.hpp"
#include "io/text/words.hpp"
#include "warmup_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace {

using report::minutes;

constexpr std::size_t warmup_inset = 2;
using report::minute_s;
constexpr double most_rows = 26.0;
constexpr std::string_view no_time = "-";

std::string minutes_or(const std::optional<double>& seconds, std::string_view otherwise) {
    return seconds ? minutes(*seconds) + " min" : std::string{otherwise};
}

struct Writer {
    const Case& c;
    const Style& style;

    [[nodiscard]] std::string shown(double si, Kind kind) const {
        return format_quantity(si, kind, style.units);
    }

    [[nodiscard]] std::string part_words(const Warmup& w, std::size_t part) const {
        return "part " + report::section_words(c, w.parts[part].section);
    }

    [[nodiscard]] std::string weather_words(const WarmupInWeather& in) const {
        const WeatherCase& weather = c.weathers[in.weather];
        return fmt::format("{}, {} outdoors",
                           weather.name,
                           shown(weather.outdoor_temperature_k, Kind::temperature));
    }

    [[nodiscard]] bool burner() const { return !is_fed_by_hand(c.appliance); }

    /// "The draft a high fire needs (12 Pa)"
    [[nodiscard]] std::string needed_words(double needed_pa) const {
        return fmt::format("The draft {} needs ({})",
                           burner() ? "the burner" : "a high fire",
                           shown(needed_pa, Kind::pressure));
    }

    /// A need below nothing is what a fan pushes with.
    [[nodiscard]] std::string fan_sentence(const Warmup& w) const {
        const std::string fan = shown(-w.draft_needed_pa, Kind::pressure);
        return w.draft_met.from_s
                   ? fmt::format("The fan, with {}, pushes all of the gas out after {}.",
                                 fan,
                                 minutes_or(w.draft_met.from_s, ""))
                   : fmt::format("The vent presses back with more than the {} of the fan.", fan);
    }

    [[nodiscard]] std::string draft_sentence(const Warmup& w) const {
        if (w.draft_needed_pa < 0.0) {
            return fan_sentence(w);
        }
        const std::string needed = needed_words(w.draft_needed_pa);
        if (w.draft_met.from_s) {
            return fmt::format("{}: reached after {}.", needed, minutes_or(w.draft_met.from_s, ""));
        }
        const auto drawing = std::any_of(
            w.moments.begin(), w.moments.end(), [](const auto& m) { return m.draft_pa > 0.0; });
        return drawing    ? needed + " is not reached."
               : burner() ? std::string{"The flue does not draw, and the burner does not warm it "
                                        "enough: its gas comes into the room. Stop the "
                                        "depressurization of the room before it runs again."}
                          : "The cold flue does not draw, and the kindling does not warm it "
                            "enough: smoke comes into the room. Preheat the flue, or stop the "
                            "depressurization of the room.";
    }

    [[nodiscard]] std::string wall_sentence(const Warmup& w) const {
        if (w.parts.empty()) {
            return {};
        }
        std::string words;
        words +=
            w.dry_s ? fmt::format("The inner wall is dry along the whole run after {}, last in {}.",
                                  minutes_or(w.dry_s, ""),
                                  part_words(w, w.last_dry))
                    : fmt::format("Water condenses in {} all the time.", part_words(w, w.last_dry));
        if (!makes_tar(c.appliance)) {
            return words;
        }
        const std::string limit = shown(w.creosote_threshold_k, Kind::temperature);
        words += ' ';
        words +=
            w.clean_s
                ? fmt::format("It is above {}, below which creosote forms, after {}, last in {}.",
                              limit,
                              minutes_or(w.clean_s, ""),
                              part_words(w, w.last_clean))
                : fmt::format("It stays below {}, where creosote forms, in {}.",
                              limit,
                              part_words(w, w.last_clean));
        return words;
    }

    [[nodiscard]] std::string after_sentence(const Warmup& w) const {
        if (!w.fire_out_s) {
            return {};
        }
        const double after_s = w.end_s - *w.fire_out_s;
        const auto held = [&](const std::optional<double>& seconds) {
            return seconds ? minutes(*seconds) + " min"
                           : fmt::format("longer than the {} min looked at", minutes(after_s));
        };
        if (!c.appliance.has_low_fire) {
            return fmt::format("With the fire out the draft stays above zero {}.",
                               held(w.holds_zero_s));
        }
        return fmt::format(
            "With the fire out the draft stays above the {} of a low fire {}, and above zero {}.",
            shown(w.draft_needed_low_pa, Kind::pressure),
            held(w.holds_low_s),
            held(w.holds_zero_s));
    }

    [[nodiscard]] std::string summary(const WarmupInWeather& in) const {
        const Warmup& w = in.course;
        std::string out = report::heading(weather_words(in), style);
        const Ink ink = w.draft_met.from_s ? Ink::good : Ink::bad;
        for (const std::string& line : wrap(draft_sentence(w), style.width - warmup_inset)) {
            out += std::string(warmup_inset, ' ') + inked(line, ink, style) + '\n';
        }
        for (const std::string& sentence : {wall_sentence(w), after_sentence(w)}) {
            if (!sentence.empty()) {
                out +=
                    paragraph(sentence, {.first = warmup_inset, .rest = warmup_inset}, style.width);
            }
        }
        if (w.starved_s >= minute_s && w.worst_starved) {
            out += paragraph(report::starved_words(c, w, style),
                             {.first = warmup_inset, .rest = warmup_inset},
                             style.width);
        }
        const std::vector<std::string> quicker = report::quicker_words(c, in, style);
        if (!quicker.empty()) {
            out += paragraph("What shortens it, by the figures of this run:",
                             {.first = warmup_inset, .rest = warmup_inset},
                             style.width);
            for (const std::string& line : quicker) {
                out += paragraph("- " + line, hung_in, style.width);
            }
        }
        return out;
    }

    [[nodiscard]] std::string parts(const Warmup& w) const {
        const bool tar = makes_tar(c.appliance);
        std::vector<TableColumn> headings{{.heading = "part"},
                                          {.heading = "dry from\nmin", .align = Align::decimal},
                                          {.heading = "until\nmin", .align = Align::decimal}};
        if (tar) {
            headings.push_back({.heading = "clean from\nmin", .align = Align::decimal});
            headings.push_back({.heading = "until\nmin", .align = Align::decimal});
        }
        for (const std::string_view which : {"inside at most", "outside at most"}) {
            headings.push_back({.heading = report::with_unit(which, Kind::temperature, style),
                                .align = Align::decimal});
        }
        TextTable table(std::move(headings));
        const auto cell = [](const std::optional<double>& seconds) {
            return TableCell{seconds ? minutes(*seconds) : std::string{no_time}};
        };
        for (const WarmupPart& part : w.parts) {
            std::vector<TableCell> cells{{report::section_words(c, part.section)},
                                         cell(part.dry.from_s),
                                         cell(part.dry.until_s)};
            if (tar) {
                cells.push_back(cell(part.clean.from_s));
                cells.push_back(cell(part.clean.until_s));
            }
            cells.push_back({report::bare_number(part.hottest_inner_k, Kind::temperature, style)});
            cells.push_back({report::bare_number(part.hottest_outer_k, Kind::temperature, style)});
            table.add(std::move(cells));
        }
        return table.text(style, warmup_inset);
    }

    /// The step between printed rows: the least of the round ones that keeps the table short.
    [[nodiscard]] static double row_step_s(double end_s) {
        for (const double step : {1.0, 2.0, 5.0, 10.0, 15.0, 20.0, 30.0, 60.0, 120.0, 240.0}) {
            if (end_s <= most_rows * step * minute_s) {
                return step * minute_s;
            }
        }
        return end_s / most_rows;
    }

    [[nodiscard]] std::string course(const WarmupInWeather& in) const {
        const Warmup& w = in.course;
        const results::TextColumns<results::MomentRow> figures({"burn_rate_kg_s",
                                                                "gas_flow_kg_s",
                                                                "outlet_temperature_k",
                                                                "top_temperature_k",
                                                                "draft_pa",
                                                                "dew_point_k",
                                                                "coldest_wall_k"},
                                                               style);
        std::vector<TableColumn> headings{{.heading = "min", .align = Align::decimal},
                                          {.heading = ""}};
        figures.add_headings(headings);
        TextTable table(std::move(headings));
        const results::CourseRow course{c, in};
        const double step_s = row_step_s(w.end_s);
        double next_s = 0.0;
        for (const WarmupMoment& m : w.moments) {
            constexpr double rounding_s = 0.5;
            if (m.time_s < next_s - rounding_s) {
                continue;
            }
            next_s = (std::floor(m.time_s / step_s + 1e-6) + 1.0) * step_s;
            std::vector<TableCell> cells{{minutes(m.time_s)}, {w.phases[m.phase].name}};
            figures.add_cells({course, m}, cells);
            if (m.draft_pa < 0.0) {
                cells[cells.size() - 3].ink = Ink::bad;
            }
            if (m.coldest_wall_k < m.dew_point_k && !w.phases[m.phase].out) {
                cells.back().text += " wet";
                cells.back().ink = Ink::warning;
            }
            table.add(std::move(cells));
        }
        return table.text(style, warmup_inset);
    }

    [[nodiscard]] std::string heat(const Warmup& w) const {
        const auto heat_of = [this](double j) {
            return format_quantity(j, Kind::energy, style.units);
        };
        return paragraph(
            fmt::format("Heat: the gas gave {} to the run; the walls still hold {}, {} "
                        "went to the surrounding air.",
                        heat_of(w.balance.given_j),
                        heat_of(w.balance.stored_j),
                        heat_of(w.balance.lost_j)),
            {.first = warmup_inset, .rest = warmup_inset},
            style.width);
    }

    [[nodiscard]] std::string assumptions(const Warmup& w) const {
        std::string out = report::heading("Assumed, because the file does not say", style);
        TextTable table({{.heading = "of the fire", .wraps = true},
                         {.heading = "taken as", .align = Align::decimal},
                         {.heading = "how it is known"}});
        for (const Assumption& a : w.assumptions) {
            table.add({{a.what}, {shown(a.value, a.kind)}, {std::string{a.mark}}});
        }
        return out + table.text(style, warmup_inset)
               + paragraph("`fluewright check` lists what is taken of place, heater and run.",
                           {.first = warmup_inset, .rest = warmup_inset},
                           style.width);
    }
};

struct Note {
    std::string_view words;
    std::string_view kinds; ///< kinds of heater it is true of: applies_to()
};

constexpr std::array<Note, 9> notes{
    {{"Flow: what the fire needs, but no more than the draft at that moment brings through "
      "appliance and run with the air control open. With the fire out the control stays where low "
      "fire had it.",
      "closed fire"},
     {"Flow: what the fire needs, but no more than the draft at that moment brings through "
      "appliance and run.",
      "open fire|masonry heater"},
     {"Flow: the burner keeps its rate, and its gas flows as it is made, whatever the draft is.",
      "pellets|oil|gas"},
     {"Flow: the burner keeps its rate; the flue takes no more than the draft of the moment draws, "
      "and the rest comes out of the draft hood.",
      "gas with a hood"},
     {"Where the flue as a whole does not draw yet, a trickle of 3 % of the full flow is taken.",
      "closed fire|open fire|masonry heater|gas with a hood"},
     {"The loading door is ajar while the fire is lit, and shut after; kindling and paper send gas "
      "up the flue from the first moment. Joints, hoods and the house act as in `check`.",
      "closed fire|masonry heater"},
     {"Dry means above the dew point of the gas's water; clean, above the temperature below which "
      "creosote forms. Both count only while the fire burns.",
      "closed fire"},
     {"Dry means above the dew point of the gas's water, and counts only while the fire burns.",
      "open fire|masonry heater|pellets|oil|gas|gas with a hood"},
     {"A wall known by its resistance alone stores no heat.", {}}}};

} // namespace

bool draws_in_time(std::span<const WarmupInWeather> courses) {
    return std::all_of(courses.begin(), courses.end(), [](const WarmupInWeather& in) {
        return in.course.draft_met.from_s.has_value();
    });
}

std::string warmup_text(const Case& resolved,
                        std::span<const WarmupInWeather> courses,
                        const WarmupReportOptions& options) {
    const Style& style = options.style;
    const Writer writer{resolved, style};
    std::string title = "Warm-up from cold";
    title += resolved.title.empty() ? "\n" : ": " + resolved.title + '\n';
    std::string out =
        report::dangers_text(options.dangers, "No fire before this is put right", style)
        + report::not_decided_text(options.not_decided, style);
    out += paragraph(title, {.first = 0, .rest = 2}, style.width);
    for (const WarmupInWeather& in : courses) {
        out += writer.summary(in) + '\n' + writer.parts(in.course) + '\n' + writer.course(in)
               + writer.heat(in.course);
    }
    if (!courses.empty()) {
        out += writer.assumptions(courses.front().course);
    }
    out += report::heading("How it is computed", style);
    for (const Note& note : notes) {
        if (applies_to(note.kinds, kind_of(resolved.appliance))) {
            out += paragraph(fmt::format("- {}", note.words), hung_in, style.width);
        }
    }
    out += report::cautions_text(kind_of(resolved.appliance), style);
    return report::signed_off(std::move(out), options.input.version, options.input.file(), style);
}

} // namespace fluewright
