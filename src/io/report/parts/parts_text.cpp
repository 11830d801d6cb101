#include "fluewright/io/report/parts_text.hpp"

#include "cut_sheet.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/quantity/money.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/report/check_parts.hpp"
#include "io/report/trade_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace {

/// Nobody cuts pipe to a part of a millimetre or of a sixteenth of an inch.
std::string length_words(double length_m, const Style& style) {
    constexpr double foot_m = 12.0 * constants::inch_m;
    if (style.units == UnitSystem::metric) {
        return format_quantity(
            std::round(length_m * 1000.0) / 1000.0, Kind::length, style.units, 4);
    }
    const double whole_feet = std::floor(length_m / foot_m + 1e-6);
    const bool even = std::abs(length_m - whole_feet * foot_m) < 1e-5;
    return even ? format_quantity(length_m, Kind::length, style.units, 4)
                : report::mark_words(length_m, style.units);
}

/// A weight in whole kilograms or pounds would hide the light things.
std::string weight_words(double weight_kg, const Style& style) {
    return weight_kg > 0.0 ? format_quantity(weight_kg, Kind::mass, style.units, 2) : "";
}

/// What a line is for, and who says so where it is not the trade.
std::string reason_words(const PartsLine& line) {
    const bool told = !line.source.empty() && line.source != trade_practice;
    return line.why.empty()
               ? line.where
               : line.where + ": " + line.why + (told ? " (" + line.source + ')' : std::string{});
}

template <class Wanted>
std::string lines_table(const PartsList& list, const Style& style, const Wanted& wanted) {
    std::vector<TableColumn> columns{{.heading = "count", .align = Align::right},
                                     {.heading = "what", .wraps = true},
                                     {.heading = "size"},
                                     {.heading = "weight", .align = Align::right}};
    if (list.price) {
        columns.push_back({.heading = "price", .align = Align::right});
    }
    columns.push_back({.heading = "where", .wraps = true});
    TextTable table(std::move(columns));
    bool any = false;
    for (const PartsLine& line : list.lines) {
        if (!wanted(line)) {
            continue;
        }
        any = true;
        std::vector<TableCell> cells{{report::count_words(line.count, line.unit, style)},
                                     {line.what + (line.at_hand ? " (at hand)" : "")},
                                     {line.size},
                                     {weight_words(line.weight_kg, style)}};
        if (list.price) {
            cells.push_back({line.price ? format_money(*line.price, list.currency) : ""});
        }
        cells.push_back({reason_words(line)});
        table.add(std::move(cells));
    }
    return any ? table.text(style, hung_in.first) : paragraph("Nothing.", hung_in, style.width);
}

/// What the box comes to as a whole: built, or how near.
std::string nearest_words(const PartsList& list, const Style& style) {
    double lifts_m = 0.0;
    bool short_of_pipe = false;
    bool off = false;
    for (const PipeStretch& stretch : list.stretches) {
        lifts_m += stretch.lifts_m();
        off = off || std::abs(stretch.off_m) > 0.0;
        short_of_pipe = short_of_pipe || (stretch.off_m < 0.0 && stretch.pieces.empty());
    }
    const auto missing = std::count_if(list.lines.begin(), list.lines.end(), [](const auto& line) {
        return !line.at_hand && line.unit != "m" && line.in_run;
    });
    std::string words;
    if (!off && missing == 0) {
        words = "All of the run can be built from this box; what is short goes on it or round it.";
    } else if (short_of_pipe || missing > 0) {
        words =
            "From this box alone the run cannot be closed: what is short below is wanted first.";
    } else {
        words = "The run can be built from this box, but not as drawn.";
    }
    if (std::abs(lifts_m) > 0.001 && !short_of_pipe) {
        words += fmt::format(" Laid as below{}, its chimney top is {} {} than drawn: put those "
                             "lengths into the file and run `check` before you trust its draft.",
                             missing > 0 ? ", with what is wanted put in" : "",
                             length_words(std::abs(lifts_m), style),
                             lifts_m > 0.0 ? "higher" : "lower");
    }
    return words
           + (list.exact ? " No way to lay these pieces comes nearer."
                         : " The search was broken off, so that a nearer way may exist.");
}

std::string box_text(const PartsList& list, const Style& style) {
    std::string out = report::heading("What the box gives", style)
                      + paragraph(nearest_words(list, style), hung_in, style.width)
                      + lines_table(list, style, [](const PartsLine& l) { return l.at_hand; });
    for (const PipeStretch& stretch : list.stretches) {
        if (stretch.kind == WallKind::masonry || stretch.between_m <= 0.0) {
            continue;
        }
        double laid_m = 0.0;
        for (const StretchPiece& piece : stretch.pieces) {
            laid_m += piece.length_m - stretch.lap_m;
        }
        out += paragraph(stretch.off_m < 0.0 ? fmt::format("- {}: {} of {}; {} are short.",
                                                           stretch.place,
                                                           length_words(laid_m, style),
                                                           length_words(stretch.between_m, style),
                                                           length_words(-stretch.off_m, style))
                         : stretch.off_m > 0.0
                             ? fmt::format("- {}: {} longer than drawn, out of the box.",
                                           stretch.place,
                                           length_words(stretch.off_m, style))
                             : fmt::format("- {}: whole, out of the box.", stretch.place),
                         hung_in,
                         style.width);
    }
    return out + report::heading("What is short", style)
           + lines_table(list, style, [](const PartsLine& l) { return !l.at_hand; });
}

