#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/results/size_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"

#include <array>
#include <fmt/core.h>
#include <utility>

namespace fluewright::report {
namespace {

std::string size_sentence(const SizeAdvice& size) {
    const auto with_reason = [&](const std::string& words) {
        return size.reason.empty() ? words + '.' : words + ". " + size.reason;
    };
    switch (size.outcome) {
    case SizeAdvice::Outcome::present_is_right:
        return with_reason(fmt::format("Pipe size: {} is right", size.present));
    case SizeAdvice::Outcome::another:
        if (size.lines_masonry) {
            return "Pipe size: " + size.reason;
        }
        return with_reason(
            fmt::format("Pipe size: {} suggested in place of {}", size.suggested, size.present));
    case SizeAdvice::Outcome::none:
        return "Pipe size: " + size.reason;
    case SizeAdvice::Outcome::nothing_to_size:
        break;
    }
    return with_reason("Pipe size: nothing in this run to choose by size");
}

/// A source key and how the figure is known, without saying the same twice.
std::string known_how(std::string_view source, std::string_view mark) {
    if (source == mark || source == "memory") {
        return std::string{mark};
    }
    if (source == "practice") {
        return "common practice, no source";
    }
    return fmt::format("{} ({})", source, mark);
}

/// Groups of assumptions by the first step of their pointer.
using Group = std::pair<std::string_view, std::string_view>;

constexpr std::array groups{
    Group{"/site", "the place"}, Group{"/appliance", "the heater"}, Group{"/run", "the run"}};

std::string_view group_of(std::string_view pointer) {
    for (const Group& group : groups) {
        if (pointer.starts_with(group.first)) {
            return group.second;
        }
    }
    return "everything else";
}

void add_group(const Case& resolved, std::string_view group, const Style& style, std::string& out) {
    TextTable table({{.heading = fmt::format("of {}", group), .wraps = true},
                     {.heading = "taken as", .align = Align::decimal},
                     {.heading = "how it is known", .wraps = true}});
    for (const Assumption& assumption : resolved.assumptions) {
        if (group_of(assumption.pointer) != group) {
            continue;
        }
        table.add({{assumption.what},
                   {assumption.word.empty() ? quantity(assumption.value, assumption.kind, style)
                                            : assumption.word},
                   {known_how(assumption.source, assumption.mark)}});
    }
    if (!table.empty()) {
        out += table.text(style, hung_in.first);
    }
}

} // namespace

std::string size_in_short(const Assessment& a, const ReportOptions& options) {
    return options.size_searched ? paragraph(size_sentence(a.size), hung_in, options.style.width)
                                 : "  Pipe size: not computed (--no-size-search).\n";
}

std::string size_text(const Assessment& a, const ReportOptions& options) {
    const Style& style = options.style;
    std::string out = heading("Size", style) + size_in_short(a, options);
    if (!options.size_searched || a.size.trials.empty()) {
        return out;
    }
    const results::TextColumns<results::SizeEntry> figures({"area_over_outlet", "least_margin_pa"},
                                                           style);
    std::vector<TableColumn> headings{{.heading = "size", .align = Align::decimal}};
    figures.add_headings(headings);
    const ApplianceCase& appliance = a.installation.appliance;
    const bool opens = appliance.has_door;
    if (opens) {
        headings.push_back(
            {.heading = has_open_front(appliance) ? "smoke\nheld" : "door may\nbe opened",
             .align = Align::right});
    }
    headings.push_back({.heading = ""});
    headings.push_back({.heading = "ruled out by", .wraps = true});
    TextTable table(std::move(headings));
    for (const results::SizeEntry& size : results::entries_of(a)) {
        std::vector<TableCell> cells{{std::string{size.connector}}};
        figures.add_cells(size, cells);
        const double share = size.least_opening_share.value_or(0.0);
        if (opens) {
            cells.push_back({!size.least_opening_share ? "-"
                             : share >= 1.0            ? "fully"
                                            : opening_share_words(a.installation, share)});
        }
        cells.push_back(!size.ruled_out_by.empty() ? TableCell{"no", Ink::bad}
                        : size.works               ? TableCell{"ok", Ink::good}
                                                   : TableCell{"not alone", Ink::warning});
        cells.push_back({std::string{size.ruled_out_by}});
        table.add(std::move(cells));
    }
    return out + table.text(style, hung_in.first);
}

std::string assumptions_text(const Assessment& a, const Style& style) {
    const auto& assumptions = a.installation.assumptions;
    if (assumptions.empty()) {
        return heading("Assumed", style) + "  Nothing: the file gives all that was used.\n";
    }
    std::string out = heading(
        fmt::format("Assumed, because the file does not say ({})", assumptions.size()), style);
    for (const Group& group : groups) {
        add_group(a.installation, group.second, style, out);
    }
    add_group(a.installation, group_of(""), style, out);
    out +=
        paragraph("Measure what you can and write it into the file. `fluewright catalog sources` "
                  "spells the sources out.",
                  {.first = 2, .rest = 2},
                  style.width);
    return out;
}

} // namespace fluewright::report
