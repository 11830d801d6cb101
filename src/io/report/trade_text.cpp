#include "trade_text.hpp"

#include "check_parts.hpp"
#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright::report {
namespace {

std::string joined_with(const std::vector<std::string>& words, std::string_view between) {
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : std::string{between}) + word;
    }
    return text;
}

std::string rounded_hours(double hours) {
    return format_number(hours, 2) + " h";
}

std::string end_words(const EndFacts& facts) {
    return fmt::format("{}{}", name(facts.end), facts.assumed ? " (assumed)" : "");
}

std::string verdict_words(const HeatDemand& d, const Style& style) {
    const auto shown = [&](double value, Kind kind) {
        return format_quantity(value, kind, style.units);
    };
    std::string text = fmt::format("Holding that loss takes {} of fuel.",
                                   shown(d.burn_rate_kg_s, Kind::mass_rate));
    text += fmt::format(" The heater {}: at high fire it burns {} and gives {}.",
                        d.heater_carries ? "can do it" : "is too small",
                        shown(d.high_burn_rate_kg_s, Kind::mass_rate),
                        shown(d.heater_output_w, Kind::power));
    if (d.throttled) {
        text += fmt::format(" That is below its low fire of {}: burn short, brisk fires instead.",
                            shown(d.low_burn_rate_kg_s, Kind::mass_rate));
    }
    if (d.capacity_kg_s) {
        text += fmt::format(" The flue {} that rate: it vents up to {} ({}).",
                            d.flue_carries ? "can carry" : "cannot carry",
                            shown(*d.capacity_kg_s, Kind::mass_rate),
                            d.capacity_weather);
    }
    if (d.load_hours) {
        const std::string_view how = !d.heater_carries ? "at high fire"
                                     : d.throttled     ? "at low fire"
                                                       : "at that rate";
        text += fmt::format(" A load of {} lasts {} {}.",
                            shown(d.load_kg, Kind::mass),
                            rounded_hours(*d.load_hours),
                            how);
    }
    return text;
}

} // namespace

std::string joints_text(const JointReport& joints, const Style& style) {
    std::string lines;
    for (const fluewright::Joint& joint : joints.joints) {
        if (!joint.needs_something()) {
            continue;
        }
        lines += paragraph(fmt::format("- {}: a {} end meets a {} end. {}",
                                       joint.place,
                                       end_words(joint.lower),
                                       end_words(joint.upper),
                                       joint.cure()),
                           hung_in,
                           style.width);
    }
    if (lines.empty()) {
        return {};
    }
    return heading("Joints that need something", style) + lines;
}

std::string surfaces_text(const HotSurfaces& surfaces, const Style& style) {
    const auto shown = [&](double kelvin) {
        return format_quantity(kelvin, Kind::temperature, style.units);
    };
    std::string lines;
    for (const HotSurface& hot : surfaces.parts) {
        std::string text = fmt::format("- {}: {} at high fire", hot.place, shown(hot.surface_k));
        if (hot.rating_k) {
            text += fmt::format("; {} {} ({})",
                                hot.over_rating() ? "OVER its rating of" : "rated for",
                                shown(*hot.rating_k),
                                hot.rating_of);
        }
        if (hot.wall_k) {
            text += fmt::format(
                "; a wall {} off reaches about {}{}{}",
                format_quantity(*hot.distance_m, Kind::length, style.units),
                shown(*hot.wall_k),
                hot.shielded ? " behind its shield, " + shown(*hot.bare_wall_k) + " without" : "",
                *hot.wall_k > surfaces.wall_limit_k
                    ? fmt::format(", OVER {}", shown(surfaces.wall_limit_k))
                    : "");
        }
        lines += paragraph(text + ".", hung_in, style.width);
    }
    if (lines.empty()) {
        return {};
    }
    const bool walls = std::any_of(surfaces.parts.begin(),
                                   surfaces.parts.end(),
                                   [](const HotSurface& hot) { return hot.wall_k.has_value(); });
    if (walls) {
        lines +=
            paragraph("Walls are estimated for a pipe without end and a wall that loses nothing "
                      "behind it. The estimate never stands in for the distance a rule or label "
                      "asks for.",
                      hung_in,
                      style.width);
    }
    return heading("Hot surfaces", style) + lines;
}

