#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string_view>
#include <vector>

/// What is wrong with an installation before anything is worked out: the one validation for files
/// and for installations that a program has built.
namespace fluewright {

/// All faults of its values, by the field table, and of its structure and names: empty where
/// resolve() can work with it. resolve() asks this itself.
[[nodiscard]] Faults check_installation(const Installation& installation);

/// The part of check_installation() that no single value shows: parts in an order that cannot be
/// built, keys that contradict each other, names that nothing answers to. The reader asks only
/// this, since it has held every value against the table where it stands in the text.
///
/// All faults of structure and of names, each with the pointer of the object or value at fault.
/// `found` stays empty where only the text of the file can tell it.
[[nodiscard]] Faults check_structure(const Installation& installation);

/// What is wrong with a list of stock by itself: pieces that lack what they must have. Pointers
/// begin at /stock.
[[nodiscard]] Faults stock_faults(const std::vector<StockPiece>& stock);

/// The names an installation may use in a field of these words: its own first, then the catalog's.
[[nodiscard]] std::vector<std::string_view> known_names(Words words,
                                                        const Installation& installation);

/// Whether the name is one of these or an alias of one, whatever the case of its letters.
[[nodiscard]] bool
is_known_name(std::string_view name, Words words, const Installation& installation);

/// Words joined for a message: "smooth, gored, mitered".
[[nodiscard]] std::string joined(std::span<const std::string_view> words);

} // namespace fluewright
