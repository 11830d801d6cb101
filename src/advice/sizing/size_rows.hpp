#pragma once

#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <string>
#include <vector>

/// The one search over trade sizes: which sizes there are, what a rule says against one, which
/// parts it is given to and how the run does with it. `check`, `size` and `improve` ask here.
namespace fluewright::sizing {

/// Whether two chimney tops are at one height.
[[nodiscard]] bool is_same_height(double one_m, double other_m);

/// Whether two diameters are one size, as is_same_size() has it of areas.
[[nodiscard]] bool is_same_diameter(double one_m, double other_m);

/// The sizes of the market that the collar is of; of both or neither, inch sizes with US units,
/// else metric ones.
[[nodiscard]] TradeSizes usual_sizes(const Case& resolved);

/// The sizes of one system, smallest first.
[[nodiscard]] std::vector<const catalog::TradeSize*> trade_sizes(TradeSizes sizes);

/// Name of the size nearest to a diameter, or the diameter itself where none is near.
[[nodiscard]] std::string trade_name(double diameter_m, TradeSizes sizes, UnitSystem units);

/// The rule of the trade against pipe of this inside diameter [m] in an installation, in words;
/// empty where there is none. It is the rule of the findings flue-smaller-than-outlet and
/// flue-far-larger-than-outlet; an open front may be as wide as it likes.
[[nodiscard]] std::string rule_against(const Case& resolved, double diameter_m);

/// The same of an installation as it is resolved, by the sizes that were bought, for the parts of
/// its run that can be chosen by size. A deposit does not make a pipe another size.
[[nodiscard]] std::string rule_against(const Case& resolved);

/// What is asked of the size of the present flue and not met, whether it counts or not, by its
/// title; empty where there is nothing.
[[nodiscard]] std::string size_not_met(const CheckResults& checks);

/// Which pipe of the run shops seldom stock in a size: "single-wall and chimney pipe"; empty where
/// they stock all of it. `begin` and `end` are places in the run.
[[nodiscard]] std::string
seldom_sold(const catalog::TradeSize& size, const Run& run, std::size_t begin, std::size_t end);

/// What the search shall solve.
enum class Depth : std::uint8_t {
    every_size,
    no_rule_against, ///< a size that a rule stands against is named only
};

/// Every size as a row, none of them suggested yet. `present` is the answer about `written`; rules
/// and what is required are those of it.
[[nodiscard]] SizeTable rows_of(const Installation& written,
                                const Assessment& present,
                                const SizeTableOptions& options,
                                Depth depth);

/// Of the rows nothing rules out, first those that work: the present one, else the smallest, at the
/// height nearest to the present one; null where there is none.
[[nodiscard]] const SizeRow* best_row(const SizeTable& table);

/// Of the rows no rule stands against, that with most to spare in its tightest state; null where
/// there is none.
[[nodiscard]] const SizeRow* nearest_row(const SizeTable& table);

[[nodiscard]] const SizeRow* present_row(const SizeTable& table);

/// Suggests one of the rows, and says why in the sentence of the table.
void suggest(SizeTable& table);

/// What stands against the run with a size that nothing rules out, as a sentence after another;
/// empty where it works.
[[nodiscard]] std::string stands_anyway(const SizeTable& table, const SizeRow& row);

} // namespace fluewright::sizing
