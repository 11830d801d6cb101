#include "fluewright/advice/sizing/size_table.hpp"

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "size_rows.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

std::string pipe_words(const SizeTable& table, const SizeRow& row) {
    std::string words = row.connector;
    if (table.separate && row.connector != row.chimney) {
        words += " for the connector and " + row.chimney + " for the chimney";
    }
    if (table.several_heights) {
        words += ", the chimney top "
                 + format_quantity(row.height_m, Kind::length, table.present.units)
                 + " above the outlet";
    }
    return words;
}

/// "low fire, frost, where 3.4 Pa are to spare"
std::string tightest_words(const SizeTable& table, const SizeRow& row) {
    const StateVerdict& verdict = row.score->verdicts[row.score->limiting];
    const StateResult& state = row.score->states[row.score->limiting];
    const UnitSystem units = table.present.units;
    const std::string where = state_name(table.present, state) + ", where ";
    if (verdict.kind == Kind::pressure && !has_figures(state)) {
        return where + std::string{in_place_of_figures(state)};
    }
    if (verdict.kind == Kind::pressure) {
        return where + format_quantity(std::abs(verdict.spare), Kind::pressure, units)
               + (verdict.spare < 0.0 ? " is lacking" : " is to spare");
    }
    return where + opening_words(table.present, state);
}

/// What rules the present pipe out, as a sentence after another.
std::string against_present(const SizeTable& table) {
    const SizeRow* present = sizing::present_row(table);
    if (present == nullptr || present->ruled_out_by.empty()) {
        return {};
    }
    const bool by_rule = present->against_rule;
    return " The present "
           + (table.varies_masonry ? table.present_pipe : pipe_words(table, *present))
           + (by_rule ? " is " + present->ruled_out_by + "."
                      : " falls short: " + tightest_words(table, *present) + ".");
}

std::string none_fits(const SizeTable& table, const SizeRow* nearest) {
    const std::string masonry =
        table.keeps_masonry && (nearest == nullptr || !nearest->lines_masonry())
            ? " The masonry flue kept its size; a liner would change it."
            : "";
    if (nearest == nullptr) {
        return "No size keeps to the rules of the trade for this outlet." + masonry;
    }
    return "No size that was tried passes in every condition. The nearest is "
           + pipe_words(table, *nearest) + ": " + tightest_words(table, *nearest) + "." + masonry
           + " `fluewright improve` looks for other changes.";
}

/// What the pipe leads into meets no rule of size where it is far wider than the outlet.
std::string for_masonry(const SizeTable& table, const SizeRow& best) {
    if (!table.masonry_too_wide) {
        return {};
    }
    std::string words = " The masonry flue it leads into is too wide: it has "
                        + format_number(table.masonry_over_outlet, 2) + " times the outlet's area.";
    if (best.lines_masonry()) {
        return words;
    }
    const SizeRow* liner = nullptr;
    for (const SizeRow& row : table.rows) {
        const double off_m = std::abs(row.height_m - table.present_height_m);
        if (row.lines_masonry() && row.score && row.ruled_out_by.empty()
            && (liner == nullptr || off_m < std::abs(liner->height_m - table.present_height_m))) {
            liner = &row;
        }
    }
    return liner == nullptr ? words + " No round liner passes in every condition."
                            : words + " Line it with a " + pipe_words(table, *liner)
                                  + ": the smallest relative margin is then in "
                                  + tightest_words(table, *liner) + ".";
}

/// Of other heights the nearest was taken, of those that were tried.
std::string least_height(const SizeTable& table, const SizeRow& row) {
    const bool other =
        table.several_heights && !sizing::is_same_height(row.height_m, table.present_height_m);
    return other ? " Of the heights tried it is the nearest to the present one that passes; "
                   "`fluewright sweep` over the height finds the least."
                 : std::string{};
}

