#include "colors.hpp"
#include "io/report/check_parts.hpp"
#include "labels.hpp"

#include <algorithm>

namespace fluewright::drawing {
namespace {

using chart::Anchor;

std::string length_words(const Drawn& drawn, double m) {
    return report::quantity(m, Kind::length, drawn.style);
}

/// In order, each place once.
std::vector<double> apart(std::vector<double> all) {
    constexpr double one_place_m = 0.03;
    std::sort(all.begin(), all.end());
    std::vector<double> kept;
    for (const double value : all) {
        if (kept.empty() || value - kept.back() > one_place_m) {
            kept.push_back(value);
        }
    }
    return kept;
}

} // namespace

Sizes::Sizes(const Drawn& drawn) : drawn_(drawn) {
    find_widths();
}

double Sizes::bottom() const {
    const double rows = static_cast<double>(rows_);
    return drawn_.area.bottom() + rows * line_height(page::small) + (rows_ > 0 ? 20.0 : 6.0);
}

void Sizes::paint(chart::Picture& picture) const {
    paint_heights(picture);
    paint_widths(picture);
}

bool Sizes::outlet_is_assumed() const {
    const auto& assumed = drawn_.assessment.installation.assumptions;
    return std::any_of(assumed.begin(), assumed.end(), [](const Assumption& assumption) {
        return assumption.pointer == "/appliance/outlet/height";
    });
}

/// Heights a fitter marks: floor, outlet, turns, ceilings and roof, top.
std::vector<double> Sizes::heights() const {
    std::vector<double> all{0.0, drawn_.elevation.outlet.y_m, drawn_.elevation.top.y_m};
    for (const DrawnPart& part : drawn_.elevation.parts) {
        if (part.has_length() && !part.part->level()) {
            all.push_back(part.axis.front().y_m);
            all.push_back(part.axis.back().y_m);
        }
    }
    for (const Barrier& barrier : drawn_.elevation.barriers) {
        if (barrier.kind != BarrierKind::wall) {
            all.push_back(barrier.at_m);
        }
    }
    return apart(std::move(all));
}

void Sizes::paint_heights(chart::Picture& picture) const {
    const std::vector<double> levels = heights();
    const chart::Stroke thin{.color = ink, .width = 0.8};
    const double x = page::size_line;
    std::vector<Entry> entries;
    std::vector<std::vector<std::string>> words;
    const double wide = x - 10.0 - page::margin;
    for (std::size_t i = levels.size(); i-- > 0;) {
        const double y = drawn_.frame.at({0.0, levels[i]}).y;
        picture.line({x - 4.0, y + 4.0}, {x + 4.0, y - 4.0}, thin);
        if (i == 0) {
            break;
        }
        picture.line({x + 6.0, y},
                     {drawn_.area.right(), y},
                     {.color = extension, .width = 0.5, .dashes = "1 4"});
        const double below = drawn_.frame.at({0.0, levels[i - 1]}).y;
        picture.line({x, y}, {x, below}, thin);
        const bool to_outlet = levels[i] <= drawn_.elevation.outlet.y_m && outlet_is_assumed();
        words.push_back(chart::wrap_to((to_outlet ? "about " : "")
                                           + length_words(drawn_, levels[i] - levels[i - 1]),
                                       wide,
                                       page::small));
        entries.push_back({0.5 * (y + below),
                           static_cast<double>(words.back().size()) * line_height(page::small)});
    }
    const std::vector<double> tops = in_column(entries, drawn_.area.top, 1.0);
    for (std::size_t i = 0; i < tops.size(); ++i) {
        double base = tops[i] - page::drop;
        for (const std::string& line : words[i]) {
            base += line_height(page::small);
            picture.set({x - 8.0, base}, line, {.anchor = Anchor::end, .size = page::small});
        }
    }
}

// Below the floor, in as many rows as keep their words apart.
void Sizes::find_widths() {
    std::vector<double> all;
    for (const DrawnPart& part : drawn_.elevation.parts) {
        if (part.has_length() && part.part->plan_m > 0.0) {
            all.push_back(part.axis.front().x_m);
            all.push_back(part.axis.back().x_m);
        }
    }
    all = apart(std::move(all));
    std::vector<double> row_ends;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
        const std::string words = length_words(drawn_, all[i + 1] - all[i]);
        const double half = 0.5 * chart::text_width(words, page::small);
        const double middle = std::clamp(drawn_.frame.at({0.5 * (all[i] + all[i + 1]), 0.0}).x,
                                         page::margin + half,
                                         page::label_left - half);
        std::size_t row = 0;
        while (row < row_ends.size() && row_ends[row] > middle - half) {
            ++row;
        }
        if (row == row_ends.size()) {
            row_ends.push_back(0.0);
        }
        row_ends[row] = middle + half + 6.0;
        widths_.push_back({all[i], all[i + 1], middle, row, words});
    }
    rows_ = row_ends.size();
}

void Sizes::paint_widths(chart::Picture& picture) const {
    const chart::Stroke thin{.color = ink, .width = 0.8};
    const double y = drawn_.area.bottom() + 10.0;
    for (const Width& width : widths_) {
        const double from = drawn_.frame.at({width.from_m, 0.0}).x;
        const double to = drawn_.frame.at({width.to_m, 0.0}).x;
        picture.line({from, y}, {to, y}, thin);
        for (const double x : {from, to}) {
            picture.line({x - 4.0, y + 4.0}, {x + 4.0, y - 4.0}, thin);
        }
        picture.set({width.middle,
                     y + 4.0 + line_height(page::small) * (static_cast<double>(width.row) + 1.0)},
                    width.words,
                    {.anchor = Anchor::middle, .size = page::small});
    }
}

} // namespace fluewright::drawing