std::string unbuildable_text(const PartsList& list, const Style& style) {
    return report::dangers_text(
               list.dangers, "Do not build it like this: no part on this list cures these", style)
           + report::not_decided_text(list.not_decided, style)
           + report::not_decided_text(list.falls_short, style);
}

std::string buy_text(const PartsList& list, const Style& style) {
    return report::heading("What to bring", style)
           + lines_table(list, style, [](const PartsLine& /*line*/) { return true; });
}

std::string sums_text(const PartsList& list, const Style& style) {
    if (list.bought_m <= 0.0 && list.weight_kg <= 0.0) {
        return paragraph("There is no pipe to buy.", hung_in, style.width);
    }
    std::string out =
        paragraph("Reasons without a source are trade practice.", hung_in, style.width);
    out += paragraph(
        fmt::format(
            "Pipe and fittings weigh about {}; {} of pipe bought, {} left over from cutting{}.",
            format_quantity(list.weight_kg, Kind::mass, style.units, 2),
            length_words(list.bought_m, style),
            length_words(list.offcut_m, style),
            list.from_box ? ""
            : !list.exact ? "; the search was broken off, so that a choice that buys less may exist"
            : list.price  ? ", and no choice of priced pieces for this run costs less"
                          : ", and no choice of pieces for this run buys less"),
        hung_in,
        style.width);
    if (list.price) {
        out += paragraph(
            fmt::format("By your prices: {}{}.",
                        format_money(*list.price, list.currency),
                        list.unpriced == 0
                            ? ""
                            : fmt::format("; {} lines to buy have no price", list.unpriced)),
            hung_in,
            style.width);
    }
    return out;
}

std::string left_text(const PartsList& list, const Style& style) {
    if (list.left_in_box.empty()) {
        return {};
    }
    std::string out = report::heading("Not used of what is at hand", style);
    for (const LeftInBox& left : list.left_in_box) {
        out += paragraph(
            fmt::format(
                "- {} x {}, {}: {}.", format_number(left.count, 4), left.what, left.size, left.why),
            hung_in,
            style.width);
    }
    return out;
}

std::string stretches_text(const PartsList& list, const Style& style) {
    std::string out = report::heading("How it goes together, from the heater", style);
    for (const PipeStretch& stretch : list.stretches) {
        std::string pieces;
        for (const StretchPiece& piece : stretch.pieces) {
            pieces += (pieces.empty() ? "" : " + ") + length_words(piece.length_m, style);
        }
        std::string text = fmt::format("- {}: {} drawn, {} between the fittings",
                                       stretch.place,
                                       length_words(stretch.drawn_m, style),
                                       length_words(std::max(0.0, stretch.between_m), style));
        if (!pieces.empty()) {
            text += ": " + pieces;
            if (stretch.lap_m > 0.0) {
                text += fmt::format(", each laps {}", length_words(stretch.lap_m, style));
            }
        }
        if (!stretch.note.empty()) {
            text += "; " + stretch.note;
            if (std::abs(stretch.off_m) > 0.0) {
                text += " by " + length_words(std::abs(stretch.off_m), style);
            }
        }
        out += paragraph(text + ".", hung_in, style.width);
    }
    return out;
}

std::string growth_text(const PartsList& list, const Style& style) {
    if (list.growth.empty()) {
        return {};
    }
    std::string out = report::heading("Expansion when hot", style);
    for (const Growth& growth : list.growth) {
        out += paragraph(
            fmt::format("- {}: expands by {} (metal at {} on average); it can move {}.",
                        growth.place,
                        format_quantity(growth.grows_m, Kind::length, style.units, 2),
                        format_quantity(growth.mean_wall_k, Kind::temperature, style.units),
                        growth.where),
            hung_in,
            style.width);
    }
    return out;
}

} // namespace

std::string report::count_words(double count, std::string_view unit, const Style& style) {
    return unit == "m"    ? length_words(count, style)
           : unit == "kg" ? format_quantity(count, Kind::mass, style.units, 2)
                          : format_number(count, 6);
}

std::string report::parts_sections(const PartsList& list, const Style& style) {
    std::string out = unbuildable_text(list, style);
    out += list.from_box ? box_text(list, style) : buy_text(list, style);
    out += sums_text(list, style);
    out += left_text(list, style);
    out += report::cut_sheet(list, style);
    out += stretches_text(list, style);
    out += report::joints_text(list.joints, style);
    out += growth_text(list, style);
    out += report::heading("Assumed", style);
    for (const std::string& assumed : list.assumed) {
        out += paragraph("- " + assumed, hung_in, style.width);
    }
    return out;
}

std::string parts_text(const PartsList& list, const PartsReportOptions& options) {
    const Style& style = options.style;
    const std::string title =
        options.input.files.empty() ? std::string{} : options.input.files.front().title;
    std::string out = title.empty() ? "" : paragraph(title, flush_left, style.width);
    out += report::parts_sections(list, style);
    out += report::cautions_text(options.input.heater(), style);
    return report::signed_off(std::move(out), options.input.version, options.input.file(), style);
}

} // namespace fluewright
