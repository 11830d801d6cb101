#include "labels.hpp"

#include "colors.hpp"

#include <algorithm>

namespace fluewright::drawing {

using chart::Point;

Labels::Labels(const Drawn& drawn, double top) {
    for (std::size_t i = 0; i < drawn.elevation.parts.size(); ++i) {
        Label label{.at = drawn.frame.at(drawn.elevation.parts[i].at),
                    .lines = chart::wrap_to(
                        part_words(drawn.assessment.installation, drawn.elevation, i, drawn.style),
                        page::label_width,
                        page::plain),
                    .notes = {},
                    .height = 0.0,
                    .top = 0.0};
        if (!drawn.shown.notes[i].empty()) {
            label.notes = chart::wrap_to(drawn.shown.notes[i], page::label_width, page::small);
        }
        label.height = static_cast<double>(label.lines.size()) * line_height(page::plain)
                       + static_cast<double>(label.notes.size()) * line_height(page::small);
        labels_.push_back(std::move(label));
    }
    std::stable_sort(labels_.begin(), labels_.end(), [](const Label& x, const Label& y) {
        return x.at.y < y.at.y;
    });
    // Those of a level stretch from left to right, so that their lines do not cross.
    constexpr double level_px = 10.0;
    for (auto first = labels_.begin(); first != labels_.end();) {
        auto last = first + 1;
        while (last != labels_.end() && last->at.y - (last - 1)->at.y < level_px) {
            ++last;
        }
        std::stable_sort(
            first, last, [](const Label& x, const Label& y) { return x.at.x < y.at.x; });
        first = last;
    }
    std::vector<Entry> entries;
    for (const Label& label : labels_) {
        entries.push_back({label.at.y, label.height});
    }
    const std::vector<double> tops = in_column(entries, top + 2.0, page::between_labels);
    for (std::size_t i = 0; i < labels_.size(); ++i) {
        labels_[i].top = tops[i];
    }
}

double Labels::bottom() const {
    double lowest = 0.0;
    for (const Label& label : labels_) {
        lowest = std::max(lowest, label.top + label.height);
    }
    return lowest;
}

void Labels::paint(chart::Picture& picture, Sheet& sheet) const {
    for (const Label& label : labels_) {
        const double middle = label.top + 0.6 * line_height(page::plain);
        const Point knee{page::label_left - 14.0, middle};
        picture.line(label.at, knee, {.color = faint, .width = 0.6});
        picture.line(knee, {page::label_left - 3.0, middle}, {.color = faint, .width = 0.6});
        picture.circle(label.at, 1.8, "#ffffff", {.color = ink, .width = 0.8});
        sheet.take_line(label.at, knee, 1.0);
        double y = label.top;
        for (const std::string& line : label.lines) {
            y += line_height(page::plain);
            picture.set({page::label_left, y - page::drop}, line, {.size = page::plain});
        }
        for (const std::string& line : label.notes) {
            y += line_height(page::small);
            picture.set({page::label_left, y - page::drop},
                        line,
                        {.size = page::small, .color = "#4d4d4d"});
        }
    }
}

} // namespace fluewright::drawing
