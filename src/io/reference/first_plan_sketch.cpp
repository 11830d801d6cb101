#include "fluewright/io/reference/first_plan.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

/// A sketch in letters: not to scale, bottom to top in the order of the heights.
namespace fluewright {
namespace {

constexpr std::size_t column_of_heater = 5; ///< of the middle of the heater
constexpr std::size_t column_across = 20;   ///< of a chimney beside it
constexpr std::size_t column_of_words = 38;

class Sketch {
public:
    explicit Sketch(const FirstPlan& plan) : plan_(plan) {}

    std::string text() {
        chimney_ = plan_.goes_across() ? column_across : column_of_heater;
        add_pipe('^', "chimney top", plan_.top);
        add_pipe('|', "", {});
        house();
        if (plan_.goes_across()) {
            across();
        }
        add(column_of_heater, '|', fmt::format("{}{}", collar_words(), at(plan_.collar_height)));
        std::string heater(2, ' ');
        heater += plan_.is_fireplace() ? "/     \\" : "[-----]";
        lines_.push_back(
            with_words(heater, plan_heater_words[static_cast<std::size_t>(plan_.heater)]));
        lines_.push_back(with_words(std::string(width_of_house, '='), "floor"));
        return fmt::format("{}\n", fmt::join(lines_, "\n"));
    }

private:
    static constexpr std::size_t width_of_house = 30;

    /// Roof and ceiling, or the roof beside a chimney outside.
    void house() {
        if (plan_.way == PlanWay::wall) {
            add_beside("roof at the chimney", plan_.roof, '~');
            add_pipe('|', "", {});
            return;
        }
        add_through("roof", plan_.roof, '~');
        if (plan_.roof.value > plan_.ceiling.value) {
            add_pipe('|', "attic", {});
            add_through("ceiling", plan_.ceiling, '-');
        }
        add_pipe('|', "", {});
    }

    void across() {
        std::string line(column_of_heater, ' ');
        line += '.';
        line += std::string(column_across - column_of_heater - 1, '-');
        line += '+';
        const bool wall = plan_.way == PlanWay::wall;
        if (wall) {
            line[wall_column] = '#';
        }
        lines_.push_back(with_words(line,
                                    fmt::format("{}{}, {} across",
                                                wall ? "through the wall" : "into the masonry",
                                                at(plan_.entry_height),
                                                plan_.distance.text)));
        std::string below(column_across + 1, ' ');
        below[column_of_heater] = '|';
        below[column_across] = 'u';
        if (wall) {
            below[wall_column] = '#';
        }
        lines_.push_back(with_words(below, "cleanout below the tee"));
    }

    [[nodiscard]] std::string collar_words() const {
        return plan_.is_fireplace() ? std::string{"throat"}
                                    : fmt::format("flue collar {}", plan_.collar.text);
    }

    [[nodiscard]] static std::string at(const Said& height) {
        return height.text.empty() ? "" : fmt::format(" at {}", height.text);
    }

    /// A line with the pipe alone; of a chimney outside, with the wall beside it.
    void add_pipe(char pipe, std::string_view words, const Said& height) {
        std::string line(chimney_ + 1, ' ');
        line[chimney_] = pipe;
        if (plan_.way == PlanWay::wall && below_roof_) {
            line[wall_column] = '#';
        }
        lines_.push_back(with_words(line, fmt::format("{}{}", words, at(height))));
    }

    void add_through(std::string_view words, const Said& height, char of) {
        std::string line(width_of_house, of);
        line[chimney_] = '|';
        lines_.push_back(with_words(line, fmt::format("{}{}", words, at(height))));
    }

    void add_beside(std::string_view words, const Said& height, char of) {
        std::string line(wall_column + 2, of);
        line += std::string(chimney_ - line.size(), ' ') + '|';
        lines_.push_back(with_words(line, fmt::format("{}{}", words, at(height))));
        below_roof_ = true;
    }

    void add(std::size_t column, char pipe, const std::string& words) {
        std::string line(column + 1, ' ');
        line[column] = pipe;
        if (plan_.way == PlanWay::wall) {
            line += std::string(wall_column - line.size(), ' ') + '#';
        }
        lines_.push_back(with_words(line, words));
    }

    [[nodiscard]] static std::string with_words(std::string line, std::string_view words) {
        if (!words.empty()) {
            line.resize(std::max(line.size(), column_of_words), ' ');
            line += words;
        }
        return line;
    }

    static constexpr std::size_t wall_column = 14;

    const FirstPlan& plan_;
    std::size_t chimney_{};
    bool below_roof_{false};
    std::vector<std::string> lines_;
};

} // namespace

std::string plan_sketch(const FirstPlan& plan) {
    return Sketch{plan}.text();
}

} // namespace fluewright
