#include "check_parts.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/report/report_method.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>
#include <optional>

namespace fluewright {
namespace {

constexpr std::size_t inset = 2;
constexpr int shown_digits = 5;

std::string verdict(const MethodResult& result, const Style& style) {
    const bool met = result.met();
    const std::string words = met ? "Every condition of the method that counts is met."
                                  : "Not met: " + result.not_met_words() + ".";
    std::string out = inked(std::string{result.title}, Ink::heading, style) + '\n';
    for (const std::string& line : wrap(words, style.width)) {
        out += inked(line, met ? Ink::good : Ink::bad, style) + '\n';
    }
    if (!result.beyond.empty()) {
        out += paragraph(result.beyond, flush_left, style.width);
    }
    out += paragraph(fmt::format("Known from: {}.", result.known_from), flush_left, style.width);
    return out;
}

/// The kind of figure that a unit of a method stands for; nothing where only the method has it.
std::optional<Kind> kind_of_unit(std::string_view unit) {
    struct UnitKind {
        std::string_view unit;
        Kind kind;
    };

    constexpr std::array kinds{UnitKind{"Pa", Kind::pressure},
                               UnitKind{"K", Kind::temperature},
                               UnitKind{"m/s", Kind::speed},
                               UnitKind{"kg/s", Kind::gas_flow},
                               UnitKind{"W", Kind::power},
                               UnitKind{"m", Kind::length},
                               UnitKind{"m2", Kind::area},
                               UnitKind{"kg/m3", Kind::density},
                               UnitKind{"m2K/W", Kind::thermal_resistance},
                               UnitKind{"W/(m2 K)", Kind::transmittance}};
    const auto* found = std::find_if(
        kinds.begin(), kinds.end(), [&](const UnitKind& each) { return each.unit == unit; });
    return found == kinds.end() ? std::nullopt : std::optional{found->kind};
}

/// A figure of a method in the units of the answer; in those of the method where it is of no kind
/// that has others.
std::string shown(double value, std::string_view unit, const Style& style) {
    const auto kind = kind_of_unit(unit);
    return kind ? format_quantity(value, *kind, style.units)
                : fmt::format("{} {}", format_number(value, shown_digits), unit);
}

/// Feet and not inches for the lengths of a method, as its own formulas have them.
std::string_view us_unit(Kind kind) {
    return kind == Kind::length ? "ft" : customary_unit(kind, UnitSystem::us);
}

std::string criteria(const MethodFiring& firing, const Style& style) {
    TextTable table({{.heading = "condition"},
                     {.heading = "meaning", .wraps = true},
                     {.heading = "has", .align = Align::right},
                     {.heading = "required", .align = Align::right},
                     {.heading = ""}});
    for (const MethodCriterion& c : firing.criteria) {
        const Ink ink = c.met() ? Ink::good : c.counts ? Ink::bad : Ink::warning;
        table.add(
            {{std::string{c.symbols}},
             {std::string{c.meaning}},
             {shown(c.have, c.unit, style)},
             {shown(c.want, c.unit, style)},
             {fmt::format("{}{}", c.met() ? "met" : "NOT MET", c.counts ? "" : " (info)"), ink}});
    }
    return table.text(style, inset);
}

std::string comparisons(const MethodFiring& firing, const Style& style) {
    TextTable table({{.heading = "the same by the full physics", .wraps = true},
                     {.heading = "method", .align = Align::right},
                     {.heading = "physics", .align = Align::right}});
    for (const MethodComparison& c : firing.comparisons) {
        table.add({{std::string{c.what}},
                   {shown(c.by_method, c.unit, style)},
                   {shown(c.by_physics, c.unit, style)}});
    }
    return table.text(style, inset);
}

std::string terms(const MethodGroup& group, const Style& style) {
    TextTable table({{.heading = ""},
                     {.heading = "", .wraps = true},
                     {.heading = "", .align = Align::decimal},
                     {.heading = ""},
                     {.heading = ""}});
    for (const MethodTerm& t : group.terms) {
        // In metric units a term stays as the document has it, for whoever follows the sums.
        const auto kind = style.units == UnitSystem::us ? kind_of_unit(t.unit) : std::nullopt;
        const std::string_view unit = kind ? us_unit(*kind) : t.unit;
        std::string value = kind ? format_in_unit(t.value, *kind, unit, shown_digits)
                                 : format_number(t.value, shown_digits);
        value = value.substr(0, value.find(' '));
        table.add({{std::string{t.symbol}},
                   {std::string{t.meaning}},
                   {std::move(value)},
                   {std::string{unit}},
                   {std::string{t.mark}, Ink::quiet}});
    }
    return "  " + inked(group.title, Ink::heading, style) + '\n' + table.text(style, 2 * inset);
}

std::string notes_text(const MethodResult& result, const Style& style) {
    std::string out = report::heading("Notes on the method", style);
    for (const auto& note : result.notes) {
        out += paragraph(fmt::format("- {}", note), hung_in, style.width);
    }
    return out;
}

} // namespace

std::string method_text(const MethodResult& result, const MethodReportOptions& options) {
    const Style& style = options.style;
    std::string out =
        report::dangers_text(options.dangers, "No fire before this is put right", style)
        + report::not_decided_text(options.not_decided, style) + verdict(result, style);
    for (const MethodFiring& firing : result.firings) {
        out += report::heading(fmt::format("Conditions, {}", firing.name), style);
        out += criteria(firing, style) + '\n' + comparisons(firing, style);
    }
    for (const MethodFiring& firing : result.firings) {
        out += report::heading(fmt::format("Terms, {}, in {}",
                                           firing.name,
                                           style.units == UnitSystem::us
                                               ? "US units where they have one"
                                               : "the SI units of the method"),
                               style);
        for (const MethodGroup& group : firing.groups) {
            out += terms(group, style);
        }
    }
    out += notes_text(result, style);
    out += report::cautions_text(options.input.heater(), style);
    return report::signed_off(std::move(out), options.input.version, options.input.file(), style);
}

} // namespace fluewright