std::string demand_text(const HeatDemand& d, const Style& style) {
    std::string out = heading("Is the heater big enough?", style);
    if (!d.missing.empty()) {
        return out
               + paragraph(fmt::format("Cannot tell; the file lacks {}.", keys_in_words(d.missing)),
                           hung_in,
                           style.width);
    }
    const auto shown = [&](double value, Kind kind) {
        return format_quantity(value, kind, style.units);
    };
    out += paragraph(fmt::format("With {} inside and {} outside the building loses {}; {} with a "
                                 "reserve to warm it up.",
                                 shown(d.indoor_k, Kind::temperature),
                                 shown(d.outdoor_k, Kind::temperature),
                                 shown(d.total_w, Kind::power),
                                 shown(d.with_reserve_w, Kind::power)),
                     hung_in,
                     style.width);
    TextTable table({{.heading = "lost through", .wraps = true},
                     {.heading = "area", .align = Align::right},
                     {.heading = "U value", .align = Align::right},
                     {.heading = "heat", .align = Align::right}});
    for (const HeatLoss& loss : d.parts) {
        table.add({{loss.name},
                   {shown(loss.area_m2, Kind::area)},
                   {shown(loss.u_value_w_m2k, Kind::transmittance)},
                   {shown(loss.loss_w, Kind::power)}});
    }
    table.add({{"air changes"}, {}, {}, {shown(d.ventilation_w, Kind::power)}});
    out += table.text(style, hung_in.first);
    out += paragraph(verdict_words(d, style), hung_in, style.width);
    if (!d.assumed.empty()) {
        out += paragraph("Assumed: " + joined_with(d.assumed, "; ") + ".", hung_in, style.width);
    }
    out += paragraph("Left out: " + joined_with(d.left_out, "; ") + ".", hung_in, style.width);
    return out;
}

std::string upkeep_text(const Maintenance& m, const Style& style) {
    if (!m.applies) {
        return {};
    }
    std::string out = heading("Sweeping", style);
    std::string where;
    for (const PartDeposit& part : m.parts) {
        if (part.risk == m.risk && m.risk != DepositRisk::low) {
            where = fmt::format(" ({}: {})", part.place, part.reason);
            break;
        }
    }
    out += paragraph(fmt::format("Deposit risk: {}{}. {}{}. [{}]",
                                 name(m.risk),
                                 where,
                                 static_cast<char>(m.sweep.words.front() - 'a' + 'A'),
                                 m.sweep.words.substr(1),
                                 m.sweep.source),
                     hung_in,
                     style.width);
    if (!m.look_first.empty()) {
        out += paragraph(
            "Look first at: " + joined_with(m.look_first, "; ") + ".", hung_in, style.width);
    }
    out += paragraph(fmt::format("Sweep when the deposit is {} thick; light no fire with {}. [{}]",
                                 format_quantity(m.clean_at_m, Kind::length, style.units, 2),
                                 format_quantity(m.no_fire_at_m, Kind::length, style.units, 2),
                                 m.thickness_source),
                     hung_in,
                     style.width);
    for (const PartDeposit& part : m.parts) {
        out += paragraph(fmt::format("- {}: {}; {}", part.place, name(part.risk), part.reason),
                         hung_in,
                         style.width);
    }
    if (!m.disagreement.empty()) {
        out += paragraph(m.disagreement, hung_in, style.width);
    }
    return out;
}

std::string trade_text(const TradeAdvice& advice, const Style& style) {
    return joints_text(advice.joints, style) + surfaces_text(advice.surfaces, style)
           + (advice.demand ? demand_text(*advice.demand, style) : "")
           + upkeep_text(advice.upkeep, style);
}

} // namespace fluewright::report
