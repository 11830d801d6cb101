#include "chart.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr double bars_page_px = 900.0;
constexpr double bars_left_px = 78.0;
constexpr double bars_right_px = 822.0;
constexpr double bars_words_size = 12.0;
constexpr double bars_small_size = 11.0;
constexpr double bars_bar_px = 16.0;
constexpr double bars_least_drawn = 0.01; ///< of the probability

/// Causes as bars, each with what it is, how likely and how large.
class Bars {
public:
    explicit Bars(const Diagnosis& diagnosis)
        : d_(diagnosis), picture_(bars_page_px, 0.0, diagnosis.sentence) {}

    std::string drawn() {
        const std::string title = d_.title.empty() ? "Why it smokes" : d_.title;
        picture_.bold(
            {bars_left_px, 26.0},
            chart::fitted(title, bars_right_px - bars_left_px, 14.0, chart::Weight::bold));
        lines("#a3150c", d_.urgent);
        std::vector<std::string> dangers;
        for (const PresentDanger& danger : d_.dangers) {
            const std::string place = danger.place.empty() ? "" : ", " + danger.place;
            dangers.push_back(fmt::format("DANGER: {}{}. {}", danger.title, place, danger.message));
        }
        lines("#a3150c", dangers);
        lines("", {d_.sentence});
        y_ += 10.0;
        double left_over = 0.0;
        for (const Explanation& e : d_.explanations) {
            if (e.probability < bars_least_drawn) {
                left_over += e.probability;
            } else {
                bar(e);
            }
        }
        scale();
        if (left_over > 0.0) {
            lines("#4d4d4d",
                  {fmt::format("All others together: {} %.", format_number(100.0 * left_over, 2))});
        }
        picture_.end_at(y_ + 16.0);
        return picture_.finished();
    }

private:
    void lines(std::string_view color, const std::vector<std::string>& texts) {
        for (const std::string& text : texts) {
            for (const std::string& line : chart::wrap_to(
                     text, bars_right_px - bars_left_px, bars_words_size, chart::Weight::regular)) {
                y_ += 1.3 * bars_words_size;
                picture_.set({bars_left_px, y_}, line, {.size = bars_words_size, .color = color});
            }
            y_ += 4.0;
        }
    }

    [[nodiscard]] static double px(double share) {
        return bars_left_px + share * (bars_right_px - bars_left_px);
    }

    void bar(const Explanation& e) {
        const std::string share = fmt::format(
            "{} %  ", format_number(100.0 * e.probability, e.probability < 0.1 ? 1 : 2));
        for (const std::string& line : chart::wrap_to(share + e.title,
                                                      bars_right_px - bars_left_px,
                                                      bars_words_size,
                                                      chart::Weight::bold)) {
            y_ += 1.3 * bars_words_size;
            picture_.set(
                {bars_left_px, y_}, line, {.size = bars_words_size, .weight = chart::Weight::bold});
        }
        y_ += 6.0;
        picture_.box({bars_left_px, y_},
                     px(e.probability) - bars_left_px,
                     bars_bar_px,
                     chart::line_colors[0]);
        picture_.frame({bars_left_px, y_}, bars_right_px - bars_left_px, bars_bar_px);
        y_ += bars_bar_px;
        for (const SizedCause& cause : e.causes) {
            if (cause.has_size && !cause.size_words.empty()) {
                for (const std::string& line :
                     chart::wrap_to("how much, with 90 % in the range: " + cause.size_words,
                                    bars_right_px - bars_left_px,
                                    bars_small_size)) {
                    y_ += 1.35 * bars_small_size;
                    picture_.set(
                        {bars_left_px, y_}, line, {.size = bars_small_size, .color = "#4d4d4d"});
                }
            }
        }
        y_ += 10.0;
    }

    void scale() {
        for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            picture_.line({px(share), y_ - 4.0}, {px(share), y_ + 2.0}, {});
            picture_.text({px(share), y_ + 15.0},
                          format_number(100.0 * share, 3),
                          chart::Anchor::middle,
                          bars_small_size);
        }
        picture_.text({0.5 * (bars_left_px + bars_right_px), y_ + 33.0},
                      "probability, %",
                      chart::Anchor::middle,
                      bars_words_size);
        y_ += 40.0;
    }

    const Diagnosis& d_;
    chart::Picture picture_;
    double y_{32.0};
};

} // namespace

std::string diagnosis_svg(const Diagnosis& diagnosis) {
    return Bars{diagnosis}.drawn();
}

} // namespace fluewright
