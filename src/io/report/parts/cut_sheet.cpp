#include "cut_sheet.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "io/report/check_parts.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/core.h>
#include <numeric>

namespace fluewright::report {
namespace {

/// Less than this is not cut off.
constexpr double whole_m = 0.0015;

std::string steps_of(const Cut& cut, UnitSystem units) {
    const std::string mark = mark_words(cut.length_m, units);
    switch (cut.from) {
    case MeasuredEnd::either:
        return fmt::format("measure {} from either end, mark all round, cut; this piece is "
                           "that of {}.",
                           mark,
                           mark);
    case MeasuredEnd::socket:
        return fmt::format("measure {} from the rim of the socket towards the plain end, mark all "
                           "round, cut; keep the side with the socket.",
                           mark);
    case MeasuredEnd::plain:
        if (cut.rest_m - cut.length_m < whole_m) {
            return fmt::format("what is left is this piece, {}; crimp the end you cut: it points "
                               "to the heater.",
                               mark);
        }
        return fmt::format("of what is left, measure {} from the plain end as made, mark all "
                           "round, cut; keep the side with that plain end, and crimp the end you "
                           "cut: it points to the heater.",
                           mark);
    case MeasuredEnd::crimped:
        break;
    }
    return fmt::format("measure {} from the tip of the crimp, mark all round, cut; keep the side "
                       "with the crimp.",
                       mark);
}

/// The length before this cut, with what is kept drawn thick: "crimp >====== 888 mm ======|- - -".
std::string picture_of(const Cut& cut, UnitSystem units) {
    constexpr double most_columns = 32.0;
    const double rest_m = std::max(0.0, cut.rest_m - cut.length_m);
    const std::string kept = ' ' + mark_words(cut.length_m, units) + ' ';
    const std::string off = rest_m > whole_m ? ' ' + mark_words(rest_m, units) + ' ' : "";
    const auto columns = [&](double length_m, const std::string& words) {
        const auto share =
            static_cast<std::size_t>(most_columns * length_m / std::max(cut.rest_m, 1e-6));
        return std::max(share, words.size() + 2);
    };
    const auto bar = [](std::size_t width, const std::string& words, char fill) {
        const std::size_t left = (width - words.size()) / 2;
        return std::string(left, fill) + words + std::string(width - words.size() - left, fill);
    };
    const std::string thick = bar(columns(cut.length_m, kept), kept, '=');
    const std::string thin = off.empty() ? "" : bar(columns(rest_m, off), off, '-');
    switch (cut.from) {
    case MeasuredEnd::plain:
        return thin.empty() ? "keep, to crimp |" + thick + "| plain"
                            : "cut off |" + thin + "|" + thick + "| plain, keep";
    case MeasuredEnd::socket:
        return "keep, socket [" + thick + "|" + thin + "| plain, cut off";
    case MeasuredEnd::either:
        return "keep |" + thick + "|" + thin + "| cut off";
    case MeasuredEnd::crimped:
        break;
    }
    return "keep, crimp >" + thick + "|" + thin + "| plain, cut off";
}

} // namespace

std::string mark_words(double length_m, UnitSystem units) {
    if (units == UnitSystem::metric) {
        return fmt::format("{} mm", std::lround(length_m * 1000.0));
    }
    const long sixteenths = std::lround(length_m / constants::inch_m * 16.0);
    const long whole = sixteenths / 16;
    const long part = sixteenths % 16;
    if (part == 0) {
        return fmt::format("{} in", whole);
    }
    const long common = std::gcd(part, 16L);
    return whole > 0 ? fmt::format("{} {}/{} in", whole, part / common, 16 / common)
                     : fmt::format("{}/{} in", part / common, 16 / common);
}

std::string cut_sheet(const PartsList& list, const Style& style) {
    if (list.cuts.empty()) {
        return {};
    }
    std::string out = heading("What to cut", style);
    std::size_t number = 0;
    std::size_t stock = 0;
    for (const Cut& cut : list.cuts) {
        if (cut.stock != stock) {
            stock = cut.stock;
            ++number;
            out += paragraph(fmt::format("Length {}: {}, {}, {}{}",
                                         number,
                                         cut.wall,
                                         cut.size,
                                         mark_words(cut.from_m, style.units),
                                         cut.at_hand ? " (at hand)" : ""),
                             hung_in,
                             style.width);
        }
        out += paragraph(
            fmt::format("- for {}, piece {}: {}", cut.place, cut.piece, steps_of(cut, style.units)),
            {.first = 4, .rest = 6},
            style.width);
        out += "      " + picture_of(cut, style.units) + '\n';
    }
    return out
           + paragraph(
               fmt::format("Lengths are overall, with the lap: the end towards the heater goes so "
                           "far into the piece below it, or into the collar. They are rounded to "
                           "{}, and what one piece is off, the next takes up. Hold the real elbows "
                           "against the drawing before you cut.",
                           style.units == UnitSystem::us ? "1/16 in" : "1 mm"),
               hung_in,
               style.width);
}

} // namespace fluewright::report
