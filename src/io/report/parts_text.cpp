#include "fluewright/io/report/parts_text.hpp"

#include "check_parts.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "trade_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr Indent inset{.first = 2, .rest = 4};

/// Nobody cuts pipe to a part of a millimetre; inches come in eighths by themselves.
std::string length_words(double length_m, const Style& style) {
    const bool metric = style.units == UnitSystem::metric;
    return format_quantity(
        metric ? std::round(length_m * 1000.0) / 1000.0 : length_m, Kind::length, style.units, 4);
}

/// Only cement goes by weight; everything else is counted.
std::string count_words(const PartsLine& line, const Style& style) {
    return line.unit == "kg" ? format_quantity(line.count, Kind::mass, style.units, 2)
                             : format_number(line.count, 6);
}

/// A weight in whole kilograms or pounds would hide the light things.
std::string weight_words(double weight_kg, const Style& style) {
    return weight_kg > 0.0 ? format_quantity(weight_kg, Kind::mass, style.units, 2) : "";
}

std::string buy_text(const PartsList& list, const Style& style) {
    TextTable table({{.heading = "count", .align = Align::right},
                     {.heading = "what", .wraps = true},
                     {.heading = "size"},
                     {.heading = "weight", .align = Align::right},
                     {.heading = "where", .wraps = true}});
    for (const PartsLine& line : list.lines) {
        table.add({{count_words(line, style)},
                   {line.what + (line.at_hand ? " (at hand)" : "")},
                   {line.size},
                   {weight_words(line.weight_kg, style)},
                   {line.where}});
    }
    std::string out = report::heading("What to bring", style) + table.text(style, inset.first);
    if (list.bought_m <= 0.0 && list.weight_kg <= 0.0) {
        return out + paragraph("There is no pipe to buy.", inset, style.width);
    }
    out += paragraph(
        fmt::format(
            "Pipe and fittings weigh about {}; {} of pipe bought, {} left over from cutting{}.",
            format_quantity(list.weight_kg, Kind::mass, style.units, 2),
            length_words(list.bought_m, style),
            length_words(list.offcut_m, style),
            list.exact ? ", and no way to cut these pieces buys less"
                       : "; many pieces, so a shorter plan may exist"),
        inset,
        style.width);
    return out;
}

std::string cuts_text(const PartsList& list, const Style& style) {
    if (list.cuts.empty()) {
        return {};
    }
    TextTable table({{.heading = "cut", .align = Align::right},
                     {.heading = "for"},
                     {.heading = "out of"},
                     {.heading = "measure", .wraps = true}});
    for (const Cut& cut : list.cuts) {
        table.add({{length_words(cut.length_m, style)},
                   {fmt::format("{}, piece {}", cut.place, cut.piece)},
                   {length_words(cut.from_m, style) + (cut.at_hand ? " (at hand)" : "")},
                   {cut.measure}});
    }
    return report::heading("What to cut", style) + table.text(style, inset.first)
           + paragraph("Lengths are overall, with the lap that goes into the next piece. Hold the "
                       "real elbows against the drawing before you cut.",
                       inset,
                       style.width);
}

std::string stretches_text(const PartsList& list, const Style& style) {
    std::string out = report::heading("How it goes together, from the heater", style);
    for (const PipeStretch& stretch : list.stretches) {
        std::string pieces;
        for (const double length_m : stretch.pieces_m) {
            pieces += (pieces.empty() ? "" : " + ") + length_words(length_m, style);
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
        out += paragraph(text + ".", inset, style.width);
    }
    return out;
}

std::string growth_text(const PartsList& list, const Style& style) {
    if (list.growth.empty()) {
        return {};
    }
    std::string out = report::heading("When hot", style);
    for (const Growth& growth : list.growth) {
        out += paragraph(
            fmt::format("- {}: grows by {} (metal at {} on the mean); it can move {}.",
                        growth.place,
                        format_quantity(growth.grows_m, Kind::length, style.units, 2),
                        format_quantity(growth.mean_wall_k, Kind::temperature, style.units),
                        growth.where),
            inset,
            style.width);
    }
    return out;
}

} // namespace

std::string parts_text(const PartsList& list, const PartsReportOptions& options) {
    const Style& style = options.style;
    const std::string title =
        options.input.files.empty() ? std::string{} : options.input.files.front().title;
    std::string out = title.empty() ? "" : paragraph(title, {.first = 0, .rest = 0}, style.width);
    out += buy_text(list, style);
    out += cuts_text(list, style);
    out += stretches_text(list, style);
    out += report::joints_text(list.joints, style);
    out += growth_text(list, style);
    out += report::heading("Taken", style);
    for (const std::string& assumed : list.assumed) {
        out += paragraph("- " + assumed, inset, style.width);
    }
    out += report::cautions_text(style);
    return report::signed_off(std::move(out), options.input.version, options.input.file(), style);
}

} // namespace fluewright
