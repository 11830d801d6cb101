#include "margins.hpp"

#include "io/text/words.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <limits>

namespace fluewright::chart {
namespace {

constexpr std::string_view short_fill = "#f6e3dc";
constexpr std::string_view chosen_fill = "#e3ece4";
constexpr std::string_view level_color = "#000000";
constexpr double per_cent = 100.0;

/// What is drawn of a state.
struct Figure {
    std::string key; ///< condition and weather: one line
    std::size_t weather;
    StateKind kind;
    double shown;
};

class Margins {
public:
    Margins(const std::vector<MarginColumn>& columns,
            std::string_view x_title,
            std::string_view chosen_word,
            UnitSystem units)
        : columns_(columns), x_title_(x_title), chosen_word_(chosen_word),
          pressure_(unit_scale(Kind::pressure, customary_unit(Kind::pressure, units))) {}

    std::vector<Panel> panels() const {
        std::vector<Panel> made;
        Panel drafts = panel(fmt::format("draft over the need, {}", pressure_.unit), false);
        drafts.levels.push_back({0.0, "just enough", {.color = level_color, .width = 2.0}});
        made.push_back(std::move(drafts));
        Panel doors = panel("door may be opened, %", true);
        if (!doors.curves.empty()) {
            const auto with_score = std::find_if(
                columns_.begin(), columns_.end(), [](const auto& c) { return c.score != nullptr; });
            doors.levels.push_back({per_cent * door_wanted(*with_score->installation),
                                    "opening asked",
                                    {.color = level_color, .width = 2.0}});
            doors.levels.push_back({0.0, {}, {.color = "#dddddd"}});
            made.push_back(std::move(doors));
        }
        return made;
    }

private:
    [[nodiscard]] std::vector<Figure> figures_of(const MarginColumn& column, bool doors) const {
        std::vector<Figure> figures;
        if (column.score == nullptr) {
            return figures;
        }
        for (std::size_t i = 0; i < column.score->states.size(); ++i) {
            const StateResult& state = column.score->states[i];
            if (is_door_open(state.kind) != doors || !column.score->verdicts[i].counts
                || !report::has_working_point(state)) {
                continue;
            }
            figures.push_back(
                {report::state_words(*column.installation, state),
                 number_of(column.installation->weathers[state.weather].name),
                 state.kind,
                 doors ? per_cent * std::clamp(state.door.opening_share, 0.0, 1.0)
                       : pressure_.shown(state.draft_pa) - pressure_.shown(state.draft_needed_pa)});
        }
        return figures;
    }

    [[nodiscard]] std::string_view word_of(const MarginColumn& column) const {
        return column.chosen                                 ? chosen_word_
               : column.ruled_out || column.score == nullptr ? "out"
               : column.works                                ? "ok"
                                                             : "short";
    }

    /// Number of a weather among those of all columns, by name.
    [[nodiscard]] std::size_t number_of(const std::string& weather) const {
        std::vector<std::string_view> names;
        for (const MarginColumn& column : columns_) {
            for (const WeatherCase& one : column.installation->weathers) {
                if (std::find(names.begin(), names.end(), one.name) == names.end()) {
                    names.emplace_back(one.name);
                }
            }
        }
        return static_cast<std::size_t>(std::find(names.begin(), names.end(), weather)
                                        - names.begin());
    }

    [[nodiscard]] Panel panel(std::string y_title, bool doors) const {
        const auto count = static_cast<double>(columns_.size());
        Panel made{.x_title = std::string{x_title_},
                   .y_title = std::move(y_title),
                   .x_low = -0.5,
                   .x_high = count - 0.5};
        bool any_short = false;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const MarginColumn& column = columns_[i];
            const auto at = static_cast<double>(i);
            made.x_names.push_back({at, column.name});
            made.marks.push_back({at, std::string{word_of(column)}, column.chosen});
            if (column.chosen || !column.works) {
                made.bands.push_back({at - 0.5, at + 0.5, column.works ? chosen_fill : short_fill});
            }
            any_short = any_short || !column.works;
            for (const Figure& figure : figures_of(column, doors)) {
                curve_of(made, figure).points[i] = {at, figure.shown};
            }
        }
        if (any_short) {
            made.more.push_back({.stroke = {},
                                 .fill = short_fill,
                                 .words = "ruled out, or falls short of what counts"});
        }
        return made;
    }

    /// The line of a condition; a new one where there is none.
    [[nodiscard]] Curve& curve_of(Panel& made, const Figure& figure) const {
        const auto found =
            std::find_if(made.curves.begin(), made.curves.end(), [&](const Curve& curve) {
                return curve.words == figure.key;
            });
        if (found != made.curves.end()) {
            return *found;
        }
        constexpr double none = std::numeric_limits<double>::quiet_NaN();
        const bool solid =
            figure.kind == StateKind::high_fire || figure.kind == StateKind::door_open_embers;
        return made.curves.emplace_back(
            Curve{.stroke = {.color = line_colors[figure.weather % line_colors.size()],
                             .width = 2.0,
                             .dashes = solid ? "" : "7 4"},
                  .words = figure.key,
                  .points = std::vector<Point>(columns_.size(), {none, none}),
                  .dots = true});
    }

    const std::vector<MarginColumn>& columns_;
    std::string_view x_title_;
    std::string_view chosen_word_;
    UnitScale pressure_;
};

} // namespace

std::vector<Panel> margin_panels(const std::vector<MarginColumn>& columns,
                                 std::string_view x_title,
                                 std::string_view chosen_word,
                                 UnitSystem units) {
    return Margins{columns, x_title, chosen_word, units}.panels();
}

} // namespace fluewright::chart
