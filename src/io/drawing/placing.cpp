#include "placing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright::drawing {

Box box_of(chart::Point at, std::string_view words, double size, chart::Anchor anchor) {
    const double width = chart::text_width(words, size);
    const double shift = anchor == chart::Anchor::start    ? 0.0
                         : anchor == chart::Anchor::middle ? 0.5 * width
                                                           : width;
    return {.left = at.x - shift,
            .top = at.y - chart::ascent_share * size,
            .width = width,
            .height = (chart::ascent_share + chart::descent_share) * size};
}

std::vector<double> in_column(const std::vector<Entry>& entries, double top, double gap) {
    /// Entries that stand as one.
    struct Block {
        std::size_t first;
        std::size_t count;
        double top_wanted; ///< sum over its entries of where each would have the block's top
        double height;

        [[nodiscard]] double top(double least) const {
            return std::max(least, top_wanted / static_cast<double>(count));
        }
    };

    std::vector<Block> blocks;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        blocks.push_back({i, 1, entries[i].wanted - 0.5 * entries[i].height, entries[i].height});
        while (blocks.size() > 1) {
            const Block last = blocks.back();
            Block& before = blocks[blocks.size() - 2];
            if (before.top(top) + before.height + gap <= last.top(top)) {
                break;
            }
            before.top_wanted +=
                last.top_wanted - static_cast<double>(last.count) * (before.height + gap);
            before.height += gap + last.height;
            before.count += last.count;
            blocks.pop_back();
        }
    }
    std::vector<double> tops;
    for (const Block& block : blocks) {
        double at = block.top(top);
        for (std::size_t i = block.first; i < block.first + block.count; ++i) {
            tops.push_back(at);
            at += entries[i].height + gap;
        }
    }
    return tops;
}

void Sheet::take_line(chart::Point from, chart::Point to, double half_width) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double step = std::max(2.0, half_width);
    const int count = std::max(1, static_cast<int>(std::ceil(length / step)));
    for (int i = 0; i <= count; ++i) {
        const double share = static_cast<double>(i) / count;
        take({.left = from.x + share * (to.x - from.x) - half_width,
              .top = from.y + share * (to.y - from.y) - half_width,
              .width = 2.0 * half_width,
              .height = 2.0 * half_width});
    }
}

bool Sheet::is_free(const Box& box) const {
    return area_.holds(box) && std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) {
               return box.meets(other);
           });
}

std::optional<Box> Sheet::first_free(const std::vector<Box>& places) {
    const auto found =
        std::find_if(places.begin(), places.end(), [this](const Box& b) { return is_free(b); });
    if (found == places.end()) {
        return std::nullopt;
    }
    take(*found);
    return *found;
}

std::optional<Box> Sheet::near(chart::Point place, double width, double height, const Box& within) {
    constexpr double step = 6.0;
    std::optional<Box> best;
    double best_away = std::numeric_limits<double>::infinity();
    for (double top = within.top; top + height <= within.bottom(); top += step) {
        for (double left = within.left; left + width <= within.right(); left += step) {
            const Box box{left, top, width, height};
            const double away =
                std::hypot(left + 0.5 * width - place.x, top + 0.5 * height - place.y);
            if (away < best_away && is_free(box)) {
                best = box;
                best_away = away;
            }
        }
    }
    if (best) {
        take(*best);
    }
    return best;
}

} // namespace fluewright::drawing