/// What to take in place of what is there, and why.
std::string take_words(const SizeTable& table, const SizeRow& row) {
    if (table.varies_masonry && row.clay_liner.empty() && !row.lines_masonry()) {
        return "Keep the " + table.present_pipe + ", with the chimney top "
               + format_quantity(row.height_m, Kind::length, table.present.units)
               + " above the outlet: it then passes in every condition.";
    }
    return (row.lines_masonry() ? "Line the masonry flue with a " : "Take ")
           + pipe_words(table, row)
           + ": the smallest that passes in every condition and is not smaller than the outlet.";
}

/// That a size has to be ordered, and the next one that has not, as a sentence after another.
std::string seldom_in_stock(const SizeTable& table, const SizeRow& row) {
    if (row.seldom_sold.empty()) {
        return {};
    }
    const auto other = std::find_if(table.rows.begin(), table.rows.end(), [&](const SizeRow& each) {
        return each.works && each.ruled_out_by.empty() && each.seldom_sold.empty()
               && !each.lines_masonry() && each.height_m == row.height_m;
    });
    return " Shops seldom stock it as " + row.seldom_sold + ": it has to be ordered"
           + (other == table.rows.end() ? "." : "; " + pipe_words(table, *other) + " passes, too.");
}

} // namespace

void sizing::suggest(SizeTable& table) {
    const SizeRow* best = best_row(table);
    const bool stands = !table.against.empty() && table.against.front()->harm == Harm::fire;
    const auto first = [&](std::string_view words) {
        return std::string{words} + std::string{table.against.front()->title} + ". ";
    };
    if (best == nullptr) {
        table.sentence =
            (stands ? first("The run as it is now has a danger, which comes first: ") : "")
            + none_fits(table, sizing::nearest_row(table));
        return;
    }
    const auto index = static_cast<std::size_t>(best - table.rows.data());
    table.suggested = index;
    table.rows[index].suggested = true;
    const std::string tightest =
        " The smallest relative margin is in " + tightest_words(table, *best) + ".";
    const bool swept = best->present && table.sweeping_cures;
    const bool danger = !best->works && stands && !swept;
    if (swept) {
        table.sentence = "Keep the present pipe, " + pipe_words(table, *best)
                         + ", and sweep it: swept, it passes in every condition."
                         + for_masonry(table, *best);
        return;
    }
    table.sentence =
        (danger ? first("No size clears the danger in this run. Clear it first: ") : "")
        + (best->present
               ? (table.varies_masonry ? "Keep the " + table.present_pipe
                                       : "Keep the present pipe, " + pipe_words(table, *best))
                     + std::string{": it passes in every condition"}
                     + (!table.size_not_met.empty()
                            ? ", but is not the size that is asked for: " + table.size_not_met + '.'
                        : table.masonry_too_wide ? "."
                                                 : " and meets the size rules.")
                     + tightest + for_masonry(table, *best)
               : take_words(table, *best) + tightest + least_height(table, *best)
                     + seldom_in_stock(table, *best) + against_present(table)
                     + for_masonry(table, *best))
        + (danger ? std::string{} : sizing::stands_anyway(table, *best));
}

Result<SizeTable, Faults> tabulate_sizes(const Installation& written,
                                         const SizeTableOptions& options) {
    const Result<Assessment, Faults> present = assess(written,
                                                      {.size_search = false,
                                                       .words = false,
                                                       .spread = false,
                                                       .units = options.units,
                                                       .required = options.required,
                                                       .rules = options.rules});
    if (!present) {
        return Failure{present.error()};
    }
    SizeTable table = sizing::rows_of(written, *present, options, sizing::Depth::every_size);
    table.not_decided = present->verdict.leaves_fire_open()
                            ? fire_not_decided(present->checks, present->installation.units)
                            : "";
    table.leaves_open = present->verdict.leaves_open();
    if (table.rows.empty()) {
        table.sentence =
            "The run is neither round pipe nor masonry: it has no size of the trade to vary. "
            "`fluewright improve` tries one, `fluewright sweep --over height=3..8m` other heights.";
        return table;
    }
    sizing::suggest(table);
    if (table.varies_masonry) {
        table.sentence +=
            " A clay liner of another size is for a chimney still to be built; a round "
            "liner goes into the flue that stands.";
    }
    return table;
}

} // namespace fluewright
